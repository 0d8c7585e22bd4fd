using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Findings;

/// <summary>One figure of a law, a standard or the trade that a result rests on, with its source. Immutable.</summary>
public sealed record RuleFigure
{
    internal RuleFigure(string rule, string figure, string source, string edition, Evidence evidence)
    {
        Rule = Require.NotNull(rule, nameof(rule));
        Figure = Require.NotNull(figure, nameof(figure));
        Source = Require.NotNull(source, nameof(source));
        Edition = Require.NotNull(edition, nameof(edition));
        Evidence = evidence;
    }

    /// <summary>What the rule says, in a few words.</summary>
    public string Rule { get; }

    /// <summary>The figure with its unit.</summary>
    public string Figure { get; }

    /// <summary>The document and section.</summary>
    public string Source { get; }

    /// <summary>The edition that was read, as far as the copy tells.</summary>
    public string Edition { get; }

    /// <summary>How well the source was read.</summary>
    public Evidence Evidence { get; }

    /// <summary>Rule, figure and source.</summary>
    public override string ToString() => $"{Rule}: {Figure} ({Source})";
}
