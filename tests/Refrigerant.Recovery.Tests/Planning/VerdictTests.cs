using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Whether the level is reached, and what was in the way where it is not.</summary>
public class VerdictTests
{
    private static readonly Dictionary<LevelObstacle, Lazy<RecoveryPlan>> Stopped = new()
    {
        [LevelObstacle.NoCylinder] = Of(Jobs.Chiller(cylinders: 0)),
        [LevelObstacle.NoFitCylinder] = Of(Jobs.Chiller() with { Cylinders = [Jobs.Cylinder(123) with { Specification = CylinderSpecification.FromMark("DOT 39 400") }] }),
        [LevelObstacle.CylindersFull] = Of(Jobs.Chiller(kilograms: 150, cylinders: 1)),
        [LevelObstacle.DeepestVacuum] = Of(Machine(machine => machine with { ClearanceRatio = 0.4 })),
        [LevelObstacle.LowPressureSwitch] = Of(Machine(machine => machine with { LowPressureSwitch = Pressure.FromKilopascals(150) })),
        [LevelObstacle.Heat] = Of(Insulated()),
        [LevelObstacle.ApplianceAboveCutout] = Of(Machine(machine => machine with { HighPressureCutout = Pressure.FromKilopascals(500) })),
        [LevelObstacle.Oil] = Of(SlowOil()),
    };

    public static TheoryData<LevelObstacle> Obstacles => [.. Stopped.Keys];

