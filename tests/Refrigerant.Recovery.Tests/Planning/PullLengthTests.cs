using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>How long a pull goes on past the level, and when nobody goes on.</summary>
public class PullLengthTests
{
    private static readonly Dictionary<string, RecoveryJob> All = new()
    {
        ["liquid first, over 200 lb"] = Jobs.Chiller(kilograms: 140, cylinders: 3),
        ["second cylinder"] = Jobs.Chiller(),
        ["vapor alone"] = VaporAlone(Jobs.Chiller(kilograms: 20)),
        ["oil"] = Oily(Jobs.Chiller(kilograms: 20)),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    /// <summary>The pull is as long as the hold needs: it passes the first time, and after a pull shorter by a twentieth and 20 s it would not.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void A_pull_is_as_long_as_its_hold_needs_and_no_longer(string name)
    {
        RecoveryJob job = All[name];
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        double level = plan.Requirement.RequiredPressure.Pascals;
        PlannedStage hold = Assert.Single(plan.Stages, stage => stage.Kind == StageKind.Hold), pull = plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(StepReason.PullDeeper, pull.Step.Reason);
        Assert.InRange(hold.After.Pressure.Pascals, 0.85 * level, level);
        Assert.True(pull.After.Pressure.Pascals < level);

        double seconds = (0.95 * pull.Duration.Seconds) - 20;
        StageResult shorter = VaporRecovery.Simulate(job.Appliance, job.Machine, job.Hoses, pull.State.Cylinder!.Cylinder, new VaporRecoveryOptions
        {
            Start = pull.Result!.Before,
            MaximumDuration = Duration.FromSeconds(seconds),
            CylinderLimit = Mass.FromKilograms(1e6),
        });
        Assert.Equal(StageEnd.TimeLimit, shorter.End);
        Assert.True(Hold.Simulate(job.Appliance, new HoldOptions { Start = shorter.After, Duration = Duration.FromMinutes(10) }).Appliance.Pressure.Pascals > level);
    }

    /// <summary>A longer hold lets more oil give off its refrigerant, so the pull before it is longer.</summary>
    [Fact]
    public void A_longer_hold_asks_for_a_longer_pull()
    {
        double[] pulls = [.. new[] { 2, 10, 30 }.Select(minutes => Pull(All["oil"] with { Times = new JobTimes { Hold = Duration.FromMinutes(minutes) } }).Duration.Minutes)];
        Assert.Equal(pulls.Order(), pulls);
        Assert.True(pulls[2] > pulls[0] + 3);
    }

    /// <summary>A gauge that reads low by 2 kPa ends the pull when the appliance is 2 kPa above what it shows; the level that is asked for is missed by it.</summary>
    [Fact]
    public void A_gauge_that_reads_low_ends_a_pull_early()
    {
        RecoveryJob job = VaporAlone(Jobs.Chiller(kilograms: 20)) with { Times = new JobTimes { Hold = Duration.Zero } };
        double right = Pull(job).After.Pressure.Pascals, low = Pull(job with { GaugeError = 2000 }).After.Pressure.Pascals, high = Pull(job with { GaugeError = -2000 }).After.Pressure.Pascals;
        Assert.Equal(2000.0, low - right, 100.0);
        Assert.Equal(-2000.0, high - right, 100.0);
        Assert.False(RecoveryPlanner.Plan(job with { GaugeError = 2000 }).IsLevelReached);
        Assert.True(RecoveryPlanner.Plan(job with { GaugeError = -2000 }).IsLevelReached);
    }

    /// <summary>Where little heat comes in a person gives up after the time that the job allows for a machine that moves next to nothing: neither sooner nor later.</summary>
    [Fact]
    public void Nobody_waits_much_longer_than_patience_for_a_pull_that_crawls()
    {
        RecoveryJob job = Insulated();
        RecoveryPlan thirty = RecoveryPlanner.Plan(job with { Times = new JobTimes { Patience = Duration.FromMinutes(30) } });
        PlannedStage pull = thirty.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(StepReason.GiveUp, pull.Step.Reason);
        Assert.Equal(LevelOutcome.ReachedOverLiquid, thirty.Verdict.Outcome);
        Assert.Equal(LevelObstacle.Heat, thirty.Verdict.Obstacle);
        Assert.DoesNotContain(thirty.Stages, stage => stage.Kind == StageKind.Hold);

        // 2 % of the pace at the start, or of the charge in that time: what counts as crawling.
        double density = job.Appliance.Fluid.SaturationAt(job.Appliance.Temperature).Dew.Density.KilogramsPerCubicMeter;
        double crawl = 0.02 * Math.Min(job.Machine.Displacement.CubicMetersPerSecond * density, 20.0 / 1800);
        double since = pull.Result!.Trajectory.Reverse().TakeWhile(point => point.Flow.KilogramsPerSecond < crawl).Last().Time.Seconds;
        Assert.Equal(1800, pull.Duration.Seconds - since, 10.0);
        Assert.True(thirty.TotalDuration < RecoveryPlanner.Plan(job with { Times = new JobTimes { Patience = Duration.FromMinutes(60) } }).TotalDuration);
    }

    /// <summary>Where the rule asks for a share of the charge instead (40 CFR 82.156(b): 90 %), the pull ends when it is out, no liquid is left and nothing blows out any more, without a hold.</summary>
    [Fact]
    public void A_share_of_the_charge_ends_a_pull_at_the_pressure_of_the_air()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Small());
        PlannedStage pull = plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        TrajectoryPoint done = pull.Result!.Trajectory.First(point => point.ApplianceMass.Kilograms <= 0.015 && point.LiquidMass <= Mass.Zero && point.AppliancePressure.Pascals <= 101_325);
        Assert.Equal(done.Time.Seconds, pull.Duration.Seconds, 1 + (0.02 * pull.Duration.Seconds));
        Assert.Equal(LevelOutcome.ShareRecovered, plan.Verdict.Outcome);
        Assert.Equal(1 - ((plan.End.Mass + plan.Ledger.InHosesAndMachine + plan.Ledger.Released).Kilograms / 0.15), plan.Verdict.Recovered.DecimalFractions, 1e-9);

