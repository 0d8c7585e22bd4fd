using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is said of cylinders over courses that are set down by hand.</summary>
public class CylinderOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static readonly RecoveryJob Two = Plain with { Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")] };

    private static PropertyModel Model => Plain.Appliance.Fluid.Model;

    /// <summary>No cylinder is to be warmer than 52 °C (common practice, no source): anywhere in its course or in the end, of its content or its wall.</summary>
    [Theory]
    [InlineData(325.1, 300, false)]
    [InlineData(325.2, 300, true)]
    [InlineData(300, 325.2, true)]
    [InlineData(300, 325.1, false)]
    public void A_cylinder_that_gets_hot_is_told_with_its_hottest_moment(double within, double end, bool isHot)
    {
        CourseStage pull = Pull() with { After = Cylinder(Plain, 5, end), Points = [At(0, cylinder: 295), At(300, cylinder: within), At(600, cylinder: end)] };
        Finding? hot = Plan(Plain, SetUp, pull).ToDo.Said("cylinder-hot");
        Assert.Equal(isHot, hot is not null);
        if (hot is not null)
        {
            Assert.Equal(Math.Max(within, end), hot.Figure("hottest"), 1e-9);
            Assert.Equal("C1", hot.Word("cylinder"));
            Assert.Equal(Severity.Warning, hot.Severity);
        }
    }

    /// <summary>Of two that get hot the hottest is named, by its own stages.</summary>
    [Fact]
    public void The_hottest_of_two_is_named()
    {
        CourseStage Hot(double kelvins) => Pull() with { Points = [At(0, cylinder: 295), At(300, cylinder: kelvins)] };
        RecoveryPlan plan = Plan(Two, SetUp, Hot(327), Change("C2"), Hot(329));
        Assert.Equal(("C2", 329.0), (plan.ToDo.Said("cylinder-hot")!.Word("cylinder"), plan.ToDo.Said("cylinder-hot")!.Figure("hottest")));
        RecoveryPlan other = Plan(Two, SetUp, Hot(329), Change("C2"), Hot(327));
        Assert.Equal(("C1", 329.0), (other.ToDo.Said("cylinder-hot")!.Word("cylinder"), other.ToDo.Said("cylinder-hot")!.Figure("hottest")));
    }

    /// <summary>A cylinder that ends above the gauge pressure that it is marked for, and which others do.</summary>
    [Fact]
    public void A_cylinder_above_its_service_pressure_is_told()
    {
        double service = Two.Cylinders[0].ServicePressure.Pascals + Air;
        double at = Model.SaturationAtPressure(service).Bubble.Temperature;
        CourseStage To(double kelvins) => Pull() with { After = Cylinder(Two, 5, kelvins) };
        Assert.Null(Plan(Two, SetUp, To(at - 0.2), Change("C2"), To(at - 0.2)).ToDo.Said("cylinder-above-service"));
        Finding one = Plan(Two, SetUp, To(at + 0.2), Change("C2"), To(at - 5)).ToDo.Said("cylinder-above-service")!;
        Assert.Equal("C1", one.Word("cylinder"));
        Assert.Equal(Model.SaturationAtTemperature(at + 0.2).Bubble.Pressure - Air, one.Figure("pressure"), 0.02 * service);
        Assert.DoesNotContain(one.Values, value => value.Name == "others");
        Finding two = Plan(Two, SetUp, To(at + 0.5), Change("C2"), To(at + 3)).ToDo.Said("cylinder-above-service")!;
        Assert.Equal(("C2", "C1"), (two.Word("cylinder"), two.Word("others")));
    }

