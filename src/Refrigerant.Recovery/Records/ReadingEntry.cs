using System;
using Refrigerant.Recovery.Estimation;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>A reading in a document. Members that are left out were not read.</summary>
internal sealed record ReadingEntry
{
    public required double TimeSeconds { get; init; }

    public double? SuctionGaugeKilopascals { get; init; }

    public double? GrossKilograms { get; init; }

    public double? AmbientCelsius { get; init; }

    public double? PipeCelsius { get; init; }

    public double? DischargeGaugeKilopascals { get; init; }

    public bool? MachineRunning { get; init; }

    public bool? ValveOpen { get; init; }

    public string? Cylinder { get; init; }

    public static ReadingEntry From(JobReading reading) => new()
    {
        TimeSeconds = Plain.Seconds(reading.Time),
        SuctionGaugeKilopascals = reading.SuctionGaugePressure is Pressure suction ? Plain.Kilopascals(suction) : null,
        GrossKilograms = reading.GrossWeight is Mass gross ? Plain.Kilograms(gross) : null,
        AmbientCelsius = reading.Ambient is Temperature air ? Plain.Celsius(air) : null,
        PipeCelsius = reading.PipeTemperature is Temperature pipe ? Plain.Celsius(pipe) : null,
        DischargeGaugeKilopascals = reading.DischargeGaugePressure is Pressure discharge ? Plain.Kilopascals(discharge) : null,
        MachineRunning = reading.MachineRunning ? null : false,
        ValveOpen = reading.ValveOpen ? null : false,
        Cylinder = reading.Cylinder,
    };

    public JobReading ToReading() => new()
    {
        Time = new Duration(TimeSeconds, UnitsNet.Units.DurationUnit.Second),
        SuctionGaugePressure = SuctionGaugeKilopascals is double suction ? Plain.PressureOf(suction) : null,
        GrossWeight = GrossKilograms is double gross ? Plain.MassOf(gross) : null,
        Ambient = AmbientCelsius is double air ? Plain.TemperatureOf(air) : null,
        PipeTemperature = PipeCelsius is double pipe ? Plain.TemperatureOf(pipe) : null,
        DischargeGaugePressure = DischargeGaugeKilopascals is double discharge ? Plain.PressureOf(discharge) : null,
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
