using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What flows and compression need of a refrigerant's vapor besides its state: exponents, heat capacity, viscosity. Plain SI doubles, immutable.</summary>
/// <remarks>
/// Exponent of isentropic compression κ = ρ·c²/p and isobaric heat capacity of the real gas, each taken between its value at saturation at the starting
/// temperature and its ideal-gas limit in proportion to the pressure. Viscosity is that of saturated vapor at the start, which hardly changes.
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

    public GasFacts(PropertyModel model, double temperature)
    {
        PropertyRange range = model.Range;
        StateDerivatives ideal = model.DerivativesAt(temperature, IdealShare * model.CriticalDensity);
        double idealPressure = model.VesselAtTemperature(temperature, IdealShare * model.CriticalDensity).Bulk.Pressure;
        IdealExponent = IdealShare * model.CriticalDensity * ideal.SpeedOfSound * ideal.SpeedOfSound / idealPressure;
        _idealHeatCapacity = ideal.IsobaricHeatCapacity;
        if (temperature < range.MaximumSaturationTemperature && temperature > range.MinimumTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(Math.Max(range.MinimumTemperature, Math.Min(temperature, NearCritical * model.CriticalTemperature))).Dew;
            StateDerivatives saturated = model.DerivativesAt(dew.Temperature, dew.Density);
            _exponentSlope = ((dew.Density * saturated.SpeedOfSound * saturated.SpeedOfSound / dew.Pressure) - IdealExponent) / dew.Pressure;
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

    /// <summary>J/(kg·K) at a pressure.</summary>
    public double HeatCapacity(double pressure) => Math.Max(0.5 * _idealHeatCapacity, _idealHeatCapacity + (_heatCapacitySlope * pressure));
}
