using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Planning;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Time on site of the example job as it is and with one thing changed.</summary>
internal static class FasterChart
{
    public static void Draw(Plot plot)
    {
        SetupComparison comparison = SetupComparison.Run(ExampleJob.Create());
        List<(string Name, double Minutes)> rows = [("as it is", comparison.AsItIs.TotalDuration.Minutes)];
        rows.AddRange(comparison.Outcomes.Select(outcome => (outcome.Name, outcome.Plan.TotalDuration.Minutes)));
        rows.Reverse();
        Bar[] bars = [.. rows.Select((row, i) => new Bar
        {
            Position = i,
            Value = row.Minutes,
            Label = row.Minutes.ToString("F0", CultureInfo.InvariantCulture),
            FillColor = row.Name == "as it is" ? Colors.C1 : Colors.C0,
        })];
        BarPlot plotted = plot.Add.Bars(bars);
        plotted.Horizontal = true;
        plot.Axes.Left.TickGenerator = new NumericManual([.. rows.Select((row, i) => new Tick(i, row.Name))]);
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.HideLegend();
        plot.XLabel("time on site, min");
        plot.Axes.SetLimitsX(0, rows.Max(row => row.Minutes) * 1.1);
    }
}
