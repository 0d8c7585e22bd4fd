using System;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Which way the liquid goes, after courses and looks ahead that are set down by hand.</summary>
public class LiquidOfCoursesTests
{
    private const double TenPounds = 4.5359237;

    /// <summary>20 kg of R-134a with ports and hoses for liquid and a cylinder that stands as the appliance does: nothing needs to go over first.</summary>
    private static readonly RecoveryJob Plain = Warm(Jobs.Chiller(kilograms: 20) with { Times = new JobTimes { CylinderChange = Duration.Zero } });

    private static readonly double Liquid = Situation(Plain, SetUp, Sweep).State.Appliance.LiquidMass.Kilograms;

    private static readonly double Reach = Liquid - Plain.Appliance.LiquidHeel.Kilograms;

    private static readonly double Pace = Run(Plain).Pace;

    /// <summary>What a way through the machine comes to: nothing that takes more than a fifth of what is in reach is left out, unless it fills a cylinder; one without an end is none.</summary>
    [Theory]
    [InlineData(0.19, StageEnd.LiquidGone, null)]
    [InlineData(0.21, StageEnd.LiquidGone, StageKind.LiquidRecovery)]
    [InlineData(0.1, StageEnd.CylinderFull, StageKind.LiquidRecovery)]
    [InlineData(0, StageEnd.CylinderFull, null)]
    [InlineData(0.9, StageEnd.TimeLimit, null)]
    public void A_way_takes_a_fifth_of_the_liquid_or_fills_a_cylinder(double share, StageEnd end, StageKind? kind)
    {
        PlanSituation now = Situation(Plain with { PushPull = PushPullUse.Never }, SetUp, Sweep);

        // Fast enough that no vapor is.
        now.Tell(Drawn with { End = end, Seconds = 5, After = Holds(Plain, 20 - (share * Reach), 291.15) });
        Assert.Equal(kind, LiquidChoice.Next(now)?.Kind);
        if (kind is not null)
        {
            Assert.True(LiquidChoice.Next(now)!.IsThrottled);
        }
    }

