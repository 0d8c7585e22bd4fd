using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>A plan as a document of plain numbers, in a stable shape. Planning figures: local codes and licensed practice govern. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<PlanDocument>))]
public sealed record PlanDocument
{
    /// <summary>The format of the document, which names its version.</summary>
    public const string CurrentFormat = "refrigerant-recovery-plan/1";

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

    /// <summary>The version of the library that made the plan.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("libraryVersion")]
    public required string LibraryVersion { get; init => field = Require.NotNull(value, nameof(LibraryVersion)); }

    /// <summary>Designation of the refrigerant.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("refrigerant")]
    public required string Refrigerant { get; init => field = Require.NotNull(value, nameof(Refrigerant)); }

    /// <summary>Time on site, handling included, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("totalDurationSeconds")]
    public required double TotalDurationSeconds { get; init => field = Require.NotNegative(value, "s", nameof(TotalDurationSeconds)); }

    /// <summary>The level to reach, and what the plan reaches.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("level")]
    public required LevelEntry Level { get; init => field = Require.NotNull(value, nameof(Level)); }

    /// <summary>The stages in order.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("stages")]
    public required IReadOnlyList<StageEntry> Stages { get; init => field = Require.Copy(value, nameof(Stages)); }

    /// <summary>The cylinders in the order of use, those not used last.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("cylinders")]
    public required IReadOnlyList<CylinderEntry> Cylinders { get; init => field = Require.Copy(value, nameof(Cylinders)); }

    /// <summary>Where every kilogram goes.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("ledger")]
    public required LedgerEntry Ledger { get; init => field = Require.NotNull(value, nameof(Ledger)); }

    /// <summary>What to know, heaviest first.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("findings")]
    public required IReadOnlyList<FindingEntry> Findings { get; init => field = Require.Copy(value, nameof(Findings)); }

    /// <summary>What can hurt people or property in the job; the last one always holds. Empty in documents that were written before there were any.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("cautions")]
    public IReadOnlyList<FindingEntry> Cautions { get; init => field = Require.Copy(value, nameof(Cautions)); } = new ValueList<FindingEntry>([]);

    /// <summary>The course of all stages in order of time; null where it was left out.</summary>
    /// <exception cref="ArgumentNullException">A member of the list is null.</exception>
    [JsonPropertyName("course")]
    public IReadOnlyList<CourseEntry>? Course { get; init => field = value is null ? null : Require.Copy(value, nameof(Course)); }

    /// <summary>A plan as a document.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="course">Whether to include the course of its stages, up to a few hundred points each.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static PlanDocument From(RecoveryPlan plan, bool course = false)
    {
        Require.NotNull(plan, nameof(plan));
        return new PlanDocument
        {
            Format = CurrentFormat,
            LibraryVersion = Library.Version,
            Refrigerant = plan.Job.Appliance.Fluid.Designation,
            TotalDurationSeconds = Plain.Seconds(plan.TotalDuration),
            Level = LevelEntry.From(plan.Requirement, plan.Job.Barometer.Pressure, plan.End.Pressure, plan.IsLevelReached),
            Stages = [.. plan.Stages.Select(StageEntry.From)],
            Cylinders = [.. plan.Cylinders.Select(CylinderEntry.From)],
            Ledger = LedgerEntry.From(plan.Ledger),
            Findings = [.. plan.Findings.Select(FindingEntry.From)],
            Cautions = [.. plan.Cautions.Select(FindingEntry.From)],
            Course = course ? [.. plan.Course().Select(CourseEntry.From)] : null,
        };
    }

    /// <summary>Refrigerant, level and time.</summary>
    public override string ToString() => FormattableString.Invariant($"{Refrigerant}: {Level}, {Ledger}, in {TotalDurationSeconds:G7} s");
}
