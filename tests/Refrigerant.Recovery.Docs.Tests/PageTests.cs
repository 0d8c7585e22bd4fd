using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>What the site builder does not check: the regions that pages include exist, and every output and chart is shown somewhere.</summary>
public partial class PageTests
{
    /// <summary>Columns of a code block on a page of usual width; what is longer has to be scrolled.</summary>
    private const int WidestCode = 88;

    private static readonly Dictionary<string, string> Pages = Directory
        .EnumerateFiles(Repository.Docs, "*.md")
        .Concat(Directory.EnumerateFiles(Path.Combine(Repository.Docs, "questions"), "*.md"))
        .ToDictionary(path => path, File.ReadAllText);

    [Fact]
    public void IncludedRegionsExist()
    {
        int regions = 0;
        foreach ((string page, string text) in Pages)
        {
            foreach (Match include in Include().Matches(text))
            {
                string source = Path.Combine(Path.GetDirectoryName(page)!, include.Groups["file"].Value);
                string region = include.Groups["region"].Value;
                Assert.True(
                    File.ReadLines(source).Any(line => line.Trim() == "#region " + region),
                    $"{Path.GetFileName(page)}: no #region {region} in {source}");
                regions++;
            }
        }

        Assert.NotEqual(0, regions);
    }

    [Fact]
    public void CodeOnPagesFitsTheirWidth()
    {
        foreach (string source in Directory.EnumerateFiles(Path.Combine(Repository.Docs, "Examples"), "*.cs", SearchOption.AllDirectories))
        {
            int indent = -1;
            foreach (string line in File.ReadLines(source))
            {
                string text = line.Trim();
                if (text.StartsWith("#region ", System.StringComparison.Ordinal))
                {
                    indent = line.Length - text.Length;
                }
                else if (text == "#endregion")
                {
                    indent = -1;
                }
                else if (indent >= 0)
                {
                    Assert.True(line.Length - indent <= WidestCode, $"{Path.GetFileName(source)}: {line.Length - indent} columns: {text}");
                }
            }
        }
    }

    [Fact]
    public void EveryOutputAndChartIsShown()
    {
        foreach (string file in Catalogue.Examples.Select(e => "output/" + e.File).Concat(Catalogue.Charts.Select(c => "images/" + c.File)))
        {
            Assert.True(Pages.Values.Any(text => text.Contains(file)), $"No page shows {file}.");
        }
    }

    [GeneratedRegex(@"\[!code-csharp\[[^\]]*\]\((?<file>[^#)]+)#(?<region>[^)]+)\)\]")]
    private static partial Regex Include();
}