    /// <summary>Where liquid comes slower than the machine's pace vapor is looked at for as long: it is as fast where it comes to the goal without liquid, moves as much, or fills the cylinder at as high a rate.</summary>
    [Theory]
    [InlineData(StageEnd.TimeLimit, 0.99, 1, false)]
    [InlineData(StageEnd.TimeLimit, 1.01, 1, true)]
    [InlineData(StageEnd.CylinderFull, 0.5, 0.49, true)]
    [InlineData(StageEnd.CylinderFull, 0.5, 0.51, false)]
    [InlineData(StageEnd.TargetReached, 1.05, 0.5, true)]
    [InlineData(StageEnd.TargetReached, 0.5, 0.5, false)]
    public void Vapor_that_is_as_fast_leaves_the_liquid_alone(StageEnd end, double moved, double time, bool isAsFast)
    {
        PlanSituation now = Situation(Plain with { PushPull = PushPullUse.Never }, SetUp, Sweep);
        double seconds = 2 * Reach / Pace;
        now.Tell(Drawn with { End = StageEnd.LiquidGone, Seconds = seconds, After = Holds(Plain, 20 - Reach, 291.15) });
        var pull = new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal, Duration = Duration.FromSeconds(seconds) };
        now.Tell(new CourseStage(pull) { End = end, Seconds = time * seconds, After = Holds(Plain, 20 - (moved * Reach), 291.15) });
        Assert.Equal(isAsFast ? null : StageKind.LiquidRecovery, LiquidChoice.Next(now)?.Kind);
    }

    /// <summary>No vapor recovery is faster than the machine's pace at the start.</summary>
    [Theory]
    [InlineData(0.99, StageKind.LiquidRecovery)]
    [InlineData(1.01, null)]
    public void Nothing_is_faster_than_the_pace(double share, StageKind? kind)
    {
        PlanSituation now = Situation(Plain with { PushPull = PushPullUse.Never }, SetUp, Sweep);
        double seconds = share * Reach / Pace;
        now.Tell(Drawn with { End = StageEnd.LiquidGone, Seconds = seconds, After = Holds(Plain, 20 - Reach, 291.15) });
        now.Tell(new CourseStage(new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal, Duration = Duration.FromSeconds(seconds) }) { Seconds = seconds, After = Holds(Plain, 20 - (1.01 * Reach), 291.15) });
        Assert.Equal(kind, LiquidChoice.Next(now)?.Kind);
    }

    /// <summary>Of push-pull, with its change of hoses, and the machine the one that is sooner over is taken, where they are no tie; what is left is drawn as vapor at the pace.</summary>
    [Theory]
    [InlineData(20, 400, StageKind.LiquidRecovery)]
    [InlineData(60, 1200, StageKind.PushPull)]
    public void The_way_that_is_sooner_over_is_taken(double pushed, double drawn, StageKind kind)
    {
        RecoveryJob quick = Plain with { Times = Plain.Times with { HoseChange = Duration.FromSeconds(kind == StageKind.PushPull ? 300 : 3000) } };
        PlanSituation now = Situation(quick, SetUp, Sweep);
        now.Tell(new CourseStage(StageKind.PushPull) { End = StageEnd.LiquidGone, Seconds = pushed, After = Holds(Plain, 20 - Reach, 291.15) });
        double with = quick.Times.HoseChange.Seconds + pushed + ((Liquid - Reach) / Pace);
        double bound = (1.15 * with) + 60;
        CourseStage through = Drawn with { Step = Drawn.Step with { Duration = Duration.FromSeconds(bound) }, End = drawn < bound ? StageEnd.LiquidGone : StageEnd.TimeLimit, Seconds = Math.Min(drawn, bound), After = Holds(Plain, 20 - (Reach * Math.Min(1, bound / drawn)), 291.15) };
        now.Tell(through with { Step = through.Step with { Duration = Duration.FromSeconds(0.1 * bound) }, End = StageEnd.TimeLimit, Seconds = 0.1 * bound, After = Holds(Plain, 20 - (0.09 * Reach), 291.15) });
        now.Tell(through);
        Assert.Equal(kind, LiquidChoice.Next(now)?.Kind);
    }

    /// <summary>A way is looked at for a tenth of the time that it has: one that would take a fifth more than that time at its pace is none (our choices), the other is seen to its end.</summary>
    [Theory]
    [InlineData(0.083, StageKind.PushPull)]
    [InlineData(0.084, StageKind.LiquidRecovery)]
    public void A_way_that_begins_too_slowly_is_none(double share, StageKind kind)
    {
        RecoveryJob quick = Plain with { Times = Plain.Times with { HoseChange = Duration.FromSeconds(3000) } };
        PlanSituation now = Situation(quick, SetUp, Sweep);
        now.Tell(new CourseStage(StageKind.PushPull) { End = StageEnd.LiquidGone, Seconds = 20, After = Holds(Plain, 20 - Reach, 291.15) });
        double bound = (1.15 * (3020 + ((Liquid - Reach) / Pace))) + 60;
        PlanStep look = Drawn.Step with { Duration = Duration.FromSeconds(0.1 * bound) };
        now.Tell(new CourseStage(look) { End = StageEnd.TimeLimit, Seconds = 0.1 * bound, After = Holds(Plain, 20 - (share * Reach), 291.15) });
        now.Tell(new CourseStage(Drawn.Step with { Duration = Duration.FromSeconds(bound) }) { End = StageEnd.LiquidGone, Seconds = 200, After = Holds(Plain, 20 - Reach, 291.15) });
        foreach (double seconds in new[] { 200.0, 3020 })
        {
            now.Tell(new CourseStage(new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal, Duration = Duration.FromSeconds(seconds) }) { Seconds = seconds, After = Holds(Plain, 19.9, 291.15) });
        }

        Assert.Equal(kind, LiquidChoice.Next(now)?.Kind);
    }

    /// <summary>Who asks for push-pull always gets it where it comes to something; who asks for it never does not, and where it pays it takes 10 lb.</summary>
    [Theory]
    [InlineData(PushPullUse.Always, TenPounds - 0.1, true)]
    [InlineData(PushPullUse.WhereItPays, TenPounds - 0.1, false)]
    [InlineData(PushPullUse.WhereItPays, TenPounds + 0.1, true)]
    [InlineData(PushPullUse.Never, TenPounds + 0.1, false)]
    public void Push_pull_pays_from_ten_pounds_on(PushPullUse use, double kilograms, bool pushes)
    {
        RecoveryJob job = Plain with { PushPull = use, Machine = Plain.Machine with { TakesLiquid = false } };
        CourseStage less = new(StageKind.Rest) { After = Reaching(job, kilograms) };
        PlanSituation now = Situation(job, SetUp, Sweep, less);
        now.Tell(new CourseStage(StageKind.PushPull) { End = StageEnd.LiquidGone, Seconds = 5, After = Reaching(job, 0.05) });
        Assert.Equal(pushes ? StageKind.PushPull : null, LiquidChoice.Next(now)?.Kind);
        Assert.Null(LiquidChoice.Next(Situation(job.With(appliance => appliance with { LiquidReachable = false }), SetUp, Sweep)));
        Assert.Null(LiquidChoice.Next(Situation(job with { Hoses = job.Hoses with { LiquidSide = [] } }, SetUp, Sweep)));
    }

    /// <summary>Liquid below half a kilogram beyond the heel is not worth a word.</summary>
    [Theory]
    [InlineData(0.49, null)]
    [InlineData(0.51, StageKind.LiquidRecovery)]
    public void Half_a_kilogram_is_drawn(double kilograms, StageKind? kind)
    {
        RecoveryJob job = Plain with { PushPull = PushPullUse.Never };
        PlanSituation now = Situation(job, SetUp, Sweep, new CourseStage(StageKind.Rest) { After = Reaching(job, kilograms) });
        now.Tell(Drawn with { End = StageEnd.LiquidGone, Seconds = 0.5, After = Reaching(job, 0.01) });
        Assert.Equal(kind, LiquidChoice.Next(now)?.Kind);
    }

    /// <summary>After push-pull the hoses are changed, after a full cylinder the cylinder; it goes on while there is enough in reach, and not after the hoses were changed.</summary>
    [Fact]
    public void After_the_liquid_comes_what_its_way_needs()
    {
        RecoveryJob two = Plain with { Cylinders = [Plain.Cylinders[0], Jobs.Cylinder(123, "C2") with { Content = Mass.FromKilograms(8), Refrigerant = "R-134a" }] };
        CourseStage Way(StageKind kind, StageEnd end, double reach) => new(kind) { End = end, Seconds = 50, After = Reaching(two, reach) };
        StageKind? After(RecoveryJob job, params CourseStage[] stages) => LiquidChoice.Next(Situation(job, [SetUp, Sweep, .. stages]))?.Kind;
        CourseStage gone = Way(StageKind.PushPull, StageEnd.LiquidGone, 1), full = Way(StageKind.PushPull, StageEnd.CylinderFull, TenPounds + 0.1), little = Way(StageKind.PushPull, StageEnd.CylinderFull, TenPounds - 0.1);
        Assert.Equal(StageKind.HoseChange, After(two, gone));
        Assert.Equal(StageKind.CylinderChange, After(two, full));
        Assert.Equal(StageKind.HoseChange, After(two, little));
        Assert.Null(After(Plain, full));
        Assert.Equal(StageKind.PushPull, After(two, full, Change("C2")));
        Assert.Null(After(two, little, Change("C2")));
        Assert.Null(After(two, gone, Change("C2")));
        Assert.Null(After(two, full, new CourseStage(StageKind.HoseChange) { Seconds = 10 }));
        Assert.Null(After(two, full, new CourseStage(StageKind.HoseChange) { Seconds = 10 }, Change("C2")));
        Assert.Null(After(two, full, Change("C2"), new CourseStage(StageKind.Rest)));
        CourseStage drawn = Way(StageKind.LiquidRecovery, StageEnd.LiquidGone, 0.1), drawnFull = Way(StageKind.LiquidRecovery, StageEnd.CylinderFull, 0.51), drawnLittle = Way(StageKind.LiquidRecovery, StageEnd.CylinderFull, 0.49);
        Assert.Null(After(two, drawn));
        Assert.Equal(StageKind.CylinderChange, After(two, drawnFull));
        Assert.Equal(StageKind.CylinderChange, After(two, drawnLittle));
        Assert.Equal(StageKind.LiquidRecovery, After(two, drawnFull, Change("C2")));
        Assert.Null(After(two, drawnLittle, Change("C2")));
        Assert.Null(After(two, Pull()));
        Assert.Null(After(two, Hold()));
        Assert.Null(After(two, full, Change("C2"), Pull()));
    }

    /// <summary>Into an empty cylinder vapor goes first: before push-pull to nine tenths of the appliance's pressure, before liquid through the machine to what keeps it from flashing below −20 °C.</summary>
    [Theory]
    [InlineData(StageKind.PushPull, StepReason.Usual)]
    [InlineData(StageKind.LiquidRecovery, StepReason.VaporFirst)]
    public void Vapor_goes_first_into_an_empty_cylinder(StageKind kind, StepReason reason)
    {
        RecoveryJob two = Plain with { Cylinders = [Plain.Cylinders[0], Jobs.Cylinder(123, "C2")] };
        CourseStage full = new(kind) { End = StageEnd.CylinderFull, Seconds = 50, After = Reaching(two, 8) };
        PlanSituation now = Situation(two, SetUp, Sweep, full, Change("C2"));
        PlanStep first = LiquidChoice.Next(now)!;
        Assert.Equal((StageKind.Equalize, reason), (first.Kind, first.Reason));
        double own = 0.9 * now.State.Appliance.Pressure.Pascals;
        double cold = Plain.Appliance.Fluid.Model.SaturationAtTemperature(253.15).Bubble.Pressure;
        Assert.Equal(kind == StageKind.PushPull ? own : Math.Min(own, cold), first.CylinderPressure!.Value.Pascals, 1e-6 * own);
        Assert.Equal(kind, LiquidChoice.Next(Situation(two, SetUp, Sweep, full, Change("C2"), new CourseStage(first)))?.Kind);

        // At the start the kind of vapor first tells what it was for.
        PlanSituation begun = Situation(two, SetUp, Sweep, new CourseStage(first));
        Assert.Equal(kind, LiquidChoice.Next(begun)?.Kind);
    }

    private static CourseStage Drawn => new(new PlanStep(StageKind.LiquidRecovery) { IsThrottled = true });

    /// <summary>The appliance with so much liquid beyond its heel.</summary>
    private static Func<SimulationState, SimulationState> Reaching(RecoveryJob job, double kilograms)
    {
        SaturationDensities at = new(job);
        double liquid = kilograms + job.Appliance.LiquidHeel.Kilograms;
        return Holds(job, liquid + (at.Vapor * (job.Appliance.InternalVolume.CubicMeters - (liquid / at.Liquid))), 291.15);
    }

    private static RecoveryJob Warm(RecoveryJob job) => job with { Cylinders = [Jobs.Cylinder(123, "C1") with { Content = Mass.FromKilograms(8), Refrigerant = "R-134a" }] };

    private sealed class SaturationDensities(RecoveryJob job)
    {
        public double Vapor { get; } = job.Appliance.Fluid.Model.SaturationAtTemperature(291.15).Dew.Density;

        public double Liquid { get; } = job.Appliance.Fluid.Model.SaturationAtTemperature(291.15).Bubble.Density;
    }
}
