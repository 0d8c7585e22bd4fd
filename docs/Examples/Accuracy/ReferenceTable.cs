using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;

namespace Refrigerant.Recovery.Docs.Accuracy;

/// <summary>A reference table of the tests, row by row: values by the names of its columns.</summary>
internal sealed class ReferenceTable
{
    private readonly Dictionary<string, int> _columns;

    private ReferenceTable(string[] header, List<string[]> rows)
    {
        _columns = header.Select((name, index) => (name, index)).ToDictionary(column => column.name, column => column.index);
        Rows = [.. rows.Select(cells => new Row(this, cells))];
    }

    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Reads a table from the data of the tests; lines that begin with # are its provenance.</summary>
    public static ReferenceTable Read(string file)
    {
        string path = Path.Combine(Repository.Root, "tests", "Refrigerant.Recovery.Tests", "Data", file);
        List<string[]> lines = [.. File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split(','))];
        return new ReferenceTable(lines[0], lines[1..]);
    }

    /// <summary>One state.</summary>
    internal sealed class Row(ReferenceTable table, string[] cells)
    {
        /// <summary>The fluid's designation: the first column.</summary>
        public string Fluid => cells[0];

        /// <summary>The value in a column, SI.</summary>
        public double this[string column] => double.Parse(cells[table._columns[column]], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
