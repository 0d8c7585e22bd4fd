using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A level that holds at 20 °C (EN 378-4; Spain, RD 552/2019, IF-17, 1.8.2.1): cold vapor must come lower, p/T as at 20 °C.</summary>
public class LevelAtTemperatureTests
{
    private const double Reference = 293.15;

    [Theory]
    [InlineData(-15, 10)]
    [InlineData(8, 10)]
    [InlineData(-15, 0)]
    public void Cold_vapor_comes_as_low_as_it_would_be_at_20_degrees(double celsius, double hold)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job(celsius, hold));
        Assert.True(plan.IsLevelReached, plan.ToString());
        double warm = plan.End.Pressure.Pascals * Reference / plan.End.Temperature.Kelvins;
        Assert.InRange(warm, 0.8 * 30_000, 30_000 * (1 + 1e-5));
    }

    /// <summary>What the gauge may come to meanwhile is what the level is at what is left as cold as it is.</summary>
    [Fact]
    public void The_hold_is_watched_at_the_level_of_cold_vapor()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job(-15, 10));
        PlannedStage hold = plan.Stages.Last(stage => stage.Kind == StageKind.Hold);
        StageWatch watch = hold.Hookup!.Watches.Single(each => each.By == WatchedBy.ApplianceGauge);
        double most = watch.Value!.InternationalValue!.Value + 101_325;
        Assert.InRange(most, 0.97 * 30_000 * hold.After.Temperature.Kelvins / Reference, (30_000 * hold.After.Temperature.Kelvins / Reference) + 0.1);
    }

    /// <summary>The same level told by the caller has no temperature.</summary>
    [Fact]
    public void A_level_of_the_callers_own_stays_as_told()
    {
        RecoveryJob job = Job(-15, 10);
        RecoveryPlan own = RecoveryPlanner.Plan(job with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(30) } });
        Assert.True(own.IsLevelReached);
        Assert.True(own.End.Pressure.Pascals * Reference / own.End.Temperature.Kelvins > 30_000);
    }

    private static RecoveryJob Job(double celsius, double hold) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(8),
            InternalVolume = Volume.FromLiters(300),
            Temperature = Temperature.FromDegreesCelsius(celsius),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(1.5)),
        Hoses = Jobs.Hoses(),
        Cylinders = [Jobs.Cylinder(50)],
        Times = new JobTimes { Hold = Duration.FromMinutes(hold) },
        Evacuation = new EvacuationOptions { Rules = RuleSet.Spain, InternalVolume = Volume.FromLiters(300) },
    };
}
