using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>The verdict on courses that are set down by hand: whether the level is reached, and what was in the way.</summary>
public class VerdictsOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    /// <summary>At the level or a ten-millionth above it, with all of the hold, and no liquid: nothing else is done.</summary>
    [Theory]
    [InlineData(1, 600, LevelOutcome.ReachedAndHeld)]
    [InlineData(1.0000001, 600, LevelOutcome.ReachedAndHeld)]
    [InlineData(1.00001, 600, LevelOutcome.NotReached)]
    [InlineData(1, 599.9, LevelOutcome.ReachedNotHeld)]
    [InlineData(1, 900, LevelOutcome.ReachedAndHeld)]
    public void The_level_is_to_be_held_for_the_time_of_the_job(double share, double seconds, LevelOutcome outcome)
    {
        CourseStage pull = Pull() with { After = Stands(Plain, share * Goal) };
        LevelVerdict verdict = Verdict(Plain, SetUp, pull, Hold(seconds), Close);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Equal(share < 1.000001 ? seconds : 0, verdict.HeldFor.Seconds, 1e-9);
        Assert.Equal(outcome == LevelOutcome.ReachedAndHeld, verdict.IsReached);
        Assert.Equal(verdict.IsReached, verdict.Obstacle == LevelObstacle.None);
    }

    /// <summary>A hold counts where it is the last that the refrigerant went through, and where it ended at the level without liquid.</summary>
    [Fact]
    public void A_hold_counts_after_the_last_pull_only()
    {
        CourseStage pull = Pull() with { After = Stands(Plain, 0.9 * Goal) }, rest = new(StageKind.Rest);
        Assert.Equal(600, Verdict(Plain, SetUp, pull, Hold(), rest, Close).HeldFor.Seconds);
        Assert.Equal(0, Verdict(Plain, SetUp, pull, Hold(), pull).HeldFor.Seconds);
        Assert.Equal(0, Verdict(Plain, SetUp, pull, Hold(), new CourseStage(StageKind.PushPull)).HeldFor.Seconds);
        Assert.Equal(0, Verdict(Plain, SetUp, pull, Hold(), new CourseStage(StageKind.LiquidRecovery)).HeldFor.Seconds);
        CourseStage back = Hold() with { After = Stands(Plain, 1.1 * Goal) };
        LevelVerdict came = Verdict(Plain, SetUp, pull, back);
        Assert.Equal((LevelOutcome.ReachedNotHeld, 0.0), (came.Outcome, came.HeldFor.Seconds));
        CourseStage wet = Hold() with { After = Holds(Plain, 1, 240) };
        LevelVerdict liquid = Verdict(Plain, SetUp, pull, wet);
        Assert.Equal((LevelOutcome.ReachedOverLiquid, 0.0), (liquid.Outcome, liquid.HeldFor.Seconds));
    }

    /// <summary>Liquid at the level, and liquid that warmed above a level that was reached once, are left over liquid; a level that was never there is not reached.</summary>
    [Fact]
    public void Liquid_is_told_from_vapor_that_came_back()
    {
        CourseStage cold = Pull() with { After = Holds(Plain, 1, 240) }, warm = new CourseStage(StageKind.Rest) { After = Holds(Plain, 1, 270) };
        Assert.Equal(LevelOutcome.ReachedOverLiquid, Verdict(Plain, SetUp, cold).Outcome);
        LevelVerdict came = Verdict(Plain, SetUp, cold, warm);
        Assert.Equal(LevelOutcome.ReachedOverLiquid, came.Outcome);
        Assert.Equal(Plain.Appliance.Fluid.Model.SaturationAtTemperature(270).Bubble.Pressure, came.Pressure.Pascals, 1.0);
        Assert.InRange(came.Liquid.Kilograms, 0.5, 1);
        PlanRun run = Run(Plain, SetUp, cold with { Received = 0.9 }, warm, Close);
        Assert.True(run.InHosesAndMachine > 0 && run.Released > 0);
        Assert.Equal((0.9 - run.InHosesAndMachine - run.Released) / 2, Verdicts.For(run).Recovered.DecimalFractions, 1e-9);
        Assert.Equal(LevelOutcome.NotReached, Verdict(Plain, SetUp, Pull() with { After = Holds(Plain, 1, 270) }).Outcome);

        // What stands at the level in a stage that is no pull was not pulled there.
        Assert.Equal(LevelOutcome.NotReached, Verdict(Plain, SetUp, new CourseStage(StageKind.Rest) { After = Holds(Plain, 1, 240) }, warm).Outcome);
        Assert.Equal(LevelOutcome.NotReached, Verdict(Plain).Outcome);
    }

    /// <summary>What ended the last pull is what was in the way.</summary>
    [Theory]
    [InlineData(StageEnd.CylinderFull, LevelObstacle.CylindersFull)]
    [InlineData(StageEnd.HighPressureCutout, LevelObstacle.HighPressureCutout)]
    [InlineData(StageEnd.CylinderPressure, LevelObstacle.CylinderPressure)]
    [InlineData(StageEnd.ThermalCutout, LevelObstacle.ThermalCutout)]
    [InlineData(StageEnd.LowPressureSwitch, LevelObstacle.LowPressureSwitch)]
    [InlineData(StageEnd.PropertyRange, LevelObstacle.PropertyRange)]
    [InlineData(StageEnd.StepLimit, LevelObstacle.NotComputed)]
    [InlineData(StageEnd.Stalled, LevelObstacle.DeepestVacuum)]
    [InlineData(StageEnd.TimeLimit, LevelObstacle.StoppedByStrategy)]
    [InlineData(StageEnd.TargetReached, LevelObstacle.StoppedByStrategy)]
    public void The_end_of_the_last_pull_is_the_obstacle(StageEnd end, LevelObstacle obstacle)
    {
        CourseStage other = Pull(end == StageEnd.Stalled ? StageEnd.StepLimit : StageEnd.Stalled), last = Pull(end);
        Assert.Equal(obstacle, Verdict(Plain, SetUp, other, last, new CourseStage(StageKind.Rest), Hold(), Close).Obstacle);
    }

    [Fact]
    public void Where_the_cylinders_content_left_its_range_it_is_the_cylinder()
    {
        CourseStage pull = Pull(StageEnd.PropertyRange) with { Figures = new StageFigures { CylinderOutOfRange = true } };
        Assert.Equal(LevelObstacle.CylinderPropertyRange, Verdict(Plain, SetUp, pull).Obstacle);
    }

    /// <summary>Who gives up a pull that crawls had liquid that waited for heat, oil that gives off late, or a machine at its deepest.</summary>
    [Fact]
    public void A_pull_that_is_given_up_is_for_heat_then_for_oil_then_for_the_vacuum()
    {
        RecoveryJob oily = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.PolyolEster } });
        CourseStage crawl = Pull(StageEnd.TimeLimit, StepReason.GiveUp);
        Assert.Equal(LevelObstacle.Heat, Verdict(Plain, SetUp, crawl with { After = Holds(Plain, 1) }).Obstacle);
        Assert.Equal(LevelObstacle.Heat, Verdict(oily, SetUp, crawl with { After = Holds(oily, 1) }).Obstacle);
        Assert.Equal(LevelObstacle.Oil, Verdict(oily, SetUp, crawl with { After = Holds(oily, 0.2) }).Obstacle);
        Assert.Equal(LevelObstacle.DeepestVacuum, Verdict(Plain, SetUp, crawl with { After = Holds(Plain, 0.2) }).Obstacle);
    }

    /// <summary>Water within two kelvin of its freezing point held a pull back, unless a full or hot cylinder ended it, the tubes may freeze, or have no water.</summary>
    [Fact]
    public void Water_near_freezing_is_in_the_way()
    {
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) });
        CourseStage At(RecoveryJob job, double metal, StageEnd end) => Pull(end) with { After = Holds(job, 1, 276, metal) };
        Assert.Equal(LevelObstacle.Freezing, Verdict(wet, SetUp, At(wet, 275, StageEnd.TimeLimit)).Obstacle);
        Assert.Equal(LevelObstacle.StoppedByStrategy, Verdict(wet, SetUp, At(wet, 275.3, StageEnd.TimeLimit)).Obstacle);
        Assert.Equal(LevelObstacle.StoppedByStrategy, Verdict(wet with { KeepAboveFreezing = false }, SetUp, At(wet, 275, StageEnd.TimeLimit)).Obstacle);
        Assert.Equal(LevelObstacle.StoppedByStrategy, Verdict(Plain, SetUp, At(Plain, 275, StageEnd.TimeLimit)).Obstacle);
        Assert.Equal(LevelObstacle.Freezing, Verdict(wet, SetUp, At(wet, 275, StageEnd.Stalled)).Obstacle);
        foreach ((StageEnd end, LevelObstacle obstacle) in new[]
        {
            (StageEnd.CylinderFull, LevelObstacle.CylindersFull), (StageEnd.HighPressureCutout, LevelObstacle.HighPressureCutout), (StageEnd.CylinderPressure, LevelObstacle.CylinderPressure),
            (StageEnd.StepLimit, LevelObstacle.NotComputed), (StageEnd.PropertyRange, LevelObstacle.PropertyRange),
        })
        {
            Assert.Equal(obstacle, Verdict(wet, SetUp, At(wet, 275, end)).Obstacle);
        }
    }

    /// <summary>The library's own strategy stops only where something is in the way: liquid that waits for heat, oil, or more pulls than the job allows.</summary>
    [Fact]
    public void The_standard_strategy_is_stopped_by_heat_oil_or_the_number_of_pulls()
    {
        RecoveryJob oily = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.PolyolEster } });
        Assert.Equal(LevelObstacle.TooManyPulls, OfStandard(Plain, Holds(Plain, 0.2)));
        Assert.Equal(LevelObstacle.Oil, OfStandard(oily, Holds(oily, 0.2)));
        Assert.Equal(LevelObstacle.Heat, OfStandard(Plain, Holds(Plain, 1)));
        Assert.Equal(LevelObstacle.Heat, OfStandard(oily, Holds(oily, 1)));
    }

    /// <summary>A part that stands a twentieth above the level is hidden from the gauge, whatever the gauge shows; the part of the port is not.</summary>
    [Theory]
    [InlineData(1.04, LevelOutcome.ReachedAndHeld)]
    [InlineData(1.06, LevelOutcome.NotReached)]
    public void A_part_that_stands_above_the_level_hides_it(double share, LevelOutcome outcome)
    {
        RecoveryJob job = Divided();
        double Vapor(double pascals) => 0.01 * job.Appliance.Fluid.Model.StateAt(293.15, pascals).Density;
        CourseStage pull = Pull() with { After = Parts(job, (Vapor(0.9 * Goal), 293.15), (Vapor(share * Goal), 293.15)) };
        LevelVerdict verdict = Verdict(job, SetUp, pull, Hold());
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Equal(outcome == LevelOutcome.NotReached ? LevelObstacle.HiddenSection : LevelObstacle.None, verdict.Obstacle);
        Assert.Equal(0.9 * Goal, verdict.Pressure.Pascals, 10.0);
    }

    /// <summary>No stage was done: for want of a cylinder, of room, of one that may be filled, or because nobody asked for one.</summary>
    [Fact]
    public void Where_nothing_was_done_the_cylinders_tell_why()
    {
        RecoveryCylinder full = Plain.Cylinders[0] with { Content = Mass.FromKilograms(16.98), Refrigerant = "R-134a" }, unfit = Jobs.Cylinder(100, "U") with { Specification = CylinderSpecification.FromMark("DOT 39 400") };
        double room = Run(Plain with { Cylinders = [full] }).Cylinders[0].Limit.MaximumFill.Kilograms;
        full = full with { Content = Mass.FromKilograms(room - 0.01) };
        Assert.Equal(LevelObstacle.NoCylinder, Verdict(Plain with { Cylinders = [] }).Obstacle);
        Assert.Equal(LevelObstacle.CylindersFull, Verdict(Plain with { Cylinders = [full] }).Obstacle);
        Assert.Equal(LevelObstacle.CylindersFull, Verdict(Plain with { Cylinders = [unfit, full] }).Obstacle);
        Assert.Equal(LevelObstacle.NoFitCylinder, Verdict(Plain with { Cylinders = [unfit] }).Obstacle);
        Assert.Equal(LevelObstacle.StoppedByStrategy, Verdict(Plain with { Cylinders = [full, Jobs.Cylinder(30, "C2")] }).Obstacle);
    }

    /// <summary>After two hundred steps and four for each cylinder nobody goes on.</summary>
    [Fact]
    public void A_strategy_without_end_is_stopped_after_its_steps()
    {
        CourseStage[] rests = [SetUp, .. Enumerable.Repeat(new CourseStage(StageKind.Rest) { Seconds = 60 }, 300)];
        PlanRun run = Run(Plain, rests);
        Assert.Equal(204, run.Stages.Count);
        Assert.Equal(LevelObstacle.TooManyPulls, Verdicts.For(run).Obstacle);
        Assert.Equal(203 * 60 + run.Stages[0].Duration.Seconds, run.Clock, 1e-6);
    }

    /// <summary>Two parts of 10 L, the vapor port on the first.</summary>
    internal static RecoveryJob Divided() => Job().With(appliance => appliance with
    {
        Sections =
        [
            new ApplianceSection { Name = "evaporator", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(1) },
            new ApplianceSection { Name = "receiver", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(1) },
        ],
        Connections = [new SectionConnection { From = "evaporator", To = "receiver", FlowCoefficient = 1 }],
        VaporPort = "evaporator",
    });

    private static LevelVerdict Verdict(RecoveryJob job, params CourseStage[] stages) => Verdicts.For(Run(job, stages));

    /// <summary>One pull and one hold of the standard strategy, told by hand, after which the job allows no further pull.</summary>
    private static LevelObstacle OfStandard(RecoveryJob job, Func<SimulationState, SimulationState> end)
    {
        var run = new PlanRun(job with { MaximumPulls = 1 }, StandardStrategy.Instance);
        var pull = new PlanStep(StageKind.VaporRecovery) { AppliancePressure = run.Goal };
        run.Run(default, new Teller(() =>
        {
            StageKind last = run.Stages[^1].Kind;
            if (last == StageKind.HoseSweep)
            {
                // To the level, and a hold that passes as far as the search for the length of the pull can tell.
                StageResult there = (Pull() with { After = Stands(job, 0.9 * Goal) }).Result(run.State);
                StageResult longer = (Pull(StageEnd.TimeLimit) with { Seconds = 30, After = Stands(job, 0.8 * Goal) }).Result(there.After);
                run.Remember(pull, run.State, there);
                run.Remember(new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(30) }, there.After, longer);
                run.Remember(new PlanStep(StageKind.Hold), longer.After, Hold().Result(longer.After));
            }
            else if (last == StageKind.VaporRecovery)
            {
                run.Remember(new PlanStep(StageKind.Hold), run.State, (Hold() with { After = end }).Result(run.State));
            }
        }));
        Assert.Equal([StageKind.SetUp, StageKind.HoseSweep, StageKind.VaporRecovery, StageKind.Hold], run.Stages.Take(4).Select(stage => stage.Kind));
        Assert.DoesNotContain(run.Stages.Skip(4), stage => stage.Kind == StageKind.VaporRecovery);
        return Verdicts.For(run).Obstacle;
    }

    private sealed class Teller(Action tell) : IProgress<double>
    {
        public void Report(double value) => tell();
    }
}
