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

    /// <summary>The letters and digits in upper case, without the leading "R": "R-1234ze(E)" is "1234ZEE".</summary>
    public static string Key(string designation)
    {
        var key = new StringBuilder(designation.Length);
        foreach (char c in designation)
        {
            if (char.IsLetterOrDigit(c))
            {
                key.Append(char.ToUpperInvariant(c));
            }
        }

        return key.Length > 0 && key[0] == 'R' ? key.ToString(1, key.Length - 1) : key.ToString();
    }

    /// <summary>The designations with the fewest edits, and those that continue the one asked for.</summary>
    public static IReadOnlyList<string> Nearest(string designation, IEnumerable<string> known)
    {
        string key = Key(designation);
        return key.Length == 0 ? [] : known
            .Select(name => (Name: name, Key: Key(name)))
            .Select(other => (other.Name, Edits: other.Key.StartsWith(key, StringComparison.Ordinal) ? 1 : Edits(key, other.Key)))
            .Where(other => other.Edits <= MaximumEdits)
            .OrderBy(other => other.Edits)
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
