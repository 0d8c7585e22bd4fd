using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Residuals;

/// <summary>Refrigerant dissolved in oil at a low pressure, estimated by Raoult's rule.</summary>
/// <remarks>
/// Mole fraction of refrigerant in the liquid x = p/p_sat(T); mass ratio of refrigerant to oil = x·M/((1 − x)·M_oil). Measured solubilities
/// are better than any such rule (Grebner and Crawford 1993, ASHRAE Trans. 99(1)); real pairs dissolve some 1.5 to 3 times as much by mass at
/// low content (from memory). Always an estimate.
/// </remarks>
internal static class OilSolubility
{
    public const double DefaultFactor = 2;
    public const double LowFactor = 1;
    public const double HighFactor = 3;

    /// <summary>Above this share of the saturation pressure the rule is not applied: the oil takes up refrigerant without bound. Our choice.</summary>
    public const double HighestSaturation = 0.9;

    public const string Source = "Raoult's rule with a factor of 1 to 3 (from memory)";

    public static IReadOnlyList<RuleFigure> Figures { get; } =
    [
        new("refrigerant that oil dissolves at a low pressure, against Raoult's rule", "1 to 3 times as much by mass, 2 by default", "trade and textbook figures", Editions.None, Evidence.FromMemory),
        new("molar mass of mineral oil and alkylbenzene", "300 to 350 g/mol, 320 by default", "textbook figures", Editions.None, Evidence.FromMemory),
        new("molar mass of polyolester oil, ISO 32 to 68", "500 to 750 g/mol, 600 by default", "textbook figures", Editions.None, Evidence.FromMemory),
    ];

    /// <summary>Mass in the oil; null where the pressure is too close to saturation for the rule.</summary>
    public static MassRange? Dissolved(PropertyModel model, double temperature, double pressure, OilCharge oil)
    {
        if (temperature > model.Range.MaximumSaturationTemperature)
        {
            return null;
        }

        double x = pressure / model.SaturationAtTemperature(temperature).Bubble.Pressure;
        if (x > HighestSaturation)
        {
            return null;
        }

        return AtMoleFraction(model, x, oil);
    }

    /// <summary>
    /// Mass in the oil for every state. Close to saturation it is that at the end of the rule, and <paramref name="atLeast"/> says so; above the
    /// saturation curves the pressure at their end stands for saturation, which gives too much rather than too little.
    /// </summary>
    public static MassRange DissolvedUpToLimit(PropertyModel model, double temperature, double pressure, OilCharge oil, out bool atLeast)
    {
        double highest = Math.Min(temperature, model.Range.MaximumSaturationTemperature);
        MassRange? dissolved = Dissolved(model, highest, pressure, oil);
        atLeast = dissolved is null;
        return dissolved ?? AtMoleFraction(model, HighestSaturation, oil);
    }

    private static MassRange AtMoleFraction(PropertyModel model, double x, OilCharge oil)
    {
        double raoult = oil.Mass.Kilograms * x * model.MolarMass / ((1 - x) * oil.MolarMass.KilogramsPerMole);
        double factor = oil.SolubilityFactor;
        return new MassRange(raoult * Math.Min(LowFactor, factor), raoult * factor, raoult * Math.Max(HighFactor, factor));
    }
}
