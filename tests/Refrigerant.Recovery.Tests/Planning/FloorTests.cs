using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Liquid that is left: how far below it the gauge may fall, and that a pull without a hold goes on until it is gone.</summary>
public class FloorTests
{
    /// <summary>Water in the tubes freezes where liquid boils at 0 °C: while a pull has liquid the gauge is watched there, and not once there is none; nor where tubes are empty or nobody keeps them.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void The_pressure_at_freezing_is_watched_while_there_is_liquid(bool hasWater, bool keeps)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never, KeepAboveFreezing = keeps };
        job = job with { Appliance = job.Appliance with { Water = hasWater ? TubeWater.Moving(MassFlow.FromKilogramsPerSecond(2), Temperature.FromDegreesCelsius(18), Processes.Setups.Conductance(2000)) : null } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        double ice = Fluid.Get("R-134a").SaturationAt(Temperature.FromKelvins(273.15)).Bubble.Pressure.Pascals - 101_325;
        PlannedStage[] draws = [.. plan.Stages.Where(stage => stage.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery)];
        Assert.Contains(draws, stage => stage.Result!.Before.Appliance.HasLiquid);
        Assert.All(plan.Stages, stage =>
        {
            bool watched = stage.Hookup.Watches.Any(watch => watch.By == WatchedBy.ApplianceGauge && watch.Text.Contains("freezing", StringComparison.Ordinal) && Math.Abs(watch.Value!.InternationalValue!.Value - ice) < 10);
            Assert.Equal(hasWater && keeps && draws.Contains(stage) && stage.Result!.Before.Appliance.HasLiquid, watched);
        });
    }

    /// <summary>Without a hold a pull that comes to the level over cold liquid goes on until that is gone, and then no deeper than the level asks.</summary>
    [Fact]
    public void Without_a_hold_liquid_is_pulled_off_all_the_same()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never, Times = new JobTimes { Hold = Duration.Zero } };
        job = job with
        {
            Machine = job.Machine with { TakesLiquid = false },
            Appliance = job.Appliance with { InternalVolume = Volume.FromLiters(50), LiquidHeel = Mass.Zero, LiquidReachable = false, MetalMass = Mass.Zero, HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.2) },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        PlannedStage pull = plan.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery);
        double level = plan.Requirement.RequiredPressure.Pascals;
        Assert.Contains(pull.Result!.Trajectory, point => point.AppliancePressure.Pascals < level && point.LiquidMass > Mass.Zero);
        Assert.Equal((LevelOutcome.Reached, StepReason.PullLonger), (plan.Verdict.Outcome, pull.Step.Reason));
        Assert.False(plan.End.HasLiquid);
        double dry = pull.Result.LiquidGoneAfter!.Value.Seconds;
        Assert.InRange(pull.Duration.Seconds - dry, 0, 30 + (0.02 * dry));
    }

    /// <summary>Where nobody keeps the tubes they freeze, and the plan says when: at the first moment of a pull at which their surface is at 0 °C.</summary>
    [Fact]
    public void When_tubes_freeze_is_told()
    {
        RecoveryJob job = Jobs.Chiller("R-123", kilograms: 40, litersPerKilogram: 4) with { PushPull = PushPullUse.Never, KeepAboveFreezing = false };
        job = job with
        {
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(8)) with { TakesLiquid = false },
            Hoses = Jobs.Hoses(10, 25),
            Appliance = job.Appliance with { LiquidReachable = false, MetalMass = Mass.FromKilograms(20), Water = TubeWater.Standing(Mass.FromKilograms(5), Temperature.FromDegreesCelsius(18), Processes.Setups.Conductance(100)) },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        PlannedStage cold = plan.Stages.Where(stage => stage.Result is not null).MinBy(stage => stage.Result!.ColdestSurface)!;
        Assert.True(cold.Result!.ColdestSurface.DegreesCelsius < 0);
        Finding word = plan.Findings.Single(finding => finding.Code == "tubes-freeze");
        Assert.Equal(Severity.Stop, word.Severity);
        double first = cold.Result.Trajectory.First(point => point.MetalTemperature.DegreesCelsius <= 0).Time.Seconds;
        Assert.True(first > 0);
        Assert.Equal(first, word.Value("after")!.InternationalValue!.Value, 1e-6);
        Assert.Equal(cold.Result.ColdestSurface.Kelvins, word.Value("coldest")!.InternationalValue!.Value, 1e-6);
    }
}
