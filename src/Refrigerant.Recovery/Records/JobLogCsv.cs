using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Text;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>Job logs as comma-separated values (RFC 4180) with units in the header.</summary>
/// <remarks>
/// The first line names the columns, each with its unit in brackets, such as <c>time [s],suction gauge [kPa],gross weight [kg],ambient [°C]</c>; see
/// <see cref="Columns"/>. Commas, semicolons or tabs part the fields, as the first line has them; numbers have a decimal point; an empty field was not read.
/// A field in quotes may hold what parts fields, doubled quotes, blanks at its ends and line breaks, with up to 1000 characters. Lines that begin with # and empty lines are skipped. Reading is strict: an error names line, column, value and reason.
/// </remarks>
public static class JobLogCsv
{
    private const int LongestText = 64 * 1024 * 1024;
    private const int LongestShown = 60;
    private const int MostErrors = 1000;

    /// <summary>How far a quote that is not closed in its line is followed, in characters.</summary>
    private const int LongestLabel = 1000;

    /// <summary>The columns that are known, with the units that each may have; "time" must be there.</summary>
    public static IReadOnlyList<string> Columns { get; } = Array.AsReadOnly<string>([.. LogColumn.All.Select(column => column.ToString())]);

    /// <summary>Reads a log.</summary>
    /// <param name="csv">The text.</param>
    /// <exception cref="ArgumentNullException"><paramref name="csv"/> is null.</exception>
    /// <exception cref="DocumentException">The text is no log; <see cref="DocumentException.Path"/> is line and column, the message has the value and the reason.</exception>
    public static JobLog Read(string csv) =>
        TryRead(csv, out JobLog? log, out IReadOnlyList<DocumentError> errors) ? log : throw new DocumentException(errors);

    /// <summary>Reads a log, or says everything that is wrong with the text; of more than 1000 errors the first 1000.</summary>
    /// <param name="csv">The text.</param>
    /// <param name="log">The log, or null.</param>
    /// <param name="errors">Each error in the order of the lines, its path line and column; none where it was read. What is wrong with the header is told alone.</param>
    /// <returns>Whether it was read.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="csv"/> is null.</exception>
    public static bool TryRead(string csv, [NotNullWhen(true)] out JobLog? log, out IReadOnlyList<DocumentError> errors)
    {
        var found = new List<DocumentError>();
        IReadOnlyList<JobReading> readings = Require.NotNull(csv, nameof(csv)).Length <= LongestText
            ? Readings(csv, found)
            : Told(found, new DocumentException("line 1", FormattableString.Invariant($"The text has {csv.Length} characters; at most {LongestText} are read.")));
        log = found.Count == 0 ? JobLog.FromPossible(readings) : null;
        errors = new ValueList<DocumentError>([.. found]);
        return log is not null;
    }

    /// <summary>Writes a log in SI units: s, kPa, kg, °C; columns that no reading has are left out. Numbers are written in full, in the units in which the log holds them.</summary>
    /// <param name="log">The log.</param>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    public static string Write(JobLog log)
    {
        IReadOnlyList<JobReading> readings = Require.NotNull(log, nameof(log)).Readings;
        LogColumn[] columns = [.. LogColumn.All.Where(column => readings.Any(reading => column.IsWritten(reading)))];
        var text = new StringBuilder();
        text.Append(string.Join(",", columns.Select(column => column.Header))).Append('\n');
        foreach (JobReading reading in readings)
        {
            text.Append(string.Join(",", columns.Select(column => column.Text(reading)))).Append('\n');
        }

        return text.ToString();
    }

    internal static DocumentException Wrong(int line, string? column, string? value, string reason, Exception? inner = null)
    {
        string path = FormattableString.Invariant($"line {line}") + (column is null ? string.Empty : $", {column}");
        string shown = value is null ? string.Empty : $" is \"{(value.Length <= LongestShown ? value : value.Substring(0, LongestShown) + "…")}\"";
        return new DocumentException(path, $"{path}{shown}: {reason}", inner);
    }

