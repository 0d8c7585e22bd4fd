using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Exponent and heat capacity of a vapor, in proportion to the pressure between ideal gas and saturation at the start; its viscosity there.</summary>
internal sealed class OracleGas
{
    private readonly double _exponentSlope;
    private readonly double _idealHeat;
    private readonly double _heatSlope;
    private readonly double _idealWarming;
    private readonly double _realWarming;
    private readonly double _startPressure;

    public OracleGas(PropertyModel model, double start)
    {
        Viscosity = model.ViscosityAtSaturation(Math.Min(start, 0.98 * model.Range.MaximumSaturationTemperature)).Vapor;
        double thin = 1e-5 * model.CriticalDensity;
        StateDerivatives ideal = model.DerivativesAt(start, thin);
        IdealExponent = thin * ideal.SpeedOfSound * ideal.SpeedOfSound / model.VesselAtTemperature(start, thin).Bulk.Pressure;
        _idealHeat = ideal.IsobaricHeatCapacity;
        StatePoint dew = model.SaturationAtTemperature(Math.Min(start, 0.95 * model.CriticalTemperature)).Dew;
        StateDerivatives real = model.DerivativesAt(dew.Temperature, dew.Density);
        _exponentSlope = ((dew.Density * real.SpeedOfSound * real.SpeedOfSound / dew.Pressure) - IdealExponent) / dew.Pressure;
        _heatSlope = (real.IsobaricHeatCapacity - _idealHeat) / dew.Pressure;
        _startPressure = dew.Pressure;
        _realWarming = Warming(real, dew.Temperature, dew.Pressure);
        _idealWarming = Warming(ideal, start, model.VesselAtTemperature(start, thin).Bulk.Pressure);
    }

    public double Viscosity { get; }

    public double IdealExponent { get; }

    public double Exponent(double pressure) => Math.Max(1.0001, IdealExponent + (_exponentSlope * pressure));

    public double Heat(double pressure) => Math.Max(0.5 * _idealHeat, _idealHeat + (_heatSlope * pressure));

    /// <summary>ln(T2/T1) along an isentrope: the integral of (∂ln T/∂ln p)_s over ln p, by Simpson's rule in small steps.</summary>
    public double IsentropicWarming(double from, double to)
    {
        double M(double p) => _idealWarming + ((_realWarming - _idealWarming) * Math.Min(1, p / _startPressure));
        double sum = 0;
        double[] ends = from < _startPressure && to > _startPressure ? [from, _startPressure, to] : [from, to];
        for (int k = 1; k < ends.Length; k++)
        {
            const int Steps = 64;
            double step = Math.Log(ends[k] / ends[k - 1]) / Steps;
            for (int i = 0; i < Steps; i++)
            {
                double a = ends[k - 1] * Math.Exp(i * step);
                sum += step / 6 * (M(a) + (4 * M(a * Math.Exp(0.5 * step))) + M(a * Math.Exp(step)));
            }
        }

        return sum;
    }

    /// <summary>p·(∂v/∂T)_p/c_p out of c_p − c_v = T·(∂p/∂T)_ρ·(∂v/∂T)_p.</summary>
    private static double Warming(StateDerivatives at, double temperature, double pressure) =>
        pressure * (at.IsobaricHeatCapacity - at.IsochoricHeatCapacity) / (temperature * at.PressureByTemperature * at.IsobaricHeatCapacity);
}
