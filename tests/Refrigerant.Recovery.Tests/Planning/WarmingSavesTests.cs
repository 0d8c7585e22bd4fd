using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What heat is said to save it does save, by the plan of the same job with that heat.</summary>
public class WarmingSavesTests
{
    /// <summary>Waiting for heat over half an hour in each; well insulated ones wait the longest.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    public void The_heat_that_is_named_saves_what_is_said(double resistance)
    {
        RecoveryJob job = Jobs.Chiller("R-22", 10, cylinders: 1) with { PushPull = PushPullUse.Never };
        job = job.With(appliance => appliance with { LiquidReachable = false, LiquidHeel = Mass.Zero, HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(resistance), MetalMass = Mass.FromKilograms(15) });
        RecoveryPlan cold = RecoveryPlanner.Plan(job);
        Finding told = Assert.Single(cold.ToDo, finding => finding.Code == "heat-sets-pace");
        double saved = told.Figure("saved");
        RecoveryPlan warm = RecoveryPlanner.Plan(job with { Aids = new SiteAids { Heater = Power.FromWatts(told.Figure("heat")) } });
        Assert.True(warm.IsLevelReached);
        double difference = cold.TotalDuration.Seconds - warm.TotalDuration.Seconds;
        Assert.InRange(saved, 0.5 * difference, 1.5 * difference);
        Assert.True(saved >= 0.1 * cold.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery).Max(stage => stage.Duration.Seconds));
    }
}
