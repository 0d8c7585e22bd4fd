using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>How fine a scale reads. Immutable.</summary>
public sealed record ScaleAccuracy
{
    private ScaleAccuracy(double resolution) => ResolutionKilograms = resolution;

    /// <summary>The step in which it shows weights.</summary>
    public Mass Resolution => new(ResolutionKilograms, MassUnit.Kilogram);

    internal double ResolutionKilograms { get; }

    /// <summary>A scale by the step in which it shows weights.</summary>
    /// <param name="resolution">0.01 g to 10 kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static ScaleAccuracy FromResolution(Mass resolution) =>
        new(Require.InRange(resolution.Kilograms, 1e-5, 10, "kg", nameof(resolution)));

    /// <summary>The step, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"scale in steps of {Resolution.Grams:G5} g");
}
