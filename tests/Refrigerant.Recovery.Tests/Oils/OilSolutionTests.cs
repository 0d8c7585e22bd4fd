using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Oils;
using UnitsNet;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.Tests.Oils;

/// <summary>Solubility in oil against measurements, and how fast it comes out.</summary>
public class OilSolutionTests(ITestOutputHelper output)
{
    // Pressure and temperature over a solution and its mole fraction of refrigerant, from the data tables of the public repository
    // carlesRT/sorpproplib_JSON, which names the papers: Wahlström and Vamling, J. Chem. Eng. Data 1999 (R-134a and R-32 in pentaerythritol
    // tetrapentanoate) and 45 (2000) 97 (C9 ester); Marcelino Neto and Barbosa, Int. J. Refrig. 31 (2008) 34 (R-600a in an ester of ISO 7, its
    // molar mass left at 600 g/mol, as x does not hang on it); Grebner, Univ. Illinois ACRC TR-13 (1992) (ester, 590 g/mol taken);
    // Takigawa et al., Int. J. Refrig. 25 (2002) 1014 (alkylbenzene 15; its basis could not be checked).
    public static TheoryData<string, OilKind, double, double, double> Measured => new()
    {
        { "R-134a", OilKind.PolyolEster, 29.9, 51.5, 0.0907 },
        { "R-134a", OilKind.PolyolEster, 29.9, 90.2, 0.1551 },
        { "R-134a", OilKind.PolyolEster, 29.9, 132.1, 0.2219 },
        { "R-134a", OilKind.PolyolEster, 69.9, 93.9, 0.0662 },
        { "R-134a", OilKind.PolyolEster, 29.9, 103.8, 0.1622 },
        { "R-32", OilKind.PolyolEster, 29.9, 71.1, 0.0734 },
        { "R-32", OilKind.PolyolEster, 29.9, 123.8, 0.1216 },
        { "R-600a", OilKind.PolyolEster, 20, 11.8, 0.0395 },
        { "R-600a", OilKind.PolyolEster, 20, 34.5, 0.1150 },
        { "R-600a", OilKind.PolyolEster, 20, 77.6, 0.2288 },
        { "R-600a", OilKind.PolyolEster, 30, 27.9, 0.0750 },
        { "R-134a", OilKind.PolyolEster, 20, 208, 0.405 },
        { "R-134a", OilKind.PolyolEster, -10, 57.2, 0.413 },
        { "R-134a", OilKind.Alkylbenzene, 40, 329, 0.123 },
        { "R-134a", OilKind.Alkylbenzene, 40, 599, 0.222 },
    };

    [Theory]
    [MemberData(nameof(Measured))]
    public void Measured_points_come_within_15_percent(string refrigerant, OilKind kind, double celsius, double kilopascals, double fraction)
    {
        PropertyModel model = Fluid.Get(refrigerant).Model;
        double x = MoleFraction(new OilSolution(model, Oil(kind)), model, celsius, kilopascals, kind == OilKind.Alkylbenzene ? 0.32 : 0.6);
        double family = MoleFraction(new OilSolution(model, new RaoultFactor(kind == OilKind.Alkylbenzene ? 0.4 : 1.5, kind == OilKind.Alkylbenzene ? 0.07 : 1, false), 0.6), model, celsius, kilopascals, 0.6);
        output.WriteLine($"{refrigerant} in {kind}, {celsius} °C, {kilopascals} kPa: measured {fraction}, pair {100 * ((x / fraction) - 1):+0.0;-0.0} %, family {100 * ((family / fraction) - 1):+0.0;-0.0} %");
        Assert.Equal(fraction, x, 0.15 * fraction);
    }

    [Property(MaxTest = 300)]
    public Property The_inverse_gives_the_pressure_back_and_more_pressure_dissolves_more() => Prop.ForAll(
        Gen.Choose(1, 999).Select(i => i / 1000.0).Three().ToArbitrary(),
        t =>
        {
            var solution = new OilSolution(Fluid.Get("R-134a").Model, new RaoultFactor(0.02 + (5 * t.Item1), 0.02 + (5 * t.Item2), true), 0.4);
            double ratio = solution.MassRatio(t.Item3);
            return Math.Abs(solution.ShareAt(ratio) - t.Item3) < 1e-12 && solution.MassRatio(t.Item3 + 1e-4) > ratio;
        });

    [Fact]
    public void An_empty_oil_has_no_pressure() =>
        Assert.Equal(0, new OilSolution(Fluid.Get("R-22").Model, Oil(OilKind.Mineral)).EquilibriumPressure(293.15, 0));

