using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Residuals;

public sealed class ResidualChargeTests
{
    private static readonly SimpleFluid Model = new();

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Temperature Kelvins(double value) => new(value, TemperatureUnit.Kelvin);

    private static Volume Liters(double value) => new(value, VolumeUnit.Liter);

    private static Mass Kilograms(double value) => new(value, MassUnit.Kilogram);

    private static ResidualCharge Simple(double liters, double kelvins, double pascals, ResidualOptions? options = null, SimpleFluid? model = null) =>
        ResidualCharge.Estimate(Fluid.FromModel(model ?? Model), Liters(liters), Kelvins(kelvins), Pascals(pascals), options);

    [Fact]
    public void AShareOfARange_IsThatOfEachBound()
    {
        MassRange half = new MassRange(1, 2, 8).Times(0.5);
        Assert.Equal((0.5, 1, 4), (half.Low.Kilograms, half.Best.Kilograms, half.High.Kilograms));
    }

    [Fact]
    public void Vapor_IsVolumeTimesTheDensityOfTheRealGas()
    {
        // The density is that of Tillner-Roth and Baehr 1994; at half an atmosphere the ideal gas is some 1 % too light.
        ResidualCharge left = ResidualCharge.Estimate(Fluid.Get("R-134a"), Liters(50), Kelvins(297.15), Pascals(50_460));
        double ideal = 50_460 * 0.102032 / (8.314462618 * 297.15);
        double density = left.Vapor.Kilograms / 0.05;
        Assert.InRange(density / ideal, 1.005, 1.015);
        Assert.Equal(left.Vapor.Kilograms, left.Total.Best.Kilograms, 1e-12);
        Assert.Contains(left.Findings, finding => finding.Message.Contains("vacuum alone proves little", StringComparison.Ordinal));
        Assert.Null(left.FractionOfCharge);
        Assert.Equal("R-134a", left.Fluid.Designation);
    }

    [Fact]
    public void SaturatedPressure_SaysThatLiquidIsLikely()
    {
        double saturation = Model.BubblePressure(280);
        foreach (double factor in (double[])[0.981, 1, 1.019])
        {
            ResidualCharge left = Simple(100, 280, factor * saturation);
            Assert.Contains(left.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind && f.Severity == Severity.Warning && f.Message.Contains("equals saturation", StringComparison.Ordinal));
            Assert.Equal(0.1 * Model.VaporDensity(280, Math.Min(factor, 1) * saturation), left.Vapor.Kilograms, 1e-12);
        }

        Assert.Contains(Simple(100, 280, 0.979 * saturation).Findings, f => f.Severity == Severity.Caution && f.Subject == FindingSubject.LiquidLeftBehind);
        ResidualCharge above = Simple(100, 280, 1.021 * saturation);
        Assert.Contains(above.Findings, f => f.Message.Contains("above saturation", StringComparison.Ordinal));
        Assert.Equal(0.1 * Model.VaporDensity(280, saturation), above.Vapor.Kilograms, 1e-12);
    }

    [Fact]
    public void ABlend_IsSaturatedFromDewToBubble_AndCountedOnTheDewSide()
    {
        SimpleFluid blend = new() { DewRatio = 0.8 };
        double bubble = blend.BubblePressure(280);
        ResidualCharge left = Simple(100, 280, 0.9 * bubble, model: blend);
        Assert.Contains(left.Findings, f => f.Message.Contains("equals saturation", StringComparison.Ordinal));
        Assert.Equal(0.1 * blend.VaporDensity(280, 0.8 * bubble), left.Vapor.Kilograms, 1e-12);
    }