    [Theory]
    [MemberData(nameof(Obstacles))]
    public void What_is_in_the_way_is_named(LevelObstacle obstacle)
    {
        RecoveryPlan plan = Stopped[obstacle].Value;
        Assert.Equal(obstacle, plan.Verdict.Obstacle);
        Assert.False(plan.IsLevelReached);
        Assert.False(plan.Verdict.IsReached);
        Assert.Contains(plan.ToDo, finding => finding.Severity == Severity.Stop);
        Assert.Contains(LevelVerdict.Why(obstacle), plan.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Equal(plan.End.Pressure, plan.Verdict.Pressure);
        Assert.Equal(plan.End.LiquidMass, plan.Verdict.Liquid);
        Assert.Equal(1 - ((plan.End.Mass + plan.Ledger.InHosesAndMachine + plan.Ledger.Released) / plan.Job.Appliance.Charge), plan.Verdict.Recovered.DecimalFractions, 1e-9);
    }

    /// <summary>No two obstacles read alike.</summary>
    [Fact]
    public void Each_obstacle_has_words_of_its_own()
    {
        string[] words = [.. Enum.GetValues<LevelObstacle>().Select(LevelVerdict.Why)];
        Assert.Equal(words.Length, words.Distinct().Count());
    }

    /// <summary>Nothing is done where nothing may be: no stage, all of the charge in place.</summary>
    [Theory]
    [InlineData(LevelObstacle.NoCylinder)]
    [InlineData(LevelObstacle.NoFitCylinder)]
    [InlineData(LevelObstacle.ApplianceAboveCutout)]
    public void What_may_not_begin_does_not_begin(LevelObstacle obstacle)
    {
        RecoveryPlan plan = Stopped[obstacle].Value;
        Assert.Empty(plan.Stages);
        Assert.Equal(Duration.Zero, plan.TotalDuration);
        Assert.Equal(plan.Job.Appliance.Charge.Kilograms, plan.Ledger.InAppliance.Kilograms, 1e-9);
        Assert.Equal(LevelOutcome.NotReached, plan.Verdict.Outcome);
    }

    /// <summary>The deepest vacuum against a cylinder: p/(1 + η0/c)^n. A level above it is reached, one below it is not.</summary>
    [Fact]
    public void A_machine_reaches_what_its_clearance_allows()
    {
        RecoveryPlan plan = Stopped[LevelObstacle.DeepestVacuum].Value;
        double deepest = plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery).State.Cylinder!.Pressure.Pascals
            / Math.Pow(1 + (1 / plan.Job.Machine.ClearanceRatio), plan.Job.Machine.PolytropicExponent);
        Assert.InRange(plan.End.Pressure.Pascals, 0.999 * deepest, 1.1 * deepest);
        RecoveryPlan higher = RecoveryPlanner.Plan(plan.Job with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(1.15 * plan.End.Pressure.Pascals) } });
        Assert.True(higher.IsLevelReached, higher.ToString());
    }

    /// <summary>A switch stops the machine at its own suction pressure, not the appliance's, which stands above it by what the hose takes.</summary>
    [Fact]
    public void A_low_pressure_switch_stops_it_where_it_is_set()
    {
        RecoveryPlan plan = Stopped[LevelObstacle.LowPressureSwitch].Value;
        StageResult pull = plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery).Result!;
        Assert.Equal(StageEnd.LowPressureSwitch, pull.End);
        Assert.Equal(150, pull.Trajectory[^1].SuctionPressure.Kilopascals, 1);
        Assert.True(plan.End.Pressure.Kilopascals >= 150);
    }

    /// <summary>A level that is reached at the gauge but comes back in the hold is not reached.</summary>
    [Fact]
    public void A_level_that_comes_back_is_not_held()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        job = job with { Appliance = job.Appliance with { LiquidReachable = false, Oil = new ApplianceOil { Mass = Mass.FromKilograms(10), Kind = OilKind.PolyolEster } } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job, new PullsOnce());
        Assert.Equal(LevelOutcome.ReachedNotHeld, plan.Verdict.Outcome);
        Assert.False(plan.IsLevelReached);
        Assert.Equal(Duration.Zero, plan.Verdict.HeldFor);
        Assert.True(plan.End.Pressure > plan.Requirement.RequiredPressure);
        Assert.Contains(plan.ToDo, finding => finding.Code == "level-not-held" && finding.Severity == Severity.Stop);

        RecoveryPlan longer = RecoveryPlanner.Plan(job);
        Assert.Equal(LevelOutcome.ReachedAndHeld, longer.Verdict.Outcome);
        Assert.Equal(10, longer.Verdict.HeldFor.Minutes, 1e-9);
        Assert.Equal(LevelObstacle.None, longer.Verdict.Obstacle);
    }

    /// <summary>A hold that is cut short is no hold.</summary>
    [Fact]
    public void Half_a_hold_does_not_count()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never }, new PullsOnce { Share = 0.6, Hold = Duration.FromMinutes(5) });
        Assert.NotEqual(LevelOutcome.ReachedAndHeld, plan.Verdict.Outcome);
        Assert.False(plan.IsLevelReached);
        Assert.Equal(5, plan.Verdict.HeldFor.Minutes, 1e-9);
    }

    /// <summary>High up the law's absolute level lies above the air: it is pulled down to the air at the place, and the gauge that is told shows zero there.</summary>
    [Fact]
    public void High_up_the_gauge_is_told_as_it_reads_there()
    {
        RecoveryJob job = Jobs.Chiller("R-22", 20) with { Barometer = Barometer.AtElevation(Length.FromMeters(2000)) };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Finding altitude = Assert.Single(plan.ToDo, finding => finding.Code == "gauge-at-altitude");
        Assert.Equal(0, altitude.Values.First(value => value.Name == "reading here").InternationalValue!.Value, 1);
        Assert.DoesNotContain(RecoveryPlanner.Plan(job with { Barometer = Barometer.AtElevation(Length.FromMeters(100)) }).ToDo, finding => finding.Code == "gauge-at-altitude");
        Assert.Contains(RecoveryPlanner.Plan(job with { Barometer = Barometer.AtElevation(Length.FromMeters(250)) }).ToDo, finding => finding.Code == "gauge-at-altitude");
    }

    /// <summary>A section behind a restriction that the gauge does not see is told with what it holds; one that has come down with the others is not.</summary>
    [Theory]
    [InlineData(0.05, true)]
    [InlineData(5, false)]
    public void A_section_that_stays_behind_is_told(double flowCoefficient, bool stays)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        Appliance whole = job.Appliance with { LiquidReachable = false };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            Machine = job.Machine with { TakesLiquid = false },
            Appliance = whole with
            {
                Sections =
                [
                    new ApplianceSection { Name = "suction", InternalVolume = whole.InternalVolume * 0.5, Charge = whole.Charge * 0.04 },
                    new ApplianceSection { Name = "receiver", InternalVolume = whole.InternalVolume * 0.5, Charge = whole.Charge * 0.96 },
                ],
                Connections = [new SectionConnection { From = "suction", To = "receiver", FlowCoefficient = flowCoefficient, IsCheckValve = stays }],
                VaporPort = "suction",
            },
        });
        Assert.Equal(!stays, plan.IsLevelReached);
        Finding[] hidden = [.. plan.Findings.Where(finding => finding.Code == "hidden-section")];
        Assert.Equal(stays, hidden.Length > 0);
        if (stays)
        {
            Assert.Equal(plan.End.Sections[1].Mass.Kilograms, hidden[0].Values.First(value => value.Name == "mass").InternationalValue!.Value, 1e-6);
            Assert.Contains("receiver", hidden[0].Message, StringComparison.Ordinal);
        }
    }

    private static Lazy<RecoveryPlan> Of(RecoveryJob job) => new(() => RecoveryPlanner.Plan(job));

    private static RecoveryJob Machine(Func<RecoveryMachine, RecoveryMachine> change)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20, cylinders: 1) with { PushPull = PushPullUse.Never };
        return job with { Machine = change(job.Machine) };
    }

    private static RecoveryJob Insulated()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        return job with { Appliance = job.Appliance with { LiquidReachable = false, LiquidHeel = Mass.Zero, MetalMass = Mass.Zero, HeatResistance = Appliance.PerfectInsulation } };
    }

    /// <summary>Much oil, a deep level, and little patience.</summary>
    private static RecoveryJob SlowOil()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with
        {
            PushPull = PushPullUse.Never,
            Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(10) },
            Times = new JobTimes { Patience = Duration.FromMinutes(5) },
        };
        return job with { Appliance = job.Appliance with { LiquidReachable = false, Oil = new ApplianceOil { Mass = Mass.FromKilograms(10), Kind = OilKind.PolyolEster } } };
    }

    /// <summary>Pulls to the gauge, or to a share of the level, holds, and leaves it at that.</summary>
    private sealed class PullsOnce : IRecoveryStrategy
    {
        public double Share { get; init; } = 1;

        public Duration? Hold { get; init; }

        public PlanStep? Next(PlanSituation now) => now.Stages.Count switch
        {
            0 => new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder },
            1 => new PlanStep(StageKind.VaporRecovery) { AppliancePressure = Pressure.FromPascals(Share * now.Goal.Pascals) },
            2 => new PlanStep(StageKind.Hold) { Duration = Hold },
            _ => null,
        };
    }
}
