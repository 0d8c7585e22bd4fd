using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Soak;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Strategies of a caller's own, cancelling, progress, jobs that cannot be, and the machine's past.</summary>
public class StrategyTests
{
    /// <summary>A strategy that stops at the gauge, over liquid as it may be: the verdict does not follow it.</summary>
    [Fact]
    public void The_verdict_is_not_the_strategys()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        job = job with { Appliance = job.Appliance with { HeatResistance = Appliance.PerfectInsulation, MetalMass = Mass.Zero, LiquidReachable = false, LiquidHeel = Mass.Zero } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job, new GaugeOnly());
        Assert.Equal(LevelOutcome.ReachedOverLiquid, plan.Verdict.Outcome);
        Assert.False(plan.IsLevelReached);
        Assert.True(plan.Verdict.Liquid.Kilograms > 0);
        Assert.Contains(plan.ToDo, finding => finding.Code == "level-over-liquid");
        Assert.Empty(PlanInvariants.Broken(plan));
    }

    /// <summary>Hoses and machine hold refrigerant whether somebody takes them off or not.</summary>
    [Fact]
    public void A_strategy_that_does_not_close_leaves_refrigerant_in_hoses_and_machine()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        RecoveryPlan closed = RecoveryPlanner.Plan(job, new GaugeOnly());
        RecoveryPlan open = RecoveryPlanner.Plan(job, new GaugeOnly { Closes = false });
        Assert.True(open.Ledger.InHosesAndMachine.Kilograms > 0);
        Assert.Equal(closed.Ledger.InHosesAndMachine.Kilograms, open.Ledger.InHosesAndMachine.Kilograms, 2e-2 * closed.Ledger.InHosesAndMachine.Kilograms);
        Assert.Empty(PlanInvariants.Broken(open));
    }

    /// <summary>A closed cylinder ends the job, whatever the strategy goes on to say.</summary>
    [Fact]
    public void A_job_is_closed_once()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20), new Closer());
        Assert.Equal([StageKind.SetUp, StageKind.Close], plan.Stages.Select(stage => stage.Kind));
    }

    [Fact]
    public void A_strategy_that_never_ends_is_stopped()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20), new Endless());
        Assert.False(plan.IsLevelReached);
        Assert.True(plan.Stages.Count > 100);
    }

    [Fact]
    public void A_strategy_that_names_a_cylinder_from_elsewhere_is_told()
    {
        Assert.Throws<InvalidOperationException>(() => RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20), new Foreign()));
        Assert.Throws<ArgumentNullException>(() => RecoveryPlanner.Plan(Jobs.Chiller(), null!));
    }

    [Fact]
    public void A_plan_can_be_cancelled_and_its_progress_rises()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => RecoveryPlanner.Plan(Jobs.Chiller(), StandardStrategy.Instance, source.Token));

        var seen = new Recorder();
        RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3), StandardStrategy.Instance, CancellationToken.None, seen);
        Assert.Equal(seen.Values.Order(), seen.Values);
        Assert.Equal(1, seen.Values[^1]);
        Assert.True(seen.Values.Count > 2);
    }

    [Fact]
    public void What_a_callback_throws_comes_through_as_it_is()
    {
        var thrower = new Recorder { Throws = true };
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        Assert.Throws<TimeoutException>(() => RecoveryPlanner.Plan(job, StandardStrategy.Instance, CancellationToken.None, thrower));
        Assert.Throws<TimeoutException>(() => PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 16 }, progress: thrower));
        Assert.Throws<TimeoutException>(() => SetupComparison.Run(job, [new Setup("same", job)], CancellationToken.None, thrower));
        Assert.Throws<TimeoutException>(() => PlanChoice.Find(job, new Van(), PlanObjective.TimeOnSite, CancellationToken.None, thrower));
    }

    [Fact]
    public void A_job_that_cannot_be_is_told_apart_from_a_range()
    {
        RecoveryJob job = Jobs.Chiller();
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { LiquidHeel = Mass.FromKilograms(61) } }));
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { InternalVolume = Volume.FromLiters(10) } }));
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { DesignGaugePressure = Pressure.FromPoundsForcePerSquareInch(15) } }));
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job with { Cylinders = [Jobs.Cylinder(30) with { Content = Mass.FromKilograms(60) }] }));
        Assert.Throws<PropertyRangeException>(() => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { Temperature = Temperature.FromKelvins(60) } }));
        ArgumentException twice = Assert.Throws<ArgumentException>(() => job with { Cylinders = [Jobs.Cylinder(30, "C1"), Jobs.Cylinder(60, "C1")] });
        Assert.Contains("C1", twice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_cylinder_on_hand_is_not_full_cylinders()
    {
        RecoveryPlan none = RecoveryPlanner.Plan(Jobs.Chiller(cylinders: 0));
        Assert.Equal(LevelObstacle.NoCylinder, none.Verdict.Obstacle);
        Assert.Contains(none.ToDo, finding => finding.Code == "no-cylinder");
        RecoveryPlan full = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 150, cylinders: 1));
        Assert.Equal(LevelObstacle.CylindersFull, full.Verdict.Obstacle);
        Assert.Contains(full.ToDo, finding => finding.Code == "cylinder-room-missing");
    }

    /// <summary>49 CFR 180.205: a cylinder past its requalification is not to be filled; a strategy that connects it is stopped.</summary>
    [Fact]
    public void A_strategy_cannot_connect_a_cylinder_that_must_not_be_filled()
    {
        RecoveryJob job = Jobs.Chiller(cylinders: 1);
        RecoveryCylinder due = job.Cylinders[0] with { RequalificationDue = new DateTime(2001, 1, 1) };
        job = job with { Cylinders = [due], Day = new DateTime(2026, 1, 1) };
        InvalidOperationException unfit = Assert.Throws<InvalidOperationException>(() => RecoveryPlanner.Plan(job, new Always(due)));
        Assert.Contains(due.Label, unfit.Message, StringComparison.Ordinal);
        Assert.Contains("must not be filled", unfit.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strategy_that_asks_for_nothing_leaves_no_full_cylinders()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(), new Always(null));
        Assert.Equal(LevelObstacle.StoppedByStrategy, plan.Verdict.Obstacle);
        Assert.DoesNotContain(plan.ToDo, finding => finding.Code == "cylinder-room-missing");
    }

    /// <summary>Carbon dioxide has no liquid below its triple point, 517.95 kPa (Span and Wagner 1996, J. Phys. Chem. Ref. Data 25, 1509): throttled above it, a small system is emptied.</summary>
    [Fact]
    public void Carbon_dioxide_is_kept_above_dry_ice_while_it_is_liquid()
    {
        RecoveryJob job = Jobs.Chiller("R-744", 1.5, 2) with
        {
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3), highPressureCutout: Pressure.FromBars(90)),
            Cylinders = [RecoveryCylinder.FromMark("3AA1800", Mass.FromKilograms(40), Mass.FromKilograms(45))],
        };
        job = job with
        {
            Appliance = job.Appliance with
            {
                Temperature = Temperature.FromDegreesCelsius(10),
                Surroundings = Temperature.FromDegreesCelsius(22),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.2),
                MetalMass = Mass.FromKilograms(5),
                LiquidReachable = false,
                Water = null,
            },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.True(plan.IsLevelReached, plan.ToString());
        PlannedStage slow = Assert.Single(plan.Stages, stage => stage.Step.Reason == StepReason.KeepLiquid);
        Assert.All(slow.Result!.Trajectory, point => Assert.True(point.AppliancePascals > 517_950));

        // A twentieth above the triple point (our choice).
        Assert.Equal(1.05 * 517_950, slow.Step.LowestPressure!.Value.Pascals, 300.0);
        Assert.False(slow.After.HasLiquid);
        Assert.Contains(plan.ToDo, finding => finding.Code == "keep-liquid");
        Assert.Contains(slow.Hookup.Watches, watch => watch.Text.Contains("throttle the inlet", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_machines_side_by_side_are_offered_and_end_sooner()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 30) with { PushPull = PushPullUse.Never };
        PlanChoice choice = PlanChoice.Find(job, new Van { Machines = [job.Machine] });
        SetupOutcome pair = Assert.Single(choice.Outcomes, outcome => outcome.Name.Contains("two machines side by side", StringComparison.Ordinal));
        Assert.True(pair.Saved.Seconds > 0, pair.ToString());
        Assert.Equal(2 * job.Machine.Displacement.CubicMetersPerSecond, pair.Plan.Job.Machine.Displacement.CubicMetersPerSecond, 1e-12);
        Assert.Equal(job.Machine.DeepestVacuum(Pressure.FromBars(8)).Pascals, pair.Plan.Job.Machine.DeepestVacuum(Pressure.FromBars(8)).Pascals, 1e-9);
    }

    /// <summary>R-22 in mineral oil before R-134a: cleared into its own cylinder, oil changed, and what stays is told.</summary>
    [Fact]
    public void A_machine_with_a_past_is_cleared_and_gets_new_oil_first()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with
        {
            MachinePast = new MachinePast
            {
                Refrigerant = Fluid.Get("R-22"),
                IsCleared = false,
                Oil = OilKind.Mineral,
                CompressorOil = Volume.FromMilliliters(150),
                SeparatorOil = Volume.FromMilliliters(60),
            },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Equal([StageKind.MachineClearing, StageKind.OilDrain, StageKind.OilFill, StageKind.SetUp], plan.Stages.Take(4).Select(stage => stage.Kind));
        Finding oil = Assert.Single(plan.ToDo, finding => finding.Code == "change-machine-oil");
        Assert.Contains("fl oz", oil.ToText(DisplayUnits.UnitedStatesCustomary), StringComparison.Ordinal);
        Assert.Contains("150 mL", oil.ToText(DisplayUnits.International), StringComparison.Ordinal);
        Assert.Contains("12.5 psig", oil.Message, StringComparison.Ordinal);
        Assert.Contains("86.2 kPa gauge", oil.ToText(DisplayUnits.International), StringComparison.Ordinal);
        Assert.NotNull(plan.CarriedOver);
        Assert.Equal(plan.CarriedOver!.Trapped.BestKilograms, plan.Ledger.ForeignCarriedOver.Kilograms, 1e-12);
        Assert.Equal(0, plan.Ledger.Unexplained.Kilograms, 1e-9);

        RecoveryPlan same = RecoveryPlanner.Plan(job with { MachinePast = new MachinePast { Refrigerant = Fluid.Get("R-134a"), Oil = OilKind.PolyolEster } });
        Assert.DoesNotContain(same.Stages, stage => stage.Kind is StageKind.OilDrain or StageKind.OilFill);
        Assert.Null(same.CarriedOver);
        RecoveryPlan oilless = RecoveryPlanner.Plan(job with { Machine = job.Machine with { IsOilless = true } });
        Assert.DoesNotContain(oilless.Stages, stage => stage.Kind is StageKind.OilDrain or StageKind.OilFill);
    }

    [Fact]
    public void The_van_offers_what_is_worth_it()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 30) with { PushPull = PushPullUse.Never, Hoses = Jobs.Hoses(20, 4.7) };
        var van = new Van { Hoses = [Jobs.Hoses(5, 10.5)], Machines = [RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(2))] };
        PlanChoice choice = PlanChoice.Find(job, van);
        Assert.Equal(4, choice.Outcomes.Count);
        Assert.Contains("hoses 1 of the van, machine 1 of the van", choice.Best.Name, StringComparison.Ordinal);
        Assert.True(choice.Best.Saved.Seconds > 0);
        foreach (PlanObjective objective in new[] { PlanObjective.PeopleHours, PlanObjective.KilogramsLeft })
        {
            PlanChoice other = PlanChoice.Find(job, van, objective);
            Func<RecoveryPlan, double> cost = objective == PlanObjective.PeopleHours
                ? plan => PlanChoice.PeopleTime(plan).Seconds
                : plan => plan.Ledger.Charge.Kilograms - plan.Ledger.InCylinders.Kilograms;
            Assert.Equal(other.Outcomes.Where(outcome => outcome.Plan.IsLevelReached).Min(outcome => cost(outcome.Plan)), cost(other.Best.Plan));
        }
    }

    [Fact]
    public void What_the_machine_does_alone_takes_people_a_tenth_of_its_time()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());
        double alone = plan.Stages
            .Where(stage => stage.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery or StageKind.Hold or StageKind.Rest or StageKind.Warm or StageKind.MachineClearing)
            .Sum(stage => stage.Duration.Seconds);
        Assert.InRange(alone, 60, 0.9 * plan.TotalDuration.Seconds);
        Assert.Equal(plan.TotalDuration.Seconds - (0.9 * alone), PlanChoice.PeopleTime(plan).Seconds, 1e-6);
    }

    [Theory]
    [InlineData(59, false)]
    [InlineData(60, true)]
    public void Oil_that_has_run_its_time_is_changed(double hours, bool isChanged)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller() with
        {
            MachinePast = new MachinePast
            {
                Refrigerant = Fluid.Get("R-134a"),
                Oil = OilKind.PolyolEster,
                CompressorOil = Volume.FromMilliliters(250),
                RunningSinceOilChange = Duration.FromHours(hours),
                OilChangeInterval = Duration.FromHours(60),
            },
        });
        Assert.Equal(isChanged, plan.Stages.Any(stage => stage.Kind == StageKind.OilDrain));
    }

    private sealed class GaugeOnly : IRecoveryStrategy
    {
        public bool Closes { get; init; } = true;

        public PlanStep? Next(PlanSituation now) => now.Stages.Count switch
        {
            0 => new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder },
            1 => new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal },
            2 when Closes => new PlanStep(StageKind.Close),
            _ => null,
        };
    }

    private sealed class Closer : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) =>
            now.Stages.Count == 0 ? new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder } : new PlanStep(StageKind.Close);
    }

    private sealed class Endless : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => now.Connected is null
            ? new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder }
            : new PlanStep(StageKind.Rest) { Duration = Duration.FromMinutes(1) };
    }

    private sealed class Always(RecoveryCylinder? cylinder) : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => cylinder is null ? null : new PlanStep(StageKind.SetUp) { Cylinder = cylinder };
    }

    private sealed class Foreign : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => new PlanStep(StageKind.SetUp) { Cylinder = Jobs.Cylinder(30, "from elsewhere") };
    }

    private sealed class Recorder : IProgress<double>
    {
        public bool Throws { get; init; }

        public List<double> Values { get; } = [];

        public void Report(double value)
        {
            if (Throws)
            {
                throw new TimeoutException("enough");
            }

            Values.Add(value);
        }
    }
}
