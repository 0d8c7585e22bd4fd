using System;
using System.Collections.Generic;
using System.Globalization;
using Refrigerant.Recovery.Fluids.Data;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The published binary parameters, found by the designations of the two components.</summary>
internal static class BinaryPairs
{
    private static readonly Lazy<Dictionary<(string First, string Second), BinaryPair>> Published = new(Read);

    /// <summary>The parameters of a pair in the order asked; the estimate where none are published.</summary>
    public static BinaryPair Get(string first, string second)
    {
        Dictionary<(string First, string Second), BinaryPair> pairs = Published.Value;
        return pairs.TryGetValue((first, second), out BinaryPair? pair) ? pair
            : pairs.TryGetValue((second, first), out pair) ? pair.Reversed()
            : BinaryPair.Estimated;
    }

    private static Dictionary<(string First, string Second), BinaryPair> Read()
    {
        var departures = new Dictionary<string, DepartureFunction>(StringComparer.Ordinal);
        foreach (DepartureFunction departure in DepartureTable.Create())
        {
            departures.Add(departure.Name, departure);
        }

        var pairs = new Dictionary<(string First, string Second), BinaryPair>();
        foreach (string row in BinaryPairTable.Rows.Split('\n'))
        {
            string[] cells = row.Split('|');
            string departure = cells[7].Trim();
            pairs.Add(
                (cells[0].Trim(), cells[1].Trim()),
                new BinaryPair(
                    Number(cells[2]),
                    Number(cells[3]),
                    Number(cells[4]),
                    Number(cells[5]),
                    Number(cells[6]),
                    departure == "-" ? null : departures[departure],
                    BinaryPairTable.Sources[(int)Number(cells[8])]));
        }

        return pairs;
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
