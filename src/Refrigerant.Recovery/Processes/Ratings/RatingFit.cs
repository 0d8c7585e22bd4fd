using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>A machine fitted to its ratings. Immutable.</summary>
public sealed record RatingFit
{
    internal RatingFit(
        RecoveryMachine machine, RatingKind usedForDisplacement, bool isMet, IReadOnlyList<RatingDeviation> deviations, IReadOnlyList<Finding> findings)
    {
        Machine = machine;
        UsedForDisplacement = usedForDisplacement;
        IsMet = isMet;
        Deviations = Require.Copy(deviations, nameof(deviations));
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The machine.</summary>
    public RecoveryMachine Machine { get; }

    /// <summary>The rating that its displacement comes from.</summary>
    public RatingKind UsedForDisplacement { get; }

    /// <summary>Whether the ratings fitted to come back within half a percent.</summary>
    public bool IsMet { get; }

    /// <summary>Every rating given, and how well the machine gives it back.</summary>
    public IReadOnlyList<RatingDeviation> Deviations { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The machine, and whether its ratings come back.</summary>
    public override string ToString() => $"{Machine}; ratings {(IsMet ? "met" : "not met")}";
}
