using System;
using System.IO;
using Refrigerant.Recovery.Docs;

// Writes docs/output and docs/images again: all of them, or those whose name contains an argument.
foreach (Example example in Catalogue.Examples)
{
    if (Wanted(example.File))
    {
        Directory.CreateDirectory(Path.GetDirectoryName(example.Path)!);
        File.WriteAllText(example.Path, example.Capture());
        Console.WriteLine(example.Path);
    }
}

foreach (Chart chart in Catalogue.Charts)
{
    if (Wanted(chart.File))
    {
        chart.Save();
        Console.WriteLine(chart.Path);
    }
}

bool Wanted(string name) => args.Length == 0 || Array.Exists(args, part => name.Contains(part, StringComparison.Ordinal));
