using System;
using System.Globalization;
using System.IO;

namespace Refrigerant.Recovery.Docs;

/// <summary>Code that a page shows, or a table that it prints.</summary>
/// <param name="File">The file in docs/output that holds what it prints.</param>
/// <param name="Run">Prints to the console.</param>
internal sealed record Example(string File, Action Run)
{
    /// <summary>The committed output that the pages include.</summary>
    public string Path => System.IO.Path.Combine(Repository.Docs, "output", File);

    /// <summary>Runs it and returns what it printed.</summary>
    public string Capture()
    {
        TextWriter console = Console.Out;
        using StringWriter output = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
        Console.SetOut(output);
        try
        {
            Run();
        }
        finally
        {
            Console.SetOut(console);
        }

        return output.ToString();
    }

    /// <summary>The name, for test reports.</summary>
    public override string ToString() => File;
}
