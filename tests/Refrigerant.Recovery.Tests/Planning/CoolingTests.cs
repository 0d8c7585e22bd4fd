using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A cylinder that gets hot or holds the machine back: when it is throttled, cooled, rested or changed.</summary>
public class CoolingTests
{
    private static RecoveryPlan Throttled => HotRoof.Plan("one");

    private static RecoveryPlan Changed => HotRoof.Plan("two");

    /// <summary>One hot cylinder: the inlet is throttled so that it stays below the least of cut-out and 5/4 of its service pressure (49 CFR 173.301), and it comes near it.</summary>
    [Theory]
    [InlineData(3.9)]
    [InlineData(3.2)]
    public void A_throttled_pull_stays_just_below_the_limit(double megapascals)
    {
        RecoveryPlan plan = megapascals == 3.9 ? Throttled : RecoveryPlanner.Plan(HotRoof.Job(1, megapascals));
        double limit = Math.Min(megapascals * 1e6, (1.25 * 400 * 6894.757) + 101_325);
        PlannedStage pull = plan.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.True(pull.Step.IsThrottled);
        Assert.Equal(StepReason.Throttle, pull.Step.Reason);
        Assert.InRange(pull.Result!.Trajectory.Max(point => point.DischargePressure.Pascals), 0.95 * limit, limit);
        Assert.Contains(plan.ToDo, finding => finding.Code == "throttle-inlet" && Math.Abs(finding.Value("limit")!.InternationalValue!.Value - (limit - 101_325)) < 1000);
    }

