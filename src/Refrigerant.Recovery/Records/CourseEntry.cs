using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>One moment of a plan in a document. Pressures are absolute. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<CourseEntry>))]
public sealed record CourseEntry
{
    /// <summary>Time since the start of the job, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("timeSeconds")]
    public required double TimeSeconds { get; init => field = Require.NotNegative(value, "s", nameof(TimeSeconds)); }

    /// <summary>Pressure in the appliance, kPa.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("appliancePressureKilopascals")]
    public required double AppliancePressureKilopascals { get; init => field = Require.NotNegative(value, "kPa", nameof(AppliancePressureKilopascals)); }

    /// <summary>Pressure at the machine's inlet, kPa; where no machine takes part, that of the appliance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("suctionPressureKilopascals")]
    public required double SuctionPressureKilopascals { get; init => field = Require.NotNegative(value, "kPa", nameof(SuctionPressureKilopascals)); }

    /// <summary>Pressure at the machine's outlet, kPa; where no machine takes part, that of the appliance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("dischargePressureKilopascals")]
    public required double DischargePressureKilopascals { get; init => field = Require.NotNegative(value, "kPa", nameof(DischargePressureKilopascals)); }

    /// <summary>Temperature of the refrigerant in the appliance, °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("applianceTemperatureCelsius")]
    public required double ApplianceTemperatureCelsius { get; init => field = Require.Finite(value, "°C", nameof(ApplianceTemperatureCelsius)); }

    /// <summary>Temperature of the metal of the appliance, °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("metalTemperatureCelsius")]
    public required double MetalTemperatureCelsius { get; init => field = Require.Finite(value, "°C", nameof(MetalTemperatureCelsius)); }

    /// <summary>Temperature of the refrigerant in the cylinder, °C; where no cylinder takes part, of that in the appliance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("cylinderTemperatureCelsius")]
    public required double CylinderTemperatureCelsius { get; init => field = Require.Finite(value, "°C", nameof(CylinderTemperatureCelsius)); }

    /// <summary>Refrigerant in the appliance, what its oil holds included, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("applianceKilograms")]
    public required double ApplianceKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(ApplianceKilograms)); }

    /// <summary>Liquid in the appliance, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("liquidKilograms")]
    public required double LiquidKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(LiquidKilograms)); }

    /// <summary>Refrigerant in the cylinder, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("cylinderKilograms")]
    public required double CylinderKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(CylinderKilograms)); }

    /// <summary>Flow out of the appliance, kg/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("flowKilogramsPerSecond")]
    public required double FlowKilogramsPerSecond { get; init => field = Require.Finite(value, "kg/s", nameof(FlowKilogramsPerSecond)); }

    internal static CourseEntry From(PlanPoint moment) => new()
    {
        TimeSeconds = Plain.Seconds(moment.Time),
        AppliancePressureKilopascals = Plain.Kilopascals(moment.Point.AppliancePressure),
        SuctionPressureKilopascals = Plain.Kilopascals(moment.Point.SuctionPressure),
        DischargePressureKilopascals = Plain.Kilopascals(moment.Point.DischargePressure),
        ApplianceTemperatureCelsius = Plain.Celsius(moment.Point.ApplianceTemperature),
        MetalTemperatureCelsius = Plain.Celsius(moment.Point.MetalTemperature),
        CylinderTemperatureCelsius = Plain.Celsius(moment.Point.CylinderTemperature),
        ApplianceKilograms = Plain.Kilograms(moment.Point.ApplianceMass),
        LiquidKilograms = Plain.Kilograms(moment.Point.LiquidMass),
        CylinderKilograms = Plain.Kilograms(moment.Point.CylinderMass),
        FlowKilogramsPerSecond = Plain.Number(moment.Point.Flow.KilogramsPerSecond),
    };

    /// <summary>Time, pressure and mass.</summary>
    public override string ToString() => FormattableString.Invariant($"{TimeSeconds:G7} s: {AppliancePressureKilopascals:G7} kPa, {ApplianceKilograms:G7} kg in the appliance");
}
