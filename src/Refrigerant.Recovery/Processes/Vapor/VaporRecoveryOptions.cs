using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a vapor recovery goes for, and where it starts; 7 days at most by default. Immutable.</summary>
public sealed record VaporRecoveryOptions : StageOptions
{
    private const double Week = 7 * 86_400;

    /// <summary>A vapor recovery with no target: the machine runs until something else stops it.</summary>
    public VaporRecoveryOptions()
        : base(Week)
    {
    }

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

    /// <summary>Whether to throttle the suction so that no surface with water behind it falls to 0 °C: the fastest pull that is safe for tubes.</summary>
    public bool KeepAboveFreezing { get; init; }

    /// <summary>Whether to stop where a surface with water behind it reaches 0 °C; by default that is only reported.</summary>
    public bool StopAtFreezing { get; init; }

    /// <summary>Whether to throttle the suction so that the discharge pressure stays below the cut-out and what the cylinder is built for.</summary>
    public bool KeepBelowCutout { get; init; }

    /// <summary>Absolute pressure in the appliance below which it is not to go: the suction is throttled there, as a hand on the inlet valve does by the gauge; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? LowestPressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(LowestPressure));
            }

            field = value;
        }
    }

    /// <summary>With vapor only, the fall of pressure below which the machine counts as stalled, Pa/s; zero for the usual criterion.</summary>
    internal double SlowestFall { get; init; }
}
