using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Where a push-pull starts and what it rests on. Immutable.</summary>
public sealed record PushPullOptions
{
    /// <summary>State of the appliance at the start; where it is null, the appliance as described.</summary>
    public ApplianceState? Start { get; init; }

    /// <summary>State of the cylinder at the start; where it is null, the cylinder as described, at the temperature of the surroundings.</summary>
    public CylinderState? CylinderStart { get; init; }

    /// <summary>Most refrigerant that the cylinder may hold; the limit by the filling rules where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Mass? CylinderLimit
    {
        get;
        init
        {
            if (value is Mass given)
            {
                Require.Positive(given.Kilograms, "kg", nameof(CylinderLimit));
            }

            field = value;
        }
    }

    /// <summary>
    /// Share φ of the vapor pushed over that displaces liquid, 0.05 to 1: the rest condenses on cold liquid or makes up for what flashes
    /// in the cylinder. 0.8 by default (common practice, no source).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double DisplacementShare
    {
        get;
        init
        {
            Require.InRange(value, 0.05, 1, string.Empty, nameof(DisplacementShare));
            field = value;
        }
    }

    = 0.8;

    /// <summary>Longest time, 1 s to 1000 days; 1 day by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration MaximumDuration
    {
        get;
        init
        {
            Require.InRange(value.Seconds, 1, 8.64e7, "s", nameof(MaximumDuration));
            field = value;
        }
    }

    = new(86400, DurationUnit.Second);

    /// <summary>Relative error allowed in a step.</summary>
    internal double RelativeTolerance { get; init; } = VaporRecoveryOptions.DefaultTolerance;
}
