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

/// <summary>Which pull is chosen: cooled, throttled, warmed, or into another cylinder, over pulls that are set down by hand. Without a hold, so that a pull is done at the level.</summary>
public class LookAheadOfCoursesTests
{
    private static readonly SimulationInputs Ice = new() { CylinderFactor = 50, CylinderSurroundings = 273.15 };

    private static readonly RecoveryJob Plain = Job() with { Times = new JobTimes { Hold = Duration.Zero, CylinderChange = Duration.FromSeconds(100) } };

    private static readonly RecoveryJob Iced = Plain with { Aids = new SiteAids { HasIce = true } };

    private static PlanStep How => new(StageKind.VaporRecovery);

    /// <summary>Nothing in the way: the pull as it is.</summary>
    [Fact]
    public void A_pull_that_nothing_is_in_the_way_of_is_made_as_it_is()
    {
        PlanSituation now = Situation(Iced, SetUp);
        Tell(now, How, 500);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(("Passes", 500.0, How with { AppliancePressure = now.Goal }), (best.Fate.ToString(), best.Seconds, best.Step));
    }

    /// <summary>A pull goes no deeper than a twentieth below a level above the air (our choice), where there is no liquid at it; below the air it may.</summary>
    [Fact]
    public void Above_the_air_a_pull_stops_short_below_the_level()
    {
        RecoveryJob high = Plain with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(150_000) } };
        PlanSituation now = Situation(high, SetUp);
        PlanStep how = How with { LowestPressure = Pressure.FromPascals(0.95 * 150_000) };
        Tell(now, how, 500);
        Assert.Equal(how with { AppliancePressure = now.Goal }, new LookAhead(now).Best().Step);
        PlanSituation wet = Situation(high, SetUp, new CourseStage(StageKind.Rest) { After = Holds(high, 1, 250) });
        Tell(wet, How, 500);
        Assert.Null(new LookAhead(wet).Best().Step.LowestPressure);
    }

    /// <summary>Where the outlet comes above the cylinder's service pressure, or its content above 52 °C, it is cooled if there is something to cool it with, and if that is no worse.</summary>
    [Theory]
    [InlineData(-100, 300, false)]
    [InlineData(100, 300, true)]
    [InlineData(-100, 325.1, false)]
    [InlineData(-100, 325.2, true)]
    public void A_cylinder_that_gets_hot_is_cooled(double above, double kelvins, bool isCooled)
    {
        double service = Plain.Cylinders[0].ServicePressure.Pascals + 101_325;
        TrajectoryPoint[] hot = [At(0, flow: 1), At(200, flow: 1, discharge: service + above, cylinder: kelvins), At(500, flow: 1)];
        PlanSituation now = Situation(Iced, SetUp);
        Tell(now, How, 500, points: hot);
        Tell(now, Cooled, 600);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(isCooled ? Cooled with { AppliancePressure = now.Goal } : How with { AppliancePressure = now.Goal }, best.Step);
        PlanSituation without = Situation(Plain, SetUp);
        Tell(without, How, 500, points: hot);
        Assert.Equal(How with { AppliancePressure = now.Goal }, new LookAhead(without).Best().Step);
        PlanSituation worse = Situation(Iced, SetUp);
        Tell(worse, How, 500, points: hot);
        Tell(worse, Cooled, 600, StageEnd.Stalled, 2 * Goal);
        Assert.Equal(How with { AppliancePressure = now.Goal }, new LookAhead(worse).Best().Step);
    }

    /// <summary>What cools stays on: it is in the next pull without a word.</summary>
    [Fact]
    public void A_bath_stays_on()
    {
        PlanSituation now = Situation(Iced, SetUp, new CourseStage(How with { Inputs = Ice }));
        Tell(now, Cooled, 500);
        Assert.Equal(Cooled with { AppliancePressure = now.Goal }, new LookAhead(now).Best().Step);
    }

    /// <summary>At a limit there are three ways: cooled, cooled and throttled, throttled. The one that comes further is taken, of equals the quicker; of those that all end at a limit the one that leaves less.</summary>
    [Theory]
    [InlineData(StageEnd.TargetReached, 900, 800, "cooled")]
    [InlineData(StageEnd.TargetReached, 700, 800, "cooled")]
    [InlineData(StageEnd.TargetReached, 800, 700, "throttled")]
    [InlineData(StageEnd.Stalled, 700, 800, "throttled")]
    public void At_a_limit_the_way_that_comes_further_is_taken(StageEnd cooled, double coolSeconds, double throttleSeconds, string way)
    {
        PlanSituation now = Situation(Iced, SetUp);
        Tell(now, How, 300, StageEnd.HighPressureCutout, 3 * Goal);
        Tell(now, Cooled, coolSeconds, cooled, cooled == StageEnd.TargetReached ? Goal : 2 * Goal);
        Tell(now, How with { IsThrottled = true }, way == "cooled" ? coolSeconds + 100 : throttleSeconds);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(way == "throttled", best.Step.IsThrottled);
        Assert.Equal(way == "throttled" ? StepReason.Throttle : StepReason.Cool, best.Step.Reason);
    }

    /// <summary>Cooled and still at the limit it is throttled as well; what leaves less is better where all end there.</summary>
    [Theory]
    [InlineData(0.9, 0.8, 0.7, 2)]
    [InlineData(0.9, 0.7, 0.8, 1)]
    [InlineData(0.7, 0.8, 0.9, 0)]
    public void Where_all_end_at_a_limit_the_least_is_left(double cooled, double both, double throttled, int way)
    {
        PlanSituation now = Situation(Iced, SetUp);
        Tell(now, How, 300, StageEnd.HighPressureCutout, kilograms: 1);
        Tell(now, Cooled, 300, StageEnd.HighPressureCutout, kilograms: cooled);
        Tell(now, Cooled with { IsThrottled = true }, 300, StageEnd.HighPressureCutout, kilograms: both);
        Tell(now, How with { IsThrottled = true }, 300, StageEnd.HighPressureCutout, kilograms: throttled);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal("Limited", best.Fate.ToString());
        Assert.Equal(new[] { cooled, both, throttled }[way], best.After.Appliance.Mass.Kilograms, 1e-9);
    }

    /// <summary>Heat is put in where that is sooner over and nothing gets hotter than 52 °C or a kelvin above where it began; of a heater that is too strong as much of it as that allows, halved each time, down to a sixteenth. What it saves is told.</summary>
    [Theory]
    [InlineData(1, 300, 1.0)]
    [InlineData(0.5, 300, 0.5)]
    [InlineData(0.25, 300, 0.25)]
    [InlineData(0.0625, 300, 0.0625)]
    [InlineData(0.03, 300, null)]
    [InlineData(1, 501, null)]
    public void Heat_is_put_in_where_that_is_sooner(double bearable, double seconds, double? taken)
    {
        RecoveryJob job = Plain with { Aids = new SiteAids { Heater = Power.FromWatts(800), CrankcaseHeater = Power.FromWatts(50), ApplianceFans = 2 } };
        PlanSituation now = Situation(job, SetUp);
        Tell(now, How, 500);
        for (double share = 1; share > 0.01; share /= 2)
        {
            var warm = new SimulationInputs { HeaterPower = 800 * share, FanFactor = 2 };
            Tell(now, How with { Inputs = warm }, seconds, points: [At(0, flow: 1), At(100, flow: 1, appliance: share > bearable ? 325.2 : 325.1), At(seconds, flow: 1)]);
        }

        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(taken * 800, best.Step.Reason == StepReason.Warm ? best.Step.Inputs.HeaterPower : null);
        Assert.Equal(taken is null ? 0 : 500 - seconds, best.Step.Saves.Seconds);
        if (taken is not null)
        {
            Assert.Equal((2.0, 0.0), (best.Step.Inputs.FanFactor, best.Step.Inputs.CrankcaseHeaterPower));
        }
    }

    /// <summary>Metal that gets hot is as bad; the crankcase heater is for oil; what cools stays on beside the heat.</summary>
    [Fact]
    public void Hot_metal_is_too_hot_and_the_crankcase_heater_is_for_oil()
    {
        RecoveryJob job = Iced with { Aids = Iced.Aids with { CrankcaseHeater = Power.FromWatts(50) } };
        RecoveryJob oily = job.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.PolyolEster } });
        foreach ((double metal, bool isWarmed) in new[] { (325.1, true), (325.2, false) })
        {
            PlanSituation now = Situation(oily, SetUp, new CourseStage(How with { Inputs = Ice }));
            Tell(now, Cooled, 500);
            Tell(now, Cooled with { Inputs = Ice with { CrankcaseHeaterPower = 50 } }, 400, points: [At(0, flow: 1), At(100, flow: 1, metal: metal), At(400, flow: 1)]);
            Assert.Equal(isWarmed ? StepReason.Warm : StepReason.Cool, new LookAhead(now).Best().Step.Reason);
        }

        // Without oil it would be the same pull again, which is no sooner over.
        PlanSituation dry = Situation(job, SetUp);
        Tell(dry, How, 500);
        Assert.Equal(StepReason.Usual, new LookAhead(dry).Best().Step.Reason);
    }

    /// <summary>An appliance that is hotter than 52 °C before may get a kelvin hotter.</summary>
    [Theory]
    [InlineData(330.9, true)]
    [InlineData(331.1, false)]
    public void What_is_hot_before_may_get_a_kelvin_hotter(double kelvins, bool isWarmed)
    {
        RecoveryJob hot = Plain.With(appliance => appliance with { Temperature = Temperature.FromKelvins(330), Surroundings = Temperature.FromKelvins(293.15) }) with { Aids = new SiteAids { ApplianceFans = 3 } };
        PlanSituation now = Situation(hot, SetUp, new CourseStage(StageKind.Rest) { After = Holds(hot, 1, 330) });
        Tell(now, How, 500);
        Tell(now, How with { Inputs = new SimulationInputs { FanFactor = 3 } }, 400, points: [At(0, flow: 1, appliance: 330), At(100, flow: 1, appliance: kelvins), At(400, flow: 1)]);
        Assert.Equal(isWarmed ? StepReason.Warm : StepReason.Usual, new LookAhead(now).Best().Step.Reason);
    }

    /// <summary>What is still liquid and would turn solid is kept a twentieth above the end of its equation until it is gone, a second more, where that does not crawl.</summary>
    [Theory]
    [InlineData(700.0, 1.0, true)]
    [InlineData(null, 1.0, false)]
    [InlineData(9000.0, 0.0, false)]
    public void Liquid_is_kept_above_the_solid(double? gone, double flow, bool isKept)
    {
        PlanSituation now = Situation(Plain, SetUp);
        double floor = 1.05 * Plain.Appliance.Fluid.Model.SaturationAtTemperature(Plain.Appliance.Fluid.Model.Range.MinimumTemperature).Bubble.Pressure;
        now.Tell(new CourseStage(How with { AppliancePressure = now.Goal }) { End = StageEnd.PropertyRange, Seconds = 300, Points = [At(0, flow: 1), At(300, flow: 1)] });
        PlanStep keep = How with { LowestPressure = Pressure.FromPascals(floor), Reason = StepReason.KeepLiquid };
        now.Tell(new CourseStage(keep with { Duration = Duration.FromSeconds(86_400) }) { Seconds = 86_400, Points = [At(0, flow: 1), At(100, flow: flow), At(8000, flow: flow)], Figures = new StageFigures { LiquidGoneAt = gone ?? double.NaN } });
        now.Tell(new CourseStage(keep with { Duration = Duration.FromSeconds(701) }) { Seconds = 701 });
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(isKept ? keep with { Duration = Duration.FromSeconds(701) } : How with { AppliancePressure = now.Goal }, best.Step);
        Assert.Equal(isKept ? 701 : 300, best.Seconds, 1e-9);
    }

    /// <summary>A pull that ends at the limit of a cylinder, throttled for long, is left to a fresh cylinder where that, with its change, takes less than seven tenths (our choice).</summary>
    [Theory]
    [InlineData(0.69, true)]
    [InlineData(0.71, false)]
    public void At_the_limit_a_fresh_cylinder_is_taken_where_that_is_much_sooner(double share, bool isChanged)
    {
        RecoveryJob two = Plain with { Times = Plain.Times with { CylinderChange = Duration.FromSeconds(1) }, Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")] };
        PlanSituation now = Situation(two, SetUp);
        CourseStage limited = new(How with { AppliancePressure = now.Goal }) { End = StageEnd.HighPressureCutout, Seconds = 300, Points = [At(0, flow: 1), At(300, flow: 1)], After = Stands(two, 1.3 * Goal).And(Cylinder(two, 5, 350)) };
        SimulationState at = now.Tell(limited).After;
        double after = Fresh(two, at, now);
        double throttled = (300 + 1 + after) / share;
        Assert.True(throttled - 300 > 3, $"{throttled}");
        Tell(now, How with { IsThrottled = true }, throttled);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(isChanged ? StepReason.UntilLimit : StepReason.Throttle, best.Step.Reason);
        Assert.Equal(isChanged ? 300 : throttled, best.Seconds, 1e-9);
        Assert.Equal("Passes", best.Fate.ToString());

        // A machine that is too hot, and a fresh cylinder that is none, help nothing.
        PlanSituation thermal = Situation(two, SetUp);
        thermal.Tell(limited with { End = StageEnd.ThermalCutout });
        Tell(thermal, How with { IsThrottled = true }, throttled);
        Assert.Equal(StepReason.Throttle, new LookAhead(thermal).Best().Step.Reason);
        RecoveryJob single = two with { Cylinders = [two.Cylinders[0]] };
        PlanSituation one = Situation(single, SetUp);
        one.Tell(limited with { After = Stands(single, 1.3 * Goal).And(Cylinder(single, 5, 350)) });
        Tell(one, How with { IsThrottled = true }, throttled);
        Assert.Equal(StepReason.Throttle, new LookAhead(one).Best().Step.Reason);
    }

    /// <summary>A pull that crawls against its cylinder, at less than a fifth of the machine's efficiency, is changed over where the rest, three changes long at least, takes a fresh one with its change less than seven tenths.</summary>
    [Theory]
    [InlineData(0.69, 1, true)]
    [InlineData(0.71, 1, false)]
    [InlineData(0.3, 0.98, false)]
    public void A_pull_that_crawls_is_left_to_a_fresh_cylinder(double share, double near, bool isChanged)
    {
        RecoveryJob two = Plain with { Times = Plain.Times with { CylinderChange = Duration.FromSeconds(1) }, Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")] };
        PlanSituation now = Situation(two, SetUp);
        RecoveryMachine machine = two.Machine;
        double ratio = 1.005 * near * Math.Pow(1 + (0.8 * machine.VolumetricEfficiency / machine.ClearanceRatio), machine.PolytropicExponent);
        double pascals = 1.2 * Goal;
        SimulationState cutAfter = Stands(two, pascals)(now.State);
        PlanStep until = How with { Duration = Duration.FromSeconds(400), Reason = StepReason.UntilChange };
        SimulationState from = now.Tell(new CourseStage(until) { Seconds = 400, After = _ => cutAfter }).After;
        double left = (1 + Fresh(two, from, now)) / share;
        Assert.True(left > 3, $"{left}");
        TrajectoryPoint[] points = [At(0, flow: 1), At(200, flow: 1, pascals: pascals, discharge: 0.8 * ratio * pascals), At(400, flow: 1, pascals: pascals, discharge: ratio * pascals), At(400 + left, flow: 1, pascals: Goal, discharge: ratio * pascals)];
        Tell(now, How, 400 + left, points: points);
        PullPlan best = new LookAhead(now).Best();
        Assert.Equal(isChanged ? StepReason.UntilChange : StepReason.Usual, best.Step.Reason);
        Assert.Equal(isChanged ? 400 : 400 + left, best.Seconds, 1e-9);

        // Liquid waits for heat, not for the cylinder.
        PlanSituation wet = Situation(two, SetUp);
        Tell(wet, How, 400 + left, points: [.. points.Select(point => point with { LiquidKilograms = 0.1 })]);
        wet.Tell(new CourseStage(until) { Seconds = 400, After = _ => cutAfter });
        Assert.Equal(StepReason.Usual, new LookAhead(wet).Best().Step.Reason);
    }

    /// <summary>Nobody changes a cylinder for what takes less than three changes (our choice): throttled for longer than to the limit, or crawling.</summary>
    [Theory]
    [InlineData(290, false)]
    [InlineData(310, true)]
    public void A_change_is_worth_three_times_its_time(double longer, bool isChanged)
    {
        RecoveryJob two = Plain with { Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")] };
        PlanSituation limited = Situation(two, SetUp);
        limited.Tell(new CourseStage(How with { AppliancePressure = limited.Goal }) { End = StageEnd.HighPressureCutout, Seconds = 300, Points = [At(0, flow: 1), At(300, flow: 1)], After = Stands(two, 1.3 * Goal).And(Cylinder(two, 5, 350)) });
        Tell(limited, How with { IsThrottled = true }, 300 + longer);
        Assert.Equal(isChanged ? StepReason.UntilLimit : StepReason.Throttle, new LookAhead(limited).Best().Step.Reason);
        PlanSituation crawling = Situation(two, SetUp);
        PlanStep until = How with { Duration = Duration.FromSeconds(400), Reason = StepReason.UntilChange };
        crawling.Tell(new CourseStage(until) { Seconds = 400, After = Stands(two, 1.2 * Goal) });
        Tell(crawling, How, 400 + longer, points: [At(0, flow: 1), At(400, flow: 1, pascals: 1.2 * Goal, discharge: 100 * Goal), At(400 + longer, flow: 1, pascals: Goal, discharge: 100 * Goal)]);
        Assert.Equal(isChanged ? StepReason.UntilChange : StepReason.Usual, new LookAhead(crawling).Best().Step.Reason);
    }

    /// <summary>A fresh cylinder is one below seven tenths of the pressure of the one that is hot (our choice).</summary>
    [Theory]
    [InlineData(0.69, true)]
    [InlineData(0.71, false)]
    public void A_fresh_cylinder_has_less_than_seven_tenths_of_the_pressure(double share, bool isChanged)
    {
        double hot = Plain.Appliance.Fluid.Model.SaturationAtTemperature(335).Bubble.Pressure, kelvins = Plain.Appliance.Fluid.Model.SaturationAtPressure(share * hot).Bubble.Temperature;
        RecoveryJob two = Plain with { Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2") with { Content = Mass.FromKilograms(5), Refrigerant = "R-134a", Temperature = Temperature.FromKelvins(kelvins) }] };
        PlanSituation now = Situation(two, new CourseStage(new PlanStep(StageKind.SetUp) { Cylinder = two.Cylinders[0] }) { End = null });
        now.Tell(new CourseStage(How with { AppliancePressure = now.Goal }) { End = StageEnd.HighPressureCutout, Seconds = 300, Points = [At(0, flow: 1), At(300, flow: 1)], After = Stands(two, 1.3 * Goal).And(Cylinder(two, 5, 335)) });
        Tell(now, How with { IsThrottled = true }, 20_000);
        Assert.Equal(isChanged ? StepReason.UntilLimit : StepReason.Throttle, new LookAhead(now).Best().Step.Reason);
    }

    private static PlanStep Cooled => How with { Inputs = Ice, Reason = StepReason.Cool };

    /// <summary>What a pull to the level takes into the second cylinder, from a state, by a simulation of its own.</summary>
    private static double Fresh(RecoveryJob job, SimulationState start, PlanSituation now)
    {
        StageResult pull = VaporRecovery.Simulate(job.Appliance, job.Machine, job.Hoses, job.Cylinders[1], new VaporRecoveryOptions
        {
            Start = start with { Cylinder = CylinderState.Around(job.Appliance, job.Cylinders[1]) },
            TargetPressure = now.Goal,
            MaximumDuration = Duration.FromDays(1),
        });
        Assert.Equal(StageEnd.TargetReached, pull.End);
        return pull.Duration.Seconds;
    }

    private static void Tell(PlanSituation now, PlanStep how, double seconds, StageEnd end = StageEnd.TargetReached, double pascals = Goal, double? kilograms = null, TrajectoryPoint[]? points = null) => now.Tell(
        new CourseStage(how with { AppliancePressure = now.Goal })
        {
            End = end,
            Seconds = seconds,
            Points = points ?? [At(0, flow: 1), At(seconds, flow: 1)],
            After = kilograms is double left ? Holds(now.Job, left) : Stands(now.Job, Math.Min(pascals, now.Goal.Pascals * (pascals / Goal))),
        });
}
