using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>The level that a rule asks for: an absolute pressure, for small appliances a share of the charge as well.</summary>
internal sealed class EvacuationLevel
{
    public EvacuationLevel(RuleFigure rule, LevelKind kind, double pascals, double? fraction = null)
    {
        Rule = rule;
        Kind = kind;
        Pascals = pascals;
        Fraction = fraction;
    }

    public RuleFigure Rule { get; }

    public LevelKind Kind { get; }

    public double Pascals { get; }

    public double? Fraction { get; }

    /// <summary>The pressure class applied, and how it follows; null where the place knows none.</summary>
    public PressureClass? Class { get; init; }

    public PressureClassification? Classification { get; init; }

    /// <summary>Temperature at which the level holds, K; null where the place names none.</summary>
    public double? ReferenceKelvins { get; init; }

    public HoldRule? Hold { get; init; }

    public IReadOnlyList<Finding> Findings { get; init; } = [];
}
