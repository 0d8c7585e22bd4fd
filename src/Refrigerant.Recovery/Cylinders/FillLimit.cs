using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>How full one cylinder may be with one refrigerant: the least mass of all the rules that apply. Immutable.</summary>
/// <remarks>Weigh, never guess. Local codes and licensed practice govern.</remarks>
public sealed record FillLimit
{
    internal FillLimit(
        RecoveryCylinder cylinder,
        Fluid fluid,
        FillRule governing,
        IReadOnlyList<FillRule> rules,
        IReadOnlyList<FillRuleNotApplied> notApplied,
        IReadOnlyList<Finding> findings)
    {
        Cylinder = cylinder;
        Fluid = fluid;
        GoverningRule = governing;
        Rules = Require.Copy(rules, nameof(rules));
        NotApplied = Require.Copy(notApplied, nameof(notApplied));
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The cylinder.</summary>
    public RecoveryCylinder Cylinder { get; }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>The most refrigerant that the cylinder may hold.</summary>
    public Mass MaximumFill => GoverningRule.Mass;

    /// <summary>The scale reading that must not be exceeded: tare weight and <see cref="MaximumFill"/>.</summary>
    public Mass MaximumGrossWeight => new(Cylinder.TareWeight.Kilograms + GoverningRule.Kilograms, MassUnit.Kilogram);

    /// <summary>What may still be added to the cylinder's present content; zero where it is at or past the limit.</summary>
    public Mass Room => new(Math.Max(0, GoverningRule.Kilograms - Cylinder.Content.Kilograms), MassUnit.Kilogram);

    /// <summary>The rule that allows the least.</summary>
    public FillRule GoverningRule { get; }

    /// <summary>Every rule that gives a mass; those that do not bind are marked.</summary>
    public IReadOnlyList<FillRule> Rules { get; }

    /// <summary>Every rule that gives none, and why.</summary>
    public IReadOnlyList<FillRuleNotApplied> NotApplied { get; }

    /// <summary>What speaks against this filling, or should be known about it.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The rule of a kind, or null where it gives no mass here.</summary>
    /// <param name="kind">The kind.</param>
    public FillRule? Rule(FillRuleKind kind)
    {
        Require.Defined(kind, nameof(kind));
        foreach (FillRule rule in Rules)
        {
            if (rule.Kind == kind)
            {
                return rule;
            }
        }

        return null;
    }

    /// <summary>Limit and governing rule, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Fluid.Designation} in {Cylinder.Label}: {GoverningRule.Kilograms:F3} kg at most, {MaximumGrossWeight.Kilograms:F3} kg on the scale ({GoverningRule.Name})");
}
