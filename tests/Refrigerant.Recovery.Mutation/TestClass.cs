using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Refrigerant.Recovery.Mutation;

/// <summary>A class of tests: how long it takes a processor, which mutants it reaches, how many it noticed so far.</summary>
internal sealed record TestClass(string Name, double Seconds, HashSet<int> Reaches)
{
    private const double Named = 10;

    public int Noticed { get; set; }

    /// <summary>Which to run first: those that noticed most in least time, those of the layer, and before all those that are called after what is changed.</summary>
    /// <param name="layer">The layer of the change.</param>
    /// <param name="word">First word of the name of its file, such as Hookup of HookupSettings.</param>
    public double Promise(string layer, string word)
    {
        double own = Name.Contains($".{layer}.", StringComparison.Ordinal) ? 1.0 : 0.2;
        double named = Name[(Name.LastIndexOf('.') + 1)..].Contains(word, StringComparison.Ordinal) ? Named : 1;
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