    [Theory]
    [InlineData("R-11", SoluteFamily.Chlorinated)]
    [InlineData("R-22", SoluteFamily.Chlorinated)]
    [InlineData("R-40", SoluteFamily.Chlorinated)]
    [InlineData("R-123", SoluteFamily.Chlorinated)]
    [InlineData("R-1130(E)", SoluteFamily.Chlorinated)]
    [InlineData("R-1233zd(E)", SoluteFamily.Chlorinated)]
    [InlineData("R-14", SoluteFamily.Fluorinated)]
    [InlineData("R-13I1", SoluteFamily.Fluorinated)]
    [InlineData("R-32", SoluteFamily.Fluorinated)]
    [InlineData("R-134a", SoluteFamily.Fluorinated)]
    [InlineData("R-1234yf", SoluteFamily.Fluorinated)]
    [InlineData("R-1336mzz(Z)", SoluteFamily.Fluorinated)]
    [InlineData("R-C318", SoluteFamily.Fluorinated)]
    [InlineData("R-170", SoluteFamily.Hydrocarbon)]
    [InlineData("R-290", SoluteFamily.Hydrocarbon)]
    [InlineData("R-1270", SoluteFamily.Hydrocarbon)]
    [InlineData("R-601a", SoluteFamily.Hydrocarbon)]
    [InlineData("R-E170", SoluteFamily.Hydrocarbon)]
    [InlineData("R-717", SoluteFamily.Ammonia)]
    [InlineData("R-744", SoluteFamily.CarbonDioxide)]
    [InlineData("something", SoluteFamily.Fluorinated)]
    public void The_number_tells_the_family(string designation, object family) => Assert.Equal(family, SoluteFamilies.Of(designation));

    [Fact]
    public void A_blend_dissolves_as_its_components_do_by_moles()
    {
        RaoultFactor blend = SolubilityTable.For(Fluid.Get("R-410A").Model, OilKind.PolyolEster);
        double moles = (0.5 / 52.024) / ((0.5 / 52.024) + (0.5 / 120.02));
        Assert.Equal((2.1 * moles) + (1.5 * (1 - moles)), blend.Thin, 1e-3);
        Assert.False(blend.IsMeasured);
    }

    [Fact]
    public void Oil_foams_fast_and_diffuses_slowly()
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        ApplianceOil oil = Oil(OilKind.PolyolEster) with { FoamingTime = Duration.FromSeconds(80), DiffusionTime = Duration.FromSeconds(1e5) };
        var release = new OilRelease(model, oil, 293.15);
        var solution = new OilSolution(model, oil);
        double saturation = model.SaturationAtTemperature(293.15).Bubble.Pressure;
        double held = solution.MassRatio(0.4);
        foreach ((double over, double share) in new[] { (1.2, 0.0), (1.5, 0.0), (1.75, 0.5), (2.0, 1.0), (5.0, 1.0) })
        {
            release.Solve(0.4 * saturation / over, 293.15, held);
            double missing = held - solution.MassRatio(0.4 / over);
            Assert.Equal(missing * ((share / 80) + ((1 - share) / 1e5)), release.Release, 1e-9 * missing);
            Assert.Equal(0.4 * saturation, release.EquilibriumPressure, 1e-6 * saturation);
        }

        release.Solve(0.41 * saturation, 293.15, held);
        Assert.Equal(0, release.Release);
        release.Solve(1.1 * saturation, 293.15, held);
        Assert.Equal(0, release.Release);
    }

    /// <summary>4·L²/(π²·D) of the slowest term of diffusion out of a slab closed at its bottom (any text on diffusion).</summary>
    [Fact]
    public void The_default_of_diffusion_is_that_of_20_millimeters() =>
        Assert.Equal(4 * 0.02 * 0.02 / (Math.PI * Math.PI * 5e-10), Oil(OilKind.Mineral).DiffusionTime.Seconds, 0.02 * 3.2e5);

    private static ApplianceOil Oil(OilKind kind) => new() { Mass = Mass.FromKilograms(1), Kind = kind };

    /// <summary>The mass ratio turned back into moles with the molar masses of refrigerant and oil.</summary>
    private static double MoleFraction(OilSolution solution, PropertyModel model, double celsius, double kilopascals, double oil)
    {
        double odds = solution.MassRatio(1000 * kilopascals / model.SaturationAtTemperature(celsius + 273.15).Bubble.Pressure) * oil / model.MolarMass;
        return odds / (1 + odds);
    }
}
