using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>How long an appliance stands shut, and what ends it earlier; 15 min by default (common practice, no source). Immutable.</summary>
public sealed record HoldOptions : StageOptions
{
    private const double QuarterOfAnHour = 900;

    /// <summary>A hold of a quarter of an hour.</summary>
    public HoldOptions()
        : base(QuarterOfAnHour)
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="duration">See <see cref="Duration"/>.</param>
    /// <param name="endPressure">See <see cref="EndPressure"/>.</param>
    /// <param name="cylinderEndPressure">See <see cref="CylinderEndPressure"/>.</param>
    /// <param name="start">See <see cref="StageOptions.Start"/>.</param>
    /// <param name="inputs">See <see cref="StageOptions.Inputs"/>.</param>
    /// <param name="cylinderLimit">See <see cref="StageOptions.CylinderLimit"/>.</param>
    /// <param name="maximumDuration">See <see cref="StageOptions.MaximumDuration"/>.</param>
    /// <param name="composition">See <see cref="StageOptions.Composition"/>.</param>
    /// <param name="barometer">See <see cref="StageOptions.Barometer"/>.</param>
    /// <param name="machine">See <see cref="Machine"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public HoldOptions(
        Duration? duration = null,
        Pressure? endPressure = null,
        Pressure? cylinderEndPressure = null,
        SimulationState? start = null,
        SimulationInputs? inputs = null,
        Mass? cylinderLimit = null,
        Duration? maximumDuration = null,
        CompositionMode? composition = null,
        Barometer? barometer = null,
        RecoveryMachine? machine = null)
        : base(QuarterOfAnHour, start, inputs, cylinderLimit, null, composition, barometer)
    {
        Duration = duration ?? Duration;
        EndPressure = endPressure ?? EndPressure;
        CylinderEndPressure = cylinderEndPressure ?? CylinderEndPressure;
        MaximumDuration = maximumDuration ?? MaximumDuration;
        Machine = machine;
    }

    /// <summary>How long the valves stay closed, 1 s to 1000 days: the same as <see cref="StageOptions.MaximumDuration"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Duration
    {
        get => MaximumDuration;
        init
        {
            Require.InRange(value.Seconds, 1, 8.64e7, "s", nameof(Duration));
            MaximumDuration = value;
        }
    }

    /// <summary>Absolute pressure of the appliance at which it ends early, since another pull is needed anyway; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? EndPressure { get; init => field = Require.Positive(value, "Pa", nameof(EndPressure)); }

    /// <summary>Absolute pressure of the cylinder, falling, at which it is cool enough; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? CylinderEndPressure { get; init => field = Require.Positive(value, "Pa", nameof(CylinderEndPressure)); }

    /// <summary>The machine that stands by, whose body cools to the air meanwhile; null leaves the temperature of a machine as it was.</summary>
    public RecoveryMachine? Machine { get; init; }

    private protected override string Own => "hold"
        + (EndPressure is Pressure end ? $" to {Require.Text(end.Kilopascals)} kPa absolute" : string.Empty)
        + (CylinderEndPressure is Pressure cool ? $" until the cylinder is at {Require.Text(cool.Kilopascals)} kPa absolute" : string.Empty);
}
