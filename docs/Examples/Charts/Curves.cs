using System;
using System.Collections.Generic;
using System.Linq;
using ScottPlot;
using ScottPlot.Plottables;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Shorthands of the charts.</summary>
internal static class Curves
{
    /// <summary>Adds a line through points.</summary>
    public static Scatter Curve(this Plot plot, IEnumerable<double> xs, IEnumerable<double> ys, string label)
    {
        double[] x = [.. xs];
        double[] y = [.. ys];
        Scatter line = plot.Add.ScatterLine(x, y);
        line.LineWidth = 2;
        line.LegendText = label;
        return line;
    }

    /// <summary>Adds the line of a function.</summary>
    public static Scatter Curve(this Plot plot, IReadOnlyCollection<double> xs, Func<double, double> function, string label) =>
        plot.Curve(xs, xs.Select(function), label);

    /// <summary>Equally spaced values, both ends included.</summary>
    public static double[] Range(double from, double to, int intervals) =>
        [.. Enumerable.Range(0, intervals + 1).Select(i => from + ((to - from) * i / intervals))];
}
