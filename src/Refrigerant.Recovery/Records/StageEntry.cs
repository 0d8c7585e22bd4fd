using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Records;

/// <summary>One stage of a plan in a document. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<StageEntry>))]
public sealed record StageEntry
{
    /// <summary>What is done.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("kind")]
    public required StageKind Kind { get; init => field = Require.Defined(value, nameof(Kind)); }

    /// <summary>When it begins, since the start of the job, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("startSeconds")]
    public required double StartSeconds { get; init => field = Require.NotNegative(value, "s", nameof(StartSeconds)); }

    /// <summary>How long it takes, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("durationSeconds")]
    public required double DurationSeconds { get; init => field = Require.NotNegative(value, "s", nameof(DurationSeconds)); }

    /// <summary>Label of the cylinder that is connected; null where none is.</summary>
    [JsonPropertyName("cylinder")]
    public string? Cylinder { get; init; }

    /// <summary>Refrigerant taken out of the appliance, kg; negative where it goes back.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("movedKilograms")]
    public required double MovedKilograms { get; init => field = Require.Finite(value, "kg", nameof(MovedKilograms)); }

    /// <summary>Why it ended; null for handling.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("end")]
    public StageEnd? End { get; init => field = Require.Defined(value, nameof(End)); }

    /// <summary>Absolute pressure in the appliance after it, kPa.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("pressureAfterKilopascalsAbsolute")]
    public required double PressureAfterKilopascalsAbsolute { get; init => field = Require.NotNegative(value, "kPa", nameof(PressureAfterKilopascalsAbsolute)); }

    /// <summary>Temperature of the refrigerant in the appliance after it, °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("temperatureAfterCelsius")]
    public required double TemperatureAfterCelsius { get; init => field = Require.Finite(value, "°C", nameof(TemperatureAfterCelsius)); }

    /// <summary>Refrigerant in the appliance after it, what the oil holds included, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("massAfterKilograms")]
    public required double MassAfterKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(MassAfterKilograms)); }

    /// <summary>Of that, liquid, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("liquidAfterKilograms")]
    public required double LiquidAfterKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(LiquidAfterKilograms)); }

    internal static StageEntry From(PlannedStage stage) => new()
    {
        Kind = stage.Kind,
        StartSeconds = Plain.Seconds(stage.Start),
        DurationSeconds = Plain.Seconds(stage.Duration),
        Cylinder = stage.Cylinder,
        MovedKilograms = Plain.Kilograms(stage.Moved),
        End = stage.Result?.End,
        PressureAfterKilopascalsAbsolute = Plain.Kilopascals(stage.After.Pressure),
        TemperatureAfterCelsius = Plain.Celsius(stage.After.Temperature),
        MassAfterKilograms = Plain.Kilograms(stage.After.Mass),
        LiquidAfterKilograms = Plain.Kilograms(stage.After.LiquidMass),
    };

    /// <summary>Kind, time and mass.</summary>
    public override string ToString() => FormattableString.Invariant($"{Kind}: {MovedKilograms:G7} kg in {DurationSeconds:G7} s");
}
