using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>How long the same job takes with one thing changed.</summary>
internal static class FasterChart
{
    public static void Draw(Plot plot)
    {
        (string Change, double Minutes)[] rows = [.. Faster.Compare().Reverse()];
        Bar[] bars = [.. rows.Select((row, i) => new Bar
        {
            Position = i,
            Value = row.Minutes,
            Label = row.Minutes.ToString("F0", System.Globalization.CultureInfo.InvariantCulture),
            FillColor = Colors.C0,
        })];
        BarPlot plotted = plot.Add.Bars(bars);
        plotted.Horizontal = true;
        plot.Axes.Left.TickGenerator = new NumericManual([.. rows.Select((row, i) => new Tick(i, row.Change))]);
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.HideLegend();
        plot.XLabel("time, min");
        plot.Axes.SetLimitsX(0, rows.Max(row => row.Minutes) * 1.1);
    }
}
