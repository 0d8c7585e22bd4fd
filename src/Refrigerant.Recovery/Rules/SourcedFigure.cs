using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>A published figure of a refrigerant with its source. Immutable.</summary>
public sealed record SourcedFigure
{
    internal SourcedFigure(double value, bool isUpperBound, string source, Evidence evidence)
    {
        Value = value;
        IsUpperBound = isUpperBound;
        Source = source;
        Evidence = evidence;
    }

    /// <summary>The figure; where it is published as "less than", that bound.</summary>
    public double Value { get; }

    /// <summary>Whether it is published as "less than".</summary>
    public bool IsUpperBound { get; }

    /// <summary>The document.</summary>
    public string Source { get; }

    /// <summary>How well the source was read, or that the figure was computed.</summary>
    public Evidence Evidence { get; }

    /// <summary>The figure.</summary>
    public override string ToString() => (IsUpperBound ? "<" : "") + Require.Text(Value);
}
