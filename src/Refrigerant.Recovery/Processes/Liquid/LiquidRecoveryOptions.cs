using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Where a liquid recovery through the machine starts and how far its inlet is throttled; one day at most by default. Immutable.</summary>
public sealed record LiquidRecoveryOptions : StageOptions
{
    private const double Day = 86_400;

    /// <summary>A liquid recovery of appliance and cylinder as described.</summary>
    public LiquidRecoveryOptions()
        : base(Day)
    {
    }

    /// <summary>
    /// Highest suction pressure as a share of the appliance's, by the throttled inlet valve, 0.05 to 0.95; 0.5 by default (common practice, no source: the valve is opened by the
    /// gauge, not wide).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio SuctionShare
    {
        get;
        init
        {
            Require.InRange(value.DecimalFractions, 0.05, 0.95, string.Empty, nameof(SuctionShare));
            field = value;
        }
    }

    = new(0.5, RatioUnit.DecimalFraction);

    /// <summary>Whether to throttle the inlet so that no surface with water behind it falls to 0 °C.</summary>
    public bool KeepAboveFreezing { get; init; }

    /// <summary>Whether to throttle the inlet further so that the discharge pressure stays below the cut-out and what the cylinder is built for.</summary>
    public bool KeepBelowCutout { get; init; }
}
