using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;
using static Refrigerant.Recovery.Tests.Planning.CylinderOfCoursesTests;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>How long a pull is made, over pulls that are set down by hand.</summary>
public class PullOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    /// <summary>2 % of the machine's pace at the start, or of the charge in the patience of the job, whichever is less, counts as crawling (our choice).</summary>
    private static readonly double Crawl = 0.02 * Math.Min(Run(Plain).Pace, 2.0 / 7200);

    private static PlanStep How => new(StageKind.VaporRecovery);

    /// <summary>What a pull comes to decides on what follows.</summary>
    [Theory]
    [InlineData(StageEnd.TargetReached, "AtGoal")]
    [InlineData(StageEnd.CylinderFull, "CylinderFull")]
    [InlineData(StageEnd.HighPressureCutout, "Limited")]
    [InlineData(StageEnd.CylinderPressure, "Limited")]
    [InlineData(StageEnd.ThermalCutout, "Limited")]
    [InlineData(StageEnd.DesignPressure, "Limited")]
    [InlineData(StageEnd.Stalled, "Stuck")]
    [InlineData(StageEnd.PropertyRange, "Stuck")]
    [InlineData(StageEnd.LowPressureSwitch, "Stuck")]
    public void The_end_of_a_pull_is_its_fate(StageEnd end, string fate)
    {
        PlanSituation now = Situation(Plain, SetUp);
        StageResult told = now.Tell(new CourseStage(ToGoal(now)) { End = end, Seconds = 321, Points = [At(0, flow: 1), At(321, flow: 1)] });
        PullPlan plan = new PullSearch(now).ToGoal(How);
        Assert.Equal((fate, 321.0, ToGoal(now)), (plan.Fate.ToString(), plan.Seconds, plan.Step));
        Assert.Same(told, Assert.Single(plan.Parts));
        Assert.Equal(fate == "CylinderFull", plan.IsGood);
    }

    /// <summary>Who waits for a machine that moves next to nothing gives up after the patience of the job, counted from where it began to crawl; what picks up again starts anew.</summary>
    [Theory]
    [InlineData(0.99, 7199, null)]
    [InlineData(0.99, 7201, 1000.0 + 7200)]
    [InlineData(1.01, 9000, null)]
    public void A_pull_that_crawls_is_given_up(double share, double seconds, double? at)
    {
        PlanSituation now = Situation(Plain, SetUp);
        TrajectoryPoint[] points = [At(0, flow: 0.5 * Crawl), At(500, flow: 2 * Crawl), At(1000, flow: share * Crawl), At(2000, flow: share * Crawl), At(1000 + seconds, flow: share * Crawl), At(1000 + seconds + 5, flow: 2 * Crawl)];
        now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 20_000, Points = points, After = Holds(Plain, 1) });
        if (at is double time)
        {
            PlanStep cut = ToGoal(now) with { Duration = Duration.FromSeconds(time), Reason = StepReason.GiveUp };
            StageResult told = now.Tell(new CourseStage(cut) { Seconds = time });
            PullPlan plan = new PullSearch(now).ToGoal(How);
            Assert.Equal(("Crawls", cut, time), (plan.Fate.ToString(), plan.Step, plan.Seconds));
            Assert.Same(told, plan.Last);
        }
        else
        {
            Assert.Equal("AtGoal", new PullSearch(now).ToGoal(How).Fate.ToString());
        }
    }

    /// <summary>Where the machine can get no deeper than the level against a cylinder as cool as the air, nobody waits longer than ten minutes.</summary>
    [Fact]
    public void What_is_hopeless_is_given_up_after_ten_minutes()
    {
        double air = Plain.Appliance.Fluid.Model.SaturationAtTemperature(293.15).Bubble.Pressure;
        double deepest = Plain.Machine.DeepestVacuum(Pressure.FromPascals(air)).Pascals;
        RecoveryJob oily = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.1), Kind = OilKind.PolyolEster } });
        Assert.Equal(600, GivenUp(Plain, 0.99 * deepest, 0.05));
        Assert.Equal(7200, GivenUp(Plain, 1.01 * deepest, 0.05));
        Assert.Equal(7200, GivenUp(oily, 0.99 * deepest, 0.05));
        Assert.Equal(7200, GivenUp(Plain, 0.99 * deepest, 1));
        Assert.Equal(300, GivenUp(Plain with { Times = Plain.Times with { Patience = Duration.FromSeconds(300) } }, 0.99 * deepest, 0.05));

        // Patience of less than a minute is a minute.
        Assert.Equal(60, GivenUp(Plain with { Times = Plain.Times with { Patience = Duration.FromSeconds(30) } }, 1.01 * deepest, 0.05));

        static double GivenUp(RecoveryJob job, double level, double kilograms)
        {
            RecoveryJob deep = job with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(level) } };
            PlanSituation now = Situation(deep, SetUp, new CourseStage(StageKind.Rest) { After = Cylinder(deep, 5, 330) });
            TrajectoryPoint[] points = [At(0), At(60), At(300), At(600), At(5000), At(7200)];
            now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TimeLimit, Seconds = 8000, Points = points, After = Holds(deep, kilograms) });
            foreach (double time in new[] { 60.0, 300, 600, 7200 })
            {
                now.Tell(new CourseStage(ToGoal(now) with { Duration = Duration.FromSeconds(time) }) { Seconds = time });
            }

            return new PullSearch(now).ToGoal(How).Seconds;
        }
    }

    /// <summary>The share that a rule asks for ends a pull where it is out without liquid and nothing blows out any more; where it never comes below the air, where it is out.</summary>
    [Fact]
    public void A_share_ends_a_pull_at_the_air_where_it_comes_to_it()
    {
        RecoveryJob small = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(1) }) with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small } };
        double left = Run(small).LeftByShare;
        TrajectoryPoint wet = At(50, liquid: 0.01, kilograms: 0.9 * left, pascals: 90_000, flow: 1), rest = At(100, kilograms: 1.01 * left, pascals: 90_000, flow: 1), high = At(150, kilograms: 0.99 * left, pascals: 101_400, flow: 1), done = At(200, kilograms: 0.9 * left, pascals: 101_200, flow: 1), later = At(300, kilograms: 0.8 * left, pascals: 80_000, flow: 1);
        Assert.Equal(200, Ended(wet, rest, high, done, later));
        Assert.Equal(150, Ended(wet, rest, high));
        Assert.Equal(150, Ended(wet, rest, high, high with { Seconds = 180 }));
        Assert.Null(Ended(wet, rest));
        Assert.Equal(1, Ended(done with { Seconds = 0.4 }));

        // Behind a crawl of two hours nobody waits for the air, but the share is out.
        Assert.Equal(150, Ended(high, high with { Seconds = 151, KilogramsPerSecond = 0 }, high with { Seconds = 8000, KilogramsPerSecond = 0 }, done with { Seconds = 9000 }));
        Assert.Equal(7000, Ended(high, high with { Seconds = 151, KilogramsPerSecond = 0 }, done with { Seconds = 7000 }, done with { Seconds = 9000, KilogramsPerSecond = 0 }));

        // Where the result is not what the course promised, or another rule is asked, the share ends nothing.
        Assert.Null(Of(small, 1.01 * left, [done]));
        Assert.Null(Of(Plain, 0.9 * left, [done]));

        double? Ended(params TrajectoryPoint[] points) => Of(small, 0.9 * left, points);
        static double? Of(RecoveryJob job, double kilograms, TrajectoryPoint[] points)
        {
            PlanSituation now = Situation(job, SetUp);
            now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.Stalled, Seconds = 10_000, Points = points, After = Holds(job, 1) });
            foreach (double time in points.Select(point => Math.Max(1, point.Seconds)).Append(7351))
            {
                now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(time) }) { Seconds = time, After = Holds(job, kilograms) });
                now.Tell(new CourseStage(ToGoal(now) with { Duration = Duration.FromSeconds(time) }) { Seconds = time });
            }

            PullPlan plan = new PullSearch(now).ToGoal(How);
            if (plan.Fate != PullFate.Passes)
            {
                return null;
            }

            Assert.Equal(How with { Duration = Duration.FromSeconds(plan.Seconds) }, plan.Step);
            return plan.Seconds;
        }
    }

    /// <summary>A level that needs no hold is passed where the gauge shows it without liquid; in all else it goes on.</summary>
    [Fact]
    public void Without_a_hold_the_level_is_enough()
    {
        RecoveryJob job = Plain with { Times = Plain.Times with { Hold = Duration.Zero } };
        PlanSituation now = Situation(job, SetUp);
        now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 321, Points = [At(0, flow: 1), At(321, flow: 1)], After = Stands(job, Goal) });
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(("Passes", 321.0, StepReason.Usual), (plan.Fate.ToString(), plan.Seconds, plan.Step.Reason));
        foreach (StageEnd end in new[] { StageEnd.CylinderFull, StageEnd.HighPressureCutout, StageEnd.Stalled })
        {
            PlanSituation other = Situation(job, SetUp);
            other.Tell(new CourseStage(ToGoal(other)) { End = end, Points = [At(0, flow: 1)] });
            var otherwise = new PullSearch(other);
            PullPlan limited = otherwise.ToGoal(How);
            Assert.Same(limited, otherwise.GoOn(limited));
        }
    }

    /// <summary>Past the level it goes on in parts of half a minute first, or a twentieth of what it took so far, twice as long each; a hold is foreseen by the gas that warms to the air, p·T/T, and by what still flows, m·R·T/(M·V) over its time; where it is foreseen to pass with two thousandths to spare it is tried.</summary>
    [Theory]
    [InlineData(293.15, 1.0)]
    [InlineData(280, 293.15 / 280)]
    public void Where_a_hold_is_tried_is_foreseen(double kelvins, double warming)
    {
        double perKilogram = 8.314462618 * 293.15 / (Plain.Appliance.Fluid.MolarMass.KilogramsPerMole * 0.02);
        double flow = 5000 / (600 * perKilogram);
        Assert.True(flow > Crawl, $"{flow} {Crawl}");
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 1200, Points = [At(0, flow: 1), At(1200, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });
        TrajectoryPoint Of(double seconds, double kilopascals) => At(seconds, flow: flow, pascals: kilopascals * 1000 / warming, appliance: kelvins, kilograms: 0.1);
        TrajectoryPoint[] points = [Of(0, 90), Of(10, 80) with { LiquidKilograms = 0.5 }, Of(20, 85.0), Of(30, 84.7), Of(40, 83), Of(50, 81), Of(60, 78)];
        StageResult part = TellPart(60, points, first.After, 83_000);
        StageResult tried = TellPart(30, points[..4], first.After, 89_000);
        TellPart(15, points[..2], first.After, 92_000);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(("Passes", 1230.0), (plan.Fate.ToString(), plan.Seconds));
        Assert.Same(tried, plan.Last);
        Assert.NotSame(part, plan.Last);

        StageResult TellPart(double seconds, TrajectoryPoint[] course, SimulationState from, double held)
        {
            StageResult result = now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(seconds) }) { Seconds = seconds, Points = course, After = Stands(Plain, course[^1].AppliancePascals) }, from);
            now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(Plain, held) }, result.After);
            return result;
        }
    }

    /// <summary>A shorter pull is looked for to a hundredth of all that it takes, or ten seconds (our choices).</summary>
    [Theory]
    [InlineData(79.4, 100)]
    [InlineData(78, 78)]
    public void A_shorter_pull_is_looked_for_to_a_hundredth(double early, double found)
    {
        double flow = 2 * Crawl, still = flow * 600 * 8.314462618 * 293.15 / (Plain.Appliance.Fluid.MolarMass.KilogramsPerMole * 0.02);
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 2000, Points = [At(0, flow: 1), At(2000, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });
        TrajectoryPoint Of(double seconds, double pascals) => At(seconds, flow: flow, pascals: pascals - still, kilograms: 0.1);
        TrajectoryPoint[] points = [Of(0, 95_000), Of(early, 89_000), Of(100, 88_000)];
        foreach ((double seconds, double held) in new[] { (100, 88_000), (early, 89_000.0), (early / 2, 92_000) })
        {
            StageResult part = now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(seconds) }) { Seconds = seconds, Points = [.. points.Where(point => point.Seconds <= seconds)], After = Stands(Plain, 85_000) }, first.After);
            now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(Plain, held) }, part.After);
        }

        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(("Passes", 2000 + found), (plan.Fate.ToString(), plan.Seconds));
    }

    /// <summary>Where what was foreseen does not pass, three tenths of what is left are gone on with at least (our choice).</summary>
    [Fact]
    public void Three_tenths_are_gone_on_with_at_least()
    {
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 200, Points = [At(0, flow: 1), At(200, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });

        // After half a minute the hold fails, and comes to twice what was foreseen: 88 kPa of 44.
        StageResult half = TellPart(30, [Of(0, 90), Of(30, 44)], first.After, 91_000);
        TrajectoryPoint[] points = [Of(0, 44), Of(20, 43.2), Of(30, 42.6), Of(60, 42)];
        TellPart(60, points, half.After, 80_000);
        TellPart(20, points[..2], half.After, 90_500);
        StageResult tried = TellPart(32, points[..3], half.After, 80_000);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(("Passes", 262.0), (plan.Fate.ToString(), plan.Seconds));
        Assert.Same(tried, plan.Last);

        TrajectoryPoint Of(double seconds, double kilopascals) => At(seconds, flow: 1e-5, pascals: kilopascals * 1000, kilograms: 0.1);
        StageResult TellPart(double seconds, TrajectoryPoint[] course, SimulationState from, double held)
        {
            StageResult result = now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(seconds) }) { Seconds = seconds, Points = course, After = Stands(Plain, course[^1].AppliancePascals) }, from);
            now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(Plain, held) }, result.After);
            return result;
        }
    }

    /// <summary>Past the level it goes on in parts of half a minute first; where the hold after the first of them passes, the pull is both, by the gauge where the pressure only fell.</summary>
    [Theory]
    [InlineData(0.99897, StageEnd.TimeOver, true)]
    [InlineData(0.99903, StageEnd.TimeOver, false)]
    [InlineData(0.9, StageEnd.PropertyRange, false)]
    public void Where_the_hold_passes_the_pull_is_long_enough(double held, StageEnd end, bool passes)
    {
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 321, Points = [At(0, flow: 1), At(321, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });
        StageResult part = now.Tell(
            new CourseStage(How with { Duration = Duration.FromSeconds(30) }) { Seconds = 30, Points = [At(0, flow: 1, pascals: Goal), At(30, flow: 1, pascals: 0.9 * Goal)], After = Stands(Plain, 0.9 * Goal) }, first.After);
        now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = end, After = Stands(Plain, held * Goal) }, part.After);
        TellHalf(now, first, 1.02 * Goal);
        now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(60) }) { End = StageEnd.Stalled, Seconds = 40, Points = [], After = Stands(Plain, 0.85 * Goal) }, part.After);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(passes ? "Passes" : "Stuck", plan.Fate.ToString());
        Assert.Equal(passes ? 351 : 391, plan.Seconds, 1e-9);
        Assert.Equal(StepReason.PullDeeper, plan.How.Reason);
        if (passes)
        {
            Assert.Equal(0.9 * Goal, plan.Step.AppliancePressure!.Value.Pascals, 1e-6);
            Assert.Equal(2, plan.Parts.Count);

            // What the plan then does is what was looked at, in one go.
            StageResult whole = now.Preview(plan.Step)!;
            Assert.Equal((351.0, StageEnd.TargetReached), (whole.Duration.Seconds, whole.End));
            Assert.Same(part.After, whole.After);
        }
    }

    /// <summary>Where half of it is enough the pull is that much shorter.</summary>
    [Fact]
    public void Half_of_it_is_tried()
    {
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 321, Points = [At(0, flow: 1), At(321, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });
        StageResult part = now.Tell(
            new CourseStage(How with { Duration = Duration.FromSeconds(30) }) { Seconds = 30, Points = [At(0, flow: 1, pascals: Goal), At(30, flow: 1, pascals: 0.9 * Goal)], After = Stands(Plain, 0.9 * Goal) }, first.After);
        now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(Plain, 0.95 * Goal) }, part.After);
        StageResult half = TellHalf(now, first, 0.99 * Goal);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(336, plan.Seconds, 1e-9);
        Assert.Same(half, plan.Last);
    }

    /// <summary>The gauge's error counts: one that reads high by 1 kPa is pulled to what it shows then.</summary>
    [Fact]
    public void The_gauge_is_read_with_its_error()
    {
        RecoveryJob job = Plain with { GaugeError = -1000 };
        PlanSituation now = Situation(job, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 321, Points = [At(0, flow: 1), At(321, flow: 1, pascals: Goal)], After = Stands(job, Goal) });
        StageResult part = now.Tell(
            new CourseStage(How with { Duration = Duration.FromSeconds(30) }) { Seconds = 30, Points = [At(0, flow: 1, pascals: Goal), At(30, flow: 1, pascals: 0.9 * Goal)], After = Stands(job, 0.9 * Goal) }, first.After);
        now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(job, Goal - 1300) }, part.After);
        TellHalf(now, first, Goal - 800);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal("Passes", plan.Fate.ToString());
        Assert.Equal((0.9 * Goal) + 1000, plan.Step.AppliancePressure!.Value.Pascals, 1e-6);
    }

    /// <summary>Where the pressure was lower on the way than in the end the gauge cannot tell the end: the clock does.</summary>
    [Fact]
    public void A_pressure_that_was_lower_before_is_ended_by_the_clock()
    {
        PlanSituation now = Situation(Plain, SetUp);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 321, Points = [At(0, flow: 1), At(200, flow: 1, pascals: 0.8 * Goal), At(321, flow: 1, pascals: Goal)], After = Stands(Plain, Goal) });
        StageResult part = now.Tell(
            new CourseStage(How with { Duration = Duration.FromSeconds(30) }) { Seconds = 30, Points = [At(0, flow: 1, pascals: Goal), At(30, flow: 1, pascals: 0.9 * Goal)], After = Stands(Plain, 0.9 * Goal) }, first.After);
        now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(Plain, 0.95 * Goal) }, part.After);
        TellHalf(now, first, 1.02 * Goal);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(351, plan.Step.Duration!.Value.Seconds, 1e-9);
        Assert.Null(plan.Step.AppliancePressure);
    }

    /// <summary>Over liquid at the level it goes on for longer, not deeper, and no hold is tried before the liquid is gone.</summary>
    [Fact]
    public void Over_liquid_it_goes_on_longer()
    {
        PlanSituation now = Situation(Plain, SetUp);
        SimulationState cold = Holds(Plain, 0.5, 245)(now.State);
        StageResult first = now.Tell(new CourseStage(ToGoal(now)) { End = StageEnd.TargetReached, Seconds = 1000, Points = [At(0, flow: 1), At(1000, flow: 1, pascals: Goal, liquid: 0.4)], After = _ => cold });
        Assert.True(first.Appliance.HasLiquid);

        // A twentieth of what it took so far, where that is more than half a minute.
        StageResult part = now.Tell(new CourseStage(How with { Duration = Duration.FromSeconds(50) }) { End = StageEnd.Stalled, Seconds = 45, Points = [], After = _ => cold }, first.After);
        var search = new PullSearch(now);
        PullPlan plan = search.GoOn(search.ToGoal(How));
        Assert.Equal(("Stuck", StepReason.PullLonger, 1045.0), (plan.Fate.ToString(), plan.How.Reason, plan.Seconds));
        Assert.Same(part, plan.Last);
    }

    /// <summary>A quarter of a minute past the level, after which the hold comes to a pressure.</summary>
    private static StageResult TellHalf(PlanSituation now, StageResult first, double held)
    {
        StageResult half = now.Tell(
            new CourseStage(How with { Duration = Duration.FromSeconds(15) }) { Seconds = 15, Points = [At(0, flow: 1, pascals: Goal), At(15, flow: 1, pascals: 0.95 * Goal)], After = Stands(now.Job, 0.95 * Goal) }, first.After);
        now.Tell(new CourseStage(new PlanStep(StageKind.Hold)) { End = StageEnd.TimeOver, After = Stands(now.Job, held) }, half.After);
        return half;
    }

    private static PlanStep ToGoal(PlanSituation now) => How with { AppliancePressure = now.Goal };
}
