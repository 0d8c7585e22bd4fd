using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

public sealed class OilServiceTests
{
    private const double PascalsPerPsi = 6894.757293168361;

    private static readonly Fluid R22 = Fluid.Get("R-22");
    private static readonly ApplianceOil Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.Mineral };

    /// <summary>SWEP refrigerant handbook: mineral oil with CFC and HCFC, polyol ester with HFC; polyvinyl ether stands with it.</summary>
    [Theory]
    [InlineData("R-22", OilKind.Mineral, true)]
    [InlineData("R-12", OilKind.Alkylbenzene, true)]
    [InlineData("R-22", OilKind.PolyalkyleneGlycol, false)]
    [InlineData("R-134a", OilKind.PolyolEster, true)]
    [InlineData("R-410A", OilKind.PolyvinylEther, true)]
    [InlineData("R-410A", OilKind.Mineral, false)]
    [InlineData("R-404A", OilKind.Alkylbenzene, false)]
    public void An_oil_that_is_not_customary_is_said(string fluid, OilKind oil, bool customary)
    {
        Finding? finding = OilMatch.Check(Fluid.Get(fluid), oil);
        Assert.Equal(customary, finding is null);
        if (finding is not null)
        {
            Assert.Equal((Severity.Caution, FindingSubject.Oil), (finding.Severity, finding.Subject));
            Assert.StartsWith(fluid, finding.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_is_customary_is_named_in_words_and_the_unknown_is_left_to_the_maker()
    {
        Assert.Equal(
            "R-410A is customarily used with polyol ester, not with mineral oil: the maker's data decide.", OilMatch.Check(Fluid.Get("R-410A"), OilKind.Mineral)!.Message);
        Finding unknown = OilMatch.Check(Fluid.FromModel(new SimpleFluid("R-own")), OilKind.Mineral)!;
        Assert.Equal(Severity.Note, unknown.Severity);
        Assert.Contains("not known here", unknown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_oil_has_a_family()
    {
        Assert.All(Enum.GetValues<OilKind>(), kind => Assert.NotEqual(OilFamilies.None, OilMatch.FamilyOf(kind)));
        Assert.Throws<ArgumentOutOfRangeException>("oil", () => OilMatch.FamilyOf((OilKind)99));
        Assert.Throws<ArgumentNullException>("fluid", () => OilMatch.Check(null!, OilKind.Mineral));
    }

    /// <summary>Raoult's rule at 20 °C, R-22 in oil of 320 g/mol: 3.3 % by mass at 101.3 kPa, 2.1 % at 67.4 kPa, 1.0 % at 33.3 kPa (computed by hand, p_sat 910 kPa).</summary>
    [Theory]
    [InlineData(101.3, 3.3)]
    [InlineData(67.4, 2.1)]
    [InlineData(33.3, 1.0)]
    public void Drained_oil_takes_refrigerant_with_it(double kilopascals, double percent)
    {
        DrainedOil drained = DrainedOil.Estimate(R22, Oil with { SolubilityFactor = 1 }, Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(kilopascals));
        Assert.Equal(percent, drained.MassFraction.Percent, 0.05);
        double dissolved = drained.Dissolved.Best.Kilograms;
        Assert.Equal(drained.MassFraction.DecimalFractions, dissolved / (dissolved + 2), 1e-12);
        Assert.True(drained.HighestMassFraction > drained.MassFraction);
        Assert.Equal(FindingSubject.Oil, Assert.Single(drained.Findings).Subject);
        Assert.DoesNotContain("at least", drained.ToString(), StringComparison.Ordinal);
    }

    /// <summary>40 CFR 82.156(a)(1)(iii): at most 5 psig, by the gauge at the place.</summary>
    [Theory]
    [InlineData(5.01, 0, true)]
    [InlineData(4.99, 0, false)]
    [InlineData(4.99, 3000, false)]
    [InlineData(5.01, 3000, true)]
    public void Above_5_psig_oil_may_not_be_drained(double psig, double meters, bool stops)
    {
        Barometer here = Barometer.AtElevation(Length.FromMeters(meters));
        DrainedOil drained = DrainedOil.Estimate(
            R22, Oil, Temperature.FromDegreesCelsius(20), here.FromGauge(Pressure.FromPascals(psig * PascalsPerPsi)), here);
        Assert.Equal(stops, drained.Findings[0].Severity == Severity.Stop);
        Assert.Equal(stops, drained.Findings.Any(finding => finding.Source == "40 CFR 82.156(a)(1)(iii)"));
    }

    [Fact]
    public void Warm_and_evacuated_oil_holds_less()
    {
        double Best(double celsius, double kilopascals) =>
            DrainedOil.Estimate(R22, Oil, Temperature.FromDegreesCelsius(celsius), Pressure.FromKilopascals(kilopascals)).Dissolved.Best.Kilograms;
        double[] warming = [.. Enumerable.Range(0, 12).Select(i => Best(5 * i, 100))];
        double[] evacuating = [.. Enumerable.Range(1, 12).Select(i => Best(20, 120.0 / i))];
        Assert.True(warming.Zip(warming.Skip(1)).All(pair => pair.Second < pair.First));
        Assert.True(evacuating.Zip(evacuating.Skip(1)).All(pair => pair.Second < pair.First));
    }

    [Fact]
    public void Near_saturation_the_estimate_is_a_lower_bound()
    {
        DrainedOil drained = DrainedOil.Estimate(R22, Oil, Temperature.FromDegreesCelsius(-40), Pressure.FromKilopascals(101.325));
        Assert.True(drained.IsLowerBound);
        Assert.Equal(Severity.Warning, Assert.Single(drained.Findings).Severity);
        Assert.StartsWith("at least", drained.ToString(), StringComparison.Ordinal);
        Assert.False(DrainedOil.Estimate(R22, Oil, Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(101.325)).IsLowerBound);
    }

    [Fact]
    public void No_oil_takes_nothing_with_it()
    {
        DrainedOil none = DrainedOil.Estimate(R22, new ApplianceOil { Mass = Mass.Zero, Kind = OilKind.Mineral }, Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(100));
        Assert.Equal(0, none.Dissolved.High.Kilograms);
        Assert.Equal(0, none.MassFraction.DecimalFractions);
        Assert.Empty(none.Findings);
    }
}