        // A compressor that does not run: 80 % is enough, and the pull is shorter.
        RecoveryPlan eighty = RecoveryPlanner.Plan(Small() with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small, CompressorRuns = false } });
        Assert.Equal(0.8, eighty.Requirement.RequiredRecovery!.Value.DecimalFractions, 1e-9);
        Assert.InRange(eighty.Verdict.Recovered.DecimalFractions, 0.8, 1);
        Assert.True(eighty.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery).Duration <= pull.Duration);
    }


    /// <summary>It is what comes into the cylinder that counts, not what leaves the appliance; and what comes back warm is said.</summary>
    [Theory]
    [InlineData("R-22", 0.9, 3, 45)]
    [InlineData("R-410A", 1.1, 4, 32)]
    [InlineData("R-290", 0.14, 0.6, 25)]
    public void A_share_is_what_is_in_the_cylinder(string fluid, double kilograms, double liters, double celsius)
    {
        RecoveryJob job = Small();
        foreach (double oil in new[] { 0, 0.35 * kilograms })
        {
            RecoveryPlan plan = RecoveryPlanner.Plan(job with
            {
                Appliance = job.Appliance with
                {
                    Fluid = Fluid.Get(fluid),
                    Charge = Mass.FromKilograms(kilograms),
                    InternalVolume = Volume.FromLiters(liters),
                    Temperature = Temperature.FromDegreesCelsius(celsius),
                    Oil = oil > 0 ? new ApplianceOil { Mass = Mass.FromKilograms(oil), Kind = OilKind.Mineral } : null,
                },
                Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3), clearanceRatio: 0.15, listedForFlammable: true),
            });
            if (plan.Verdict.Outcome == LevelOutcome.ShareRecovered)
            {
                Assert.True(plan.Ledger.InCylinders.Kilograms >= 0.9 * kilograms, plan.Ledger.ToString());
                Assert.True(plan.Verdict.Recovered.DecimalFractions >= 0.9, plan.ToString());
                StageResult later = Hold.Simulate(plan.Job.Appliance, new HoldOptions { Start = plan.Stages[^1].State, Duration = Duration.FromHours(3) });
                Assert.Equal(later.Appliance.Pressure.Pascals > 101_325 + 10_000, plan.ToString().Contains("but comes back to", StringComparison.Ordinal));
            }
        }
    }

    /// <summary>
    /// Before oil is drained 5 psig are asked for: nobody pulls more than a twentieth of that pressure below it, let alone into a vacuum, where that does not end in less than seven tenths of the time, five minutes sooner (our choices).
    /// </summary>
    [Fact]
    public void What_is_asked_for_above_the_air_is_not_pulled_further_than_a_twentieth()
    {
        RecoveryJob job = VaporAlone(Jobs.Chiller("R-22", 20, cylinders: 1)) with { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        double level = 101_325 + (5 * 6894.757);
        Assert.Equal(level, plan.Requirement.RequiredPressure.Pascals, 1);
        Assert.True(plan.IsLevelReached, plan.ToString());
        PlannedStage[] pulls = [.. plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery)];
        Assert.Equal(0.95 * level, pulls[^1].Step.LowestPressure!.Value.Pascals, 1);
        Assert.True(plan.Course().Min(point => point.Point.AppliancePressure.Pascals) > 0.94 * level);
        Assert.Null(Pull(VaporAlone(Jobs.Chiller(kilograms: 20))).Step.LowestPressure);
    }

    private static PlannedStage Pull(RecoveryJob job) => RecoveryPlanner.Plan(job).Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);

    private static RecoveryJob VaporAlone(RecoveryJob job) => job with { PushPull = PushPullUse.Never, Machine = job.Machine with { TakesLiquid = false } };

    private static RecoveryJob Oily(RecoveryJob job) => job with
    {
        PushPull = PushPullUse.Never,
        Appliance = job.Appliance with { LiquidReachable = false, Oil = new ApplianceOil { Mass = Mass.FromKilograms(10), Kind = OilKind.PolyolEster } },
    };

    private static RecoveryJob Insulated()
    {
        RecoveryJob job = VaporAlone(Jobs.Chiller(kilograms: 20));
        return job with
        {
            Appliance = job.Appliance with
            {
                InternalVolume = Volume.FromLiters(50),
                LiquidHeel = Mass.Zero,
                LiquidReachable = false,
                MetalMass = Mass.Zero,
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(3),
            },
        };
    }

    private static RecoveryJob Small() => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(0.15),
            InternalVolume = Volume.FromLiters(1),
            Temperature = Temperature.FromDegreesCelsius(22),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3)),
        Hoses = Jobs.Hoses(5, 4.7),
        Cylinders = [Jobs.Cylinder(30, "C1")],
        Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
    };
}
