using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

public sealed class RefrigerantChangeTests
{
    /// <summary>AHRI 700-2006 with addenda: other volatile impurities, % by mass.</summary>
    private const double LimitPercent = 0.5;

    private static readonly Fluid R22 = Fluid.Get("R-22");
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    private static readonly RecoveryMachine Machine =
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { InternalVolume = Volume.FromLiters(0.6) };

    private static readonly Hose Hose = new() { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(6) };

    private static readonly RefrigerantChangeOptions WithOil = new()
    {
        Oil = new ApplianceOil { Mass = Mass.FromGrams(250), Kind = OilKind.Mineral },
        Hoses = new HoseSet { VaporSide = [Hose], Discharge = [Hose] },
    };

    [Fact]
    public void Spaces_are_volume_times_density()
    {
        SaturationState saturation = R22.SaturationAt(Temperature.FromDegreesCelsius(20));
        double liquid = saturation.Bubble.Density.KilogramsPerCubicMeter;
        double dense = saturation.Dew.Density.KilogramsPerCubicMeter;
        double Vapor(double kilopascals) =>
            R22.StateAt(Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(kilopascals)).Density.KilogramsPerCubicMeter;
        double hose = Math.PI / 4 * 0.006 * 0.006 * 1.5;

        RefrigerantChange change = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(10), WithOil with { Oil = null, ClearingPressure = Pressure.FromKilopascals(70) });

