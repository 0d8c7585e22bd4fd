using System;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
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

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="targetPressure">See <see cref="TargetPressure"/>.</param>
    /// <param name="receiverPressure">See <see cref="ReceiverPressure"/>.</param>
    /// <param name="keepAboveFreezing">See <see cref="KeepAboveFreezing"/>.</param>
    /// <param name="stopAtFreezing">See <see cref="StopAtFreezing"/>.</param>
    /// <param name="keepBelowCutout">See <see cref="KeepBelowCutout"/>.</param>
    /// <param name="lowestPressure">See <see cref="LowestPressure"/>.</param>
    /// <param name="start">See <see cref="StageOptions.Start"/>.</param>
    /// <param name="inputs">See <see cref="StageOptions.Inputs"/>.</param>
    /// <param name="cylinderLimit">See <see cref="StageOptions.CylinderLimit"/>.</param>
    /// <param name="maximumDuration">See <see cref="StageOptions.MaximumDuration"/>.</param>
    /// <param name="composition">See <see cref="StageOptions.Composition"/>.</param>
    /// <param name="barometer">See <see cref="StageOptions.Barometer"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public VaporRecoveryOptions(
        Pressure? targetPressure = null,
        Pressure? receiverPressure = null,
        bool? keepAboveFreezing = null,
        bool? stopAtFreezing = null,
        bool? keepBelowCutout = null,
        Pressure? lowestPressure = null,
        SimulationState? start = null,
        SimulationInputs? inputs = null,
        Mass? cylinderLimit = null,
        Duration? maximumDuration = null,
        CompositionMode? composition = null,
        Barometer? barometer = null)
        : base(Week, start, inputs, cylinderLimit, maximumDuration, composition, barometer)
    {
        TargetPressure = targetPressure ?? TargetPressure;
        ReceiverPressure = receiverPressure ?? ReceiverPressure;
        KeepAboveFreezing = keepAboveFreezing ?? KeepAboveFreezing;
        StopAtFreezing = stopAtFreezing ?? StopAtFreezing;
        KeepBelowCutout = keepBelowCutout ?? KeepBelowCutout;
        LowestPressure = lowestPressure ?? LowestPressure;
    }

    /// <summary>Absolute pressure in the appliance to stop at; without one the machine runs until something else stops it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? TargetPressure { get; init => field = Require.Positive(value, "Pa", nameof(TargetPressure)); }

    /// <summary>A fixed absolute discharge pressure in place of the cylinder's, for a receiver that is not a cylinder; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? ReceiverPressure { get; init => field = Require.Positive(value, "Pa", nameof(ReceiverPressure)); }

    /// <summary>Whether to throttle the suction so that no surface with water behind it falls to 0 °C: the fastest pull that is safe for tubes.</summary>
    public bool KeepAboveFreezing { get; init; }

    /// <summary>Whether to stop where a surface with water behind it reaches 0 °C; by default that is only reported.</summary>
    public bool StopAtFreezing { get; init; }

    /// <summary>Whether to throttle the suction so that the discharge pressure stays below the cut-out and what the cylinder is built for.</summary>
    public bool KeepBelowCutout { get; init; }

    /// <summary>Absolute pressure in the appliance below which it is not to go: the suction is throttled there, as a hand on the inlet valve does by the gauge; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? LowestPressure { get; init => field = Require.Positive(value, "Pa", nameof(LowestPressure)); }

    /// <summary>With vapor only, the fall of pressure below which the machine counts as stalled, Pa/s; zero for the usual criterion.</summary>
    internal double SlowestFall { get; init; }

    private protected override string Own => "vapor"
        + (TargetPressure is Pressure target ? $" to {Require.Text(target.Kilopascals)} kPa absolute" : string.Empty)
        + (LowestPressure is Pressure lowest ? $", not below {Require.Text(lowest.Kilopascals)} kPa absolute" : string.Empty)
        + (ReceiverPressure is Pressure receiver ? $" against {Require.Text(receiver.Kilopascals)} kPa absolute" : string.Empty)
        + (KeepAboveFreezing ? ", above freezing" : string.Empty)
        + (StopAtFreezing ? ", stops at freezing" : string.Empty)
        + (KeepBelowCutout ? ", below the cut-out" : string.Empty);
}
