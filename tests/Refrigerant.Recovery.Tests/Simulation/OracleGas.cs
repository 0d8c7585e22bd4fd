using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Exponent and heat capacity of a vapor, in proportion to the pressure between ideal gas and saturation at the start; its viscosity there.</summary>
internal sealed class OracleGas
{
    private readonly double _exponentSlope;
    private readonly double _idealHeat;
    private readonly double _heatSlope;
    private readonly double _hot;
    private readonly double _warm;
    private readonly double[] _hotIdeal = new double[2];
    private readonly double[] _hotReal = new double[2];
    private readonly double _throttling;

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
        double above = Math.Min(100, model.Range.MaximumTemperature - start - 1);
        _hot = start + above;
        _warm = start + (0.3 * above);
        for (int i = 0; i < 2; i++)
        {
            double t = i == 0 ? _warm : _hot;
            StateDerivatives none = model.DerivativesAt(t, thin);
            double density = Math.Min(0.3 * model.CriticalDensity, dew.Pressure / none.PressureByDensity);
            StateDerivatives some = model.DerivativesAt(t, density);
            _hotIdeal[i] = none.IsobaricHeatCapacity;
            _hotReal[i] = (some.IsobaricHeatCapacity - none.IsobaricHeatCapacity) / (density * (none.PressureByDensity + some.PressureByDensity) / 2);

            // (∂v/∂T)_p out of c_p − c_v = T·(∂p/∂T)_ρ·(∂v/∂T)_p.
            _throttling = ((some.IsobaricHeatCapacity - some.IsochoricHeatCapacity) / some.PressureByTemperature) - (1 / density);
        }
    }

    public double Viscosity { get; }

    public double IdealExponent { get; }

    public double Exponent(double pressure) => Math.Max(1.0001, IdealExponent + (_exponentSlope * pressure));

    public double Heat(double pressure) => Math.Max(0.5 * _idealHeat, _idealHeat + (_heatSlope * pressure));

    /// <summary>T(p2, h1 + w): enthalpy along the isobar up to 100 K above the start, there to the other pressure, and along that isobar; each isobar by its heat capacity half-way.</summary>
    public double AfterWork(double temperature, double from, double to, double work) => FixedStep.Root(
        200,
        900,
        1e-12,
        after => (HotHeat(0.5 * (temperature + _hot), from) * (_hot - temperature)) - (_throttling * (to - from)) + (HotHeat(0.5 * (after + _hot), to) * (after - _hot)) - work);

    /// <summary>c_p of hot gas: that of the ideal gas linear through both temperatures above the start, what pressure adds a power of the temperature through both.</summary>
    public double HotHeat(double temperature, double pressure)
    {
        double share = (temperature - _warm) / (_hot - _warm);
        double power = Math.Log(temperature / _warm) / Math.Log(_hot / _warm);
        return ((1 - share) * _hotIdeal[0]) + (share * _hotIdeal[1]) + (pressure * _hotReal[0] * Math.Pow(_hotReal[1] / _hotReal[0], power));
    }
}
