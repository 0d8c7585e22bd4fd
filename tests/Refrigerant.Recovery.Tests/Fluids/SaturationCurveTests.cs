using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>The curves against the equation they are derived from, and against the laws that any saturation line obeys.</summary>
public class SaturationCurveTests
{
    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void CurvesAgreeWithTheEquationsOwnEquilibrium(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        PureEquation equation = model.Engine.Equation;
        double[] isotherm = new double[equation.Residual.IsothermLength];
        foreach (double temperature in Temperatures(model, 100))
        {
            SaturationPoint s = model.SaturationAtTemperature(temperature);
            double tau = equation.ReducingTemperature / temperature;
            equation.Residual.Isotherm(tau, isotherm);
            double liquid = s.Bubble.Density / equation.ReducingDensity;
            double vapor = s.Dew.Density / equation.ReducingDensity;
            Assert.True(PhaseEquilibrium.TrySolve(equation.Residual, tau, isotherm, ref liquid, ref vapor));
            equation.Caloric(temperature, liquid * equation.ReducingDensity, isotherm, out _, out double liquidEnthalpy, out double liquidEntropy);
            equation.Caloric(temperature, vapor * equation.ReducingDensity, isotherm, out double pressure, out double vaporEnthalpy, out _);

            // Next to the critical point the isotherms are flat, and rounding alone moves the densities.
            double tolerance = temperature < 0.999 * model.Engine.Curves.CriticalTemperature ? 2e-11 : 2e-8;
            Assert.InRange((s.Bubble.Pressure / pressure) - 1, -2e-11, 2e-11);
            Assert.InRange((s.Bubble.Density / equation.ReducingDensity / liquid) - 1, -tolerance, tolerance);
            Assert.InRange((s.Dew.Density / equation.ReducingDensity / vapor) - 1, -tolerance, tolerance);
            Assert.InRange(((s.Dew.Enthalpy - s.Bubble.Enthalpy) / (vaporEnthalpy - liquidEnthalpy)) - 1, -tolerance, tolerance);
            Assert.InRange(s.Bubble.Enthalpy - liquidEnthalpy, -1e-3, 1e-3);
            Assert.InRange(s.Bubble.Entropy - liquidEntropy, -1e-5, 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void CurvesReachTheCriticalPoint(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        double end = Math.Min(model.Engine.Curves.CriticalTemperature, model.Range.MaximumTemperature);
        Assert.InRange(model.Range.MaximumSaturationTemperature / end, 1 - 1e-5, 1);
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void PressureAndVaporDensityRiseAndLiquidDensityAndLatentHeatFall(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        PropertyRange range = model.Range;
        SaturationPoint last = model.SaturationAtTemperature(range.MinimumTemperature);
        const int Count = 3000;
        for (int i = 1; i <= Count; i++)
        {
            double share = (double)i / Count;
            SaturationPoint s = model.SaturationAtTemperature(
                (range.MinimumTemperature * (1 - share)) + (range.MaximumSaturationTemperature * share));
            Assert.True(s.Bubble.Pressure > last.Bubble.Pressure);
            Assert.True(s.Dew.Density > last.Dew.Density);
            Assert.True(s.Bubble.Density < last.Bubble.Density);
            Assert.True(s.Bubble.Entropy > last.Bubble.Entropy);
            Assert.True(s.Dew.Enthalpy > s.Bubble.Enthalpy);
            last = s;
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void ClausiusClapeyron(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        foreach (double temperature in Temperatures(model, 50))
        {
            if (temperature > 0.999 * model.Range.MaximumSaturationTemperature)
            {
                continue;
            }

            double step = 1e-4 * (model.Range.MaximumSaturationTemperature - temperature);
            double low = Math.Max(temperature - step, model.Range.MinimumTemperature);
            double high = temperature + step;
            double slope = Math.Log(model.SaturationAtTemperature(high).Bubble.Pressure / model.SaturationAtTemperature(low).Bubble.Pressure)
                / (high - low);
            SaturationPoint s = model.SaturationAtTemperature(0.5 * (low + high));
            double expected = (s.Dew.Enthalpy - s.Bubble.Enthalpy)
                / (0.5 * (low + high) * ((1 / s.Dew.Density) - (1 / s.Bubble.Density)) * s.Bubble.Pressure);
            Assert.InRange((slope / expected) - 1, -1e-6, 1e-6);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void SlopesAreThoseOfTheCurves(string fluid)
    {
        SaturationCurves curves = ReferenceTable.Model(fluid).Engine.Curves;
        foreach (double temperature in Temperatures(ReferenceTable.Model(fluid), 20))
        {
            double step = 1e-5 * (curves.CriticalTemperature - temperature);
            SaturationValues low = curves.AtTemperature(temperature - step);
            SaturationValues high = curves.AtTemperature(temperature + step);
            SaturationValues slopes = curves.SlopesAt(temperature);
            Close(high.Pressure, low.Pressure, slopes.Pressure);
            Close(high.LiquidDensity, low.LiquidDensity, slopes.LiquidDensity);
            Close(high.VaporDensity, low.VaporDensity, slopes.VaporDensity);
            Close(high.LiquidEntropy, low.LiquidEntropy, slopes.LiquidEntropy);

            void Close(double b, double a, double slope)
            {
                double noise = 1e-13 * Math.Abs(b) / step;
                Assert.InRange(((b - a) / (2 * step)) - slope, -(1e-4 * Math.Abs(slope)) - noise, (1e-4 * Math.Abs(slope)) + noise);
            }
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void TemperatureAndPressureRoundTrip(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        foreach (double temperature in Temperatures(model, 300))
        {
            SaturationPoint s = model.SaturationAtTemperature(temperature);
            SaturationPoint back = model.SaturationAtPressure(s.Bubble.Pressure);
            Assert.InRange((back.Bubble.Temperature / temperature) - 1, -1e-12, 1e-12);
            Assert.Equal(s.Bubble.Pressure, back.Dew.Pressure);
            Assert.InRange((back.Bubble.Density / s.Bubble.Density) - 1, -1e-8, 1e-8);
        }
    }

    [Fact]
    public void ReferenceStates()
    {
        foreach (object[] entry in PureFluids)
        {
            string fluid = (string)entry[0];
            HelmholtzModel model = ReferenceTable.Model(fluid);
            bool isIir = fluid != "R-14";
            StatePoint s = isIir ? model.SaturationAtTemperature(273.15).Bubble : model.SaturationAtPressure(101_325).Bubble;
            Assert.InRange(s.Enthalpy - (isIir ? 200_000 : 0), -1e-6, 1e-6);
            Assert.InRange(s.Entropy - (isIir ? 1000 : 0), -1e-8, 1e-8);
        }
    }

    /// <summary>Random temperatures over the curves, some of them next to the critical point.</summary>
    private static IEnumerable<double> Temperatures(HelmholtzModel model, int count)
    {
        var random = new Random(20261);
        double low = model.Range.MinimumTemperature;
        double high = model.Range.MaximumSaturationTemperature;
        for (int i = 0; i < count; i++)
        {
            double share = i % 4 == 0 ? Math.Pow(10, -5 * random.NextDouble()) : random.NextDouble();
            yield return high - ((high - low) * share);
        }
    }
}
