using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>The level that had to be reached, and what was. Pressures in kPa. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<LevelEntry>))]
public sealed record LevelEntry
{
    /// <summary>The absolute pressure to reach: at or below it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("requiredKilopascalsAbsolute")]
    public required double RequiredKilopascalsAbsolute { get; init => field = Require.NotNegative(value, "kPa", nameof(RequiredKilopascalsAbsolute)); }

    /// <summary>The same as the reading of a gauge at the place; negative is vacuum.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    [JsonPropertyName("requiredKilopascalsGauge")]
    public required double RequiredKilopascalsGauge { get; init => field = Require.Finite(value, "kPa", nameof(RequiredKilopascalsGauge)); }

    /// <summary>For a small appliance, the share of the charge whose recovery meets the rule as well; otherwise null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("requiredRecoveryFraction")]
    public double? RequiredRecoveryFraction { get; init => field = value is double given ? Require.NotNegative(given, "", nameof(RequiredRecoveryFraction)) : null; }

    /// <summary>The pressure class of the appliance, by the rules of the United States; null under others.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("pressureClass")]
    public PressureClass? PressureClass { get; init => field = Require.Defined(value, nameof(PressureClass)); }

    /// <summary>The rule that sets the level.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("rule")]
    public required RuleEntry Rule { get; init => field = Require.NotNull(value, nameof(Rule)); }

    /// <summary>The air at the place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("barometerKilopascalsAbsolute")]
    public required double BarometerKilopascalsAbsolute { get; init => field = Require.NotNegative(value, "kPa", nameof(BarometerKilopascalsAbsolute)); }

    /// <summary>The absolute pressure reached.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("reachedKilopascalsAbsolute")]
    public required double ReachedKilopascalsAbsolute { get; init => field = Require.NotNegative(value, "kPa", nameof(ReachedKilopascalsAbsolute)); }

    /// <summary>Whether the level was reached and held.</summary>
    [JsonPropertyName("isReached")]
    public required bool IsReached { get; init; }

    internal static LevelEntry From(EvacuationRequirement requirement, Pressure barometer, Pressure reached, bool isReached) => new()
    {
        RequiredKilopascalsAbsolute = Plain.Kilopascals(requirement.RequiredPressure),
        RequiredKilopascalsGauge = Plain.Number((requirement.RequiredPressure.Pascals - barometer.Pascals) / 1e3),
        RequiredRecoveryFraction = requirement.RequiredRecovery is Ratio share ? Plain.Number(share.DecimalFractions) : null,
        PressureClass = requirement.Class,
        Rule = RuleEntry.From(requirement.Rule),
        BarometerKilopascalsAbsolute = Plain.Kilopascals(barometer),
        ReachedKilopascalsAbsolute = Plain.Kilopascals(reached),
        IsReached = isReached,
    };

    /// <summary>The level, and whether it was reached.</summary>
    public override string ToString() => FormattableString.Invariant($"{RequiredKilopascalsAbsolute:G7} kPa absolute {(IsReached ? "reached" : "not reached")}: {ReachedKilopascalsAbsolute:G7} kPa absolute");
}
