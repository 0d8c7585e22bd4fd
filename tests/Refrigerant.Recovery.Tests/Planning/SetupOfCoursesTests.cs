using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;
using static Refrigerant.Recovery.Tests.Planning.CylinderOfCoursesTests;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is said of push-pull, frost, heat and what was not given, over courses that are set down by hand.</summary>
public class SetupOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static readonly CourseStage Push = new(StageKind.PushPull) { End = StageEnd.LiquidGone };

    /// <summary>A push that comes above four fifths of the design pressure, absolute, is held at nine tenths of it by the gauge (our choices).</summary>
    [Theory]
    [InlineData(0.79, false)]
    [InlineData(0.81, true)]
    public void A_push_near_the_design_pressure_is_throttled(double share, bool isTold)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { DesignGaugePressure = Pressure.FromPascals(1e6) });
        CourseStage push = Push with { Points = [At(0, pascals: 6e5), At(60, pascals: share * (1e6 + Air)), At(120, pascals: 6e5)] };
        Finding? throttled = Plan(job, SetUp, push).Findings.Said("push-pull-throttled");
        Assert.Equal(isTold, throttled is not null);
        if (throttled is not null)
        {
            Assert.Equal((0.9e6, 1e6), (throttled.Figure("throttle at"), throttled.Figure("design pressure")));
            Assert.Null(Plan(Plain, SetUp, push).Findings.Said("push-pull-throttled"));
            Assert.Null(Plan(job, SetUp, push with { Step = new PlanStep(StageKind.LiquidRecovery) }).Findings.Said("push-pull-throttled"));
        }

        Assert.NotNull(Plan(job, SetUp, push).Findings.Said("push-pull-siphons"));
        Assert.Null(Plan(job, SetUp, Pull()).Findings.Said("push-pull-siphons"));
    }

    /// <summary>Where the design pressure was not given the highest pressure of a push is told, if it is above the air.</summary>
    [Theory]
    [InlineData(Air + 100, true)]
    [InlineData(Air - 100, false)]
    public void An_unknown_design_pressure_is_told_with_the_highest(double pascals, bool isTold)
    {
        CourseStage push = Push with { Points = [At(0, pascals: 0.9 * Air), At(60, pascals: pascals), At(120, pascals: 0.8 * Air)] };
        Finding? unknown = Plan(Plain, SetUp, push).Findings.Said("design-pressure-unknown");
        Assert.Equal(isTold ? pascals - Air : null, unknown?.Figure("highest"));
        Assert.Null(Plan(Plain.With(appliance => appliance with { DesignGaugePressure = Pressure.FromPascals(1e6) }), SetUp, push).Findings.Said("design-pressure-unknown"));
        Assert.Null(Plan(Plain, SetUp, Pull() with { Points = push.Points }).Findings.Said("design-pressure-unknown"));
    }

    /// <summary>An appliance that comes to its design pressure: by a push, which ends early, or by warming in the air.</summary>
    [Theory]
    [InlineData(StageKind.PushPull, "ends early")]
    [InlineData(StageKind.Equalize, "ends early")]
    [InlineData(StageKind.VaporRecovery, "only by warming")]
    [InlineData(StageKind.Hold, "only by warming")]
    public void What_brings_it_to_its_design_pressure_is_told(StageKind kind, string words)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { DesignGaugePressure = Pressure.FromPascals(1e6) });
        Finding at = Plan(job, SetUp, new CourseStage(kind) { End = StageEnd.DesignPressure }).Findings.Said("stage-design-pressure")!;
        Assert.Contains(words, at.Message, StringComparison.Ordinal);
        Assert.Equal(1e6, at.Figure("design pressure"));
        Assert.Null(Plan(job, SetUp, Pull()).Findings.Said("stage-design-pressure"));
        Assert.Null(Plan(Plain, SetUp, new CourseStage(kind) { End = StageEnd.DesignPressure }).Findings.Said("stage-design-pressure"));
    }

    /// <summary>A surface with water behind it that comes to 0 °C: in the coldest pull, after the time that its course tells; a stop where nobody keeps it above, unless it was as cold before the first pull.</summary>
    [Fact]
    public void Tubes_that_freeze_are_told_with_the_time_and_the_coldest()
    {
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) });
        CourseStage Cold(double metal, double coldest) => Pull() with { Points = [At(0), At(50, metal: metal), At(90, metal: coldest), At(120)], Figures = new StageFigures { Coldest = coldest } };
        Assert.Null(Plan(wet, SetUp, Cold(275, 273.2)).Findings.Said("tubes-freeze"));
        Finding frost = Plan(wet, SetUp, Cold(275, 271), Cold(273.1, 270), Cold(280, 273.2)).Findings.Said("tubes-freeze")!;
        Assert.Equal((50.0, 270.0), (frost.Figure("after"), frost.Figure("coldest")));
        Assert.Equal(Severity.Warning, frost.Severity);
        Assert.Equal(90, Plan(wet, SetUp, Cold(275, 273.15)).Findings.Said("tubes-freeze")!.Figure("after"));
        Assert.Null(Plan(Plain, SetUp, Cold(271, 270)).Findings.Said("tubes-freeze"));
        RecoveryJob let = wet with { KeepAboveFreezing = false };
        Assert.Equal(Severity.Stop, Plan(let, SetUp, Cold(275, 270)).Findings.Said("tubes-freeze")!.Severity);
        Assert.Equal(Severity.Stop, Plan(let, SetUp, Cold(275, 271), Cold(272, 270)).Findings.Said("tubes-freeze")!.Severity);
        CourseStage before = new(StageKind.Rest) { After = Holds(wet, 1, 270, 272) };
        Finding was = Plan(let, SetUp, before, Cold(275, 270) with { Points = [At(0, metal: 272), At(50, metal: 271)] }).Findings.Said("tubes-freeze")!;
        Assert.Equal(Severity.Warning, was.Severity);
        Assert.DoesNotContain(was.Values, value => value.Name == "after");
    }

    /// <summary>What is kept liquid: above which pressure and for how long.</summary>
    [Fact]
    public void Liquid_that_is_kept_is_told_with_its_pressure_and_time()
    {
        var keep = new PlanStep(StageKind.VaporRecovery) { Reason = StepReason.KeepLiquid, LowestPressure = Pressure.FromPascals(120_000) };
        RecoveryPlan plan = Plan(Plain, SetUp, new CourseStage(keep) { Seconds = 777 });
        Finding told = plan.Findings.Said("keep-liquid")!;
        Assert.Equal((120_000 - Air, 777.0), (Math.Round(told.Figure("stay above"), 6), told.Figure("boiling")));
        Assert.Contains("colder than is computed", told.Message, StringComparison.Ordinal);
        Assert.Null(Plan(Plain, SetUp, new CourseStage(keep with { Reason = StepReason.Usual })).Findings.Said("keep-liquid"));
    }

    /// <summary>Heat that pays is told with what it saves, from a minute on, and with the heater's part where all of it would be too much.</summary>
    [Theory]
    [InlineData(59, 500, false, false)]
    [InlineData(61, 500, true, false)]
    [InlineData(61, 250, true, true)]
    public void Heat_that_pays_is_told_with_what_it_saves(double saves, double watts, bool isSaved, bool isPart)
    {
        RecoveryJob job = Plain with { Aids = new SiteAids { Heater = Power.FromWatts(500) } };
        var step = new PlanStep(StageKind.VaporRecovery) { Reason = StepReason.Warm, Saves = Duration.FromSeconds(saves), Inputs = new SimulationInputs { HeaterPower = watts } };
        Finding warm = Plan(job, SetUp, new CourseStage(step)).Findings.Said("warm-appliance")!;
        Assert.Equal(isSaved ? saves : null, warm.Values.FirstOrDefault(value => value.Name == "saves")?.InternationalValue);
        Assert.Equal(isPart ? watts : null, warm.Values.FirstOrDefault(value => value.Name == "heater")?.InternationalValue);
        Assert.Null(Plan(job, SetUp, new CourseStage(step with { Reason = StepReason.Cool })).Findings.Said("warm-appliance"));
    }

    /// <summary>What was not given of heat and metal is told with what stands in for it, of a plan that pulls.</summary>
    [Fact]
    public void What_stands_in_for_heat_and_metal_is_told()
    {
        RecoveryJob neither = Plain with { Appliance = new Appliance { Fluid = Plain.Appliance.Fluid, Charge = Plain.Appliance.Charge, InternalVolume = Plain.Appliance.InternalVolume, Temperature = Plain.Appliance.Temperature } };
        RecoveryJob metal = neither.With(appliance => appliance with { MetalMass = Mass.FromKilograms(10) }), heat = neither.With(appliance => appliance with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.1) });
        Finding? Told(RecoveryJob job) => Plan(job, SetUp, Pull()).Findings.Said("heat-assumed");
        Finding both = Told(neither)!;
        Assert.Equal(neither.Appliance.OuterConductance, both.Figure("conductance in W/K"), 1e-12);
        Assert.Equal(neither.Appliance.MetalKilograms, both.Figure("metal"), 1e-12);
        Assert.Equal(["conductance in W/K"], Told(metal)!.Values.Select(value => value.Name));
        Assert.Equal(["metal"], Told(heat)!.Values.Select(value => value.Name));
        Assert.Null(Told(Plain));
        Assert.Null(Plan(neither, SetUp, Push).Findings.Said("heat-assumed"));
    }

    /// <summary>Oil is told with what it holds in the end, and where it does not match the refrigerant.</summary>
    [Fact]
    public void Oil_is_told_with_what_it_holds()
    {
        RecoveryJob oily = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.PolyolEster } });
        RecoveryPlan plan = Plan(oily, SetUp, Pull());
        Assert.Equal(plan.End.DissolvedMass.Kilograms, plan.Findings.Said("oil-holds")!.Figure("dissolved"), 1e-12);
        Assert.Null(Plan(oily, SetUp, Push).Findings.Said("oil-holds"));
        Assert.Null(Plan(Plain, SetUp, Pull()).Findings.Said("oil-holds"));
        RecoveryJob mineral = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.Mineral } });
        string[] more = [.. Plan(mineral, SetUp, Pull()).Findings.Select(finding => finding.Code).Except(plan.Findings.Select(finding => finding.Code))];
        Assert.Single(more);
    }

    /// <summary>Why push-pull is not used: no port, liquid that is drawn through the machine, less than 10 lb of it beyond the heel, a hose that rises by more than three metres, vapor that is as fast.</summary>
    [Fact]
    public void Why_push_pull_is_not_used_is_told_in_order()
    {
        const double tenPounds = 4.5359237;
        RecoveryJob job = Jobs.Chiller();
        PlannedStage[] none = [], drawn = [.. Run(job, SetUp, new CourseStage(StageKind.LiquidRecovery)).Stages], pushed = [.. Run(job, SetUp, Push).Stages];
        RecoveryJob High(double meters) => job with { Hoses = job.Hoses with { LiquidSide = [Jobs.Hose() with { Rise = Length.FromMeters(1) }, Jobs.Hose() with { Rise = Length.FromMeters(meters - 1) }] } };
        double heel = job.Appliance.LiquidHeel.Kilograms;
        Assert.Null(LiquidChoice.WhyNoPush(job with { PushPull = PushPullUse.Never }, none, 50));
        Assert.Null(LiquidChoice.WhyNoPush(job, pushed, 50));
        Assert.Contains("no port", LiquidChoice.WhyNoPush(job.With(appliance => appliance with { LiquidReachable = false }), drawn, 50), StringComparison.Ordinal);
        Assert.Contains("through the machine", LiquidChoice.WhyNoPush(job, drawn, 0), StringComparison.Ordinal);
        Assert.Contains("too little", LiquidChoice.WhyNoPush(High(4), none, heel + tenPounds - 0.01), StringComparison.Ordinal);
        Assert.Contains("rises so far", LiquidChoice.WhyNoPush(High(3.01), none, heel + tenPounds + 0.01), StringComparison.Ordinal);
        Assert.Contains("as fast", LiquidChoice.WhyNoPush(High(2.99), none, heel + tenPounds + 0.01), StringComparison.Ordinal);
    }

    /// <summary>A port without a hose, or a hose without a port.</summary>
    [Fact]
    public void A_hose_that_leads_nowhere_is_told()
    {
        RecoveryJob job = Jobs.Chiller();
        RecoveryJob port = job with { Hoses = job.Hoses with { LiquidSide = [] } }, hose = job.With(appliance => appliance with { LiquidReachable = false });
        Assert.Contains("no liquid hose", Plan(port, SetUp, Pull()).Findings.Said("hose-leads-nowhere")!.Message, StringComparison.Ordinal);
        Assert.Contains("no port below", Plan(hose, SetUp, Pull()).Findings.Said("hose-leads-nowhere")!.Message, StringComparison.Ordinal);
        Assert.Null(Plan(job, SetUp, Pull()).Findings.Said("hose-leads-nowhere"));
        Assert.Null(Plan(hose with { Hoses = port.Hoses }, SetUp, Pull()).Findings.Said("hose-leads-nowhere"));
        Assert.Null(Plan(port, SetUp, Pull()).Findings.Said("push-pull-not-used"));
        Assert.NotNull(Plan(job, SetUp, Pull()).Findings.Said("push-pull-not-used"));
        Assert.Null(Plan(job, SetUp, Close).Findings.Said("push-pull-not-used"));
    }
}
