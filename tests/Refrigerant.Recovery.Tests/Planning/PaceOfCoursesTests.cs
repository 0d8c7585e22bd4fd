using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;
using static Refrigerant.Recovery.Tests.Planning.CylinderOfCoursesTests;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What sets the pace of a pull, over courses that are set down by hand: hoses, heat, water in tubes.</summary>
public class PaceOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    /// <summary>The machine's pace at the start: displacement times efficiency times the density of the vapor, kg/s.</summary>
    private static readonly double Pace = Plain.Machine.Displacement.CubicMetersPerSecond * Plain.Machine.VolumetricEfficiency * Plain.Appliance.Fluid.Model.SaturationAtTemperature(293.15).Dew.Density;

    [Fact]
    public void The_pace_is_that_of_the_vapor_at_the_start()
    {
        Assert.Equal(Pace, Run(Plain).Pace, 1e-9);
        RecoveryJob gas = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(0.2) });
        Assert.Equal(Plain.Machine.Displacement.CubicMetersPerSecond * Plain.Machine.VolumetricEfficiency * 10, Run(gas).Pace, 1e-9);
    }

    /// <summary>Hoses that let through less than four fifths are slow (our choice): of the pull that moved most, with the inlet open.</summary>
    [Fact]
    public void Hoses_are_judged_by_the_pull_that_moved_most()
    {
        Assert.Null(Slow(Through(0.81, to: 1)));
        Assert.Equal(0.79, Slow(Through(0.79, to: 1))!.Figure("share"), 1e-12);
        Assert.Equal(0.5, Slow(Through(0.9, to: 1.9), Through(0.5, to: 0.5))!.Figure("share"), 1e-12);
        Assert.Null(Slow(Through(0.5, to: 1.9), Through(0.9, to: 0.5)));
        Assert.Null(Slow(Through(0.5, to: 1) with { Step = new PlanStep(StageKind.VaporRecovery) { IsThrottled = true } }));
        Assert.Null(Slow(Through(0.5, to: 1) with { Step = new PlanStep(StageKind.VaporRecovery) { LowestPressure = Pressure.FromPascals(1e5) } }));
        Assert.Null(Slow(Through(0.5, to: 2)));
        Assert.Null(Slow(Through(0.5, to: 1) with { Step = new PlanStep(StageKind.LiquidRecovery) }));
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = Tubes });
        Assert.Null(Plan(wet, SetUp, Through(0.5, to: 1, of: wet)).Findings.Said("hoses-slow"));
        Assert.NotNull(Plan(wet with { KeepAboveFreezing = false }, SetUp, Through(0.5, to: 1, of: wet)).Findings.Said("hoses-slow"));
    }

    /// <summary>Cores are named where a vapor hose has one.</summary>
    [Fact]
    public void Cores_are_named_where_there_are_any()
    {
        RecoveryJob cores = Plain with { Hoses = Plain.Hoses with { VaporSide = [Jobs.Hose(5, 8), Jobs.Hose(5, 8) with { Fittings = [Fitting.CoreDepressor()] }] } };
        Assert.Contains("valve cores", Plan(cores, SetUp, Through(0.5, to: 1)).Findings.Said("hoses-slow")!.Word("remedy"), StringComparison.Ordinal);
        Assert.DoesNotContain("valve cores", Slow(Through(0.5, to: 1))!.Word("remedy"), StringComparison.Ordinal);
    }

    /// <summary>Half an hour of liquid that boils at less than three tenths of the pace, more than ten kelvin below the air, waits for heat (our choices).</summary>
    [Theory]
    [InlineData(1790, 0.29, 282, 1, false)]
    [InlineData(1810, 0.29, 282, 1, true)]
    [InlineData(1810, 0.31, 282, 1, false)]
    [InlineData(1810, 0.29, 284, 1, false)]
    [InlineData(1810, 0.29, 282, 0, false)]
    public void Liquid_that_waits_for_heat_is_told(double seconds, double share, double kelvins, double liquid, bool isTold)
    {
        // Fast at first, then slow, then dry.
        CourseStage pull = Reached() with
        {
            Seconds = 5000,
            Points = [At(0, liquid: 1.6, flow: Pace), At(500, liquid: liquid, flow: Pace), At(500 + seconds, liquid: 0.9 * liquid, flow: share * Pace, appliance: kelvins), At(5000, appliance: kelvins - 5, flow: 0.01 * Pace)],
        };
        Finding? heat = Plan(Plain, SetUp, pull, Hold()).Findings.Said("heat-sets-pace");
        Assert.Equal(isTold, heat is not null);
        if (heat is not null)
        {
            Assert.Equal(seconds, heat.Figure("waiting"), 1e-9);
            Assert.Equal(kelvins, heat.Figure("coldest"), 1e-9);
        }
    }

    /// <summary>Waits add up, the coldest counts, and it is not said where there is something to warm with, or where the level is not reached.</summary>
    [Fact]
    public void Waits_add_up()
    {
        CourseStage pull = Reached() with
        {
            Seconds = 5000,
            Points =
            [
                At(0, liquid: 1.6, flow: Pace), At(1000, liquid: 1.2, flow: 0.1 * Pace, appliance: 270), At(1500, liquid: 1.1, flow: Pace, appliance: 280), At(2700, liquid: 0.8, flow: 0.1 * Pace, appliance: 265),
                At(3000, liquid: 0.7, flow: 0.2 * Pace, appliance: 272), At(5000),
            ],
        };
        Finding heat = Plan(Plain, SetUp, pull, Hold()).Findings.Said("heat-sets-pace")!;
        Assert.Equal((2500.0, 265.0), (heat.Figure("waiting"), heat.Figure("coldest")));
        Assert.Null(Plan(Plain with { Aids = new SiteAids { ApplianceFans = 2 } }, SetUp, pull, Hold()).Findings.Said("heat-sets-pace"));
        Assert.Null(Plan(Plain, SetUp, pull with { After = state => state }, Hold()).Findings.Said("heat-sets-pace"));
        Assert.Null(Plan(Plain, SetUp, pull with { Step = new PlanStep(StageKind.VaporRecovery) { IsThrottled = true } }, Hold()).Findings.Said("heat-sets-pace"));
        Assert.Null(Plan(Plain, SetUp, pull with { Points = [At(2000, liquid: 1, flow: 0.1 * Pace, appliance: 270)] }, Hold()).Findings.Said("heat-sets-pace"));

        // Of two pulls the longer one.
        CourseStage quick = Reached() with { Seconds = 400 };
        Assert.NotNull(Plan(Plain, SetUp, quick, pull, Hold()).Findings.Said("heat-sets-pace"));
        Assert.Null(Plan(Plain, SetUp, pull, Reached() with { Seconds = 6000 }, Hold()).Findings.Said("heat-sets-pace"));
    }

    /// <summary>Hoses are worth more than a note where they cost more time than the heat does.</summary>
    [Theory]
    [InlineData(0.4, Severity.Caution)]
    [InlineData(0.6, Severity.Note)]
    public void Hoses_weigh_more_where_they_cost_more_than_heat(double share, Severity severity)
    {
        CourseStage pull = Through(share, to: 0.3) with
        {
            Seconds = 4000,
            After = Stands(Plain, 0.9 * Goal),
            Points = [At(0, liquid: 1.6, flow: Pace), At(2000, liquid: 1.2, flow: 0.1 * Pace, appliance: 270), At(4000)],
        };
        Finding hoses = Plan(Plain, SetUp, pull, Hold()).Findings.Said("hoses-slow")!;
        Assert.Equal(severity, hoses.Severity);
        CourseStage fast = pull with { Points = [At(0), At(4000)] };
        Assert.Equal(Severity.Note, Plan(Plain, SetUp, fast, Hold()).Findings.Said("hoses-slow")!.Severity);
        Assert.Equal(Severity.Note, Plan(Plain, SetUp, pull with { After = Holds(Plain, 0.3) }, Hold()).Findings.Said("hoses-slow")!.Severity);
    }

    /// <summary>An hour of throttling while there is liquid and metal within two kelvin of freezing is for the water (our choices), over all pulls; then nothing else sets the pace.</summary>
    [Theory]
    [InlineData(3590, 0.29, 275.1, 1, false)]
    [InlineData(3610, 0.29, 275.1, 1, true)]
    [InlineData(3610, 0.31, 275.1, 1, false)]
    [InlineData(3610, 0.29, 275.2, 1, false)]
    [InlineData(3610, 0.29, 275.1, 0, false)]
    public void Water_in_the_tubes_sets_the_pace(double seconds, double share, double metal, double liquid, bool isTold)
    {
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = Tubes });
        CourseStage Part(double time) => Through(0.5, to: 1, of: wet) with { Points = [At(0, liquid: 1, flow: Pace), At(100, liquid: 1, flow: Pace), At(100 + time, liquid: liquid, flow: share * Pace, metal: metal, appliance: 270)] };
        RecoveryPlan plan = Plan(wet, SetUp, Part(2000), Part(seconds - 2000));
        Finding? water = plan.Findings.Said("water-sets-pace");
        Assert.Equal(isTold, water is not null);
        if (water is not null)
        {
            Assert.Equal(seconds, water.Figure("waiting"), 1e-9);
            Assert.Contains("Keeping the water moving", water.Message, StringComparison.Ordinal);
            Assert.Null(Plan(wet with { KeepAboveFreezing = false }, SetUp, Part(2000), Part(seconds - 2000)).Findings.Said("water-sets-pace"));
            RecoveryJob moving = Plain.With(appliance => appliance with { Water = TubeWater.Moving(MassFlow.FromKilogramsPerSecond(1), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) });
            Assert.Contains("Warmer water", Plan(moving, SetUp, Part(2000), Part(seconds - 2000)).Findings.Said("water-sets-pace")!.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>A job longer than a shift of eight hours says so (common practice, no source), with its time.</summary>
    [Theory]
    [InlineData(28_799, false)]
    [InlineData(28_801, true)]
    public void A_job_longer_than_a_shift_says_so(double seconds, bool isTold)
    {
        Finding? told = Plan(Plain, SetUp, Pull() with { Seconds = seconds - 300 }).Findings.Said("longer-than-shift");
        Assert.Equal(isTold ? seconds : null, told?.Figure("on site"));
        Assert.Equal(isTold ? 28_800 : null, told?.Figure("shift"));
    }

    private static TubeWater Tubes => TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01));

    private static Finding? Slow(params CourseStage[] pulls) => Plan(Plain, [SetUp, .. pulls]).Findings.Said("hoses-slow");

    private static CourseStage Through(double share, double to, RecoveryJob? of = null) => Pull() with { Figures = new StageFigures { Passed = share, FreeFlow = 1 }, After = Holds(of ?? Plain, to) };

    private static CourseStage Reached() => Pull() with { After = Stands(Plain, 0.9 * Goal) };
}
