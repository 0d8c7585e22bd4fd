using System;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>The table of docs/blends.md is what the model says.</summary>
public class BlendDocumentTests
{
    [Fact]
    public void TableOfEndsIsThatOfTheModels()
    {
        string[] rows = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "blends.md")).Where(line => line.StartsWith("| R-", StringComparison.Ordinal))];
        foreach (MixtureModel model in BlendCases.Models)
        {
            Assert.Contains(Row(model), rows);
        }
    }

    private static string Row(MixtureModel model)
    {
        BlendCurves curves = model.Engine.Curves;
        double lowest = Math.Max(curves.Bubble.MinimumPressure, curves.Dew.MinimumPressure);
        double highest = Math.Min(curves.Bubble.MaximumPressure, curves.Dew.MaximumPressure);
        string pairs = model.Quality == ModelQuality.Estimated ? "estimated" : "published";
        return FormattableString.Invariant(
            $"| {model.Designation} | {model.CriticalTemperature:F2} | {model.CriticalPressure / 1e6:F4} | {model.Range.MinimumTemperature:F1} | {model.Range.MaximumSaturationTemperature / model.CriticalTemperature:F4} | {lowest / 1e3:F2} | {highest / 1e3:F0} | {pairs} |");
    }
}
