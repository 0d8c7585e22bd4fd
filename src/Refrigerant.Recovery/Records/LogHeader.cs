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
        string[] names = [.. Fields(line, separator, number).Select(name => name.Trim())];
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

    /// <summary>The fields of a line; a field in quotes may hold the separator, and a quote doubled.</summary>
    public static string[] Fields(string line, char separator, int number)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (c == '"' && (quoted || field.ToString().Trim().Length == 0))
            {
                quoted = !quoted;
            }
            else if (c == separator && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(c);
            }
        }

        fields.Add(field.ToString());
        return quoted ? throw JobLogCsv.Wrong(number, null, null, "a quote is not closed.") : [.. fields];
    }

    public LogColumn Column(int index) => _columns[index].Column;

    public string Unit(int index) => _columns[index].Unit;

    public int IndexOf(LogColumn column) => Array.FindIndex(_columns, each => each.Column == column);
}
