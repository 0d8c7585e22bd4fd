using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>What the README says the samples print is what they print now.</summary>
[Collection("console")]
public class ReadmeTests
{
    private const string Root = "Refrigerant.Recovery.Samples.";

    [Theory]
    [InlineData(0, "Console")]
    [InlineData(1, "Desk")]
    [InlineData(2, "Controller")]
    public void SamplePrintsTheLinesOfTheReadme(int block, string sample)
    {
        string folder = Directory.CreateTempSubdirectory("readme").FullName;
        string before = Directory.GetCurrentDirectory();
        string printed;
        try
        {
            string[] arguments = sample == "Desk" ? [Path.Combine(Repository.Root, "samples", "Desk", "job.json"), folder] : [];
            Directory.SetCurrentDirectory(folder);
            MethodInfo main = Assembly.Load(Root + sample).EntryPoint!;
            printed = new Example(string.Empty, () => main.Invoke(null, [arguments])).Capture();
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            Directory.Delete(folder, recursive: true);
        }

        string[] lines = [.. printed.Split('\n').Select(line => line.TrimEnd('\r'))];
        Assert.All(Blocks()[block], said => Assert.Contains(lines, line => line.StartsWith(said, StringComparison.Ordinal)));
    }

    private static List<string[]> Blocks()
    {
        List<string[]> blocks = [];
        List<string>? block = null;
        foreach (string line in File.ReadLines(Path.Combine(Repository.Root, "README.md")))
        {
            if (line == "```text")
            {
                block = [];
            }
            else if (line == "```" && block is not null)
            {
                blocks.Add([.. block]);
                block = null;
            }
            else
            {
                block?.Add(line);
            }
        }

        Assert.Equal(3, blocks.Count);
        Assert.All(blocks, Assert.NotEmpty);
        return blocks;
    }
}
