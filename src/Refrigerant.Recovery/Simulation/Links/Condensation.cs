using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>The machine's condenser: heat that it takes from a flow at a discharge pressure; plain SI doubles.</summary>
/// <remarks>It gives up what its conductance allows at the condensing temperature, but not more than brings the refrigerant to its subcooled outlet.</remarks>
internal sealed class Condensation
{
    /// <summary>Sharpness of the smooth minimum of what the condenser can give up and what it needs to.</summary>
    private const double MinimumExponent = 4;

    private readonly PropertyModel _model;
    private readonly double _conductance;
    private readonly double? _coolant;
    private readonly double _subcooling;
    private readonly double _highestSaturation;
    private readonly double _lowestSaturation;

    public Condensation(PropertyModel model, Condenser condenser)
    {
        _model = model;
        _conductance = condenser.Conductance;
        _coolant = condenser.CoolantTemperature?.Kelvins;
        _subcooling = condenser.Subcooling.Kelvins;
        _highestSaturation = model.SaturationAtTemperature(model.Range.MaximumSaturationTemperature).Dew.Pressure;
        _lowestSaturation = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Pressure;
    }

    /// <summary>Heat taken from the flow, W.</summary>
    /// <param name="hot">Enthalpy that enters, J/kg.</param>
    /// <param name="flow">kg/s.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="air">Temperature of the air, K.</param>
    public double Heat(double hot, double flow, double pressure, double air)
    {
        // Below the saturation curve's cold end the condensing temperature lies far under any coolant's.
        if (!(flow > 0) || _conductance == 0 || pressure <= _lowestSaturation)
        {
            return 0;
        }

        // Above the critical point there is no condensing temperature; the curve's end stands in for the gas cooler.
        StatePoint dew = _model.SaturationAtPressure(Math.Min(pressure, _highestSaturation)).Dew;
        double coolant = _coolant ?? air;
        double difference = dew.Temperature - coolant;
        if (!(difference > 0))
        {
            return 0;
        }

        double outlet = Math.Max(Math.Max(dew.Temperature - _subcooling, coolant), _model.Range.MinimumTemperature);
        double needed = flow * (hot - _model.SaturationAtTemperature(outlet).Bubble.Enthalpy);
        double possible = _conductance * difference;
        return needed > 0 ? SmoothMinimum(needed, possible) : 0;
    }

    /// <summary>(a^-n + b^-n)^(-1/n), written so that neither power over- nor underflows.</summary>
    private static double SmoothMinimum(double a, double b)
    {
        double small = Math.Min(a, b);
        double ratio = small / Math.Max(a, b);
        return small * Math.Pow(1 + Math.Pow(ratio, MinimumExponent), -1 / MinimumExponent);
    }
}
