using System;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What gauge, scale and clock show at one moment of a job. Nothing is checked here: whoever uses a reading says what it could not use. Immutable.</summary>
public sealed record JobReading
{
    /// <summary>Time since the start of the job.</summary>
    public required Duration Time { get; init; }

    /// <summary>Gauge pressure at the machine's inlet, against the air at the place; negative is vacuum. Null where it was not read.</summary>
    public Pressure? SuctionGaugePressure { get; init; }

    /// <summary>Weight of the cylinder on the scale, its valve and its content. Null where it was not read.</summary>
    public Mass? GrossWeight { get; init; }

    /// <summary>Temperature of the air around the appliance. Null where it was not read.</summary>
    public Temperature? Ambient { get; init; }

    /// <summary>Temperature of a pipe of the appliance. Null where it was not read.</summary>
    public Temperature? PipeTemperature { get; init; }

    /// <summary>Gauge pressure at the machine's outlet, against the air at the place. Null where it was not read.</summary>
    public Pressure? DischargeGaugePressure { get; init; }

    /// <summary>Whether the machine runs; true by default.</summary>
    public bool MachineRunning { get; init; } = true;

    /// <summary>Whether the valves between appliance and machine are open; true by default.</summary>
    public bool ValveOpen { get; init; } = true;

    /// <summary>Label of the cylinder on the scale, as <see cref="Equipment.RecoveryCylinder.Label"/> has it. Null: the same as before, at first the job's first one.</summary>
    public string? Cylinder { get; init; }

    /// <summary>Time, pressure and weight, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Time.Seconds:F1} s")
        + (SuctionGaugePressure is Pressure gauge ? FormattableString.Invariant($", {gauge.Kilopascals:F1} kPa gauge") : string.Empty)
        + (GrossWeight is Mass gross ? FormattableString.Invariant($", {gross.Kilograms:F3} kg gross") : string.Empty);
}
