using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a vapor recovery goes for, and where it starts. Immutable.</summary>
public sealed record VaporRecoveryOptions
{
    /// <summary>Relative error of a step: far inside what any input is known to.</summary>
    internal const double DefaultTolerance = 1e-5;

    /// <summary>Absolute pressure in the appliance to stop at; without one the machine runs until something else stops it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? TargetPressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(TargetPressure));
            }

            field = value;
        }
    }

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

    /// <summary>A fixed absolute discharge pressure in place of the cylinder's, for a receiver that is not a cylinder; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? ReceiverPressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(ReceiverPressure));
            }

            field = value;
        }
    }

    /// <summary>Longest time, 1 s to 1000 days; 7 days by default.</summary>
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

    = new(7 * 86400, DurationUnit.Second);

    /// <summary>
    /// Whether the composition of a blend is followed; fixed by default. It is followed for blends of this package's own property models; a pure
    /// fluid has nothing to follow. From a <see cref="Start"/> whose composition was followed it is followed in any case.
    /// </summary>
    public CompositionMode Composition { get; init; }

    /// <summary>Whether to throttle the suction so that no surface with water behind it falls to 0 °C: the fastest pull that is safe for tubes.</summary>
    public bool KeepAboveFreezing { get; init; }

    /// <summary>Whether to stop where a surface with water behind it reaches 0 °C; by default that is only reported.</summary>
    public bool StopAtFreezing { get; init; }

    /// <summary>With vapor only, the fall of pressure below which the machine counts as stalled, Pa/s; zero for the usual criterion.</summary>
    internal double SlowestFall { get; init; }

    /// <summary>Bound on attempted steps.</summary>
    internal int MaximumSteps { get; init; } = 5000;

    /// <summary>Relative error allowed in a step.</summary>
    internal double RelativeTolerance { get; init; } = DefaultTolerance;
}
