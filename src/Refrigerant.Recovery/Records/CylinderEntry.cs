using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>A cylinder in a document: what went into it and how full it may be. Masses in kg. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<CylinderEntry>))]
public sealed record CylinderEntry
{
    /// <summary>What the technician calls it.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("label")]
    public required string Label { get; init => field = Require.NotNull(value, nameof(Label)); }

    /// <summary>What it is built to, such as "DOT-4BA400"; null where unknown.</summary>
    [JsonPropertyName("mark")]
    public string? Mark { get; init; }

    /// <summary>The day on which its requalification falls due; null where unknown.</summary>
    [JsonPropertyName("requalificationDue")]
    public DateTime? RequalificationDue { get; init; }

    /// <summary>Water capacity (mark WC).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("waterCapacityKilograms")]
    public required double WaterCapacityKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(WaterCapacityKilograms)); }

    /// <summary>Tare weight (mark TW).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("tareWeightKilograms")]
    public required double TareWeightKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(TareWeightKilograms)); }

    /// <summary>Refrigerant in it before the job.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("contentBeforeKilograms")]
    public required double ContentBeforeKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(ContentBeforeKilograms)); }

    /// <summary>Refrigerant that it received; below zero where more of its vapor was pushed over than came back, or by the tolerance of the simulation where nothing flowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("receivedKilograms")]
    public required double ReceivedKilograms { get; init => field = Require.Finite(value, "kg", nameof(ReceivedKilograms)); }

    /// <summary>Weight on the scale after the job.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("grossWeightKilograms")]
    public required double GrossWeightKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(GrossWeightKilograms)); }

    /// <summary>The most refrigerant that it may hold.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("maximumFillKilograms")]
    public required double MaximumFillKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(MaximumFillKilograms)); }

    /// <summary>The rule that sets that limit.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("limitedBy")]
    public required RuleEntry LimitedBy { get; init => field = Require.NotNull(value, nameof(LimitedBy)); }

    /// <summary>Absolute pressure when it was closed; null where unknown or not used.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("pressureKilopascalsAbsolute")]
    public double? PressureKilopascalsAbsolute { get; init => field = value is double given ? Require.NotNegative(given, "kPa", nameof(PressureKilopascalsAbsolute)) : null; }

    /// <summary>Temperature of the refrigerant when it was closed; null where unknown or not used.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("temperatureCelsius")]
    public double? TemperatureCelsius { get; init => field = value is double given ? Require.Finite(given, "°C", nameof(TemperatureCelsius)) : null; }

    internal static CylinderEntry From(CylinderUse use) => new()
    {
        Label = use.Cylinder.Label,
        Mark = use.Cylinder.Specification?.Mark,
        RequalificationDue = use.Cylinder.RequalificationDue,
        WaterCapacityKilograms = Plain.Kilograms(use.Cylinder.WaterCapacity),
        TareWeightKilograms = Plain.Kilograms(use.Cylinder.TareWeight),
        ContentBeforeKilograms = Plain.Kilograms(use.Cylinder.Content),
        ReceivedKilograms = Plain.Kilograms(use.Received),
        GrossWeightKilograms = Plain.Kilograms(use.GrossWeight),
        MaximumFillKilograms = Plain.Kilograms(use.Limit.MaximumFill),
        LimitedBy = RuleEntry.From(use.Limit.GoverningRule.Figure),
        PressureKilopascalsAbsolute = use.PressureAtEnd is Pressure pressure ? Plain.Kilopascals(pressure) : null,
        TemperatureCelsius = use.TemperatureAtEnd is Temperature temperature ? Plain.Celsius(temperature) : null,
    };

    /// <summary>Label, and what went in.</summary>
    public override string ToString() => FormattableString.Invariant($"{Label}: {ReceivedKilograms:G7} kg received, at most {MaximumFillKilograms:G7} kg");
}
