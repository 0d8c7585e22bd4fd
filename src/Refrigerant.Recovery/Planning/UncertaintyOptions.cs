using System;
using System.Threading;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Planning;

/// <summary>How an uncertainty run is made. Immutable.</summary>
public sealed record UncertaintyOptions
{
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

    /// <summary>Cancels the run.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Told the share of plans done, rising to 1, from any thread but one call at a time; what it throws comes through; null for nobody.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Samples, seed and tolerances.</summary>
    public override string ToString() => FormattableString.Invariant($"{Samples} samples, seed {Seed}: {Tolerances}");
}
