using System;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>One rule applied to one cylinder and refrigerant: the mass it allows, and its source. Immutable.</summary>
public sealed record FillRule
{
    internal FillRule(FillRuleKind kind, RuleFigure figure, double kilograms, bool isLimit, string note)
    {
        Kind = kind;
        Figure = figure;
        Kilograms = kilograms;
        IsLimit = isLimit;
        Note = note;
    }

    /// <summary>Which rule.</summary>
    public FillRuleKind Kind { get; }

    /// <summary>What the rule says, in a few words.</summary>
    public string Name => Figure.Rule;

    /// <summary>The mass of refrigerant that the rule allows in this cylinder.</summary>
    public Mass Mass => new(Kilograms, MassUnit.Kilogram);

    /// <summary>Whether the rule binds. One that does not is shown for comparison: a second opinion, or a rule that is wrong.</summary>
    public bool IsLimit { get; }

    /// <summary>The document and section.</summary>
    public string Source => Figure.Source;

    /// <summary>The figure behind it, with its edition and how well it was read.</summary>
    public RuleFigure Figure { get; }

    /// <summary>What went into the mass for this cylinder and refrigerant.</summary>
    public string Note { get; }

    internal double Kilograms { get; }

    /// <summary>Rule, mass and source; culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Kilograms:F3} kg{(IsLimit ? "" : " (not a limit)")} ({Source})");
}
