using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Records.Jobs;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>What was read at one moment; what is left out was not.</summary>
internal sealed record ReadingEntry
{
    /// <summary>Time since the start of the job, 0 to 604800 s.</summary>
    public required double TimeSeconds { get; init; }

    /// <summary>Gauge pressure at the machine's inlet, -200 kPa to 100 MPa; negative is vacuum.</summary>
    public double? SuctionGaugeKilopascals { get; init; }

    /// <summary>Weight of the cylinder on the scale, its valve and its content, 0 to 1e6 kg.</summary>
    public double? GrossKilograms { get; init; }

    /// <summary>Temperature of the air around the appliance, -123.15 to 126.85 °C.</summary>
    public double? AmbientCelsius { get; init; }

    /// <summary>Temperature of a pipe of the appliance, -123.15 to 126.85 °C.</summary>
    public double? PipeCelsius { get; init; }

    /// <summary>Gauge pressure at the machine's outlet, -200 kPa to 100 MPa.</summary>
    public double? DischargeGaugeKilopascals { get; init; }

    /// <summary>Whether the machine runs; true where it is left out.</summary>
    public bool? MachineRunning { get; init; }

    /// <summary>Whether the valves between appliance and machine are open; true where it is left out.</summary>
    public bool? ValveOpen { get; init; }

    /// <summary>Label of the cylinder on the scale; the same as before where it is left out, at first the first one of the job.</summary>
    /// <exception cref="ArgumentException">Blank.</exception>
    public string? Cylinder { get; init => field = value is null ? null : Require.NotEmpty(value, nameof(Cylinder)); }

    public static ReadingEntry From(JobReading reading) => new()
    {
        TimeSeconds = Exact.Seconds(reading.Time),
        SuctionGaugeKilopascals = reading.SuctionGaugePressure is Pressure suction ? Exact.Kilopascals(suction) : null,
        GrossKilograms = reading.GrossWeight is Mass gross ? Exact.Kilograms(gross) : null,
        AmbientCelsius = reading.Ambient is Temperature air ? Exact.Celsius(air) : null,
        PipeCelsius = reading.PipeTemperature is Temperature pipe ? Exact.Celsius(pipe) : null,
        DischargeGaugeKilopascals = reading.DischargeGaugePressure is Pressure discharge ? Exact.Kilopascals(discharge) : null,
        MachineRunning = reading.MachineRunning ? null : false,
        ValveOpen = reading.ValveOpen ? null : false,
        Cylinder = reading.Cylinder,
    };

    public JobReading ToReading() => new()
    {
        Time = new Duration(TimeSeconds, UnitsNet.Units.DurationUnit.Second),
        SuctionGaugePressure = SuctionGaugeKilopascals is double suction ? Exact.PressureOf(suction) : null,
        GrossWeight = GrossKilograms is double gross ? Exact.MassOf(gross) : null,
        Ambient = AmbientCelsius is double air ? Exact.TemperatureOf(air) : null,
        PipeTemperature = PipeCelsius is double pipe ? Exact.TemperatureOf(pipe) : null,
        DischargeGaugePressure = DischargeGaugeKilopascals is double discharge ? Exact.PressureOf(discharge) : null,
        MachineRunning = MachineRunning ?? true,
        ValveOpen = ValveOpen ?? true,
        Cylinder = Cylinder,
    };

    /// <summary>The member of the document that holds a member of a reading.</summary>
    public static string NameOf(string member) => member switch
    {
        nameof(JobReading.Time) => "timeSeconds",
        nameof(JobReading.SuctionGaugePressure) => "suctionGaugeKilopascals",
        nameof(JobReading.GrossWeight) => "grossKilograms",
        nameof(JobReading.Ambient) => "ambientCelsius",
        nameof(JobReading.PipeTemperature) => "pipeCelsius",
        nameof(JobReading.DischargeGaugePressure) => "dischargeGaugeKilopascals",
        _ => throw new ArgumentOutOfRangeException(nameof(member), member, "It is no member of a reading that has a range."),
    };
}
