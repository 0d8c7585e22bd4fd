using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Refrigerant.Recovery.Mutation;

/// <summary>A class of tests: how long it takes a processor, which mutants it reaches, how many it noticed so far.</summary>
internal sealed record TestClass(string Name, double Seconds, HashSet<int> Reaches)
{
    public int Noticed { get; set; }

    /// <summary>Which to run first: those that noticed most in least time, and those of the layer.</summary>
    public double Promise(string layer) => (Noticed + (Name.Contains($".{layer}.", StringComparison.Ordinal) ? 1.0 : 0.2)) / (Seconds + 0.1);

    public static TestClass From(string line)
    {
        string[] parts = line.Split(' ');
        return new TestClass(
            parts[1], double.Parse(parts[2], CultureInfo.InvariantCulture),
            [.. parts[3].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(id => int.Parse(id, CultureInfo.InvariantCulture))]);
    }
}
