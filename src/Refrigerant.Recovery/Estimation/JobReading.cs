using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>One reading of a job; what was not read is null. Immutable. Any values are accepted: what cannot be is left out and named.</summary>
public sealed record JobReading
{
    /// <summary>Time from any start, the same for all readings of a job.</summary>
    public required Duration Time { get; init; }

    /// <summary>What the gauge at the machine's inlet shows; negative where it is a vacuum.</summary>
    public Pressure? SuctionGaugePressure { get; init; }

    /// <summary>Weight on the scale, cylinder included.</summary>
    public Mass? GrossWeight { get; init; }

    /// <summary>Temperature of the air; that of the job until one was read.</summary>
    public Temperature? Ambient { get; init; }

    /// <summary>Temperature of a pipe of the appliance where liquid lies, if anywhere.</summary>
    public Temperature? PipeTemperature { get; init; }

    /// <summary>What the gauge at the machine's outlet shows.</summary>
    public Pressure? DischargeGaugePressure { get; init; }

    /// <summary>Whether the machine runs; true by default.</summary>
    public bool MachineRunning { get; init; } = true;

    /// <summary>Whether the valves between appliance and machine are open; true by default.</summary>
    public bool ValveOpen { get; init; } = true;

    internal RawReading ToRaw() => new(Time.Seconds)
    {
        SuctionGaugePressure = SuctionGaugePressure?.Pascals ?? double.NaN,
        GrossWeight = GrossWeight?.Kilograms ?? double.NaN,
        AirTemperature = Ambient?.Kelvins ?? double.NaN,
        PipeTemperature = PipeTemperature?.Kelvins ?? double.NaN,
        DischargeGaugePressure = DischargeGaugePressure?.Pascals ?? double.NaN,
        IsMachineRunning = MachineRunning,
        IsValveOpen = ValveOpen,
    };
}
