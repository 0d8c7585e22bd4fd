using System;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
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

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="suctionShare">See <see cref="SuctionShare"/>.</param>
    /// <param name="keepAboveFreezing">See <see cref="KeepAboveFreezing"/>.</param>
    /// <param name="keepBelowCutout">See <see cref="KeepBelowCutout"/>.</param>
    /// <param name="start">See <see cref="StageOptions.Start"/>.</param>
    /// <param name="inputs">See <see cref="StageOptions.Inputs"/>.</param>
    /// <param name="cylinderLimit">See <see cref="StageOptions.CylinderLimit"/>.</param>
    /// <param name="maximumDuration">See <see cref="StageOptions.MaximumDuration"/>.</param>
    /// <param name="composition">See <see cref="StageOptions.Composition"/>.</param>
    /// <param name="barometer">See <see cref="StageOptions.Barometer"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public LiquidRecoveryOptions(
        Ratio? suctionShare = null,
        bool? keepAboveFreezing = null,
        bool? keepBelowCutout = null,
        SimulationState? start = null,
        SimulationInputs? inputs = null,
        Mass? cylinderLimit = null,
        Duration? maximumDuration = null,
        CompositionMode? composition = null,
        Barometer? barometer = null)
        : base(Day, start, inputs, cylinderLimit, maximumDuration, composition, barometer)
    {
        SuctionShare = suctionShare ?? SuctionShare;
        KeepAboveFreezing = keepAboveFreezing ?? KeepAboveFreezing;
        KeepBelowCutout = keepBelowCutout ?? KeepBelowCutout;
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

    private protected override string Own => $"liquid through the machine, suction up to {Require.Text(SuctionShare.Percent)} % of the appliance's pressure"
        + (KeepAboveFreezing ? ", above freezing" : string.Empty)
        + (KeepBelowCutout ? ", below the cut-out" : string.Empty);
}
