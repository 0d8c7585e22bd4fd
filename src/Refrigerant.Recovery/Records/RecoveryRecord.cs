using System;
using System.Collections.Generic;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>The outcome of a job as one record, for the files. Immutable. Local codes and licensed practice govern.</summary>
[JsonConverter(typeof(DocumentJsonConverter<RecoveryRecord>))]
public sealed record RecoveryRecord
{
    /// <summary>The format of the document, which names its version.</summary>
    public const string CurrentFormat = "refrigerant-recovery-record/1";

    /// <summary>The format: <see cref="CurrentFormat"/>.</summary>
    /// <exception cref="ArgumentException">Another format.</exception>
    [JsonPropertyName("format")]
    public required string Format
    {
        get;
        init => field = value == CurrentFormat
            ? value
            : throw new ArgumentException($"it must be \"{CurrentFormat}\", the format that this version reads.", nameof(Format));
    }

    /// <summary>Company name (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("company")]
    public required string Company { get; init => field = Require.NotNull(value, nameof(Company)); }

    /// <summary>Location of the appliance (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("location")]
    public required string Location { get; init => field = Require.NotNull(value, nameof(Location)); }

    /// <summary>Date of the recovery (40 CFR 82.156(a)(3)).</summary>
    [JsonPropertyName("date")]
    public required DateTime Date { get; init; }

    /// <summary>The moment at which it was completed; null where not noted.</summary>
    [JsonPropertyName("completedAt")]
    public DateTimeOffset? CompletedAt { get; init; }

    /// <summary>Who did it, with the certificate where one is held; null where not noted.</summary>
    [JsonPropertyName("technician")]
    public string? Technician { get; init; }

    /// <summary>What the refrigerant was taken from, in words; null where not noted.</summary>
    [JsonPropertyName("appliance")]
    public string? Appliance { get; init; }

    /// <summary>Type of the refrigerant recovered (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("refrigerant")]
    public required string Refrigerant { get; init => field = Require.NotNull(value, nameof(Refrigerant)); }

    /// <summary>Whether the appliance was disposed of: those recoveries are added up by type and calendar month (40 CFR 82.156(a)(3)).</summary>
    [JsonPropertyName("isDisposal")]
    public required bool IsDisposal { get; init; }

    /// <summary>The last day on which the record must be kept by 40 CFR 82.156(a)(3): three years after disposal of an appliance with a full charge of more than 5 lb and less than 50 lb; null where that section does not ask for it.</summary>
    [JsonPropertyName("keepUntil")]
    public DateTime? KeepUntil { get; init; }

    /// <summary>Quantity recovered, kg, which goes into the total of its type and month (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("recoveredKilograms")]
    public required double RecoveredKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(RecoveredKilograms)); }

    /// <summary>Whether the quantity was weighed; otherwise it is planned.</summary>
    [JsonPropertyName("isRecoveredMeasured")]
    public required bool IsRecoveredMeasured { get; init; }

    /// <summary>The level required and reached.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("level")]
    public required LevelEntry Level { get; init => field = Require.NotNull(value, nameof(Level)); }

    /// <summary>Whether the level reached was read on a gauge; otherwise it is planned.</summary>
    [JsonPropertyName("isLevelMeasured")]
    public required bool IsLevelMeasured { get; init; }

    /// <summary>What is left in the appliance, oil included, kg: an estimate.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("residualKilograms")]
    public required double ResidualKilograms { get; init => field = Require.NotNegative(value, "kg", nameof(ResidualKilograms)); }

    /// <summary>The cylinders that received refrigerant.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("cylinders")]
    public required IReadOnlyList<CylinderEntry> Cylinders { get; init => field = Require.Copy(value, nameof(Cylinders)); }

    /// <summary>Where every kilogram of the charge is.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("ledger")]
    public required LedgerEntry Ledger { get; init => field = Require.NotNull(value, nameof(Ledger)); }

    /// <summary>What was sent for reclamation or destruction (40 CFR 82.156(a)(3)); empty while it is still on hand.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("shipments")]
    public required IReadOnlyList<ShipmentEntry> Shipments { get; init => field = Require.Copy(value, nameof(Shipments)); }

    /// <summary>What was to be known about the job.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("findings")]
    public required IReadOnlyList<FindingEntry> Findings { get; init => field = Require.Copy(value, nameof(Findings)); }

    /// <summary>The cautions that went with the plan; the last one always holds. Empty in records that were written before there were any.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("cautions")]
    public IReadOnlyList<FindingEntry> Cautions { get; init => field = Require.Copy(value, nameof(Cautions)); } = new ValueList<FindingEntry>([]);

    /// <summary>The rules that the record rests on, each with the edition that was read.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("rules")]
    public required IReadOnlyList<RuleEntry> Rules { get; init => field = Require.Copy(value, nameof(Rules)); }

    /// <summary>The version of the library that made the record.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("libraryVersion")]
    public required string LibraryVersion { get; init => field = Require.NotNull(value, nameof(LibraryVersion)); }

    /// <summary>How the job went by its log, beside the plan; null where no log was kept.</summary>
    [JsonPropertyName("logged")]
    public LoggedEntry? Logged { get; init; }

    /// <summary>The record of a job: what was planned, replaced by what was measured.</summary>
    /// <param name="plan">The plan of the job.</param>
    /// <param name="facts">Company, place, date, and what was read on scales and gauges.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// A scale reading names no cylinder of the plan, more than one, or lies below what the cylinder weighed before.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is below absolute zero pressure, or not finite.</exception>
    /// <exception cref="Fluids.PropertyRangeException">The appliance's temperature is outside the range of the refrigerant's equation.</exception>
    public static RecoveryRecord From(RecoveryPlan plan, RecordFacts facts) =>
        new RecordBuilder(Require.NotNull(plan, nameof(plan)), Require.NotNull(facts, nameof(facts))).Build();

    /// <summary>Date, refrigerant and mass.</summary>
    public override string ToString() => FormattableString.Invariant($"{Date:yyyy-MM-dd}: {RecoveredKilograms:G7} kg of {Refrigerant}, {Level}");
}