    /// <summary>The readings of the lines that are right; what is wrong with the others is told.</summary>
    private static IReadOnlyList<JobReading> Readings(string csv, List<DocumentError> found)
    {
        string[] lines = csv.TrimStart('\uFEFF').Split('\n');
        LogHeader? header = null;
        var readings = new List<JobReading>();
        for (int i = 0; i < lines.Length && found.Count < MostErrors; i++)
        {
            string line = lines[i].TrimEnd('\r');
            if (line.Trim().Length == 0 || line[0] == '#')
            {
                continue;
            }

            int number = i + 1;

            try
            {
                if (header is null)
                {
                    header = LogHeader.Read(line, number);
                }
                else if (readings.Count == JobLog.MostReadings)
                {
                    return Told(found, Wrong(number, null, null, $"a log has at most {JobLog.MostReadings} readings."));
                }
                else if (Row(header, Record(lines, ref i, header.Separator), number, readings.Count == 0 ? null : readings[readings.Count - 1], found) is JobReading reading)
                {
                    readings.Add(reading);
                }
            }
            catch (DocumentException e)
            {
                Told(found, e);
                if (header is null)
                {
                    return readings;
                }
            }
        }

        return readings.Count > 0 || found.Count > 0 ? readings : Told(found, Wrong(lines.Length, null, null, "there is no reading."));
    }

    private static IReadOnlyList<JobReading> Told(List<DocumentError> found, DocumentException error)
    {
        found.AddRange(error.Errors);
        return [];
    }

    /// <summary>The fields of a record, which goes over the next lines where a label has line breaks; null where a quote is not closed.</summary>
    private static string[]? Record(string[] lines, ref int index, char separator)
    {
        string record = lines[index].TrimEnd('\r');
        if (LogHeader.Fields(record, separator) is string[] fields)
        {
            return fields;
        }

        record = lines[index];
        for (int next = index + 1; next < lines.Length && record.Length < LongestLabel; next++)
        {
            record += "\n" + lines[next];
            if (lines[next].IndexOf('"') >= 0 && LogHeader.Fields(record.TrimEnd('\r'), separator) is string[] whole)
            {
                index = next;
                return whole;
            }
        }

        return null;
    }

    /// <summary>A reading; null where something in its line is wrong, which is told.</summary>
    private static JobReading? Row(LogHeader header, string[]? fields, int number, JobReading? before, List<DocumentError> found)
    {
        if (fields is null)
        {
            throw Wrong(number, null, null, "a quote is not closed.");
        }

        if (fields.Length != header.Count)
        {
            throw Wrong(number, null, null, FormattableString.Invariant($"it has {fields.Length} fields; the header has {header.Count}."));
        }

        int known = found.Count;
        var reading = new JobReading { Time = Duration.Zero };
        for (int i = 0; i < fields.Length; i++)
        {
            LogColumn column = header.Column(i);
            string field = fields[i];
            try
            {
                reading = field.Length > 0 ? column.Set(reading, header.Unit(i), field, number)
                    : column.IsRequired ? throw Wrong(number, column.Name, field, "it must be given.")
                    : reading;
            }
            catch (DocumentException e)
            {
                Told(found, e);
            }
        }

        // The time of a line that is wrong is not to be held against anything.
        bool isTimed = found.Skip(known).All(error => !error.Path.EndsWith(", " + LogColumn.All.First(each => each.IsRequired).Name, StringComparison.Ordinal));
        foreach ((string member, string reason) in JobLog.Faults(reading, isTimed ? before : null))
        {
            LogColumn column = LogColumn.All.First(each => each.Member == member);
            int at = header.IndexOf(column);
            Told(found, Wrong(number, column.Name, at >= 0 ? fields[at] : null, reason));
        }

        return found.Count == known ? reading : null;
    }
}
