using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>How a place wants the level proved. No rule that is known names a time or a rise in figures. Immutable.</summary>
public sealed record HoldRule
{
    internal HoldRule(RuleFigure figure) => Figure = figure;

    /// <summary>What the rule says, with its source.</summary>
    public RuleFigure Figure { get; }

    /// <summary>Whether the words of the rule want no rise at all, by no figure: warming vapor and oil always bring some.</summary>
    internal bool WantsNoRise { get; init; }

    /// <summary>Rule and source.</summary>
    public override string ToString() => Figure.ToString();
}
