using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>Every chart is drawn from the library without error, and is in the tree.</summary>
public class ChartTests
{
    public static TheoryData<string> Files()
    {
        TheoryData<string> files = [];
        foreach (Chart chart in Catalogue.Charts)
        {
            files.Add(chart.File);
        }

        return files;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void IsDrawnAndCommitted(string file)
    {
        Chart chart = Assert.Single(Catalogue.Charts, c => c.File == file);
        using ScottPlot.Plot plot = new();
        chart.Draw(plot);
        Assert.NotEmpty(plot.GetPlottables());
        Assert.True(File.Exists(chart.Path), $"Run `dotnet run --project docs/Examples -- {file}`.");
    }
}