    [Fact]
    public void AboveTheCriticalTemperature_ThereIsNoSaturation()
    {
        ResidualCharge left = Simple(100, 450, 3e6);
        Assert.Equal(0.1 * Model.VaporDensity(450, 3e6), left.Vapor.Kilograms, 1e-9);
        Assert.DoesNotContain(left.Findings, f => f.Severity == Severity.Warning);
        ResidualCharge oil = Simple(100, 450, 3e6, new ResidualOptions { Oil = new ApplianceOil { Mass = Kilograms(1), Kind = OilKind.Mineral } });
        MassRange atEnd = Simple(100, Model.Range.MaximumSaturationTemperature, 3e6, new ResidualOptions { Oil = new ApplianceOil { Mass = Kilograms(1), Kind = OilKind.Mineral } }).InOil;
        Assert.Equal(atEnd.Best.Kilograms, oil.InOil.Best.Kilograms, 1e-9);
        Assert.Contains(oil.Findings, f => f.Code == "left-in-oil");
    }

    [Fact]
    public void KnownLiquid_TakesRoomFromTheVapor()
    {
        ResidualCharge left = Simple(10, 298.15, 50_000, new ResidualOptions { Liquid = Kilograms(1.2), LiquidUncertainty = Kilograms(2), Charge = Kilograms(10) });
        Assert.Equal(1.2, left.Liquid.Best.Kilograms, 1e-12);
        Assert.Equal(0, left.Liquid.Low.Kilograms);
        Assert.Equal(3.2, left.Liquid.High.Kilograms, 1e-12);
        Assert.Equal(0.009 * Model.VaporDensity(298.15, 50_000), left.Vapor.Kilograms, 1e-12);
        Assert.Equal((1.2 + left.Vapor.Kilograms) / 10, left.FractionOfCharge!.Value.DecimalFractions, 1e-12);
        Assert.DoesNotContain(left.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind);
        Assert.Equal(0, Simple(10, 298.15, 50_000, new ResidualOptions { Liquid = Kilograms(0) }).Liquid.High.Kilograms);
    }

    [Fact]
    public void KnownLiquid_ThatDoesNotFit_IsAnError()
    {
        Assert.Equal(0, Simple(10, 298.15, 50_000, new ResidualOptions { Liquid = Kilograms(12) }).Vapor.Kilograms, 1e-12);
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(
            () => Simple(10, 298.15, 50_000, new ResidualOptions { Liquid = Kilograms(12.01) }));
        Assert.Equal("Liquid", e.ParamName);
    }

    [Fact]
    public void RiseTest_CountsWhatBoiledOff()
    {
        RiseReading rise = new()
        {
            Pressure = Pascals(150_000),
            Temperature = Kelvins(295),
            PressureAccuracy = Pascals(1000),
            TemperatureAccuracy = new TemperatureDelta(0, TemperatureDeltaUnit.Kelvin),
        };
        ResidualCharge left = Simple(200, 290, 50_000, new ResidualOptions { RiseTest = rise });
        double boiled = 0.2 * (Model.VaporDensity(295, 150_000) - Model.VaporDensity(290, 50_000));
        double error = 0.2 * (Model.VaporDensity(295, 1000) + Model.VaporDensity(290, 1000));
        Assert.Equal(boiled, left.Liquid.Best.Kilograms, 1e-12);
        Assert.Equal(boiled - error, left.Liquid.Low.Kilograms, 1e-12);
        Assert.Equal(boiled + error, left.Liquid.High.Kilograms, 1e-12);
        Assert.Contains(left.Findings, f => f.Subject == FindingSubject.Leak);
        Assert.DoesNotContain(left.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind);

        // The total is what fills the volume at the end of the hold, but for the little room that the liquid took.
        Assert.Equal(0.2 * Model.VaporDensity(295, 150_000), left.Total.Best.Kilograms, boiled / 1200 * 3);
    }

    [Fact]
    public void RiseTest_ThatReachesSaturation_IsALowerBound()
    {
        RiseReading rise = new() { Pressure = Pascals(Model.BubblePressure(295)), Temperature = Kelvins(295) };
        ResidualCharge left = Simple(200, 290, 50_000, new ResidualOptions { RiseTest = rise });
        Assert.Contains(left.Findings, f => f.Severity == Severity.Warning && f.Message.Contains("lower bound", StringComparison.Ordinal));
    }

