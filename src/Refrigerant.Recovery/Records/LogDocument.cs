using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A job log as a document of plain numbers.</summary>
internal sealed record LogDocument
{
    public const string CurrentFormat = "refrigerant-recovery-log/1";

    /// <summary>The format of the document, with its version.</summary>
    public required string Format
    {
        get;
        init => field = value == CurrentFormat
            ? value
            : throw new ArgumentException($"it must be \"{CurrentFormat}\", the format that this version reads.", nameof(Format));
    }

    /// <summary>The readings, at least one, each later than the one before.</summary>
    public required IReadOnlyList<ReadingEntry> Readings { get; init => field = Require.Copy(value, nameof(Readings)); }

    public static LogDocument From(JobLog log) => new() { Format = CurrentFormat, Readings = [.. log.Readings.Select(ReadingEntry.From)] };

    public JobLog ToLog(DocumentNode root)
    {
        DocumentNode list = root.Member("readings");
        JobReading[] readings = [.. Readings.Select(entry => entry.ToReading())];
        var errors = new List<DocumentError>();
        foreach ((JobReading reading, JobReading? before, DocumentNode item) in readings.Zip(list.Items(), (reading, item) => (reading, item)).Select((pair, i) => (pair.reading, i == 0 ? null : readings[i - 1], pair.item)))
        {
            foreach ((string member, string reason) in JobLog.Faults(reading, before))
            {
                errors.AddRange(item.Member(ReadingEntry.NameOf(member)).Wrong(reason).Errors);
            }
        }

        return errors.Count > 0 ? throw new DocumentException(errors) : list.Build(() => JobLog.FromPossible(readings));
    }
}
