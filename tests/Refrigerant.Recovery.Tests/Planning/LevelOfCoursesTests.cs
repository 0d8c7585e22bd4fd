using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is said of the level over courses that are set down by hand.</summary>
public class LevelOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static PropertyModel Model => Plain.Appliance.Fluid.Model;

    /// <summary>Which word it is depends on how the level was missed; each names gauge and mass as they are in the end.</summary>
    [Fact]
    public void What_is_missed_is_told_with_its_figures()
    {
        Finding short_ = Plan(Plain, SetUp, Pull(StageEnd.Stalled) with { After = Stands(Plain, 100_000) }).ToDo.Said("level-not-reached")!;
        Assert.Equal(100_000 - Air, short_.Figure("reached"), 1.0);
        Assert.Equal(Model.StateAt(293.15, 100_000).Density * 0.02, short_.Figure("left"), 1e-6);
        Assert.Equal(LevelVerdict.Why(LevelObstacle.DeepestVacuum), short_.Word("obstacle"));
        Finding back = Plan(Plain, SetUp, Pull() with { After = Stands(Plain, 80_000) }, Hold() with { After = Stands(Plain, 95_000) }).ToDo.Said("level-not-held")!;
        Assert.Equal(95_000 - Air, back.Figure("reached"), 1.0);
        Assert.Equal(Goal - Air, back.Figure("level"), 1.0);
        Finding liquid = Plan(Plain, SetUp, Pull() with { After = Holds(Plain, 1, 240) }).ToDo.Said("level-over-liquid")!;
        Assert.Equal(240, liquid.Figure("temperature"), 1e-6);
        Assert.InRange(liquid.Figure("liquid"), 0.9, 1);
        Assert.All(new[] { short_, back, liquid }, finding => Assert.Equal(Severity.Stop, finding.Severity));
    }

    /// <summary>Liquid boils as heat comes in: its latent heat in an hour, or as long as the air takes to bring it, where that is less than a month.</summary>
    [Fact]
    public void Heat_helps_liquid_by_its_latent_heat()
    {
        RecoveryPlan plan = Plan(Plain, SetUp, Pull(StageEnd.TimeLimit, StepReason.GiveUp) with { After = Holds(Plain, 1, 260) });
        Finding heat = plan.ToDo.Said("level-not-reached")!;
        SaturationPoint at = Model.SaturationAtTemperature(260);
        double joules = plan.End.LiquidMass.Kilograms * (at.Dew.Enthalpy - at.Bubble.Enthalpy);
        Assert.Equal(joules / 3600, heat.Figure("heat for an hour"), 1e-6 * joules);
        double conductance = Plain.Appliance.HeatArea.SquareMeters / 0.1;
        Assert.Equal(joules / (conductance * 33.15), heat.Figure("wait"), 1e-3 * joules / (conductance * 33.15));

        // 30 days of what the air brings: to either side by the resistance between.
        double seconds = 30 * 86_400, limit = 0.1 * seconds * conductance * 33.15 / joules;
        foreach ((double share, bool isSaid) in new[] { (0.99, true), (1.01, false) })
        {
            RecoveryJob job = Plain.With(appliance => appliance with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(share * limit) });
            Finding other = Plan(job, SetUp, Pull(StageEnd.TimeLimit, StepReason.GiveUp) with { After = Holds(job, 1, 260) }).ToDo.Said("level-not-reached")!;
            Assert.Equal(isSaid, other.Values.Any(value => value.Name == "wait"));
            Assert.Equal(joules / 3600, other.Figure("heat for an hour"), 1e-6 * joules);
        }
    }

    /// <summary>A machine at its deepest is told with the pressure that it stands against and the vacuum that this allows: p/(1 + η0/c)^n.</summary>
    [Fact]
    public void The_deepest_vacuum_is_told_with_the_cylinder()
    {
        Finding deepest = Plan(Plain, SetUp, Pull(StageEnd.Stalled) with { After = Stands(Plain, 100_000).And(Cylinder(Plain, 5, 310)) }).ToDo.Said("level-not-reached")!;
        double pressure = Model.SaturationAtTemperature(310).Bubble.Pressure;
        Assert.Equal(pressure - Air, deepest.Figure("cylinder"), 1.0);
        RecoveryMachine machine = Plain.Machine;
        Assert.Equal(0, machine.LeakageTerm);
        Assert.Equal((pressure / Math.Pow(1 + (machine.VolumetricEfficiency / machine.ClearanceRatio), machine.PolytropicExponent)) - Air, deepest.Figure("deepest vacuum"), 1.0);
    }

    /// <summary>What helps is of what is in the way.</summary>
    [Theory]
    [InlineData(StageEnd.HighPressureCutout, "ice and water, or bring a second one")]
    [InlineData(StageEnd.CylinderPressure, "ice and water, or bring a second one")]
    [InlineData(StageEnd.ThermalCutout, "let the machine rest")]
    [InlineData(StageEnd.LowPressureSwitch, "switch may be set lower")]
    [InlineData(StageEnd.Stalled, "a machine that pulls deeper")]
    public void What_helps_is_of_what_is_in_the_way(StageEnd end, string help) =>
        Assert.Contains(help, Plan(Plain, SetUp, Pull(end)).ToDo.Said("level-not-reached")!.Message, StringComparison.Ordinal);

    /// <summary>Carbon dioxide below its triple point, 517.95 kPa, is dry ice (Span and Wagner 1996): in the cylinder, or in the appliance where liquid is left in it.</summary>
    [Fact]
    public void Dry_ice_is_told_of_carbon_dioxide_alone()
    {
        RecoveryJob ice = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-744") }) with { Cylinders = [RecoveryCylinder.FromMark("3AA1800", Mass.FromKilograms(40), Mass.FromKilograms(45)) with { Label = "C1" }] };
        ice = ice with { Machine = ice.Machine with { HighPressureCutout = Pressure.FromBars(90) } };
        var inCylinder = new StageFigures { CylinderOutOfRange = true };
        Assert.Equal(517_950 - Air, Plan(ice, SetUp, Pull(StageEnd.PropertyRange) with { Figures = inCylinder }).ToDo.Said("level-not-reached")!.Figure("coldest liquid"), 100.0);
        Finding wet = Plan(ice, SetUp, Pull(StageEnd.PropertyRange) with { After = Holds(ice, 1.5, 230) }).ToDo.Said("level-not-reached")!;
        Assert.Equal(ice.Appliance.Fluid.Model.SaturationAtTemperature(230).Bubble.Pressure - Air, wet.Figure("stay above"), 1.0);
        Assert.DoesNotContain(Plan(ice, SetUp, Pull(StageEnd.PropertyRange) with { After = Stands(ice, 300_000) }).ToDo.Said("level-not-reached")!.Values, value => value.Name == "stay above");
        foreach (StageFigures figures in new[] { inCylinder, new StageFigures() })
        {
            Finding other = Plan(Plain, SetUp, Pull(StageEnd.PropertyRange) with { Figures = figures, After = Holds(Plain, 1.5, 260) }).ToDo.Said("level-not-reached")!;
            Assert.DoesNotContain(other.Values, value => value.Name is "stay above" or "coldest liquid");
        }
    }

    /// <summary>A pull that went on past the level is told by the gauge where that ends it, half a percent below the level or deeper, else by its time.</summary>
    [Theory]
    [InlineData(0.99, true, false)]
    [InlineData(0.997, false, false)]
    [InlineData(0.997, true, true)]
    public void A_pull_past_the_level_is_told_by_what_ends_it(double share, bool isSaid, bool byClock)
    {
        var step = new PlanStep(StageKind.VaporRecovery) { Reason = StepReason.PullDeeper, AppliancePressure = Pressure.FromPascals(share * Goal), Duration = byClock ? Duration.FromSeconds(700) : null };
        RecoveryPlan plan = Plan(Plain, SetUp, new CourseStage(step) { End = StageEnd.TargetReached, Seconds = 700, After = Stands(Plain, share * Goal) }, Hold());
        Finding? past = plan.RestsOn.Concat(plan.ToDo).Said("pull-past-level");
        Assert.Equal(isSaid, past is not null);
        if (past is not null)
        {
            Assert.Equal(700, past.Figure("pull"), 1e-9);
            Assert.Equal(!byClock, past.Values.Any(value => value.Name == "stop"));
            Assert.Equal(byClock ? 700 : (share * Goal) - Air, past.Figure(byClock ? "pull" : "stop"), 1.0);
            Assert.Contains("vapor that warms", past.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>Why it goes on: liquid, oil, or vapor that warms; and it is said of a plan that passed a hold, and whose level was not met before it began.</summary>
    [Fact]
    public void Why_a_pull_goes_on_is_told_where_a_hold_passed()
    {
        RecoveryJob oily = Plain.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.1), Kind = OilKind.PolyolEster } });
        Finding? Past(RecoveryJob job, StepReason reason, bool holds = true, double end = 0.9 * Goal)
        {
            var step = new PlanStep(StageKind.VaporRecovery) { Reason = reason, Duration = Duration.FromSeconds(700) };
            CourseStage pull = new(step) { End = StageEnd.TimeLimit, Seconds = 700, After = Stands(job, end) };
            RecoveryPlan plan = holds ? Plan(job, SetUp, pull, Hold()) : Plan(job with { Times = job.Times with { Hold = Duration.Zero } }, SetUp, pull);
            return plan.RestsOn.Concat(plan.ToDo).Said("pull-past-level");
        }

        Assert.Contains("liquid is left", Past(oily, StepReason.PullLonger)!.Message, StringComparison.Ordinal);
        Assert.Contains("oil gives off", Past(oily, StepReason.PullDeeper)!.Message, StringComparison.Ordinal);
        Assert.Contains("vapor that warms", Past(Plain, StepReason.PullDeeper)!.Message, StringComparison.Ordinal);
        Assert.All(new[] { StepReason.Cool, StepReason.Throttle, StepReason.Warm }, reason => Assert.NotNull(Past(Plain, reason)));
        Assert.All(new[] { StepReason.Usual, StepReason.UntilLimit, StepReason.GiveUp, StepReason.UntilChange, StepReason.KeepLiquid }, reason => Assert.Null(Past(Plain, reason)));
        Assert.Null(Past(Plain, StepReason.PullDeeper, holds: false));
        Assert.Null(Past(Plain, StepReason.PullDeeper, end: 1.01 * Goal));
        RecoveryJob met = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(0.05) });
        Assert.Null(Past(met, StepReason.PullDeeper, end: 30_000));
    }

    /// <summary>What holds while it is cold comes back as it warms: by more than 10 kPa above the level within three hours it is a warning (our choice). Of a gas p/T stays.</summary>
    [Theory]
    [InlineData(250, 0.955, true)]
    [InlineData(250, 0.935, false)]
    [InlineData(293.15, 0.999, false)]
    public void What_comes_back_as_it_warms_is_told(double kelvins, double share, bool isSaid)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001) });
        RecoveryPlan plan = Plan(job, SetUp, Pull() with { After = Stands(job, share * Goal, kelvins) }, Hold());
        Assert.Equal(LevelOutcome.ReachedAndHeld, plan.Verdict.Outcome);
        double warm = share * Goal * 293.15 / kelvins;
        Assert.Equal(isSaid, plan.ToDo.Said("comes-back-warm") is not null);
        if (isSaid)
        {
            Finding back = plan.ToDo.Said("comes-back-warm")!;
            Assert.Equal(10_800, back.Figure("shut"));
            Assert.Equal(warm - Air, back.Figure("later"), 0.02 * warm);
            Assert.Contains("It holds", back.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>Where the air is thin a level in absolute pressure reads otherwise on the gauge, and both readings are told; one that is the air itself reads zero there as at the sea.</summary>
    [Theory]
    [InlineData(90_000, 95_000, true)]
    [InlineData(110_000, 95_000, true)]
    [InlineData(90_000, 101_000, false)]
    public void What_the_gauge_reads_in_thin_air_is_told(double level, double air, bool isTold)
    {
        RecoveryJob job = Plain with { Barometer = Barometer.Reading(Pressure.FromPascals(air)), Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(level) } };
        PlanRun run = Run(job);
        Finding? told = Plan(job, SetUp, Pull()).Findings.Said("gauge-at-altitude");
        Assert.Equal(isTold, told is not null);
        if (told is not null)
        {
            Assert.Equal(run.Goal.Pascals - air, told.Figure("reading here"), 1.0);
            Assert.Equal(air, told.Figure("air"), 1e-6);
            double? sea = told.Values.FirstOrDefault(value => value.Name == "reading at sea level")?.InternationalValue;
            Assert.Equal(Math.Abs(run.Goal.Pascals - air - (level - Air)) > 200, sea is not null);
            Assert.Equal(level - Air, sea ?? level - Air, 1.0);
        }
    }

    /// <summary>What is left in a level that is reached, and how long it held.</summary>
    [Fact]
    public void A_level_that_is_reached_is_told_with_what_is_left()
    {
        RecoveryPlan plan = Plan(Plain, SetUp, Pull() with { After = Stands(Plain, 80_000) }, Hold(720), Close);
        Finding reached = plan.RestsOn.Said("level-reached")!;
        Assert.Equal(Goal - Air, reached.Figure("level"), 1.0);
        Assert.Equal(Model.StateAt(293.15, 80_000).Density * 0.02, reached.Figure("left"), 1e-6);
        Assert.Equal(720, reached.Figure("hold"));
        RecoveryPlan unheld = Plan(Plain with { Times = Plain.Times with { Hold = Duration.Zero } }, SetUp, Pull() with { After = Stands(Plain, 80_000) }, Close);
        Assert.Equal(LevelOutcome.Reached, unheld.Verdict.Outcome);
        Assert.DoesNotContain(unheld.RestsOn.Said("level-reached")!.Values, value => value.Name == "hold");
        Assert.Null(Plan(Plain, SetUp, Pull()).RestsOn.Said("level-reached"));
    }

    /// <summary>A level that was met before the job began is told by the gauge as it stood, and not where liquid makes the pressure.</summary>
    [Fact]
    public void A_level_that_was_met_at_the_start_is_told()
    {
        RecoveryJob met = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(0.05) });
        Finding start = Plan(met, SetUp, Close).RestsOn.Said("level-met-at-start")!;
        Assert.Equal(Model.VesselAtTemperature(293.15, 0.05 / 0.02).Bulk.Pressure - Air, start.Figure("start"), 1.0);
        RecoveryJob cold = Plain.With(appliance => appliance with { Temperature = Temperature.FromKelvins(240) });
        Assert.Null(Plan(cold, SetUp, Close).RestsOn.Said("level-met-at-start"));
        Assert.Null(Plan(Plain, SetUp, Pull() with { After = Stands(Plain, 80_000) }, Hold()).RestsOn.Said("level-met-at-start"));
    }

    /// <summary>Of the parts that the gauge does not see the one that holds most is named: those with liquid, and those a twentieth above the level.</summary>
    [Theory]
    [InlineData(1.04, false)]
    [InlineData(1.06, true)]
    public void Of_hidden_parts_the_fullest_is_named(double share, bool isTold)
    {
        RecoveryJob job = VerdictsOfCoursesTests.Divided().With(appliance => appliance with
        {
            InternalVolume = Volume.FromLiters(30),
            Charge = Mass.FromKilograms(3),
            Sections = [.. appliance.Sections, new ApplianceSection { Name = "drier", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(1) }],
            Connections = [.. appliance.Connections, new SectionConnection { From = "receiver", To = "drier", FlowCoefficient = 1 }],
        });
        double Vapor(double pascals) => 0.01 * Model.StateAt(293.15, pascals).Density;
        Finding? hidden = Plan(job, SetUp, Pull() with { After = Parts(job, (Vapor(2 * Goal), 293.15), (Vapor(0.9 * Goal), 293.15), (Vapor(share * Goal), 293.15)) }).ToDo.Said("hidden-section");
        Assert.Equal(isTold ? "drier" : null, hidden?.Word("section"));
        Finding fullest = Plan(job, SetUp, Pull() with { After = Parts(job, (Vapor(0.9 * Goal), 293.15), (0.8, 240), (Vapor(share * Goal), 293.15)) }).ToDo.Said("hidden-section")!;
        Assert.Equal("receiver", fullest.Word("section"));
        Assert.Equal(0.8, fullest.Figure("mass"), 1e-9);
    }

    /// <summary>A part shut off so full that liquid fills it below 55 °C (49 CFR 173.304(b) for cylinders) bursts as it warms: the one that is full soonest, never the part of the port, and not vapor.</summary>
    [Fact]
    public void A_part_that_liquid_fills_as_it_warms_is_told()
    {
        RecoveryJob job = VerdictsOfCoursesTests.Divided();
        double FullAt(double celsius) => 0.01 * Model.SaturationAtTemperature(celsius + 273.15).Bubble.Density;
        Finding? Full(double port, double other) => Plan(job, SetUp, Pull() with { After = Parts(job, (port, 280), (other, 280)) }).ToDo.Said("section-full-of-liquid");
        Assert.Equal(50 + 273.15, Full(0.01, FullAt(50))!.Figure("full at"), 0.1);
        Assert.Equal("receiver", Full(0.01, FullAt(50))!.Word("section"));
        Assert.NotNull(Full(0.01, FullAt(54.8)));
        Assert.Null(Full(0.01, FullAt(55.2)));
        Assert.Null(Full(FullAt(50), 0.01));
    }
}