    [Fact]
    public void RiseTest_WithoutRise_FindsNothing()
    {
        RiseReading flat = new() { Pressure = Pascals(50_000), Temperature = Kelvins(290) };
        ResidualCharge left = Simple(200, 290, 50_000, new ResidualOptions { RiseTest = flat });
        Assert.Equal(0, left.Liquid.Best.Kilograms);
        Assert.Equal(0, left.Liquid.Low.Kilograms);
        Assert.True(left.Liquid.High.Kilograms > 0);
        Assert.Contains(left.Findings, f => f.Severity == Severity.Note && f.Message.Contains("did not rise", StringComparison.Ordinal));
        RiseReading falling = flat with { Pressure = Pascals(40_000), PressureAccuracy = Pascals(0), TemperatureAccuracy = default };
        ResidualCharge fallen = Simple(200, 290, 50_000, new ResidualOptions { RiseTest = falling });
        Assert.Equal(0, fallen.Liquid.High.Kilograms);
        Assert.Contains(fallen.Findings, f => f is { Code: "left-pressure-falls", Severity: Severity.Warning });
    }

    [Fact]
    public void LiquidAndRiseTest_Together_AreAnError()
    {
        RiseReading rise = new() { Pressure = Pascals(50_000), Temperature = Kelvins(290) };
        ArgumentException e = Assert.Throws<ArgumentException>(() => Simple(10, 290, 50_000, new ResidualOptions { Liquid = Kilograms(1), RiseTest = rise }));
        Assert.Equal("options", e.ParamName);
    }

