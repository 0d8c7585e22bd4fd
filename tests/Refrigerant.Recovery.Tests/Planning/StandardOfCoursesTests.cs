using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What the standard strategy does next, after courses that are set down by hand.</summary>
public class StandardOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static readonly RecoveryJob Two = Plain with { Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(40, "C2")] };

    private static readonly CourseStage Done = Pull() with { After = Stands(Plain, 0.9 * Goal) };

    /// <summary>Set up, sweep; at the level a hold; after the hold clear and close, and nothing after that.</summary>
    [Fact]
    public void A_job_goes_its_usual_way()
    {
        Assert.Equal((StageKind.SetUp, "C1"), (Next(Two)!.Kind, Next(Two)!.Cylinder!.Label));
        Assert.Equal(StageKind.HoseSweep, Next(Two, SetUp)!.Kind);
        Assert.Equal(StageKind.Hold, Next(Plain, SetUp, Sweep, Done)!.Kind);
        Assert.Equal(StageKind.MachineClearing, Next(Plain, SetUp, Sweep, Done, Hold())!.Kind);
        CourseStage clear = new(StageKind.MachineClearing) { End = null };
        Assert.Equal(StageKind.Close, Next(Plain, SetUp, Sweep, Done, Hold(), clear)!.Kind);
        Assert.Equal(StageKind.Close, Next(Plain with { ClearMachine = false }, SetUp, Sweep, Done, Hold())!.Kind);
        Assert.Null(Next(Plain, SetUp, Sweep, Done, Hold(), clear, Close));
        Assert.Null(Next(Plain with { Cylinders = [] }));
    }

    /// <summary>A hold of less than a second is none, nor one where the rule's share is out.</summary>
    [Theory]
    [InlineData(0.9, StageKind.MachineClearing)]
    [InlineData(1.1, StageKind.Hold)]
    public void A_hold_is_asked_for_from_a_second_on(double seconds, StageKind kind) =>
        Assert.Equal(kind, Next(Plain with { Times = Plain.Times with { Hold = Duration.FromSeconds(seconds) } }, SetUp, Sweep, Done)!.Kind);

    [Fact]
    public void A_share_that_is_out_needs_no_hold()
    {
        RecoveryJob small = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(1) }) with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small } };
        double left = Run(small).LeftByShare;
        Assert.Equal(StageKind.MachineClearing, Next(small, SetUp, Sweep, Pull() with { After = Holds(small, 0.99 * left) })!.Kind);
    }

    /// <summary>After a hold that failed one pulls again, as often as the job allows.</summary>
    [Theory]
    [InlineData(2, 1, true)]
    [InlineData(2, 2, false)]
    [InlineData(3, 2, true)]
    public void After_a_hold_that_failed_it_pulls_again(int most, int holds, bool pulls)
    {
        RecoveryJob job = Plain with { MaximumPulls = most };
        CourseStage back = Hold() with { After = Stands(job, 1.2 * Goal) };
        CourseStage[] stages = [SetUp, Sweep, .. Enumerable.Repeat(new[] { Done, back }, holds).SelectMany(pair => pair)];
        PlanSituation now = Situation(job, stages);
        StageKind next = StandardStrategy.Instance.Next(now)!.Kind;
        Assert.Equal(pulls ? StageKind.VaporRecovery : StageKind.MachineClearing, next);
    }

    /// <summary>Liquid that is left in a hold makes it fail, whatever the gauge shows.</summary>
    [Fact]
    public void A_hold_over_liquid_has_failed()
    {
        CourseStage wet = Hold() with { After = Holds(Plain, 0.6, 242) };
        Assert.NotEqual(StageKind.MachineClearing, Next(Plain, SetUp, Sweep, Done, wet)!.Kind);
        Assert.NotEqual(StageKind.Hold, Next(Plain, SetUp, Sweep, Pull() with { After = Holds(Plain, 0.6, 242) })!.Kind);
    }

    /// <summary>A full cylinder is changed; a pull that ran until it was to be changed is changed for a cooler one; where there is none the job is finished, and the machine not cleared into a full one.</summary>
    [Fact]
    public void A_cylinder_is_changed_for_the_reason_of_the_pull()
    {
        PlanStep full = Next(Two, SetUp, Sweep, Pull(StageEnd.CylinderFull))!;
        Assert.Equal((StageKind.CylinderChange, "C2", StepReason.Usual), (full.Kind, full.Cylinder!.Label, full.Reason));
        PlanStep until = Next(Two, SetUp, Sweep, Pull(StageEnd.TimeLimit, StepReason.UntilChange))!;
        Assert.Equal((StageKind.CylinderChange, StepReason.CoolerCylinder), (until.Kind, until.Reason));
        Assert.Equal(StageKind.Close, Next(Plain, SetUp, Sweep, Pull(StageEnd.CylinderFull))!.Kind);
        Assert.Equal(StageKind.MachineClearing, Next(Plain, SetUp, Sweep, Pull(StageEnd.TimeLimit, StepReason.UntilChange))!.Kind);
    }

    /// <summary>A cylinder at its limit rests until it has three quarters of it, or a twentieth more than it comes to in its bath, with what cools best; its time is what the cooling takes.</summary>
    [Theory]
    [InlineData(StageEnd.HighPressureCutout)]
    [InlineData(StageEnd.CylinderPressure)]
    public void A_hot_cylinder_rests(StageEnd end)
    {
        RecoveryJob ice = Plain with { Aids = new SiteAids { HasIce = true } };
        double limit = Math.Min(Plain.Machine.HighPressureCutout.Pascals, (1.25 * Plain.Cylinders[0].ServicePressure.Pascals) + 101_325);
        double hot = Plain.Appliance.Fluid.Model.SaturationAtPressure(0.98 * limit).Bubble.Temperature;
        PlanSituation now = Situation(ice, SetUp, Sweep, Pull(end) with { After = Holds(ice, 1).And(Cylinder(ice, 5, hot)) });
        PlanStep rest = StandardStrategy.Instance.Next(now)!;
        Assert.Equal((StageKind.Rest, StepReason.Cool), (rest.Kind, rest.Reason));
        Assert.Equal(0.75 * limit, rest.CylinderPressure!.Value.Pascals, 1.0);
        Assert.Equal(273.15, rest.Inputs.CylinderSurroundings);
        Assert.InRange(rest.Duration!.Value.Seconds, 1, 1799);

        // In air, a fortieth below the limit is hardly cooler after an hour: 2 % are worth the wait, less are not.
        CourseStage Rested(PlanSituation situation, double pressure, double time) => new(new PlanStep(StageKind.Rest)
        {
            Reason = StepReason.Cool,
            Duration = Duration.FromSeconds(3600),
            CylinderPressure = Pressure.FromPascals(Math.Max(0.75 * limit, (1.05 * Plain.Appliance.Fluid.Model.SaturationAtTemperature(293.15).Bubble.Pressure) + situation.State.Cylinder!.NonCondensablePressure.Pascals)),
        })
        { Seconds = time, After = Cylinder(Plain, 5, Plain.Appliance.Fluid.Model.SaturationAtPressure(pressure * situation.State.Cylinder!.Pressure.Pascals).Bubble.Temperature) };
        foreach ((double share, bool rests) in new[] { (0.97, true), (0.99, false) })
        {
            PlanSituation air = Situation(Plain, SetUp, Pull(end) with { After = Holds(Plain, 1).And(Cylinder(Plain, 5, hot)) }, Sweep, Pull(end));
            air.Tell(Rested(air, share, 1234));
            PlanStep? next = StandardStrategy.Instance.Next(air);
            Assert.Equal(rests ? StageKind.Rest : StageKind.MachineClearing, next!.Kind);
            Assert.Equal(rests ? 1234 : null, next.Duration?.Seconds);
        }
    }

    /// <summary>A dozen rests are enough.</summary>
    [Theory]
    [InlineData(11, StageKind.Rest)]
    [InlineData(12, StageKind.MachineClearing)]
    public void A_dozen_rests_are_enough(int rests, StageKind kind)
    {
        CourseStage hot = Pull(StageEnd.HighPressureCutout) with { After = Holds(Plain, 1).And(Cylinder(Plain, 5, 364)) }, rest = new(StageKind.Rest);
        Assert.Equal(kind, Next(Plain, [SetUp, Sweep, .. Enumerable.Repeat(new[] { hot, rest }, rests).SelectMany(pair => pair), hot])!.Kind);
    }

    /// <summary>A machine that is hot rests half an hour; one that is hot again at once, having moved less than a fiftieth of the charge since, is not rested a third time.</summary>
    [Theory]
    [InlineData(0, 0, true)]
    [InlineData(1, 0, true)]
    [InlineData(2, 0.039, false)]
    [InlineData(2, 0.041, true)]
    public void A_hot_machine_rests_while_that_pays(int rests, double moved, bool isRested)
    {
        double kilograms = 2;
        CourseStage Hot(double less)
        {
            kilograms -= less;
            return Pull(StageEnd.ThermalCutout) with { After = Holds(Plain, kilograms) };
        }

        CourseStage rest = new(StageKind.Rest) { Seconds = 1800 };
        List<CourseStage> stages = [SetUp, Sweep, Hot(0.3)];
        for (int i = 0; i < rests; i++)
        {
            stages.AddRange([rest, Hot(i == rests - 1 ? moved : 0.3)]);
        }

        PlanStep next = Next(Plain, [.. stages])!;
        Assert.Equal(isRested ? StageKind.Rest : StageKind.MachineClearing, next.Kind);
        Assert.Equal(isRested ? 1800 : null, next.Duration?.Seconds);
        Assert.Null(next.CylinderPressure);
    }

    /// <summary>A cooler cylinder takes over from a hot one where its pressure is a tenth lower and changing it takes less than the rest; as often as there are cylinders.</summary>
    [Fact]
    public void A_cooler_cylinder_takes_over()
    {
        RecoveryJob Of(double kelvins, double minutes) => Plain with
        {
            Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(40, "C2") with { Content = Mass.FromKilograms(5), Refrigerant = "R-134a", Temperature = Temperature.FromKelvins(kelvins) }],
            Times = Plain.Times with { CylinderChange = Duration.FromMinutes(minutes) },
        };
        double PressureAt(double kelvins) => Plain.Appliance.Fluid.Model.SaturationAtTemperature(kelvins).Bubble.Pressure;
        CourseStage hot = Pull(StageEnd.HighPressureCutout) with { After = Holds(Plain, 1).And(Cylinder(Plain, 5, 320)) };
        double as9 = Plain.Appliance.Fluid.Model.SaturationAtPressure(0.9 * PressureAt(320)).Bubble.Temperature;
        PlanStep Taken(RecoveryJob job) => Next(job, SetUp, Sweep, hot)!;
        Assert.Equal((StageKind.CylinderChange, StepReason.CoolerCylinder), (Taken(Of(as9 - 0.3, 1)).Kind, Taken(Of(as9 - 0.3, 1)).Reason));
        Assert.Equal("C2", Taken(Of(as9 - 0.3, 1)).Cylinder!.Label);
        Assert.NotEqual(StageKind.CylinderChange, Taken(Of(as9 + 0.3, 1)).Kind);
    }

    /// <summary>What crawled to a stop is deepened where the machine is near its deepest, without liquid; where liquid waits for heat it is not.</summary>
    [Fact]
    public void A_pull_that_was_given_up_near_the_deepest_is_deepened()
    {
        RecoveryJob ice = Plain with { Aids = new SiteAids { HasIce = true }, Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(1) } };
        RecoveryMachine machine = ice.Machine;
        double cylinder = Plain.Appliance.Fluid.Model.SaturationAtTemperature(330).Bubble.Pressure;

        // η(r) = η0 − c·(r^(1/n) − 1) is a fifth of η0 at r = (1 + 0.8·η0/c)^n.
        Assert.Equal(0, machine.LeakageTerm);
        double ratio = Math.Pow(1 + (0.8 * machine.VolumetricEfficiency / machine.ClearanceRatio), machine.PolytropicExponent);
        double deepest = machine.DeepestVacuum(Pressure.FromPascals(cylinder)).Pascals;
        foreach ((double share, bool isNear) in new[] { (1.01, false), (0.99, true) })
        {
            double pressure = share * cylinder / ratio;
            RecoveryJob job = ice with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(0.7 * deepest) } };
            CourseStage crawl = Pull(StageEnd.TimeLimit, StepReason.GiveUp) with { After = Stands(job, pressure).And(Cylinder(job, 5, 330)) };
            Assert.Equal(isNear ? StageKind.Rest : StageKind.MachineClearing, Next(job, SetUp, Sweep, crawl)!.Kind);
            CourseStage wet = crawl with { After = Holds(job, 1, 240).And(Cylinder(job, 5, 330)) };
            Assert.Equal(StageKind.MachineClearing, Next(job, SetUp, Sweep, wet)!.Kind);
        }
    }

    /// <summary>To get deeper the cylinder cools to nine tenths of what the level allows against it: in proportion to its pressure, whichever is deeper, the machine's own or where it stands.</summary>
    [Fact]
    public void A_cylinder_is_cooled_as_far_as_the_level_needs()
    {
        RecoveryJob ice = Plain with { Aids = new SiteAids { HasIce = true } };
        double cylinder = Plain.Appliance.Fluid.Model.SaturationAtTemperature(330).Bubble.Pressure;
        PlanStep rest = Deepened(ice, 1.4 * Goal)!;
        Assert.Equal((StageKind.Rest, StepReason.Cool), (rest.Kind, rest.Reason));
        Assert.Equal(0.9 * cylinder / 1.4, rest.CylinderPressure!.Value.Pascals, 0.001 * cylinder);
        Assert.Equal(273.15, rest.Inputs.CylinderSurroundings);
        Assert.InRange(rest.Duration!.Value.Seconds, 60, 7199);

        // Deeper than its bath lets it come it is not cooled; an emptier cylinder is taken, where there is one.
        Assert.Equal(StageKind.MachineClearing, Deepened(ice, 5.5 * Goal)!.Kind);
        PlanStep change = Deepened(Two with { Aids = ice.Aids }, 5.5 * Goal)!;
        Assert.Equal((StageKind.CylinderChange, "C2", StepReason.CoolerCylinder), (change.Kind, change.Cylinder!.Label, change.Reason));

        static PlanStep? Deepened(RecoveryJob job, double pressure) => Next(job, SetUp, Sweep, Pull(StageEnd.Stalled) with { After = Stands(job, pressure).And(Cylinder(job, 5, 330)) });
    }

    /// <summary>A bath that lets the cylinder come to within a thirtieth of what the level needs is not worth the wait (our choice).</summary>
    [Theory]
    [InlineData(0.965, StageKind.Rest)]
    [InlineData(0.975, StageKind.MachineClearing)]
    public void A_bath_that_hardly_helps_is_not_waited_for(double share, StageKind kind)
    {
        double cylinder = Plain.Appliance.Fluid.Model.SaturationAtTemperature(330).Bubble.Pressure, most = cylinder / 3;
        double bath = Plain.Appliance.Fluid.Model.SaturationAtPressure(share * most / 1.05).Bubble.Temperature;
        Assert.InRange(bath, 274, 293);
        RecoveryJob job = Plain with { Aids = new SiteAids { WaterBath = Temperature.FromKelvins(bath) } };
        Assert.Equal(kind, Next(job, SetUp, Sweep, Pull(StageEnd.Stalled) with { After = Stands(job, 3 * Goal).And(Cylinder(job, 5, 330)) })!.Kind);
    }

    /// <summary>So often: rests and cooler cylinders, one more than there are cylinders and then no more.</summary>
    [Theory]
    [InlineData(2, StageKind.Rest)]
    [InlineData(3, StageKind.MachineClearing)]
    public void Deeper_is_tried_so_often(int rests, StageKind kind)
    {
        RecoveryJob ice = Plain with { Aids = new SiteAids { HasIce = true } };
        CourseStage stalled = Pull(StageEnd.Stalled) with { After = Stands(ice, 1.4 * Goal).And(Cylinder(ice, 5, 330)) }, rest = new(StageKind.Rest);
        Assert.Equal(kind, Next(ice, [SetUp, Sweep, .. Enumerable.Repeat(new[] { stalled, rest }, rests).SelectMany(pair => pair), stalled])!.Kind);
    }

    /// <summary>A pull that will not come to the level is made as long as it moves something, of the charge or of the pressure a ten-thousandth; the first is made though nothing moves, to see, unless a limit ends it at once: then the cylinder cools.</summary>
    [Theory]
    [InlineData(true, StageEnd.LowPressureSwitch, 0, StageKind.VaporRecovery, StepReason.Usual)]
    [InlineData(false, StageEnd.LowPressureSwitch, 0, StageKind.MachineClearing, StepReason.Usual)]
    [InlineData(false, StageEnd.LowPressureSwitch, 1.1e-4, StageKind.VaporRecovery, StepReason.Usual)]
    [InlineData(true, StageEnd.HighPressureCutout, 1.1e-4, StageKind.VaporRecovery, StepReason.UntilLimit)]
    [InlineData(true, StageEnd.HighPressureCutout, 0.9e-4, StageKind.Rest, StepReason.Cool)]
    [InlineData(false, StageEnd.HighPressureCutout, 0.9e-4, StageKind.Rest, StepReason.Cool)]
    [InlineData(false, StageEnd.Stalled, 0, StageKind.Rest, StepReason.Cool)]
    public void A_pull_that_moves_something_is_made(bool isFirst, StageEnd end, double moved, StageKind kind, StepReason reason)
    {
        // Liquid, so that the pressure stays while mass goes; for the machine's deepest gas at a pressure that a cooler cylinder lets fall.
        RecoveryJob ice = Plain with { Aids = new SiteAids { HasIce = true } };
        Func<SimulationState, SimulationState> stands = (end == StageEnd.Stalled ? Stands(ice, 1.4 * Goal) : Holds(ice, 1)).And(Cylinder(ice, 5, end == StageEnd.Stalled ? 330 : 364));
        CourseStage before = isFirst ? new CourseStage(StageKind.Rest) { After = stands } : Pull(StageEnd.TimeLimit) with { After = stands };
        PlanSituation now = Situation(ice, SetUp, Sweep, before);
        double kilograms = now.State.Appliance.Mass.Kilograms - (2 * moved);
        foreach (bool cooled in new[] { false, true })
        {
            foreach (bool throttled in new[] { false, true })
            {
                var how = new PlanStep(StageKind.VaporRecovery)
                {
                    AppliancePressure = now.Goal,
                    IsThrottled = throttled,
                    Inputs = cooled ? new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 273.15 } : default,
                };
                now.Tell(new CourseStage(how) { End = end, Seconds = 5, Points = [], After = Holds(ice, kilograms) });
            }
        }

        PlanStep next = StandardStrategy.Instance.Next(now)!;
        Assert.Equal((kind, reason), (next.Kind, next.Reason));
    }

    /// <summary>After a hold that failed, a pull that is known not to make it hold is none; the cylinder cools where it is at its limit.</summary>
    [Theory]
    [InlineData(StageEnd.LowPressureSwitch, StageKind.MachineClearing)]
    [InlineData(StageEnd.HighPressureCutout, StageKind.Rest)]
    public void After_a_hold_only_a_pull_that_helps_is_made(StageEnd end, StageKind kind)
    {
        PlanSituation now = Situation(Plain, SetUp, Sweep, Done, Hold() with { After = Holds(Plain, 1).And(Cylinder(Plain, 5, 364)) });
        foreach (bool throttled in new[] { false, true })
        {
            now.Tell(new CourseStage(new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal, IsThrottled = throttled }) { End = end, Seconds = 5, Points = [], After = Holds(Plain, 0.5) });
        }

        Assert.Equal(kind, StandardStrategy.Instance.Next(now)!.Kind);
    }

    /// <summary>Sixty pulls are enough.</summary>
    [Theory]
    [InlineData(59, true)]
    [InlineData(60, false)]
    public void Sixty_pulls_are_enough(int pulls, bool goesOn)
    {
        CourseStage pull = Pull(StageEnd.TimeLimit) with { Seconds = 5 };
        PlanSituation now = Situation(Plain, [SetUp, Sweep, .. Enumerable.Repeat(pull, pulls)]);
        Assert.Equal(goesOn, StandardStrategy.Instance.Next(now)!.Kind == StageKind.VaporRecovery);
    }

    private static PlanStep? Next(RecoveryJob job, params CourseStage[] stages) => StandardStrategy.Instance.Next(Situation(job, stages));
}
