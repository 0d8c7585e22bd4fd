using System;
using System.IO;

namespace Refrigerant.Recovery.Samples.Tests;

/// <summary>Where this clone of the repository lies.</summary>
internal static class Repository
{
    private static readonly string Root = Find();

    /// <summary>A file or folder below the one that holds the solution.</summary>
    public static string At(params string[] path) => Path.Combine([Root, .. path]);

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Refrigerant.Recovery.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"No Refrigerant.Recovery.sln above {AppContext.BaseDirectory}.");
    }
}
