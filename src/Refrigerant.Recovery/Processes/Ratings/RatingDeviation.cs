using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>How well a fitted machine gives back one of its ratings, in the simulated rating test. Immutable.</summary>
public sealed record RatingDeviation
{
    internal RatingDeviation(RatingKind rating, bool isFitted, double published, double simulated)
    {
        Rating = rating;
        IsFitted = isFitted;
        Relative = new Ratio((simulated / published) - 1, RatioUnit.DecimalFraction);
        Published = published;
        Simulated = simulated;
    }

    /// <summary>The rating.</summary>
    public RatingKind Rating { get; }

    /// <summary>Whether the machine was fitted to it; the others only show how well they agree.</summary>
    public bool IsFitted { get; }

    /// <summary>Simulated over published figure, less one.</summary>
    public Ratio Relative { get; }

    /// <summary>The published figure, kg/s or Pa absolute.</summary>
    public double Published { get; }

    /// <summary>The simulated figure, kg/s or Pa absolute.</summary>
    public double Simulated { get; }

    /// <summary>Rating, published and simulated figure, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Rating}: {Published:G5} published, {Simulated:G5} simulated ({Relative.Percent:+0.0;-0.0;0.0} %)");
}
