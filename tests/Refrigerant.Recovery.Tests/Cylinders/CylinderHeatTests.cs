using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

/// <summary>Heat on a closed cylinder and on trapped liquid, against closed formulas and real refrigerants.</summary>
public sealed class CylinderHeatTests
{
    private static readonly RecoveryCylinder Cylinder = RecoveryCylinder.FromMark("4BA400", Kilograms(50), Kilograms(20));

    private static readonly double Volume = Cylinder.InternalVolume.CubicMeters;

    private static Mass Kilograms(double value) => new(value, MassUnit.Kilogram);

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Temperature Kelvins(double value) => new(value, TemperatureUnit.Kelvin);

    private static Temperature Celsius(double value) => new(value, TemperatureUnit.DegreeCelsius);

    private static Fluid Simple(SimpleFluid? model = null) => Fluid.FromModel(model ?? new SimpleFluid());

    [Theory]
    [InlineData(1200, 298.15)]
    [InlineData(1000, 348.15)]
    [InlineData(1500, 223.15)]
    public void LiquidFullTemperature_InvertsTheLiquidDensity(double density, double kelvins)
    {
        // ρ'(T) = 1200 − 4·(T − 298.15)
        Temperature? full = CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(density * Volume));
        Assert.Equal(kelvins, full!.Value.Kelvins, 1e-5);
    }

    [Fact]
    public void LiquidFullTemperature_OfASmallFilling_DoesNotExist()
    {
        // ρ'(Tc = 400 K) = 792.6
        Assert.Null(CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(792.5 * Volume)));
        Assert.NotNull(CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(792.7 * Volume)));
        Assert.Null(CylinderFill.LiquidFullTemperature(Cylinder, Fluid.Get("R-134a"), Kilograms(500 * Volume)));
    }

    [Fact]
    public void AFillingThatNeverFitsAsALiquid_IsAnError()
    {
        // ρ'(200 K) = 1592.6
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(() => CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(1593 * Volume)));
        Assert.Equal("mass", e.ParamName);
        Assert.Contains("does not fit", e.Message, StringComparison.Ordinal);
        Assert.Equal(200, CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(1592.59999999 * Volume))!.Value.Kelvins, 1e-5);
    }

    [Fact]
    public void PressureAt_GoesThroughTheLiquidFullPoint()
    {
        SimpleFluid model = new();
        Mass mass = Kilograms(1100 * Volume);
        Assert.Equal(model.BubblePressure(300), CylinderFill.PressureAt(Cylinder, Simple(), mass, Kelvins(300)).Pascals, 1e-6);

        // ρ'(333.15) = 1060: full of liquid, K·(1100/1060 − 1) above the bubble pressure.
        Assert.Equal(model.BubblePressure(333.15) + (5e8 * ((1100.0 / 1060) - 1)), CylinderFill.PressureAt(Cylinder, Simple(), mass, Kelvins(333.15)).Pascals, 1);
    }

    [Fact]
    public void ReliefTemperature_IsWhereThePressureIsReached()
    {
        SimpleFluid model = new();
        Mass mass = Kilograms(700 * Volume);

        // Never full of liquid: bubble pressure 1 MPa·exp(2500·(1/313.15 − 1/T)) = set pressure + 101 325 Pa.
        Temperature? relief = CylinderFill.ReliefTemperature(Cylinder, Simple(), mass, Pascals(2e6));
        Assert.Equal(1 / ((1 / 313.15) - (Math.Log(2.101325) / 2500)), relief!.Value.Kelvins, 1e-5);
        Assert.Equal(2_101_325, model.BubblePressure(relief.Value.Kelvins), 1);

        Barometer low = Barometer.Reading(Pascals(80_000));
        Assert.True(CylinderFill.ReliefTemperature(Cylinder, Simple(), mass, Pascals(2e6), low)!.Value < relief.Value);
        Assert.Null(CylinderFill.ReliefTemperature(Cylinder, Simple(), mass, Pascals(5e7)));
        Assert.Null(CylinderFill.ReliefTemperature(Cylinder, Simple(), Kilograms(1 * Volume), Pascals(2e6)));
    }

    [Fact]
    public void ReliefTemperature_PastLiquidFull_IsSoonReached()
    {
        // R-134a filled to 1000 kg/m³ is liquid-full near 72 °C; a set pressure of 600 psi is reached some kelvins later.
        Mass mass = Kilograms(1000 * Volume);
        double full = CylinderFill.LiquidFullTemperature(Cylinder, Fluid.Get("R-134a"), mass)!.Value.DegreesCelsius;
        Temperature relief = CylinderFill.ReliefTemperature(Cylinder, Fluid.Get("R-134a"), mass, new Pressure(600, PressureUnit.PoundForcePerSquareInch))!.Value;
        Assert.InRange(relief.DegreesCelsius - full, 3, 10);
        Assert.Equal(614.696, CylinderFill.PressureAt(Cylinder, Fluid.Get("R-134a"), mass, relief).PoundsForcePerSquareInch, 0.01);
    }

    [Fact]
    public void Heat_HasTheKinkAndEndsAtTheRangeOfTheEquation()
    {
        SimpleFluid model = new();
        Mass mass = Kilograms(1100 * Volume);
        CylinderHeatCurve curve = CylinderFill.HeatCurve(Cylinder, Simple(), mass, Kelvins(293.15), Kelvins(343.15), 10);
        Assert.Equal(323.15, curve.LiquidFullTemperature!.Value.Kelvins, 1e-5);
        Assert.False(curve.EndsEarly);

        // The kink falls on a step of the grid here, within the solver's tolerance: at most one point more.
        Assert.InRange(curve.Points.Count, 11, 12);
        Assert.Equal(293.15, curve.Points[0].Temperature.Kelvins, 1e-9);
        Assert.Equal(343.15, curve.Points[^1].Temperature.Kelvins, 1e-9);
        Assert.Equal(1, curve.Points[^1].LiquidFill!.Value.DecimalFractions);
        double vapor = model.VaporDensity(293.15, model.BubblePressure(293.15));
        Assert.Equal((1100 - vapor) / (1220 - vapor), curve.Points[0].LiquidFill!.Value.DecimalFractions, 1e-9);

        CylinderHeatCurve kinked = CylinderFill.HeatCurve(Cylinder, Simple(), mass, Kelvins(293.15), Kelvins(338.15), 1);
        Assert.Equal(3, kinked.Points.Count);
        Assert.Equal(323.15, kinked.Points[1].Temperature.Kelvins, 1e-5);
        Assert.Equal(model.BubblePressure(323.15), kinked.Points[1].Pressure.Pascals, 5.0);

        CylinderHeatCurve broken = CylinderFill.HeatCurve(Cylinder, Simple(new SimpleFluid { HighestPressure = 1e7 }), mass, Kelvins(293.15), Kelvins(390), 20);
        Assert.True(broken.EndsEarly);
        Assert.True(broken.Points[^1].Pressure.Pascals <= 1e7);
        Assert.True(broken.Points.Count > 2);
    }

    [Fact]
    public void Heat_OutsideTheKink_AddsNoPoint()
    {
        Mass mass = Kilograms(1100 * Volume);
        Assert.Equal(6, CylinderFill.HeatCurve(Cylinder, Simple(), mass, Kelvins(290), Kelvins(320), 5).Points.Count);
        Assert.Equal(6, CylinderFill.HeatCurve(Cylinder, Simple(), mass, Kelvins(324), Kelvins(330), 5).Points.Count);
        CylinderHeatCurve small = CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(500 * Volume), Kelvins(390), Kelvins(410), 2);
        Assert.Null(small.LiquidFullTemperature);
        Assert.NotNull(small.Points[1].LiquidFill);
        Assert.Null(small.Points[2].LiquidFill);
        Assert.Equal("136.85 °C, 17044.6 kPa absolute, supercritical", small.Points[2].ToString());
        Assert.EndsWith("% liquid", small.Points[0].ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("R-134a", 1050)]
    [InlineData("R-22", 1000)]
    [InlineData("R-32", 780)]
    [InlineData("R-290", 430)]
    [InlineData("R-717", 540)]
    public void Heat_OnRealRefrigerants_RisesThroughout(string designation, double density)
    {
        CylinderHeatCurve curve = CylinderFill.HeatCurve(Cylinder, Fluid.Get(designation), Kilograms(density * Volume), Celsius(0), Celsius(90), 90);
        double full = curve.LiquidFullTemperature!.Value.Kelvins;
        for (int i = 1; i < curve.Points.Count; i++)
        {
            CylinderHeatPoint before = curve.Points[i - 1];
            CylinderHeatPoint after = curve.Points[i];
            Assert.True(after.Pressure > before.Pressure);
            double perKelvin = (after.Pressure.Bars - before.Pressure.Bars) / (after.Temperature.Kelvins - before.Temperature.Kelvins);
            if (before.Temperature.Kelvins >= full - 1e-6 && after.Temperature.Kelvins - before.Temperature.Kelvins > 0.01)
            {
                Assert.InRange(perKelvin, 2, 25);
            }
        }
    }

    [Fact]
    public void Heat_OnARealRefrigerant_EndsWhereTheEquationDoes()
    {
        // R-134a, valid to 70 MPa and 455 K.
        CylinderHeatCurve full = CylinderFill.HeatCurve(Cylinder, Fluid.Get("R-134a"), Kilograms(1400 * Volume), Celsius(-50), Celsius(180), 230);
        Assert.True(full.EndsEarly);
        Assert.InRange(full.Points[^1].Pressure.Megapascals, 60, 70);
        CylinderHeatCurve hot = CylinderFill.HeatCurve(Cylinder, Fluid.Get("R-134a"), Kilograms(5 * Volume), Celsius(20), Celsius(200), 18);
        Assert.True(hot.EndsEarly);
        Assert.Equal(180, hot.Points[^1].Temperature.DegreesCelsius, 1e-6);
    }

    [Fact]
    public void Trapped_RiseIsTheClosedFormula()
    {
        SimpleFluid model = new();
        TrappedLiquid trapped = TrappedLiquid.ShutIn(Simple(), Kelvins(298.15));
        Assert.Equal(298.15, trapped.ClosedAt.Kelvins, 1e-9);
        Assert.Equal(model.BubblePressure(298.15), trapped.ClosedPressure.Pascals, 1e-6);
        double rise = (model.BubblePressure(298.15) * 2500 / (298.15 * 298.15)) + (5e8 * 4 / 1200);
        Assert.Equal(rise, trapped.PressurePerKelvin.Pascals, 1e-3);
        Assert.Equal(0.01 * rise, trapped.PressureAt(Kelvins(298.16)).Pascals - trapped.ClosedPressure.Pascals, 1e-3 * rise);
        Temperature burst = trapped.TemperatureAt(Pascals(2e7))!.Value;
        Assert.Equal(2e7, trapped.PressureAt(burst).Pascals, 10.0);
        Assert.Null(trapped.TemperatureAt(Pascals(6e7)));
        Finding caution = Assert.Single(trapped.Findings);
        Assert.Equal(FindingSubject.TrappedLiquid, caution.Subject);
    }

    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-22")]
    [InlineData("R-32")]
    public void Trapped_SlopeMatchesTheCurve(string designation)
    {
        TrappedLiquid trapped = TrappedLiquid.ShutIn(Fluid.Get(designation), Celsius(25));
        double slope = trapped.PressureAt(Celsius(25.1)).Pascals - trapped.ClosedPressure.Pascals;
        Assert.Equal(trapped.PressurePerKelvin.Pascals, slope / 0.1, trapped.PressurePerKelvin.Pascals * 0.01);
        Assert.InRange(trapped.PressurePerKelvin.Bars, 3, 20);
    }

    [Property(MaxTest = 60)]
    public Property WarmingNeverLowersThePressure() => Prop.ForAll(
        Gen.Choose(0, Fluid.All.Count - 1).SelectMany(i => Gen.Choose(1, 900).SelectMany(d => Gen.Choose(0, 1000).Two().Select(t => (i, d, t)))).ToArbitrary(),
        sample =>
        {
            Fluid fluid = Fluid.All[sample.i];
            PropertyRange range = fluid.Model.Range;
            double span = range.MaximumSaturationTemperature - range.MinimumTemperature;
            double cold = range.MinimumTemperature + (span * Math.Min(sample.t.Item1, sample.t.Item2) / 1000);
            double warm = range.MinimumTemperature + (span * Math.Max(sample.t.Item1, sample.t.Item2) / 1000);
            Mass mass = Kilograms(Volume * 0.001 * sample.d * fluid.Model.SaturationAtTemperature(warm).Bubble.Density);
            return CylinderFill.PressureAt(Cylinder, fluid, mass, Kelvins(warm)).Pascals
                >= CylinderFill.PressureAt(Cylinder, fluid, mass, Kelvins(cold)).Pascals * (1 - 1e-9);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void HostileNumbers_AreClearErrors(double value)
    {
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.PressureAt(Cylinder, Simple(), Kilograms(value), Kelvins(300)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.PressureAt(Cylinder, Simple(), Kilograms(1), Kelvins(value)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.LiquidFullTemperature(Cylinder, Simple(), Kilograms(value)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(value), Kelvins(300), Kelvins(310)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(value), Kelvins(310)));
        Assert.ThrowsAny<ArgumentException>(() => TrappedLiquid.ShutIn(Simple(), Kelvins(value)));
        if (value < 1e300 || !double.IsFinite(value))
        {
            Assert.ThrowsAny<ArgumentException>(() => CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(300), Kelvins(value)));
            Assert.ThrowsAny<ArgumentException>(() => CylinderFill.ReliefTemperature(Cylinder, Simple(), Kilograms(1), Pascals(value)));
            Assert.ThrowsAny<ArgumentException>(() => TrappedLiquid.ShutIn(Simple(), Kelvins(300)).TemperatureAt(Pascals(value)));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10_001)]
    public void Intervals_AreBounded(int intervals) => Assert.Throws<ArgumentOutOfRangeException>(
        () => CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(300), Kelvins(310), intervals));

    [Fact]
    public void EqualTemperaturesAndNulls_AreClearErrors()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(300), Kelvins(300)));
        Assert.Throws<ArgumentNullException>(() => CylinderFill.PressureAt(null!, Simple(), Kilograms(1), Kelvins(300)));
        Assert.Throws<ArgumentNullException>(() => CylinderFill.PressureAt(Cylinder, null!, Kilograms(1), Kelvins(300)));
        Assert.Throws<ArgumentNullException>(() => TrappedLiquid.ShutIn(null!, Kelvins(300)));
        Assert.Equal(10_001, CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(300), Kelvins(310), 10_000).Points.Count);
        Assert.Equal(61, CylinderFill.HeatCurve(Cylinder, Simple(), Kilograms(1), Kelvins(300), Kelvins(310)).Points.Count);
    }
}
