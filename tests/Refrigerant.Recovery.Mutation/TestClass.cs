using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Refrigerant.Recovery.Mutation;

/// <summary>A class of tests, or a method of one: how long it takes a processor, which mutants it reaches, how many it noticed so far.</summary>
internal sealed record TestClass(string Name, double Seconds, HashSet<int> Reaches)
{
    private const double Named = 10;

    public int Noticed { get; set; }

    /// <summary>Which to run first: those that noticed most in least time, those of the layer, before these all that are called after the first word of the name of the changed file, and before all those that are called after all of it.</summary>
    /// <param name="mutant">The change.</param>
    public double Promise(Mutant mutant)
    {
        int at = Name.IndexOf($".{mutant.Layer}.", StringComparison.Ordinal);
        double own = at >= 0 ? 1.0 : 0.2;
        string called = at >= 0 ? Name[(at + mutant.Layer.Length + 2)..] : Name[(Name.LastIndexOf('.') + 1)..];
        double named = called.Contains(mutant.Whole, StringComparison.Ordinal) ? Named * Named : called.Contains(mutant.Word, StringComparison.Ordinal) ? Named : 1;
        return (Noticed + own) * named / (Seconds + 0.1);
    }

    public static TestClass From(string line)
    {
        string[] parts = line.Split(' ');
        return new TestClass(
            parts[1], double.Parse(parts[2], CultureInfo.InvariantCulture),
            [.. parts[3].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(id => int.Parse(id, CultureInfo.InvariantCulture))]);
    }
}
