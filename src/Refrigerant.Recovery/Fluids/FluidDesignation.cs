using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace Refrigerant.Recovery.Fluids;

/// <summary>How designations are compared, and which are near one that is unknown.</summary>
internal static class FluidDesignation
{
    /// <summary>Edits at most between a designation and a suggestion for it.</summary>
    private const int MaximumEdits = 2;

    private const int MaximumSuggestions = 3;

    /// <summary>The composition-designating prefixes of ASHRAE 34, longest first: "HFC-134a" is R-134a.</summary>
    private static readonly string[] Prefixes = ["HCFO", "HCFC", "HCC", "HCO", "HFC", "HFO", "HFE", "CFC", "PFC", "BFC", "FIC", "HC", "FC"];

    /// <summary>Names and formulas in use for what has a designation; letters and digits in upper case.</summary>
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["CO2"] = "744",
        ["CARBONDIOXIDE"] = "744",
        ["NH3"] = "717",
        ["AMMONIA"] = "717",
        ["PROPANE"] = "290",
        ["C3H8"] = "290",
        ["ISOBUTANE"] = "600A",
        ["METHYLPROPANE"] = "600A",
        ["2METHYLPROPANE"] = "600A",
        ["BUTANE"] = "600",
        ["NBUTANE"] = "600",
        ["C4H10"] = "600",
        ["PROPENE"] = "1270",
        ["PROPYLENE"] = "1270",
        ["C3H6"] = "1270",
        ["ETHANE"] = "170",
        ["C2H6"] = "170",
        ["PENTANE"] = "601",
        ["NPENTANE"] = "601",
        ["ISOPENTANE"] = "601A",
        ["DIMETHYLETHER"] = "E170",
        ["DME"] = "E170",
        ["METHYLCHLORIDE"] = "40",
        ["CHLOROMETHANE"] = "40",
    };

    /// <summary>
    /// The letters and digits in upper case, without the leading "R" or a composition-designating prefix: "R-1234ze(E)" and "HFO-1234ze(E)" are
    /// "1234ZEE"; "propane" is "290".
    /// </summary>
    public static string Key(string designation)
    {
        var letters = new StringBuilder(designation.Length);
        foreach (char c in designation)
        {
            if (c is >= '₀' and <= '₉')
            {
                letters.Append((char)('0' + (c - '₀')));
            }
            else if (char.IsLetterOrDigit(c))
            {
                letters.Append(char.ToUpperInvariant(c));
            }
        }

        string key = letters.ToString();
        if (Names.TryGetValue(key, out string? named))
        {
            return named;
        }

        foreach (string prefix in Prefixes)
        {
            if (key.StartsWith(prefix, StringComparison.Ordinal) && IsNumber(key, prefix.Length))
            {
                return key.Substring(prefix.Length);
            }
        }

        return key.Length > 0 && key[0] == 'R' ? key.Substring(1) : key;
    }

    /// <summary>Whether a number starts there, after a C for cyclic or an E for an ether.</summary>
    private static bool IsNumber(string key, int at) =>
        (at < key.Length && char.IsDigit(key[at])) || (at + 1 < key.Length && (key[at] is 'C' or 'E') && char.IsDigit(key[at + 1]));

    /// <summary>The designations with the fewest edits, and those that continue the one asked for.</summary>
    public static IReadOnlyList<string> Nearest(string designation, IEnumerable<string> known)
    {
        string key = Key(designation);
        return key.Length == 0 ? [] : known
            .Select(name => (Name: name, Key: Key(name)))
            .Select(other => (other.Name, other.Key, Edits: other.Key.StartsWith(key, StringComparison.Ordinal) ? 1 : Edits(key, other.Key)))
            .Where(other => other.Edits <= MaximumEdits)
            .OrderBy(other => other.Edits)
            .ThenBy(other => other.Key.StartsWith(key, StringComparison.Ordinal) ? 0 : 1)
            .Take(MaximumSuggestions)
            .Select(other => other.Name)
            .ToArray();
    }

    /// <summary>Insertions, deletions and replacements between two keys (Levenshtein distance).</summary>
    private static int Edits(string a, string b)
    {
        int[] previous = Enumerable.Range(0, b.Length + 1).ToArray();
        for (int i = 1; i <= a.Length; i++)
        {
            int[] current = new int[b.Length + 1];
            current[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                current[j] = Math.Min(replace, 1 + Math.Min(previous[j], current[j - 1]));
            }

            previous = current;
        }

        return previous[b.Length];
    }
}