    /// <summary>Room that is missing: the charge less what the cylinders that may be filled take, and only where they were in the way.</summary>
    [Fact]
    public void Missing_room_is_the_charge_less_what_may_be_filled()
    {
        RecoveryCylinder unfit = Jobs.Cylinder(200, "U") with { Specification = CylinderSpecification.FromMark("DOT 39 400") };
        RecoveryJob job = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(20) }) with { Cylinders = [Jobs.Cylinder(20, "C1"), Jobs.Cylinder(20, "C2"), unfit] };
        double limit = CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).Room.Kilograms;
        CourseStage full = Pull(StageEnd.CylinderFull) with { Received = limit };
        Finding missing = Plan(job, SetUp, full, Change("C2"), full).ToDo.Said("cylinder-room-missing")!;
        Assert.Equal(20 - (2 * limit), missing.Figure("missing"), 1e-6);
        Assert.Equal(2 * limit, missing.Figure("room"), 1e-6);
        Assert.Equal(20, missing.Figure("charge"));
        Assert.Null(Plan(job, SetUp, Pull(StageEnd.Stalled)).ToDo.Said("cylinder-room-missing"));
        RecoveryJob roomy = job with { Cylinders = [Jobs.Cylinder(200, "C1")] };
        Assert.Null(Plan(roomy, SetUp, full).ToDo.Said("cylinder-room-missing"));
        Finding none = Plan(job with { Cylinders = [] }).ToDo.Said("no-cylinder")!;
        Assert.Equal((20.0, Severity.Stop), (none.Figure("charge"), none.Severity));
    }

    /// <summary>Rests are told by their number and their time, with what cools; a rest that waits for something else is not one of them.</summary>
    [Fact]
    public void Rests_for_the_cylinder_add_up()
    {
        CourseStage Rest(double seconds, SimulationInputs inputs = default) => new(new PlanStep(StageKind.Rest) { Reason = StepReason.Cool, Inputs = inputs }) { Seconds = seconds };
        CourseStage hot = Pull(StageEnd.HighPressureCutout);
        Finding one = Plan(Plain, SetUp, hot, Rest(900), hot).ToDo.Said("cool-cylinder")!;
        Assert.Equal(900, one.Figure("rest"));
        Assert.DoesNotContain(one.Values, value => value.Name == "rests");
        Assert.Contains("A rest of", one.Message, StringComparison.Ordinal);
        Assert.Equal("in the shade", one.Word("means"));
        var ice = new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 273.15 };
        Finding two = Plan(Plain, SetUp, hot, Rest(900), hot, Rest(1200, ice), hot).ToDo.Said("cool-cylinder")!;
        Assert.Equal((2.0, 2100.0), (two.Figure("rests"), two.Figure("rest")));
        Assert.Equal("in ice and water", two.Word("means"));
        Assert.Equal("in water", Plan(Plain, SetUp, hot, Rest(900, ice with { CylinderSurroundings = 274.1 }), hot).ToDo.Said("cool-cylinder")!.Word("means"));
        Assert.Equal("in the stream of a fan", Plan(Plain, SetUp, hot, Rest(900, new SimulationInputs { CylinderFactor = 3 }), hot).ToDo.Said("cool-cylinder")!.Word("means"));
        var idle = new CourseStage(StageKind.Rest) { Seconds = 500 };
        Assert.Equal(900, Plan(Plain, SetUp, hot, Rest(900), idle, hot).ToDo.Said("cool-cylinder")!.Figure("rest"));
        Assert.Null(Plan(Plain, SetUp, hot, idle).ToDo.Said("cool-cylinder"));
    }

    /// <summary>The limit that a hot cylinder comes to: the machine's cut-out or five quarters of the service pressure (49 CFR 173.301(a)(8)), whichever is lower.</summary>
    [Theory]
    [InlineData(2.5)]
    [InlineData(9)]
    public void The_limit_of_a_hot_cylinder_is_the_lower_of_two(double megapascals)
    {
        RecoveryJob job = Plain with { Machine = Plain.Machine with { HighPressureCutout = Pressure.FromMegapascals(megapascals) } };
        Finding throttle = Plan(job, SetUp, Pull(reason: StepReason.Throttle)).ToDo.Said("throttle-inlet")!;
        Assert.Equal(Math.Min((megapascals * 1e6) - Air, 1.25 * Plain.Cylinders[0].ServicePressure.Pascals), throttle.Figure("limit"), 1.0);
        Assert.Equal("C1", throttle.Word("cylinder"));
        Assert.Null(Plan(job, SetUp, Pull()).ToDo.Said("throttle-inlet"));
    }

    /// <summary>A cylinder that is cooled for a limit, one that is cooled so that the machine pulls deeper, and a machine that is cooled are three matters.</summary>
    [Fact]
    public void Why_it_is_cooled_is_told()
    {
        CourseStage rest = new(new PlanStep(StageKind.Rest) { Reason = StepReason.Cool });
        Finding limit = Plan(Two, SetUp, Pull(StageEnd.CylinderPressure), rest, Change("C2", StepReason.CoolerCylinder)).ToDo.Said("cool-cylinder")!;
        Assert.Contains("gets hot", limit.Message, StringComparison.Ordinal);
        Assert.Contains("A cooler cylinder takes over", limit.Message, StringComparison.Ordinal);
        Finding deep = Plan(Two, SetUp, Pull(StageEnd.Stalled), rest, Pull(StageEnd.TargetReached)).ToDo.Said("cool-cylinder")!;
        Assert.Contains("too warm for the machine to pull deep enough", deep.Message, StringComparison.Ordinal);
        Assert.Contains("until it has cooled", deep.Message, StringComparison.Ordinal);
        Finding change = Plan(Two, SetUp, Pull(StageEnd.Stalled), Change("C2", StepReason.CoolerCylinder), Pull()).ToDo.Said("cool-cylinder")!;
        Assert.Contains("go on into a cooler one", change.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("takes over", change.Message, StringComparison.Ordinal);
        Assert.Equal("C1", change.Word("cylinder"));
        Finding machine = Plan(Two, SetUp, Pull(StageEnd.ThermalCutout), rest, Pull()).ToDo.Said("cool-cylinder")!;
        Assert.Contains("The machine gets too hot", machine.Message, StringComparison.Ordinal);
        Finding both = Plan(Two, SetUp, Pull(StageEnd.ThermalCutout), rest, Pull(StageEnd.HighPressureCutout)).ToDo.Said("cool-cylinder")!;
        Assert.Contains("gets hot: stand it", both.Message, StringComparison.Ordinal);

        // A pull in a bath is limited by the cylinder though no stage ends at the limit.
        Finding bath = Plan(Two, SetUp, Pull(reason: StepReason.Cool)).ToDo.Said("cool-cylinder")!;
        Assert.Contains("gets hot: stand it", bath.Message, StringComparison.Ordinal);
    }

    /// <summary>A bath stays with a cylinder until it comes off; what is cooled best is the coldest water that is at hand, then a fan.</summary>
    [Fact]
    public void A_bath_stays_until_the_cylinder_comes_off()
    {
        var ice = new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 273.15, HeaterPower = 300 };
        CourseStage bath = new(new PlanStep(StageKind.VaporRecovery) { Inputs = ice });
        PlanRun run = Run(Two, SetUp, bath, new CourseStage(StageKind.Rest), Hold());
        Assert.Equal(new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 273.15 }, CylinderCooling.Of(run.Stages));
        Assert.Equal(default, CylinderCooling.Of(Run(Two, SetUp, bath, Change("C2"), Hold()).Stages));
        Assert.Equal(default, CylinderCooling.Of(Run(Two, SetUp, Hold()).Stages));

        SimulationInputs Best(SiteAids aids) => CylinderCooling.Best(Plain with { Aids = aids }, new SimulationInputs { CylinderFactor = 7 });
        Assert.Equal(273.15, Best(new SiteAids { HasIce = true, HasCylinderFan = true }).CylinderSurroundings);
        Assert.Equal(273.15, Best(new SiteAids { HasIce = true, WaterBath = Temperature.FromKelvins(285) }).CylinderSurroundings);
        Assert.Equal((50.0, 285.0), (Best(new SiteAids { WaterBath = Temperature.FromKelvins(285) }).CylinderFactor, Best(new SiteAids { WaterBath = Temperature.FromKelvins(285) }).CylinderSurroundings));
        Assert.Equal(50, Best(new SiteAids { WaterBath = Temperature.FromKelvins(293.15) }).CylinderFactor);
        Assert.Equal((3.0, null), (Best(new SiteAids { WaterBath = Temperature.FromKelvins(294), HasCylinderFan = true }).CylinderFactor, Best(new SiteAids { HasCylinderFan = true }).CylinderSurroundings));
        Assert.Equal(7, Best(new SiteAids()).CylinderFactor);
        Assert.Equal(273.15, CylinderCooling.Coldest(Plain, ice));
        Assert.Equal(293.15, CylinderCooling.Coldest(Plain, new SimulationInputs { CylinderFactor = 3 }));
        Assert.False(CylinderCooling.Cools(new SimulationInputs { CylinderFactor = 1 }));
    }

    /// <summary>The scale between two points of the course runs straight; the first and last reading are those of the start and the end, eight parts between them.</summary>
    [Fact]
    public void The_scale_is_read_between_the_points()
    {
        var points = new Trajectory([At(0, content: 1), At(100, content: 3), At(100, content: 4), At(400, content: 10)]);
        Assert.Equal([1, 2, 3, 6, 10, 10], new[] { 0.0, 50, 100, 200, 400, 500 }.Select(time => CylinderReadings.Content(points, time)));
        Assert.Equal(1, CylinderReadings.Content(points, -5));
        Assert.Equal(1, CylinderReadings.Content(new Trajectory([At(0, content: 1), At(0, content: 2)]), 0));
        CourseStage pull = Pull() with { Seconds = 400, Points = [.. points] };
        PlanRun run = Run(Plain, SetUp, pull, new CourseStage(StageKind.Rest));
        ScaleReading[] readings = [.. run.Stages[1].Hookup.Scale];
        double tare = Plain.Cylinders[0].TareWeight.Kilograms;
        Assert.Equal(Enumerable.Range(0, 9).Select(i => 50.0 * i), readings.Select(reading => reading.Time.Seconds));
        Assert.Equal([tare + 1, tare + 2, tare + 3, tare + 5, tare + 6, tare + 7, tare + 8, tare + 9, tare + 10], readings.Select(reading => reading.GrossWeight.Kilograms), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Empty(run.Stages[2].Hookup.Scale);
        Assert.Empty(Run(Plain, SetUp, pull with { Points = [At(0)] }).Stages[1].Hookup.Scale);
    }

    /// <summary>A cylinder takes no refrigerant whose pressure at 55 °C, or as warm as the air is above the critical point, is more than five quarters of what it is marked for (49 CFR 173.301(a)(8)).</summary>
    [Fact]
    public void A_cylinder_is_as_strong_as_what_is_in_it_when_warm()
    {
        RecoveryCylinder cylinder = Jobs.Cylinder(47.6);
        foreach (string fluid in new[] { "R-134a", "R-410A", "R-404A" })
        {
            RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get(fluid) });
            double gauge = job.Appliance.Fluid.Model.SaturationAtTemperature(293.15).Bubble.Pressure - Air;
            Assert.Empty(CylinderFitness.For(job, cylinder with { ServicePressure = Pressure.FromPascals((gauge / 1.25) + 100) }));
            Finding weak = CylinderFitness.For(job, cylinder with { ServicePressure = Pressure.FromPascals((gauge / 1.25) - 100) }).Single();
            Assert.Equal((CylinderCodes.TooWeak.Id, Severity.Stop), (weak.Code, weak.Severity));
            Assert.Equal(gauge, weak.Figure("pressure"), 1.0);
            Assert.Equal(293.15, weak.Figure("temperature"), 1e-6);
        }

        RecoveryJob carbon = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-744") });
        double critical = carbon.Appliance.Fluid.Model.Range.MaximumSaturationTemperature;
        Finding above = CylinderFitness.For(carbon, cylinder).Single();
        Assert.Equal(critical, above.Figure("temperature"), 1e-6);
        Assert.Equal(carbon.Appliance.Fluid.Model.SaturationAtTemperature(critical).Bubble.Pressure - Air, above.Figure("pressure"), 1.0);
        Assert.Contains("already", above.Message, StringComparison.Ordinal);
    }

    /// <summary>A cylinder told to be warmer than 52 °C is not connected.</summary>
    [Theory]
    [InlineData(325.1, false)]
    [InlineData(325.2, true)]
    public void A_cylinder_that_is_hot_before_is_a_stop(double kelvins, bool isHot) =>
        Assert.Equal(isHot, CylinderFitness.For(Plain, Jobs.Cylinder(47.6) with { Temperature = Temperature.FromKelvins(kelvins) }).Any(finding => finding.Code == CylinderCodes.HotAtStart.Id));

    internal static TrajectoryPoint At(double seconds, double cylinder = 293.15, double content = 1, double appliance = 293.15, double metal = 293.15, double liquid = 0, double flow = 0, double pascals = 500_000, double discharge = 600_000, double kilograms = 1) => new()
    {
        Seconds = seconds,
        AppliancePascals = pascals,
        SuctionPascals = pascals,
        DischargePascals = discharge,
        ApplianceKelvins = appliance,
        MetalKelvins = metal,
        CylinderKelvins = cylinder,
        ApplianceKilograms = kilograms,
        LiquidKilograms = liquid,
        CylinderKilograms = content,
        KilogramsPerSecond = flow,
    };
}
