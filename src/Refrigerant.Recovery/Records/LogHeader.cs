using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace Refrigerant.Recovery.Records;

/// <summary>The header of a log as comma-separated values: columns with their units.</summary>
internal sealed class LogHeader
{
    private static readonly char[] Separators = [',', ';', '\t'];

    private readonly (LogColumn Column, string Unit)[] _columns;

    private LogHeader(char separator, (LogColumn Column, string Unit)[] columns)
    {
        Separator = separator;
        _columns = columns;
    }

    public char Separator { get; }

    public int Count => _columns.Length;

    public static LogHeader Read(string line, int number)
    {
        char separator = Separators.OrderByDescending(each => line.Count(c => c == each)).First();
        string[] names = Fields(line, separator) ?? throw JobLogCsv.Wrong(number, null, null, "a quote is not closed.");
        var columns = new List<(LogColumn Column, string Unit)>();
        foreach (string name in names)
        {
            int bracket = name.IndexOf('[');
            string plain = bracket < 0 ? name : name.Substring(0, bracket).Trim();
            LogColumn column = LogColumn.All.FirstOrDefault(each => string.Equals(each.Name, plain, StringComparison.OrdinalIgnoreCase))
                ?? throw JobLogCsv.Wrong(number, null, name, $"there is no such column; known are {string.Join(", ", LogColumn.All.Select(each => each.ToString()))}.");
            string unit = bracket < 0 || !name.EndsWith("]", StringComparison.Ordinal) ? string.Empty : name.Substring(bracket + 1, name.Length - bracket - 2).Trim();
            if (!column.Knows(unit))
            {
                throw JobLogCsv.Wrong(number, column.Name, name, unit.Length == 0 ? $"it must have its unit: {column}." : $"the unit is not known; {column}.");
            }

            if (columns.Any(each => each.Column == column))
            {
                throw JobLogCsv.Wrong(number, column.Name, name, "it is given twice.");
            }

            columns.Add((column, unit));
        }

        LogColumn? missing = LogColumn.All.FirstOrDefault(column => column.IsRequired && columns.All(each => each.Column != column));
        return missing is null ? new LogHeader(separator, [.. columns]) : throw JobLogCsv.Wrong(number, missing.Name, null, $"it is missing; the header must have {missing}.");
    }

    /// <summary>The fields of a record, by RFC 4180; blanks around one that is not quoted do not count. Null where a quote is not closed.</summary>
    public static string[]? Fields(string record, char separator)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        bool inQuotes = false, wasQuoted = false;
        for (int i = 0; i < record.Length; i++)
        {
            char c = record[i];
            if (inQuotes && c == '"' && i + 1 < record.Length && record[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (inQuotes && c == '"')
            {
                inQuotes = false;
            }
            else if (c == '"' && !wasQuoted && IsBlank(field))
            {
                inQuotes = wasQuoted = true;
                field.Clear();
            }
            else if (c == separator && !inQuotes)
            {
                fields.Add(Field(field, wasQuoted));
                field.Clear();
                wasQuoted = false;
            }
            else if (inQuotes || !wasQuoted || !char.IsWhiteSpace(c))
            {
                field.Append(c);
            }
        }

        fields.Add(Field(field, wasQuoted));
        return inQuotes ? null : [.. fields];
    }

    private static string Field(StringBuilder field, bool wasQuoted) => wasQuoted ? field.ToString() : field.ToString().Trim();

    private static bool IsBlank(StringBuilder field)
    {
        for (int i = 0; i < field.Length; i++)
        {
            if (!char.IsWhiteSpace(field[i]))
            {
                return false;
            }
        }

        return true;
    }

    public LogColumn Column(int index) => _columns[index].Column;

    public string Unit(int index) => _columns[index].Unit;

    public int IndexOf(LogColumn column) => Array.FindIndex(_columns, each => each.Column == column);
}
