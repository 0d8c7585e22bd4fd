using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Planning;

/// <summary>How an uncertainty run is made. Immutable.</summary>
public sealed record UncertaintyOptions
{
    /// <summary>For an initializer.</summary>
    public UncertaintyOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="tolerances">See <see cref="Tolerances"/>.</param>
    /// <param name="samples">See <see cref="Samples"/>.</param>
    /// <param name="seed">See <see cref="Seed"/>.</param>
    /// <param name="maximumThreads">See <see cref="MaximumThreads"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public UncertaintyOptions(
        InputTolerances? tolerances = null,
        int? samples = null,
        int? seed = null,
        int? maximumThreads = null)
    {
        Tolerances = tolerances ?? Tolerances;
        Samples = samples ?? Samples;
        Seed = seed ?? Seed;
        MaximumThreads = maximumThreads ?? MaximumThreads;
    }

    /// <summary>How far the inputs may be off.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public InputTolerances Tolerances { get; init => field = Require.NotNull(value, nameof(Tolerances)); } = new();

    /// <summary>Number of plans, 16 to 65 536; 256 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public int Samples { get; init => field = (int)Require.InRange(value, 16, 65_536, string.Empty, nameof(Samples)); } = 256;

    /// <summary>Seed of the sample; the same seed gives the same result.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The most threads used, 1 to 1024; all processors where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public int? MaximumThreads
    {
        get;
        init
        {
            if (value is int given)
            {
                Require.InRange(given, 1, 1024, string.Empty, nameof(MaximumThreads));
            }

            field = value;
        }
    }

    /// <summary>Samples, seed and tolerances.</summary>
    public override string ToString() => FormattableString.Invariant($"{Samples} samples, seed {Seed}: {Tolerances}");
}
