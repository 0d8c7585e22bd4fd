using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Processes;

/// <summary>Refrigerant that comes out of the oil; plain SI doubles. An estimate.</summary>
/// <remarks>
/// Equilibrium by Raoult's law, x = p/p_sat(T) (any thermodynamics text), as mass per mass of oil (M_r/M_oil)·x/(1 − x); the dissolved
/// mass follows it with one time constant and only outwards. Real pairs hold 1.5 to 3 times as much at low pressure (from memory).
/// </remarks>
internal sealed class OilProcess
{
    private readonly PropertyModel _model;
    private readonly double _mass;
    private readonly double _molarRatio;
    private readonly double _time;

    public OilProcess(PropertyModel model, ApplianceOil oil, double temperature)
    {
        _model = model;
        _mass = oil.Mass.Kilograms;
        _molarRatio = model.MolarMass / oil.EffectiveMolarMass;
        _time = oil.OutgassingTime.Seconds;
        SpecificEnergy = model.SaturationAtTemperature(WithinSaturation(model, temperature)).Bubble.InternalEnergy;
    }

    /// <summary>Flow out of the oil, kg/s.</summary>
    public double Release { get; private set; }

    /// <summary>Energy that it carries: that of saturated liquid at the starting temperature, J/kg.</summary>
    public double SpecificEnergy { get; }

    /// <summary>Evaluates a state; false outside the range of the equation of state.</summary>
    public bool Solve(double pressure, double temperature, double dissolved)
    {
        double saturation = _model.SaturationAtTemperature(WithinSaturation(_model, temperature)).Bubble.Pressure;
        double x = pressure / saturation;
        double equilibrium = x < 1 ? _mass * _molarRatio * x / (1 - x) : double.PositiveInfinity;
        Release = dissolved > equilibrium ? (dissolved - equilibrium) / _time : 0;
        return true;
    }

    private static double WithinSaturation(PropertyModel model, double temperature) =>
        Math.Min(model.Range.MaximumSaturationTemperature, Math.Max(model.Range.MinimumTemperature, temperature));
}
