using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Docs.Accuracy;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Every deviation from a reference table against the reduced temperature, on a logarithmic scale.</summary>
internal static class DeviationChart
{
    /// <summary>Smaller deviations are drawn here: the tables have 12 digits.</summary>
    private const double Floor = 1e-16;

    public static void Draw(Plot plot, IReadOnlyList<Deviation> deviations, params string[] properties)
    {
        foreach (string property in properties)
        {
            Deviation[] series = [.. deviations.Where(d => d.Property == property)];
            double[] x = [.. series.Select(d => d.ReducedTemperature)];
            double[] y = [.. series.Select(d => Math.Log10(Math.Max(d.Value, Floor)))];
            Markers markers = plot.Add.Markers(x, y, MarkerShape.FilledCircle, 2.5f);
            markers.LegendText = property;
        }

        plot.Axes.Left.TickGenerator = new NumericAutomatic
        {
            IntegerTicksOnly = true,
            LabelFormatter = exponent => "1e" + exponent.ToString("F0", System.Globalization.CultureInfo.InvariantCulture),
        };
        plot.XLabel("temperature over critical temperature");
        plot.YLabel("relative deviation");
        plot.ShowLegend(Alignment.UpperRight);
    }
}
