using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>A published classification of a refrigerant with its source. Immutable.</summary>
public sealed record SourcedText
{
    internal SourcedText(string value, string source, Evidence evidence)
    {
        Value = value;
        Source = source;
        Evidence = evidence;
    }

    /// <summary>The classification, such as "A2L".</summary>
    public string Value { get; }

    /// <summary>The document.</summary>
    public string Source { get; }

    /// <summary>How well the source was read.</summary>
    public Evidence Evidence { get; }

    /// <summary>The classification.</summary>
    public override string ToString() => Value;
}
