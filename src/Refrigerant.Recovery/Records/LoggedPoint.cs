using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>One moment of a job, planned beside measured. What was not read, or not planned for, is null. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<LoggedPoint>))]
public sealed record LoggedPoint
{
    /// <summary>Time since the first reading, which is taken as the moment when the plan begins to take refrigerant out, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("timeSeconds")]
    public required double TimeSeconds { get; init => field = Require.NotNegative(value, "s", nameof(TimeSeconds)); }

    /// <summary>Absolute pressure at the machine's inlet by the gauge and the barometer of the job, kPa; below zero by the error of the gauge.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("measuredSuctionKilopascals")]
    public double? MeasuredSuctionKilopascals { get; init => field = value is double given ? Require.Finite(given, "kPa", nameof(MeasuredSuctionKilopascals)) : null; }

    /// <summary>The same as planned, kPa.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("plannedSuctionKilopascals")]
    public double? PlannedSuctionKilopascals { get; init => field = value is double given ? Require.Finite(given, "kPa", nameof(PlannedSuctionKilopascals)) : null; }

    /// <summary>What the scale has gained, jumps left out, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("measuredRecoveredKilograms")]
    public double? MeasuredRecoveredKilograms { get; init => field = value is double given ? Require.Finite(given, "kg", nameof(MeasuredRecoveredKilograms)) : null; }

    /// <summary>What was planned to have left the appliance, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("plannedRecoveredKilograms")]
    public double? PlannedRecoveredKilograms { get; init => field = value is double given ? Require.Finite(given, "kg", nameof(PlannedRecoveredKilograms)) : null; }

    /// <summary>Time and pressures.</summary>
    public override string ToString() => FormattableString.Invariant($"{TimeSeconds:F0} s: {MeasuredSuctionKilopascals:F1} kPa measured, {PlannedSuctionKilopascals:F1} kPa planned");
}
