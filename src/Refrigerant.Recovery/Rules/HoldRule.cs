using Refrigerant.Recovery.Findings;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>How a place wants the level proved. Immutable.</summary>
public sealed record HoldRule
{
    internal HoldRule(RuleFigure figure, Duration? time, Pressure? rise)
    {
        Figure = figure;
        Time = time;
        AllowedRise = rise;
    }

    /// <summary>What the rule says, with its source.</summary>
    public RuleFigure Figure { get; }

    /// <summary>How long the level must stand; null where the rule names no time.</summary>
    public Duration? Time { get; }

    /// <summary>By how much the pressure may rise; null where the rule names no figure.</summary>
    public Pressure? AllowedRise { get; }

    /// <summary>Whether the words of the rule want no rise at all, by no figure: warming vapor and oil always bring some.</summary>
    internal bool WantsNoRise { get; init; }

    /// <summary>Rule and source.</summary>
    public override string ToString() => Figure.ToString();
}
