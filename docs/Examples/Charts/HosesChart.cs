using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Minutes of each stage with thin and wide hoses, with and without valve cores.</summary>
internal static class HosesChart
{
    public static void Draw(Plot plot)
    {
        (string Name, IReadOnlyList<double> Minutes)[] sets = [.. HosesAndCores.Minutes()];
        int stages = HosesAndCores.Stages.Count;
        for (int i = 0; i < sets.Length; i++)
        {
            Bar[] bars = [.. sets[i].Minutes.Select((minutes, stage) => new Bar
            {
                Position = (stage * (sets.Length + 1)) + i,
                Value = minutes,
                Label = minutes.ToString("F1", CultureInfo.InvariantCulture),
                FillColor = Colors.Category10[i],
                LineWidth = 0,
            })];
            BarPlot plotted = plot.Add.Bars(bars);
            plotted.LegendText = sets[i].Name;
        }

        double middle = (sets.Length - 1) / 2.0;
        plot.Axes.Bottom.TickGenerator = new NumericManual([.. Enumerable.Range(0, stages).Select(
            stage => new Tick((stage * (sets.Length + 1)) + middle, HosesAndCores.Stages[stage]))]);
        plot.Axes.Bottom.MajorTickStyle.Length = 0;
        plot.YLabel("minutes");
        plot.Axes.SetLimits(-1, stages * (sets.Length + 1), 0, sets.Max(set => set.Minutes.Max()) * 1.15);
        plot.ShowLegend(Alignment.UpperLeft);
    }
}
