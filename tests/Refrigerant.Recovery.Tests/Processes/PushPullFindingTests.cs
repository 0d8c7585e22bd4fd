using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a push-pull says, a little to either side of where it begins to say it.</summary>
public class PushPullFindingTests
{
    private const double Pound = 0.45359237;

    /// <summary>10 to 15 lb of liquid: common practice, no source.</summary>
    [Theory]
    [InlineData(9.8, Severity.Caution)]
    [InlineData(10.2, Severity.Note)]
    [InlineData(14.8, Severity.Note)]
    [InlineData(15.2, null)]
    public void Below_ten_pounds_of_liquid_it_is_not_worth_it_and_below_fifteen_hardly(double pounds, Severity? severity)
    {
        SaturationState at = Unit(10).Fluid.SaturationAt(Unit(10).Temperature);
        double liquid = pounds * Pound, vapor = at.Dew.Density.KilogramsPerCubicMeter;
        Appliance unit = Unit(liquid + (vapor * (Unit(10).InternalVolume.CubicMeters - (liquid / at.Bubble.Density.KilogramsPerCubicMeter))));
        Assert.Equal(pounds, ApplianceState.Initial(unit).LiquidMass.Pounds, 1e-6);
        Assert.Equal(severity, Word(Push(unit, unit.Temperature), "push-pull-hardly-pays"));
    }

    /// <summary>A cylinder 2 % below saturation of the liquid that flows to it lets it flash, one 10 % below makes its flow an estimate to count on little.</summary>
    [Theory]
    [InlineData(0.018, null)]
    [InlineData(0.021, Severity.Note)]
    [InlineData(0.098, Severity.Note)]
    [InlineData(0.102, Severity.Caution)]
    public void Liquid_flashes_into_a_cylinder_below_its_saturation(double share, Severity? severity)
    {
        Appliance unit = Unit(10);
        Pressure saturation = unit.Fluid.SaturationAt(unit.Temperature).Bubble.Pressure;
        Assert.Equal(severity, Word(Push(unit, unit.Fluid.SaturationAt((1 - share) * saturation).Bubble.Temperature), "liquid-flashes"));
    }

    /// <summary>Only where liquid is left that could be reached it has ended early.</summary>
    [Fact]
    public void It_ends_early_where_liquid_is_left()
    {
        Appliance unit = Unit(10);
        StageResult whole = PushPull.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions());
        Assert.Equal(StageEnd.LiquidGone, whole.End);
        Assert.Null(Word(whole, "push-pull-ends-early"));
        StageResult cut = Push(unit, unit.Temperature);
        Assert.Equal(StageEnd.TimeLimit, cut.End);
        Assert.Equal(Severity.Warning, Word(cut, "push-pull-ends-early"));
        StageResult full = PushPull.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions { CylinderLimit = Mass.FromKilograms(4) });
        Assert.Equal(StageEnd.CylinderFull, full.End);
        Assert.Null(Word(full, "push-pull-ends-early"));
        Assert.Equal(Severity.Warning, Word(full, "stage-siphons-at-limit"));
    }

    /// <summary>The outlet of a machine that runs is never throttled: it is its inlet that keeps an appliance below its design pressure.</summary>
    [Fact]
    public void At_the_design_pressure_the_inlet_is_throttled_not_the_outlet()
    {
        Appliance unit = Unit(30) with { DesignGaugePressure = Pressure.FromKilopascals(500) };
        StageResult result = PushPull.Simulate(unit, Setups.Machine(1), Setups.Hoses(20, 5), Setups.Cylinder(60, 2), new PushPullOptions { KeepBelowDesignPressure = false });
        Assert.Equal(StageEnd.DesignPressure, result.End);
        Finding finding = result.Findings.Single(finding => finding.Code == "stage-design-pressure");
        Assert.Contains("inlet", finding.Message, System.StringComparison.Ordinal);
        Assert.DoesNotContain("outlet", finding.Message, System.StringComparison.Ordinal);
        Assert.Equal(500e3 + 101_325, finding.Values.Single(value => value.Name == "limit").InternationalValue!.Value, 1);
    }

    private static Appliance Unit(double kilograms) => Setups.Appliance("R-134a", kilograms, 30, 20, 50) with { LiquidReachable = true, LiquidHeel = Mass.FromKilograms(1) };

    /// <summary>One second of it, into a cylinder half full of saturated liquid.</summary>
    private static StageResult Push(Appliance unit, Temperature cylinder) => PushPull.Simulate(
        unit,
        Setups.Machine(0.1),
        Setups.Hoses(),
        Setups.Cylinder(60),
        new PushPullOptions
        {
            MaximumDuration = Duration.FromSeconds(1),
            Start = new SimulationState(ApplianceState.Initial(unit)) { Cylinder = CylinderState.Initial(Setups.Cylinder(60, 25), unit.Fluid, cylinder) },
        });

    private static Severity? Word(StageResult result, string code) => result.Findings.SingleOrDefault(finding => finding.Code == code)?.Severity;
}
