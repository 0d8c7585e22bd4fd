using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>What the purity standard allows of another refrigerant.</summary>
internal static class PurityFigures
{
    /// <summary>Highest share of other volatile impurities, by mass: other refrigerants are among them.</summary>
    public const double VolatileImpurities = 0.005;

    /// <summary>Share of the old oil that stays in a machine after an oil change.</summary>
    public const double OilThatStays = 0.1;

    public static readonly RuleFigure Volatile = new(
        "other volatile impurities, other refrigerants included, at most", "0.5 % by mass", "AHRI 700", Editions.Ahri700, Evidence.Read);

    public static readonly RuleFigure OldOil = new(
        "old oil that stays in a machine after an oil change", "10 % of it by default", Sources.CommonPractice, Editions.None, Evidence.CommonPractice);

    public static IReadOnlyList<RuleFigure> All { get; } = [Volatile, OldOil];
}
