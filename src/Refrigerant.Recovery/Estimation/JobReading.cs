using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What gauge, scale and clock show at one moment of a job. Nothing is checked here: whoever uses a reading says what it could not use. Immutable.</summary>
public sealed record JobReading
{
    /// <summary>For an initializer.</summary>
    public JobReading()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="time">See <see cref="Time"/>.</param>
    /// <param name="suctionGaugePressure">See <see cref="SuctionGaugePressure"/>.</param>
    /// <param name="grossWeight">See <see cref="GrossWeight"/>.</param>
    /// <param name="ambient">See <see cref="Ambient"/>.</param>
    /// <param name="pipeTemperature">See <see cref="PipeTemperature"/>.</param>
    /// <param name="dischargeGaugePressure">See <see cref="DischargeGaugePressure"/>.</param>
    /// <param name="machineRunning">See <see cref="MachineRunning"/>.</param>
    /// <param name="valveOpen">See <see cref="ValveOpen"/>.</param>
    /// <param name="cylinder">See <see cref="Cylinder"/>.</param>
    [SetsRequiredMembers]
    public JobReading(
        Duration time,
        Pressure? suctionGaugePressure = null,
        Mass? grossWeight = null,
        Temperature? ambient = null,
        Temperature? pipeTemperature = null,
        Pressure? dischargeGaugePressure = null,
        bool? machineRunning = null,
        bool? valveOpen = null,
        string? cylinder = null)
    {
        Time = time;
        SuctionGaugePressure = suctionGaugePressure ?? SuctionGaugePressure;
        GrossWeight = grossWeight ?? GrossWeight;
        Ambient = ambient ?? Ambient;
        PipeTemperature = pipeTemperature ?? PipeTemperature;
        DischargeGaugePressure = dischargeGaugePressure ?? DischargeGaugePressure;
        MachineRunning = machineRunning ?? MachineRunning;
        ValveOpen = valveOpen ?? ValveOpen;
        Cylinder = cylinder ?? Cylinder;
    }

    /// <summary>Time since the start of the job.</summary>
    public required Duration Time { get; init => field = Held.Seconds(value); }

    /// <summary>Gauge pressure at the machine's inlet, against the air at the place; negative is vacuum. Null where it was not read.</summary>
    public Pressure? SuctionGaugePressure { get; init => field = Held.Kilopascals(value); }

    /// <summary>Weight of the cylinder on the scale, its valve and its content. Null where it was not read.</summary>
    public Mass? GrossWeight { get; init => field = Held.Kilograms(value); }

    /// <summary>Temperature of the air around the appliance. Null where it was not read.</summary>
    public Temperature? Ambient { get; init => field = Held.ReadCelsius(value); }

    /// <summary>Temperature of a pipe of the appliance. Null where it was not read.</summary>
    public Temperature? PipeTemperature { get; init => field = Held.ReadCelsius(value); }

    /// <summary>Gauge pressure at the machine's outlet, against the air at the place. Null where it was not read.</summary>
    public Pressure? DischargeGaugePressure { get; init => field = Held.Kilopascals(value); }

    /// <summary>Whether the machine runs; true by default.</summary>
    public bool MachineRunning { get; init; } = true;

    /// <summary>Whether the valves between appliance and machine are open; true by default.</summary>
    public bool ValveOpen { get; init; } = true;

    /// <summary>
    /// Label of the cylinder on the scale, as <see cref="Equipment.RecoveryCylinder.Label"/> has it; one that the job does not have is an unknown cylinder, whose limit is not watched.
    /// Null: the same as before, at first the job's first one.
    /// </summary>
    /// <exception cref="ArgumentException">Blank.</exception>
    public string? Cylinder { get; init => field = value is null ? null : Require.NotEmpty(value, nameof(Cylinder)); }

    /// <summary>Time, pressure and weight, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Time.Seconds:F1} s")
        + (SuctionGaugePressure is Pressure gauge ? FormattableString.Invariant($", {gauge.Kilopascals:F1} kPa gauge") : string.Empty)
        + (GrossWeight is Mass gross ? FormattableString.Invariant($", {gross.Kilograms:F3} kg gross") : string.Empty);
}
