using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is said of the machine over courses that are set down by hand, and of what it held before.</summary>
public class MachineOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static readonly Volume Oil = Volume.FromMilliliters(150);

    /// <summary>Discharge: from 121 °C (250 °F) on a note, 149 °C (300 °F) a caution, 175 °C (347 °F) a warning, 220 °C a stop; a thermal cut-out that stops the machine is a caution at least. Common practice, no source.</summary>
    [Theory]
    [InlineData(120.9, false, null)]
    [InlineData(121.1, false, Severity.Note)]
    [InlineData(148.9, false, Severity.Note)]
    [InlineData(149.1, false, Severity.Caution)]
    [InlineData(174.9, false, Severity.Caution)]
    [InlineData(175.1, false, Severity.Warning)]
    [InlineData(219.9, false, Severity.Warning)]
    [InlineData(220.1, false, Severity.Stop)]
    [InlineData(100, true, Severity.Caution)]
    [InlineData(130, true, Severity.Caution)]
    [InlineData(180, true, Severity.Warning)]
    public void The_hotter_the_discharge_the_heavier_the_word(double celsius, bool trips, Severity? severity)
    {
        CourseStage hot = Pull(trips ? StageEnd.ThermalCutout : StageEnd.TargetReached) with { Figures = new StageFigures { HottestDischarge = celsius + 273.15 } };
        CourseStage cool = Pull() with { Figures = new StageFigures { HottestDischarge = 300 } };
        foreach (RecoveryPlan plan in new[] { Plan(Plain, SetUp, hot, cool), Plan(Plain, SetUp, cool, hot) })
        {
            Finding? told = plan.Findings.Said("machine-hot");
            Assert.Equal(severity, told?.Severity);
            if (told is not null)
            {
                Assert.Equal(celsius + 273.15, told.Figure("discharge"), 1e-9);
                Assert.Equal(149 + 273.15, told.Figure("limit"), 1e-9);
            }
        }
    }

    /// <summary>A surface above 60 °C burns (common practice, no source).</summary>
    [Theory]
    [InlineData(59.9, false)]
    [InlineData(60.1, true)]
    public void What_burns_the_hand_is_said(double celsius, bool isSaid)
    {
        Finding? hot = Plan(Plain, SetUp, Pull() with { Figures = new StageFigures { HottestDischarge = celsius + 273.15 } }).Cautions.Said("hot-surface");
        Assert.Equal(isSaid, hot is not null);
        Assert.Equal(isSaid ? celsius + 273.15 : 0, hot?.Figure("discharge") ?? 0, 1e-9);
    }

    /// <summary>Why oil is changed: it does not go with the refrigerant, it carries too much of the last one, or it has run its time, in this order.</summary>
    [Fact]
    public void Oil_is_changed_for_one_of_three_reasons()
    {
        MachinePast due = new() { Refrigerant = Fluid.Get("R-134a"), Oil = OilKind.PolyolEster, CompressorOil = Oil, RunningSinceOilChange = Duration.FromHours(60), OilChangeInterval = Duration.FromHours(60) };
        Assert.Contains("as long as its maker allows", Why(due), StringComparison.Ordinal);
        Assert.Contains("does not go with this refrigerant", Why(due with { Oil = OilKind.Mineral }), StringComparison.Ordinal);
        Assert.Null(Told(due with { RunningSinceOilChange = Duration.FromHours(59) }));
        Assert.Null(Told(due with { OilChangeInterval = null }));

        // A machine full of oil that held R-22 carries it into two kilograms of R-134a.
        MachinePast carries = due with { Refrigerant = Fluid.Get("R-22"), CompressorOil = Volume.FromLiters(2) };
        Assert.True(Change(carries).CarriesOver);
        Assert.Contains("too much of the last refrigerant", Why(carries), StringComparison.Ordinal);
        Assert.Contains("does not go with this refrigerant", Why(carries with { Oil = OilKind.Mineral }), StringComparison.Ordinal);

        string Why(MachinePast past) => Told(past)!.Word("reason");
    }

    /// <summary>What has no oil needs none: no oil in the crankcase, or a machine without.</summary>
    [Fact]
    public void A_machine_without_oil_changes_none()
    {
        MachinePast mineral = new() { Refrigerant = Fluid.Get("R-22"), Oil = OilKind.Mineral, CompressorOil = Oil, RunningSinceOilChange = Duration.FromHours(99), OilChangeInterval = Duration.FromHours(60) };
        Assert.True(Change(mineral).ChangesOil);
        Assert.False(Change(mineral with { CompressorOil = Volume.Zero }).ChangesOil);
        Assert.False(MachineChange.For(new PlanRun(Plain with { MachinePast = mineral, Machine = Plain.Machine with { IsOilless = true } }, StandardStrategy.Instance)).ChangesOil);
        Assert.False(Change(new MachinePast { Refrigerant = Fluid.Get("R-134a"), CompressorOil = Oil }).ChangesOil);
        MachineChange none = MachineChange.For(new PlanRun(Plain, StandardStrategy.Instance));
        Assert.False(none.ChangesOil);
        Assert.False(none.ClearsFirst);
        Assert.Null(none.Carried);
        Assert.Equal(0, none.Seconds(StageKind.OilDrain, Plain.Times));
    }

    /// <summary>What is carried over is what is left after what is done: nothing, clearing, clearing and new oil.</summary>
    [Fact]
    public void What_is_carried_over_is_after_what_is_done()
    {
        MachinePast past = new() { Refrigerant = Fluid.Get("R-22"), IsCleared = false, CompressorOil = Volume.Zero };
        MachineChange change = Change(past);
        Assert.True(change.ClearsFirst);
        Assert.Equal(change.Change!.AfterClearing, change.Carried);
        MachineChange cleared = Change(past with { IsCleared = true });
        Assert.False(cleared.ClearsFirst);
        Assert.Equal(cleared.Change!.AfterClearing, cleared.Carried);

        // Into so much refrigerant that what is left does not matter it is not cleared.
        RecoveryJob large = Jobs.Chiller(kilograms: 500, cylinders: 1) with { MachinePast = past };
        MachineChange little = MachineChange.For(new PlanRun(large, StandardStrategy.Instance));
        Assert.True(little.Change!.BeforeClearing.IsWithinLimit);
        Assert.False(little.ClearsFirst);
        Assert.Equal(little.Change.BeforeClearing, little.Carried);
        MachineChange oil = Change(past with { Oil = OilKind.Mineral, CompressorOil = Oil });
        Assert.Equal(oil.Change!.AfterClearingAndOilChange, oil.Carried);
        Assert.Null(Change(past with { Refrigerant = Fluid.Get("R-134a") }).Change);
    }

    /// <summary>Each vessel with oil takes the time of the job, and to drain it the time that nitrogen needs to push it out through a metre of 5 mm: more oil, longer, and as much longer.</summary>
    [Fact]
    public void Draining_takes_as_long_as_the_oil_runs()
    {
        double Seconds(double compressor, double separator, StageKind kind) => Change(new MachinePast { CompressorOil = Volume.FromMilliliters(compressor), SeparatorOil = Volume.FromMilliliters(separator) }).Seconds(kind, Plain.Times);
        Assert.Equal(180, Seconds(150, 0, StageKind.OilFill));
        Assert.Equal(360, Seconds(150, 60, StageKind.OilFill));
        Assert.Equal(180, Seconds(0, 60, StageKind.OilFill));
        Assert.Equal(0, Seconds(0, 0, StageKind.OilDrain));
        double one = Seconds(150, 0, StageKind.OilDrain) - 180, two = Seconds(300, 0, StageKind.OilDrain) - 180;
        Assert.Equal(2, two / one, 0.02);
        Assert.Equal(one + two, Seconds(150, 300, StageKind.OilDrain) - 360, 0.01 * (one + two));

        // Laminar (Hagen and Poiseuille): V·128·η·L/(π·d⁴·Δp), at 12.5 psi of nitrogen, 60 mPa·s: from memory.
        double laminar = 150e-6 * 128 * 0.06 * 1 / (Math.PI * Math.Pow(5e-3, 4) * 12.5 * 6894.757);
        Assert.InRange(one, laminar, 1.2 * laminar);
    }

    /// <summary>What the machine still carries beyond the purity standard's 0.5 % is told, with the range.</summary>
    [Fact]
    public void What_is_carried_over_beyond_the_limit_is_told()
    {
        MachinePast past = new() { Refrigerant = Fluid.Get("R-22"), IsCleared = true, CompressorOil = Volume.Zero };
        RecoveryJob little = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(0.05), InternalVolume = Volume.FromLiters(1) }) with { MachinePast = past };
        RecoveryPlan plan = Plan(little);
        Assert.Equal(0, plan.Ledger.ForeignCarriedOver.Kilograms);
        Assert.Equal(plan.CarriedOver!.Trapped.BestKilograms, Plan(little, SetUp).Ledger.ForeignCarriedOver.Kilograms, 1e-12);
        Assert.Equal(0, Plan(Plain, SetUp).Ledger.ForeignCarriedOver.Kilograms);
        CrossContamination carried = plan.CarriedOver!;
        Finding told = plan.Findings.Said("machine-carries-over")!;
        Assert.False(carried.IsWithinLimit);
        Assert.Equal(carried.MassFraction.DecimalFractions, told.Figure("share"), 1e-9);
        Assert.Equal(carried.HighestMassFraction.DecimalFractions, told.Figure("highest share"), 1e-9);
        RecoveryPlan much = Plan(Jobs.Chiller(kilograms: 500, cylinders: 1) with { MachinePast = past });
        Assert.True(much.CarriedOver!.IsWithinLimit);
        Assert.Null(much.Findings.Said("machine-carries-over"));
    }

    private static MachineChange Change(MachinePast past) => MachineChange.For(new PlanRun(Plain with { MachinePast = past }, StandardStrategy.Instance));

    private static Finding? Told(MachinePast past) => Plan(Plain with { MachinePast = past }).Findings.Said("change-machine-oil");
}
