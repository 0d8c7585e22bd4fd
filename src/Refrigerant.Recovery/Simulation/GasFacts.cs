using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What flows and compression need of a refrigerant's vapor besides its state: exponents, heat capacity, viscosity. Plain SI doubles, immutable.</summary>
/// <remarks>
/// Exponent of isentropic compression κ = ρ·c²/p and isobaric heat capacity of the real gas, each taken between its value at saturation at the starting
/// temperature and its ideal-gas limit in proportion to the pressure; so is m = (∂ln T/∂ln p)_s = p·(∂v/∂T)_p/c_p, by which the gas warms along an isentrope, which stays as it is
/// above the pressure of the start. For a real gas m is not (κ − 1)/κ. Viscosity is that of saturated vapor at the start, which hardly changes.
/// </remarks>
internal sealed class GasFacts
{
    /// <summary>Density at which the gas is taken as ideal, as a share of the critical one.</summary>
    private const double IdealShare = 1e-5;

    /// <summary>Nearer to the critical temperature than this share the values there stand in.</summary>
    private const double NearCritical = 0.95;

    /// <summary>Viscosity near the critical point is taken a little below it, as a share of the end of the saturation curves.</summary>
    private const double NearEnd = 0.98;

    private const double LeastExponent = 1.0001;

    private readonly double _exponentSlope;
    private readonly double _heatCapacitySlope;
    private readonly double _idealHeatCapacity;
    private readonly double _idealWarming;
    private readonly double _warmingSlope;
    private readonly double _startPressure = double.PositiveInfinity;

    public GasFacts(PropertyModel model, double temperature)
    {
        PropertyRange range = model.Range;
        StateDerivatives ideal = model.DerivativesAt(temperature, IdealShare * model.CriticalDensity);
        double idealPressure = model.VesselAtTemperature(temperature, IdealShare * model.CriticalDensity).Bulk.Pressure;
        IdealExponent = IdealShare * model.CriticalDensity * ideal.SpeedOfSound * ideal.SpeedOfSound / idealPressure;
        _idealHeatCapacity = ideal.IsobaricHeatCapacity;
        _idealWarming = Warming(IdealShare * model.CriticalDensity, idealPressure, ideal);
        if (temperature < range.MaximumSaturationTemperature && temperature > range.MinimumTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(Math.Max(range.MinimumTemperature, Math.Min(temperature, NearCritical * model.CriticalTemperature))).Dew;
            StateDerivatives saturated = model.DerivativesAt(dew.Temperature, dew.Density);
            _exponentSlope = ((dew.Density * saturated.SpeedOfSound * saturated.SpeedOfSound / dew.Pressure) - IdealExponent) / dew.Pressure;
            _warmingSlope = (Warming(dew.Density, dew.Pressure, saturated) - _idealWarming) / dew.Pressure;
            _startPressure = dew.Pressure;
            _heatCapacitySlope = (saturated.IsobaricHeatCapacity - _idealHeatCapacity) / dew.Pressure;
        }

        Viscosity = model.ViscosityAtSaturation(
            Math.Max(range.MinimumTemperature, Math.Min(NearEnd * range.MaximumSaturationTemperature, temperature))).Vapor;
    }

    /// <summary>κ of the ideal gas.</summary>
    public double IdealExponent { get; }

    /// <summary>Pa·s.</summary>
    public double Viscosity { get; }

    /// <summary>κ at a pressure.</summary>
    public double Exponent(double pressure) => Math.Max(LeastExponent, IdealExponent + (_exponentSlope * pressure));

    /// <summary>Logarithm of the ratio of temperatures along an isentrope from one pressure to another, Pa.</summary>
    public double IsentropicWarming(double from, double to)
    {
        double start = Math.Min(from, _startPressure);
        double end = Math.Min(to, _startPressure);
        double beyond = to > _startPressure ? _warmingSlope * _startPressure * Math.Log(to / Math.Max(from, _startPressure)) : 0;
        return (_idealWarming * Math.Log(to / from)) + (_warmingSlope * (end - start)) + beyond;
    }

    /// <summary>J/(kg·K) at a pressure.</summary>
    public double HeatCapacity(double pressure) => Math.Max(0.5 * _idealHeatCapacity, _idealHeatCapacity + (_heatCapacitySlope * pressure));

    /// <summary>m = p·(∂v/∂T)_p/c_p, with (∂v/∂T)_p = (∂p/∂T)_ρ/(ρ²·(∂p/∂ρ)_T).</summary>
    private static double Warming(double density, double pressure, in StateDerivatives at) =>
        pressure * at.PressureByTemperature / (density * density * at.PressureByDensity * at.IsobaricHeatCapacity);
}
