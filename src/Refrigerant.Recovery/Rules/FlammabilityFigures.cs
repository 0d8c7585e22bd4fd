using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>Lower flammability limits in air at 25 °C, kg/m³. Where sources differ, the lowest: the figures serve warnings.</summary>
internal static class FlammabilityFigures
{
    /// <summary>The share of the lower limit to which nitrogen thins what is left before a flame is lit. Our choice, stricter than the 25 % at which alarms trip.</summary>
    public const double PurgeShare = 0.1;

    private const string Iec = "IEC 60079-20-1:2010, as tabulated in an open data set of chemical properties";
    private const string Spain = "Spain, RD 552/2019, IF-04, examples";
    private const string FromPractical = "five times the practical limit of EN 378-1:2017, as a manual quotes it";
    private const string Sheet = "a table that names ASHRAE 34-2019 addendum f";

    /// <summary>Molar volume of the air at 25 °C and 101.325 kPa, m³/mol.</summary>
    private const double MolarVolume = 0.024465;

    public static readonly RuleFigure Alarm = new(
        "alarm and electrical cut-off", "at most 25 % of the lower flammability limit", "Spain, RD 552/2019, IF-12, IF-16", "2026", Evidence.Read);

    private static readonly IReadOnlyDictionary<string, (double Limit, string Source, Evidence Evidence)> Limits =
        new Dictionary<string, (double, string, Evidence)>
        {
            ["R-32"] = (0.307, Spain, Evidence.Read),
            ["R-1234yf"] = (0.289, FromPractical, Evidence.Computed),
            ["R-1234ze(E)"] = (0.303, "safety data", Evidence.FromMemory),
            ["R-143a"] = (6.8e-2 * 0.084041 / MolarVolume, Iec + ", 6.8 % by volume", Evidence.ReadSecondHand),
            ["R-152a"] = (0.130, "safety data", Evidence.FromMemory),
            ["R-717"] = (15e-2 * 0.017031 / MolarVolume, Iec + ", 15 % by volume", Evidence.ReadSecondHand),
            ["R-290"] = (1.7e-2 * 0.044096 / MolarVolume, Iec + ", 1.7 % by volume", Evidence.ReadSecondHand),
            ["R-600"] = (1.4e-2 * 0.058122 / MolarVolume, Iec + ", 1.4 % by volume", Evidence.ReadSecondHand),
            ["R-600a"] = (1.3e-2 * 0.058122 / MolarVolume, Iec + ", 1.3 % by volume", Evidence.ReadSecondHand),
            ["R-1270"] = (2.0e-2 * 0.042080 / MolarVolume, Iec + ", 2.0 % by volume", Evidence.ReadSecondHand),
            ["R-170"] = (2.4e-2 * 0.030069 / MolarVolume, Iec + ", 2.4 % by volume", Evidence.ReadSecondHand),
            ["R-E170"] = (2.7e-2 * 0.046068 / MolarVolume, Iec + ", 2.7 % by volume", Evidence.ReadSecondHand),
            ["R-454A"] = (0.278, "safety data", Evidence.FromMemory),
            ["R-454B"] = (0.297, "safety data", Evidence.FromMemory),
            ["R-454C"] = (0.29, Sheet, Evidence.ReadSecondHand),
            ["R-452B"] = (0.31, Sheet, Evidence.ReadSecondHand),
            ["R-455A"] = (0.43, FromPractical, Evidence.Computed),
        };

    public static IReadOnlyList<RuleFigure> All { get; } = [.. Limits.Keys.Select(key => Find(key)!.Value.Figure), Alarm];

    /// <summary>The limit of a refrigerant, kg/m³, with its figure; null where none was found.</summary>
    public static (double Limit, RuleFigure Figure)? Find(string designation) =>
        Limits.TryGetValue(designation, out (double Limit, string Source, Evidence Evidence) row)
            ? (row.Limit, new RuleFigure("lower flammability limit of " + designation, NumberText.Significant(row.Limit, 3) + " kg/m³", row.Source, Editions.None, row.Evidence))
            : null;
}
