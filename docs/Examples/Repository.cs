using System;
using System.IO;

namespace Refrigerant.Recovery.Docs;

/// <summary>Where this clone of the repository lies.</summary>
internal static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The documentation's folder.</summary>
    public static string Docs => Path.Combine(Root, "docs");

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Refrigerant.Recovery.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException($"No Refrigerant.Recovery.sln above {AppContext.BaseDirectory}.");
    }
}
