using System;
using System.Collections.Generic;
using System.Linq;

namespace Refrigerant.Recovery.Docs.Accuracy;

/// <summary>The largest deviation of each fluid, as a table of the accuracy page.</summary>
internal static class AccuracyTable
{
    public static void Print(IReadOnlyList<Deviation> deviations, params string[] properties)
    {
        Console.WriteLine("| fluid | states | " + string.Join(" | ", properties) + " |");
        Console.WriteLine("|---|--:|" + string.Concat(properties.Select(_ => "--:|")));
        foreach (IGrouping<string, Deviation> fluid in deviations.GroupBy(d => d.Fluid))
        {
            Console.WriteLine(Line(fluid.Key, fluid, properties));
        }

        int fluids = deviations.Select(d => d.Fluid).Distinct().Count();
        Console.WriteLine(Line($"**all {fluids}**", deviations, properties));
    }

    private static string Line(string name, IEnumerable<Deviation> deviations, string[] properties)
    {
        ILookup<string, double> values = deviations.ToLookup(d => d.Property, d => d.Value);
        IEnumerable<string> cells = properties.Select(property => Bound(values[property].Max()));
        return $"| {name} | {values[properties[0]].Count()} | {string.Join(" | ", cells)} |";
    }

    /// <summary>The power of ten at or above a deviation: what platforms round differently stays out of it.</summary>
    private static string Bound(double value) => value == 0 ? "0" : $"≤ 1e{Math.Ceiling(Math.Log10(value)):F0}";
}