    /// <summary>A cylinder out of a hot van holds the machine back until it has cooled, one that was cooled before helps it; the plan starts from what was told, not from the air.</summary>
    [Fact]
    public void A_cylinder_starts_at_the_temperature_told()
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 12, cylinders: 1) with { PushPull = PushPullUse.Never };
        RecoveryPlan At(double celsius) => RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(12), Refrigerant = "R-410A", Temperature = Temperature.FromDegreesCelsius(celsius) }] });
        RecoveryPlan[] plans = [At(2), At(18), At(50)];
        Assert.Equal(plans.OrderBy(plan => plan.TotalDuration).Select(plan => plan.TotalDuration), plans.Select(plan => plan.TotalDuration));
        Assert.True(plans[2].TotalDuration.Seconds > plans[0].TotalDuration.Seconds + 30);
        CylinderState hot = plans[2].Stages.First(stage => stage.Result?.Before.Cylinder is not null).Result!.Before.Cylinder!;
        Assert.Equal(50, hot.Temperature.DegreesCelsius, 1.0);
        Assert.Equal(Jobs.Chiller("R-410A").Appliance.Fluid.SaturationAt(hot.Temperature).Bubble.Pressure.Pascals, hot.Pressure.Pascals, 0.03 * hot.Pressure.Pascals);
        RecoveryPlan same = RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(12), Refrigerant = "R-410A" }] });
        Assert.Equal(plans[1].TotalDuration, same.TotalDuration);
    }

    /// <summary>A cylinder warmer than 52 °C is not connected, whether it is near to bursting or would only hold the machine back: the plan says stop, and takes another one where there is one.</summary>
    [Theory]
    [InlineData(17.5, 68)]
    [InlineData(14, 80)]
    [InlineData(5, 95)]
    [InlineData(0, 53)]
    public void A_cylinder_hotter_than_any_may_be_is_not_connected(double kilograms, double celsius)
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 8, cylinders: 2) with { PushPull = PushPullUse.Never };
        RecoveryCylinder hot = RecoveryCylinderOf(kilograms) with { Temperature = Temperature.FromDegreesCelsius(celsius) };
        RecoveryPlan alone = RecoveryPlanner.Plan(job with { Cylinders = [hot] });
        Assert.Contains(alone.ToDo, finding => finding is { Code: "cylinder-hot-at-start", Severity: Severity.Stop });
        Assert.False(alone.IsLevelReached);
        RecoveryPlan spare = RecoveryPlanner.Plan(job with { Cylinders = [hot, job.Cylinders[1]] });
        Assert.True(spare.IsLevelReached);
        Assert.DoesNotContain(spare.Stages, stage => stage.Cylinder == hot.Label);
    }

    private static RecoveryCylinder RecoveryCylinderOf(double kilograms) =>
        RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with { Label = "van", Content = Mass.FromKilograms(kilograms), Refrigerant = kilograms > 0 ? "R-410A" : null };

    /// <summary>With a second one at hand nobody throttles: the first takes what it can, the second the rest, and it is sooner over.</summary>
    [Fact]
    public void A_second_cylinder_takes_over_from_a_hot_one()
    {
        PlannedStage[] pulls = [.. Changed.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery)];
        Assert.Equal(["C1", "C2"], pulls.Select(stage => stage.Cylinder));
        Assert.All(pulls, stage => Assert.False(stage.Step.IsThrottled));
        Assert.Equal(StepReason.UntilLimit, pulls[0].Step.Reason);
        Assert.Equal(StageEnd.CylinderPressure, pulls[0].Result!.End);
        PlannedStage change = Changed.Stages.Single(stage => stage.Kind == StageKind.CylinderChange);
        Assert.Equal(StepReason.CoolerCylinder, change.Step.Reason);
        Assert.Equal("C1", change.CylinderBefore);
        Assert.True(Changed.TotalDuration < 0.75 * Throttled.TotalDuration);
        Assert.True(Changed.Cylinders.All(use => use.ShareOfLimit.DecimalFractions < 0.7));
    }

    /// <summary>Ice before water before a fan: what cools best is used, and only for what it helps.</summary>
    [Fact]
    public void The_coldest_bath_is_taken_and_a_bath_before_a_fan()
    {
        RecoveryJob job = HotRoof.Job(1);
        Assert.Equal(273.15, Around(new SiteAids { HasIce = true, WaterBath = Temperature.FromDegreesCelsius(20), HasCylinderFan = true }));
        Assert.Equal(293.15, Around(new SiteAids { WaterBath = Temperature.FromDegreesCelsius(20), HasCylinderFan = true }));
        Assert.Null(Around(new SiteAids { WaterBath = Temperature.FromDegreesCelsius(55), HasCylinderFan = true }));
        Assert.Equal(1, CylinderCooling.Best(job with { Aids = new SiteAids { WaterBath = Temperature.FromDegreesCelsius(55) } }, default).CylinderFactor);
        Assert.True(Factor(new SiteAids { HasIce = true }) > 10 * Factor(new SiteAids { HasCylinderFan = true }) && Factor(new SiteAids { HasCylinderFan = true }) > 2);

        double? Around(SiteAids aids) => CylinderCooling.Best(job with { Aids = aids }, default).CylinderSurroundings;
        double Factor(SiteAids aids) => CylinderCooling.Best(job with { Aids = aids }, default).CylinderFactor;
    }

    /// <summary>What stands around a cylinder stays there until it comes off.</summary>
    [Fact]
    public void A_bath_stays_until_the_cylinder_comes_off()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Deep(Jobs.Chiller(kilograms: 20, cylinders: 1)) with { Aids = new SiteAids { HasIce = true } });
        int rest = plan.Stages.ToList().FindIndex(stage => stage.Kind == StageKind.Rest);
        Assert.Equal(StepReason.Cool, plan.Stages[rest].Step.Reason);
        Assert.Equal(273.15, plan.Stages[rest].Step.Inputs.CylinderSurroundings);
        Assert.Equal(273.15, plan.Stages[rest + 1].Step.Inputs.CylinderSurroundings);
        Assert.Equal(273.15, CylinderCooling.Of([.. plan.Stages.Take(rest + 2)]).CylinderSurroundings);
        Assert.Equal(default, CylinderCooling.Of([.. plan.Stages.Take(rest)]));
    }

    /// <summary>A machine draws no deeper than re-expansion allows: p(cylinder)/(1 + η0/c)^n. It rests until the cylinder is as cool as the level needs, and no longer.</summary>
    [Fact]
    public void A_cylinder_rests_until_the_machine_can_reach_the_level_against_it()
    {
        RecoveryJob job = Deep(Jobs.Chiller(kilograms: 20, cylinders: 1)) with { Aids = new SiteAids { HasIce = true } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.True(plan.IsLevelReached, plan.ToString());
        int at = plan.Stages.ToList().FindIndex(stage => stage.Kind == StageKind.Rest);
        double level = plan.Requirement.RequiredPressure.Pascals, ratio = Math.Pow(1 + (1 / job.Machine.ClearanceRatio), job.Machine.PolytropicExponent);
        CylinderState before = plan.Stages[at - 1].State.Cylinder!, after = plan.Stages[at].State.Cylinder!;
        Assert.True(before.Pressure.Pascals / ratio > level);
        Assert.InRange(after.Pressure.Pascals / ratio, 0.75 * level, level);
        Assert.True(plan.Stages[at].Duration.Minutes < 10);

        // It is not hot: it is told why it is to be cooled.
        Finding cool = plan.ToDo.Single(finding => finding.Code == "cool-cylinder");
        Assert.Contains("too warm for the machine to pull deep enough", cool.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("gets hot", cool.Message, StringComparison.Ordinal);
        Assert.Contains("gets hot", HotRoof.Plan("ice").ToDo.Single(finding => finding.Code == "cool-cylinder").Message, StringComparison.Ordinal);

        // Without anything that cools it the air is too warm for that, and nobody waits.
        RecoveryPlan warm = RecoveryPlanner.Plan(job with { Aids = new SiteAids() });
        Assert.DoesNotContain(warm.Stages, stage => stage.Kind == StageKind.Rest);
        Assert.Equal(LevelObstacle.DeepestVacuum, warm.Verdict.Obstacle);
        Assert.Contains(warm.ToDo, finding => finding.Code == "level-not-reached");
    }

    /// <summary>An empty cylinder has no pressure to work against: the rest goes into it before the first one stops the machine.</summary>
    [Fact]
    public void An_empty_cylinder_lets_the_machine_pull_deeper()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Deep(Jobs.Chiller(kilograms: 20)));
        Assert.True(plan.IsLevelReached, plan.ToString());
        PlannedStage[] pulls = [.. plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery)];
        Assert.Equal(StepReason.UntilChange, pulls[0].Step.Reason);
        Assert.Equal(StepReason.CoolerCylinder, plan.Stages.Single(stage => stage.Kind == StageKind.CylinderChange).Step.Reason);
        Assert.True(pulls[0].After.Pressure > plan.Requirement.RequiredPressure);

        // The change pays: what the machine still moved against the first cylinder is less than a fifth of its displacement, and the empty one takes the rest in seconds.
        ApplianceState then = pulls[0].After;
        double flow = pulls[0].Result!.Trajectory[^1].Flow.KilogramsPerSecond;
        Assert.InRange(flow / (plan.Job.Machine.Displacement.CubicMetersPerSecond * then.Mass.Kilograms / plan.Job.Appliance.InternalVolume.CubicMeters), 0, 0.21);
        Assert.True(pulls[1].Duration.Minutes < 1);
        Assert.Contains(pulls[0].Hookup.Watches, watch => watch.By == WatchedBy.Clock && watch.Text.Contains("change over", StringComparison.Ordinal));
    }

    /// <summary>A thermal cut-out lets the machine cool for half an hour, twice in a row at most, as long as the pull after it moves a fiftieth of the charge, and the plan says that it was the machine.</summary>
    [Fact]
    public void A_machine_that_is_too_hot_rests_half_an_hour_while_that_pays()
    {
        RecoveryPlan plan = HotRoof.Plan("thermal");
        PlannedStage[] stages = [.. plan.Stages];
        int hot = Array.FindIndex(stages, stage => stage.Result?.End == StageEnd.ThermalCutout);
        PlannedStage[] rests = [.. stages.Skip(hot).Where(stage => stage.Kind == StageKind.Rest)];
        Assert.InRange(rests.Length, 1, 2);
        Assert.All(rests, stage => Assert.Equal(30, stage.Duration.Minutes, 1e-9));
        PlannedStage[] pulls = [.. stages.Where(stage => stage.Kind == StageKind.VaporRecovery)];
        Assert.All(pulls.SkipLast(1), pull => Assert.True(pull.Moved / plan.Ledger.Charge >= 0.02));
        Assert.Equal(LevelObstacle.ThermalCutout, plan.Verdict.Obstacle);
        Assert.All(plan.Stages.Where(stage => stage.Result is not null), stage => Assert.True(!(stage.Result!.HottestDischarge?.DegreesCelsius > 120)));
        Assert.Contains(plan.ToDo, finding => finding.Code == "machine-hot" && finding.Severity >= Severity.Caution);
    }

    /// <summary>Heat on an appliance that crawls is worth what it saves; a heater that would make it too hot is switched down until it does not, not left out.</summary>
    [Fact]
    public void A_heater_is_used_as_far_as_the_appliance_stands_it()
    {
        RecoveryJob cold = Slow();
        RecoveryPlan plain = RecoveryPlanner.Plan(cold), warm = RecoveryPlanner.Plan(cold with { Aids = new SiteAids { Heater = Power.FromWatts(1000) } });
        PlannedStage pull = warm.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(StepReason.Warm, pull.Step.Reason);
        Assert.InRange(pull.Step.Inputs.HeaterPower, 50, 500);
        Assert.Equal(1000 / pull.Step.Inputs.HeaterPower, Math.Pow(2, Math.Round(Math.Log2(1000 / pull.Step.Inputs.HeaterPower))), 1e-9);
        Assert.True(pull.Result!.Trajectory.Max(point => Math.Max(point.ApplianceTemperature.DegreesCelsius, point.MetalTemperature.DegreesCelsius)) < 52.1);
        Assert.Equal((plain.TotalDuration - warm.TotalDuration).Seconds, pull.Step.Saves.Seconds, 0.02 * plain.TotalDuration.Seconds);
        Assert.Contains(warm.ToDo, finding => finding.Code == "warm-appliance");
        Assert.DoesNotContain(plain.ToDo, finding => finding.Code == "warm-appliance");
        Assert.Contains(plain.ToDo, finding => finding.Code == "heat-sets-pace");
    }

    private static RecoveryJob Deep(RecoveryJob job) => job with { Machine = job.Machine with { ClearanceRatio = 0.2 } };

    private static RecoveryJob Slow()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        return job with
        {
            Appliance = job.Appliance with
            {
                InternalVolume = Volume.FromLiters(50),
                LiquidHeel = Mass.Zero,
                LiquidReachable = false,
                MetalMass = Mass.Zero,
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.5),
            },
        };
    }
}
