using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Exponent and heat capacity of a vapor, in proportion to the pressure between ideal gas and saturation at the start; its viscosity there.</summary>
internal sealed class OracleGas
{
    private readonly double _exponentSlope;
    private readonly double _idealHeat;
    private readonly double _heatSlope;

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
    }

    public double Viscosity { get; }

    public double IdealExponent { get; }

    public double Exponent(double pressure) => Math.Max(1.0001, IdealExponent + (_exponentSlope * pressure));

    public double Heat(double pressure) => Math.Max(0.5 * _idealHeat, _idealHeat + (_heatSlope * pressure));
}