        Assert.Equal((0.6e-3 * ((liquid / 3) + (2 * dense / 3))) + (hose * (liquid + Vapor(101.325))), change.BeforeClearing.InSpaces.Kilograms, 1e-8);
        Assert.Equal((0.6e-3 * Vapor(70)) + (hose * (dense + Vapor(70))), change.AfterClearing.InSpaces.Kilograms, 1e-8);
        Assert.Equal(change.AfterClearing.InSpaces, change.AfterClearingAndOilChange.InSpaces);
    }

    /// <summary>
    /// Computed with x = p/p_sat, p_sat(R-22, 20 °C) = 910.0 kPa (Moran and Shapiro, table A-7, from memory), M 86.47 and 320 g/mol; for R-22 in mineral
    /// oil 1.6 times Raoult's rule at low pressure to 1.0 at saturation (from memory), bounds half and double.
    /// </summary>
    [Fact]
    public void Oil_holds_what_Raoult_says_times_the_factor()
    {
        double x = 101.325 / 910.0;
        double ratio = x / (1 - x) * 86.47 / 320;

        MassRange oil = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(10), WithOil).BeforeClearing.InOil;

        double best = 0.25 * ratio * (1.6 - (0.6 * x));
        Assert.Equal(best, oil.Best.Kilograms, 2e-3 * best);
        Assert.Equal(oil.Best.Kilograms / 2, oil.Low.Kilograms, 1e-12);
        Assert.Equal(oil.Best.Kilograms * 2, oil.High.Kilograms, 1e-12);
    }

    [Fact]
    public void The_least_mass_to_recover_lies_at_the_limit()
    {
        RefrigerantChange change = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(10), WithOil);
        foreach (Func<RefrigerantChange, CrossContamination> state in new Func<RefrigerantChange, CrossContamination>[]
        {
            c => c.BeforeClearing, c => c.AfterClearing, c => c.AfterClearingAndOilChange,
        })
        {
            Mass least = state(change).LeastRecovered!.Value;
            Assert.Equal(LimitPercent, state(RefrigerantChange.Estimate(Machine, R22, R134a, least, WithOil)).HighestMassFraction.Percent, 1e-9);
            Assert.True(state(RefrigerantChange.Estimate(Machine, R22, R134a, least * 1.001, WithOil)).IsWithinLimit);
            Assert.False(state(RefrigerantChange.Estimate(Machine, R22, R134a, least * 0.999, WithOil)).IsWithinLimit);
        }
    }

    [Theory]
    [InlineData(1e4, 0)]
    [InlineData(50, 1)]
    [InlineData(3, 2)]
    [InlineData(0.2, 3)]
    public void Each_state_above_the_limit_has_its_finding(double recovered, int above)
    {
        RefrigerantChange change = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(recovered), WithOil);
        CrossContamination[] states = [change.BeforeClearing, change.AfterClearing, change.AfterClearingAndOilChange];

        Assert.Equal(above, states.Count(state => !state.IsWithinLimit));
        Finding[] findings = [.. change.Findings.Where(finding => finding.Subject == FindingSubject.Mixing)];
        Assert.Equal(above, findings.Length);
        Assert.All(findings, finding => Assert.Equal("AHRI 700", finding.Source));
        Assert.All(findings, finding => Assert.True(finding.Severity >= Severity.Caution));
    }

    /// <summary>Above the limit by the best estimate is a warning; by the oil's upper bound alone, which is twice the best, a caution.</summary>
    [Fact]
    public void What_is_surely_too_much_is_a_warning()
    {
        Mass least = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(10), WithOil).AfterClearing.LeastRecovered!.Value;
        RefrigerantChange unsure = RefrigerantChange.Estimate(Machine, R22, R134a, 0.99 * least, WithOil);
        Assert.True(unsure.AfterClearing.MassFraction.Percent < LimitPercent);
        Assert.Equal([Severity.Warning, Severity.Caution], CarriesOver(unsure));
        Assert.Equal([Severity.Warning, Severity.Warning], CarriesOver(RefrigerantChange.Estimate(Machine, R22, R134a, 0.3 * least, WithOil)).Take(2));

        static Severity[] CarriesOver(RefrigerantChange change) =>
            [.. change.Findings.Where(finding => finding.Code == RuleCodes.CarriesOver.Id).Select(finding => finding.Severity)];
    }

    [Fact]
    public void The_same_refrigerant_contaminates_nothing()
    {
        RefrigerantChange change = RefrigerantChange.Estimate(Machine, R22, R22, Mass.FromKilograms(0.1), WithOil);
        Assert.Equal(0, change.BeforeClearing.Trapped.High.Kilograms);
        Assert.True(change.BeforeClearing.IsWithinLimit);
        Assert.Equal(0, change.BeforeClearing.LeastRecovered!.Value.Kilograms);
        Assert.Equal(Severity.Note, Assert.Single(change.Findings).Severity);
    }

    [Fact]
    public void Oil_near_saturation_has_no_upper_bound()
    {
        RefrigerantChange change = RefrigerantChange.Estimate(
            Machine, R22, R134a, Mass.FromKilograms(1e6), WithOil with { SuctionPressure = Pressure.FromKilopascals(880) });
        Assert.True(change.BeforeClearing.IsLowerBound);
        Assert.False(change.BeforeClearing.IsWithinLimit);
        Assert.Null(change.BeforeClearing.LeastRecovered);
        Assert.StartsWith("at least", change.BeforeClearing.ToString(), StringComparison.Ordinal);
        Assert.Contains(change.Findings, finding => finding.Message.Contains("too near saturation", StringComparison.Ordinal));
    }

    [Fact]
    public void Oils_that_differ_and_oil_that_is_not_given_are_said()
    {
        Mass much = Mass.FromKilograms(1e5);
        Assert.Contains(RefrigerantChange.Estimate(Machine, R22, R134a, much, WithOil).Findings, finding => finding.Message.Contains("no oil in common", StringComparison.Ordinal));
        Assert.DoesNotContain(
            RefrigerantChange.Estimate(Machine, R22, Fluid.Get("R-12"), much, WithOil).Findings, finding => finding.Subject == FindingSubject.Oil);
        Assert.Contains(
            RefrigerantChange.Estimate(Machine, R22, R134a, much).Findings, finding => finding.Message.StartsWith("No oil was given", StringComparison.Ordinal));
    }

    /// <summary>Above its critical temperature a refrigerant has no saturation pressure: the cylinder's pressure must be given.</summary>
    [Fact]
    public void A_warm_machine_after_carbon_dioxide_needs_the_cylinder_pressure()
    {
        Fluid co2 = Fluid.Get("R-744");
        RefrigerantChangeOptions warm = WithOil with { Temperature = Temperature.FromDegreesCelsius(40) };
        Assert.Throws<PropertyRangeException>(() => RefrigerantChange.Estimate(Machine, co2, R22, Mass.FromKilograms(5), warm));
        RefrigerantChange change = RefrigerantChange.Estimate(
            Machine, co2, R22, Mass.FromKilograms(5), warm with { DischargePressure = Pressure.FromMegapascals(6) });
        Assert.InRange(change.AfterClearing.InOil.Best.Grams, 0.1, 5);
        Assert.False(change.AfterClearing.IsLowerBound);
    }

    [Fact]
    public void It_says_what_it_was_asked()
    {
        RefrigerantChange change = RefrigerantChange.Estimate(Machine, R22, R134a, Mass.FromKilograms(10), WithOil with { DischargePressure = null });
        Assert.Equal((R22, R134a, Mass.FromKilograms(10)), (change.Previous, change.Next, change.NextRecovered));
        Assert.Equal(50.5, change.Clearing.FinalPressure.Kilopascals, 1e-9);
        Assert.StartsWith("R-22 in R-134a: ", change.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("at least", change.BeforeClearing.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_names_the_parameter()
    {
        Assert.Throws<ArgumentNullException>("machine", () => RefrigerantChange.Estimate(null!, R22, R134a, Mass.FromKilograms(1)));
        Assert.Throws<ArgumentNullException>("previous", () => RefrigerantChange.Estimate(Machine, null!, R134a, Mass.FromKilograms(1)));
        Assert.Throws<ArgumentNullException>("next", () => RefrigerantChange.Estimate(Machine, R22, null!, Mass.FromKilograms(1)));
        Assert.Throws<ArgumentOutOfRangeException>("nextRecovered", () => RefrigerantChange.Estimate(Machine, R22, R134a, Mass.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("Oil", () => new RefrigerantChangeOptions { Oil = new ApplianceOil { Mass = Mass.FromKilograms(1001), Kind = OilKind.Mineral } });
        Assert.Throws<ArgumentOutOfRangeException>("OilThatStays", () => new RefrigerantChangeOptions { OilThatStays = Ratio.FromPercent(101) });
    }

    /// <summary>Clearing never adds, nor does an oil change; more machine, more oil or less recovered never lowers the share.</summary>
    [Property(MaxTest = 200)]
    public Property Is_monotone() => Prop.ForAll(
        Gen.Choose(0, 1000).Select(i => i / 1000.0).ArrayOf(8).ToArbitrary(),
        u =>
        {
            Fluid fluid = Fluid.Get(new[] { "R-22", "R-134a", "R-410A", "R-123" }[(int)(u[0] * 3.999)]);
            RefrigerantChangeOptions options = WithOil with
            {
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(u[1]), Kind = OilKind.PolyolEster },
                Temperature = Temperature.FromDegreesCelsius(-10 + (60 * u[2])),
                SuctionPressure = Pressure.FromKilopascals(5 + (300 * u[3])),
                ClearingPressure = Pressure.FromKilopascals(5 + (100 * u[4])),
                OilThatStays = new Ratio(u[5], RatioUnit.DecimalFraction),
            };
            RecoveryMachine machine = Machine with { InternalVolume = Volume.FromLiters(3 * u[6]) };
            Mass recovered = Mass.FromKilograms(0.1 + (50 * u[7]));
            Fluid next = Fluid.Get("R-32");
            RefrigerantChange change = RefrigerantChange.Estimate(machine, fluid, next, recovered, options);
            RefrigerantChange larger = RefrigerantChange.Estimate(
                machine with { InternalVolume = machine.InternalVolume + Volume.FromLiters(0.1) },
                fluid,
                next,
                recovered * 0.9,
                options with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(u[1] + 0.1), Kind = OilKind.PolyolEster } });
            bool falls = change.BeforeClearing.MassFraction >= change.AfterClearing.MassFraction
                && change.AfterClearing.MassFraction >= change.AfterClearingAndOilChange.MassFraction
                && change.BeforeClearing.HighestMassFraction >= change.AfterClearing.HighestMassFraction
                && change.AfterClearing.HighestMassFraction >= change.AfterClearingAndOilChange.HighestMassFraction;
            bool rises = larger.BeforeClearing.MassFraction > change.BeforeClearing.MassFraction
                && larger.AfterClearing.HighestMassFraction > change.AfterClearing.HighestMassFraction;
            return falls && rises && change.BeforeClearing.MassFraction.DecimalFractions is >= 0 and <= 1;
        });
}
