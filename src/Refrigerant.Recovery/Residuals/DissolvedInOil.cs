using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Residuals;

/// <summary>Refrigerant dissolved in oil in equilibrium with a gas, with its bounds.</summary>
internal static class DissolvedInOil
{
    /// <summary>Above this share of the saturation pressure the rule is not applied: the oil takes up refrigerant without bound. Our choice.</summary>
    public const double HighestSaturation = 0.9;

    /// <summary>
    /// Mass in the oil for every state. Close to saturation it is that at the end of the rule, and <paramref name="atLeast"/> says so; above the
    /// saturation curves the pressure at their end stands for saturation, which gives too much rather than too little.
    /// </summary>
    public static MassRange UpToLimit(PropertyModel model, double temperature, double pressure, ApplianceOil oil, out bool atLeast)
    {
        double highest = Math.Min(temperature, model.Range.MaximumSaturationTemperature);
        double share = pressure / model.SaturationAtTemperature(highest).Bubble.Pressure;
        atLeast = share > HighestSaturation;
        share = Math.Min(share, HighestSaturation);
        var solution = new OilSolution(model, oil);
        double best = oil.Mass.Kilograms * solution.MassRatio(share);
        return new MassRange(best / solution.Spread, best, best * solution.Spread, atLeast);
    }
}
