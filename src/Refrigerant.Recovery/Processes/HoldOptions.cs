using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>How long a hold lasts and where it starts. Immutable.</summary>
public sealed record HoldOptions
{
    /// <summary>State of the appliance at the start; where it is null, the appliance as described.</summary>
    public ApplianceState? Start { get; init; }

    /// <summary>How long the valves stay closed, 1 s to 1000 days; 15 min by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Duration
    {
        get;
        init
        {
            Require.InRange(value.Seconds, 1, 8.64e7, "s", nameof(Duration));
            field = value;
        }
    }

    = new(900, DurationUnit.Second);

    /// <summary>Absolute pressure at which the hold ends early, since another pull is needed anyway; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? EndPressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(EndPressure));
            }

            field = value;
        }
    }

    /// <summary>Relative error allowed in a step.</summary>
    internal double RelativeTolerance { get; init; } = VaporRecoveryOptions.DefaultTolerance;
}