    // Raoult's rule at 20 °C, computed with the equations of state: weight percent of refrigerant in the liquid, printed to 0.1 %.
    [Theory]
    [InlineData("R-22", false, 101.3, 3.3)]
    [InlineData("R-22", false, 50.5, 1.6)]
    [InlineData("R-134a", true, 101.3, 3.5)]
    [InlineData("R-134a", true, 33.3, 1.0)]
    [InlineData("R-32", true, 101.3, 0.6)]
    public void Oil_OfFactorOne_HoldsWhatRaoultSays(string designation, bool ester, double kilopascals, double weightPercent)
    {
        ApplianceOil oil = new() { Mass = Kilograms(1), Kind = ester ? OilKind.PolyolEster : OilKind.Mineral, SolubilityFactor = 1 };
        ResidualCharge left = ResidualCharge.Estimate(
            Fluid.Get(designation), Liters(10), Kelvins(293.15), Pascals(1000 * kilopascals), new ResidualOptions { Oil = oil });
        double raoult = left.InOil.Best.Kilograms;
        Assert.Equal(weightPercent, 100 * raoult / (1 + raoult), 0.06);
        Assert.Contains(left.Findings, f => f.Subject == FindingSubject.Estimate && f.Message.Contains("estimate", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(5)]
    public void Oil_FactorOfTheCaller_Counts(double factor)
    {
        ApplianceOil oil = new() { Mass = Kilograms(2), Kind = OilKind.Mineral, SolubilityFactor = factor };
        double x = 100_000 / Model.BubblePressure(293.15);
        double raoult = 2 * x * 0.1 / ((1 - x) * 0.32);
        ResidualCharge left = Simple(10, 293.15, 100_000, new ResidualOptions { Oil = oil });
        Assert.Equal(factor * raoult, left.InOil.Best.Kilograms, 1e-9);
        Assert.True(left.InOil.Low < left.InOil.Best && left.InOil.Best < left.InOil.High);
    }

    [Fact]
    public void Oil_CloseToSaturation_HoldsAtLeastWhatItDoesAtTheLimit()
    {
        double saturation = Model.BubblePressure(293.15);
        ResidualOptions options = new() { Oil = new ApplianceOil { Mass = Kilograms(1), Kind = OilKind.Mineral } };
        ResidualCharge below = Simple(10, 293.15, 0.9 * (1 - 1e-9) * saturation, options);
        ResidualCharge close = Simple(10, 293.15, 0.9 * (1 + 1e-9) * saturation, options);
        Assert.False(below.InOil.IsLowerBound || below.Total.IsLowerBound);
        Assert.True(close.InOil.IsLowerBound && close.Total.IsLowerBound);
        Assert.Equal(below.InOil.Low.Kilograms, close.InOil.Low.Kilograms, 1e-6 * below.InOil.Low.Kilograms);
        Assert.Equal(below.InOil.Best.Kilograms, close.InOil.Best.Kilograms, 1e-6 * below.InOil.Best.Kilograms);
        Assert.Equal(below.InOil.High.Kilograms, close.InOil.High.Kilograms, 1e-6 * below.InOil.High.Kilograms);
        Assert.True(below.InOil.Low < below.InOil.Best && below.InOil.Best < below.InOil.High);
        Assert.StartsWith("at least ", close.InOil.ToString());
        Assert.Contains(close.Findings, f => f.Subject == FindingSubject.Oil && f.Severity == Severity.Warning);
        Assert.DoesNotContain(Simple(10, 293.15, 50_000, new ResidualOptions { Oil = new ApplianceOil { Mass = Kilograms(0), Kind = OilKind.Mineral } }).Findings, f => f.Subject == FindingSubject.Estimate);
    }

    [Fact]
    public void Spaces_AreCountedAtTheirOwnStates()
    {
        ResidualOptions options = new()
        {
            Spaces =
            [
                new ResidualSpace { Label = "vapor hose", Volume = Liters(2), Temperature = Kelvins(300), Pressure = Pascals(50_000) },
                new ResidualSpace { Label = "liquid hose", Volume = Liters(1), Temperature = Kelvins(298.15), Pressure = Pascals(800_000), IsLiquidFilled = true },
            ],
        };
        ResidualCharge left = Simple(10, 300, 50_000, options);
        Assert.Equal((0.002 * Model.VaporDensity(300, 50_000)) + 1.2, left.InSpaces.Kilograms, 1e-12);
        Assert.Equal(left.Vapor.Kilograms + left.InSpaces.Kilograms, left.Total.Best.Kilograms, 1e-12);
        Assert.Equal("vapor hose", options.Spaces[0].Label);
    }

    [Fact]
    public void CarbonDioxideEquivalent_IsMassTimesPotential()
    {
        ResidualCharge left = Simple(10, 298.15, 50_000, new ResidualOptions { Liquid = Kilograms(1) });
        Assert.Equal(left.Total.Best.Kilograms * 1430, left.CarbonDioxideEquivalent(1430).Kilograms, 1e-9);
        Assert.Equal(0, left.CarbonDioxideEquivalent(0).Kilograms);
        Assert.Throws<ArgumentOutOfRangeException>(() => left.CarbonDioxideEquivalent(-1));
        Assert.StartsWith("R-test: ", left.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void MoreThanTheCharge_IsCalledOut()
    {
        ResidualOptions options = new() { Charge = Kilograms(0.01), Liquid = Kilograms(0) };
        Assert.Contains(Simple(100, 298.15, 50_000, options).Findings, f => f.Message.Contains("more than the charge", StringComparison.Ordinal));
        Assert.Empty(Simple(1, 298.15, 50_000, options).Findings);
    }

    [Property(MaxTest = 100)]
    public Property ALowerPressure_LeavesLessVapor() => Prop.ForAll(
        Gen.Choose(0, Fluid.All.Count - 1).SelectMany(i => Gen.Choose(1, 1000).Two().Select(p => (i, p))).ToArbitrary(),
        sample =>
        {
            Fluid fluid = Fluid.All[sample.i];
            double t = 0.5 * (fluid.Model.Range.MinimumTemperature + fluid.Model.Range.MaximumSaturationTemperature);
            double dew = fluid.Model.SaturationAtTemperature(t).Dew.Pressure;
            double Left(int share) => ResidualCharge.Estimate(fluid, Liters(10), Kelvins(t), Pascals(dew * 0.0011 * share)).Vapor.Kilograms;
            return Left(Math.Min(sample.p.Item1, sample.p.Item2)) <= Left(Math.Max(sample.p.Item1, sample.p.Item2));
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void HostileNumbers_AreClearErrors(double value)
    {
        Assert.ThrowsAny<ArgumentException>(() => Simple(value, 300, 50_000));
        Assert.ThrowsAny<ArgumentException>(() => Simple(10, value, 50_000));
        Assert.ThrowsAny<ArgumentException>(() => Simple(10, 300, value));
        Assert.ThrowsAny<ArgumentException>(() => new ResidualOptions { Charge = Kilograms(value) });
        Assert.ThrowsAny<ArgumentException>(() => new RiseReading { Pressure = Pascals(value), Temperature = Kelvins(300) });
        Assert.ThrowsAny<ArgumentException>(() => new RiseReading { Pressure = Pascals(1), Temperature = Kelvins(value) });
        Assert.ThrowsAny<ArgumentException>(() => new ResidualSpace { Volume = Liters(1), Temperature = Kelvins(value), Pressure = Pascals(1) });
        Assert.ThrowsAny<ArgumentException>(() => new ResidualSpace { Volume = Liters(1), Temperature = Kelvins(300), Pressure = Pascals(value) });
        Assert.ThrowsAny<ArgumentException>(() => new ApplianceOil { Mass = Kilograms(1), Kind = OilKind.Mineral } with { SolubilityFactor = value });
        Assert.ThrowsAny<ArgumentException>(() => new ApplianceOil { Mass = Kilograms(1), Kind = OilKind.Mineral } with { MolarMass = new MolarMass(value, MolarMassUnit.GramPerMole) });
        if (value != 0)
        {
            Assert.ThrowsAny<ArgumentException>(() => new ApplianceOil { Mass = Kilograms(value), Kind = OilKind.PolyolEster });
            Assert.ThrowsAny<ArgumentException>(() => new ResidualOptions { Liquid = Kilograms(value) });
            Assert.ThrowsAny<ArgumentException>(() => new ResidualOptions { LiquidUncertainty = Kilograms(value) });
            Assert.ThrowsAny<ArgumentException>(() => new ResidualSpace { Volume = Liters(value), Temperature = Kelvins(300), Pressure = Pascals(1) });
            Assert.ThrowsAny<ArgumentException>(() => new RiseReading { Pressure = Pascals(1), Temperature = Kelvins(300), PressureAccuracy = Pascals(value) });
            Assert.ThrowsAny<ArgumentException>(() => new RiseReading { Pressure = Pascals(1), Temperature = Kelvins(300), TemperatureAccuracy = new TemperatureDelta(value, TemperatureDeltaUnit.Kelvin) });
        }
    }

    [Fact]
    public void Nulls_AreClearErrors()
    {
        Assert.Throws<ArgumentNullException>(() => ResidualCharge.Estimate(null!, Liters(1), Kelvins(300), Pascals(1)));
        Assert.Throws<ArgumentNullException>(() => new ResidualOptions { Spaces = null! });
        Assert.Throws<ArgumentNullException>(() => new ResidualSpace { Label = null!, Volume = Liters(1), Temperature = Kelvins(300), Pressure = Pascals(1) });
        ResidualOptions none = new() { Charge = null, Liquid = null };
        Assert.Null(none.Charge);
        Assert.Equal(1, new RiseReading { Pressure = Pascals(1), Temperature = Kelvins(300) }.PressureAccuracy.Kilopascals, 1e-12);
    }
}
