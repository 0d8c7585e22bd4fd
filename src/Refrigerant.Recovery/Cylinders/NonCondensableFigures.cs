using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>The figures on air and other non-condensable gases, each once.</summary>
internal static class NonCondensableFigures
{
    /// <summary>Highest share of non-condensable gases in the vapor, by volume.</summary>
    public const double MoleFractionLimit = 0.015;

    /// <summary>Molar mass of dry air, kg/mol (U.S. Standard Atmosphere 1976).</summary>
    public const double MolarMassOfAir = 0.0289644;

    /// <summary>Molar gas constant, J/(mol·K) (2019 SI).</summary>
    public const double GasConstant = 8.314462618;

    public static readonly RuleFigure Limit = new(
        "air and other non-condensable gases in the vapor, at most", "1.5 % by volume", "AHRI 700; 40 CFR 82 Subpart F App. A 5.10", Editions.Ahri700, Evidence.Read);

    public static readonly RuleFigure SampleTemperature = new(
        "temperature of the sample", "25 °C (AHRI 700: 23.9 °C, from memory)", "40 CFR 82 Subpart F App. A 5.10.2", Editions.Cfr40, Evidence.Read);

    public static readonly RuleFigure FirstUse = new(
        "vacuum of a recovery container before its first use", "27 inHg (75 mmHg absolute)", "40 CFR 82 Subpart B App. A 7.1", "1996-07-01", Evidence.Read);

    public static IReadOnlyList<RuleFigure> All { get; } = [Limit, SampleTemperature, FirstUse];
}
