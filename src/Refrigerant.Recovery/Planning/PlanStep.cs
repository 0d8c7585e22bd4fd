using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a strategy wants done next: a stage and its parameters. Immutable.</summary>
public sealed record PlanStep
{
    /// <summary>A step, for an initializer.</summary>
    /// <param name="kind">What is done.</param>
    public PlanStep(StageKind kind) => Kind = Require.Defined(kind, nameof(kind));

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="kind">See <see cref="Kind"/>.</param>
    /// <param name="duration">See <see cref="Duration"/>.</param>
    /// <param name="appliancePressure">See <see cref="AppliancePressure"/>.</param>
    /// <param name="lowestPressure">See <see cref="LowestPressure"/>.</param>
    /// <param name="cylinderPressure">See <see cref="CylinderPressure"/>.</param>
    /// <param name="inputs">See <see cref="Inputs"/>.</param>
    /// <param name="isThrottled">See <see cref="IsThrottled"/>.</param>
    /// <param name="cylinder">See <see cref="Cylinder"/>.</param>
    /// <param name="reason">See <see cref="Reason"/>.</param>
    /// <param name="saves">See <see cref="Saves"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public PlanStep(
        StageKind kind,
        Duration? duration = null,
        Pressure? appliancePressure = null,
        Pressure? lowestPressure = null,
        Pressure? cylinderPressure = null,
        SimulationInputs? inputs = null,
        bool? isThrottled = null,
        RecoveryCylinder? cylinder = null,
        StepReason? reason = null,
        Duration? saves = null)
    {
        Kind = Require.Defined(kind, nameof(kind));
        Duration = duration ?? Duration;
        AppliancePressure = appliancePressure ?? AppliancePressure;
        LowestPressure = lowestPressure ?? LowestPressure;
        CylinderPressure = cylinderPressure ?? CylinderPressure;
        Inputs = inputs ?? Inputs;
        IsThrottled = isThrottled ?? IsThrottled;
        Cylinder = cylinder ?? Cylinder;
        Reason = reason ?? Reason;
        Saves = saves ?? Saves;
    }

    /// <summary>What is done.</summary>
    public StageKind Kind { get; }

    /// <summary>How long it takes, or takes at most, 0 to 1000 days; by <see cref="JobTimes"/> or as long as it takes where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration? Duration
    {
        get;
        init
        {
            if (value is Duration given)
            {
                Require.InRange(given.Seconds, 0, 8.64e7, "s", nameof(Duration));
            }

            field = value;
        }
    }

    /// <summary>Absolute pressure on the appliance's gauge that ends it; none where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? AppliancePressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(AppliancePressure)); }

    /// <summary>Absolute pressure in the appliance below which a pull is not to go: the inlet is throttled by the gauge; none where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? LowestPressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(LowestPressure)); }

    /// <summary>Absolute pressure of the cylinder that ends a rest, falling, or vapor first, rising; none where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? CylinderPressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(CylinderPressure)); }

    /// <summary>Valves, heat, fans, cooling throughout the step.</summary>
    public SimulationInputs Inputs { get; init; }

    /// <summary>Whether the inlet is throttled so that the discharge pressure stays below the cut-out and what the cylinder is built for.</summary>
    public bool IsThrottled { get; init; }

    /// <summary>The cylinder that is connected in a set-up or a change of cylinders.</summary>
    public RecoveryCylinder? Cylinder { get; init; }

    /// <summary>Why it is done so.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public StepReason Reason { get; init => field = Require.Defined(value, nameof(Reason)); }

    /// <summary>Time that the reason saves against the usual way; zero where it is not known.</summary>
    public Duration Saves { get; init; }

    /// <summary>What is done, what ends it, and why.</summary>
    public override string ToString() => Kind
        + (Cylinder is RecoveryCylinder cylinder ? $", {cylinder.Label}" : string.Empty)
        + (Duration is Duration duration ? $", {Require.Text(duration.Seconds)} s at most" : string.Empty)
        + (AppliancePressure is Pressure end ? $", to {Require.Text(end.Kilopascals)} kPa absolute" : string.Empty)
        + (LowestPressure is Pressure lowest ? $", not below {Require.Text(lowest.Kilopascals)} kPa absolute" : string.Empty)
        + (CylinderPressure is Pressure rest ? $", until the cylinder is at {Require.Text(rest.Kilopascals)} kPa absolute" : string.Empty)
        + (Inputs == default ? string.Empty : $", {Inputs}")
        + $"{(IsThrottled ? ", throttled" : string.Empty)}: {Reason}";
}
