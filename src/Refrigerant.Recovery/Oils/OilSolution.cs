using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Oils;

/// <summary>Refrigerant and oil in equilibrium: the one model of solubility, for plans, residuals and drained oil alike. Plain SI doubles, immutable.</summary>
/// <remarks>
/// <para>
/// x/(1 − x) = F(s)·s/(1 − s), s = p/p_sat(T), x the mole fraction of refrigerant in the liquid, F = F0 + (F1 − F0)·s the factor on Raoult's rule
/// (x = s) of the pair; mass of refrigerant per mass of oil w = (M/M_oil)·x/(1 − x). It rises with s for all F0, F1 greater than zero, and its
/// inverse is the root of (F1 − F0)·s² + (F0 + y)·s − y = 0, y = x/(1 − x). p_sat of a blend is its bubble pressure.
/// </para>
/// <para>Measured solubilities are better than any such rule. Always an estimate.</para>
/// </remarks>
internal sealed class OilSolution
{
    private readonly PropertyModel _model;
    private readonly RaoultFactor _factor;
    private readonly double _molarRatio;

    public OilSolution(PropertyModel model, ApplianceOil oil)
        : this(
            model,
            oil.SolubilityFactor is double given ? new RaoultFactor(given, given, true) : SolubilityTable.For(model, oil.Kind),
            SolubilityTable.MolarMassOf(oil))
    {
    }

    public OilSolution(PropertyModel model, RaoultFactor factor, double oilMolarMass)
    {
        _model = model;
        _factor = factor;
        _molarRatio = model.MolarMass / oilMolarMass;
    }

    /// <summary>By how much bounds of an estimate differ from the best figure.</summary>
    public double Spread => _factor.IsMeasured ? SolubilityTable.MeasuredSpread : SolubilityTable.FamilySpread;

    /// <summary>p_sat at a temperature, Pa; outside the saturation curves that at their end.</summary>
    public double SaturationPressure(double temperature) => _model.SaturationAtTemperature(
        Math.Min(_model.Range.MaximumSaturationTemperature, Math.Max(_model.Range.MinimumTemperature, temperature))).Bubble.Pressure;

    /// <summary>Mass of refrigerant per mass of oil at a share of the saturation pressure, 0 to below 1.</summary>
    public double MassRatio(double share) =>
        _molarRatio * (_factor.Thin + ((_factor.Saturated - _factor.Thin) * share)) * share / (1 - share);

    /// <summary>Share of the saturation pressure in equilibrium with a mass of refrigerant per mass of oil, 0 or more.</summary>
    public double ShareAt(double massRatio)
    {
        double y = massRatio / _molarRatio;
        double linear = _factor.Thin + y;
        return 2 * y / (linear + Math.Sqrt((linear * linear) + (4 * (_factor.Saturated - _factor.Thin) * y)));
    }

    /// <summary>Pressure in equilibrium with a mass of refrigerant per mass of oil at a temperature, Pa.</summary>
    public double EquilibriumPressure(double temperature, double massRatio) => ShareAt(massRatio) * SaturationPressure(temperature);
}
