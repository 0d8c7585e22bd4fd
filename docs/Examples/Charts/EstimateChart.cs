using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using ScottPlot;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>The range of what is left, against what was left.</summary>
internal static class EstimateChart
{
    private const int Every = 10;

    public static void DrawGood(Plot plot) => Draw(plot, DuringTheJob.Good);

    public static void DrawMissed(Plot plot) => Draw(plot, DuringTheJob.Missed);

    public static void DrawPool(Plot plot) => Draw(plot, DuringTheJob.Cold);

    public static void DrawFault(Plot plot) => Draw(plot, DuringTheJob.Kinked);

    private static void Draw(Plot plot, SimulatedJob job)
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(job.Told.Job(), job.Told.Instruments(), job.Told.Options());
        List<double> times = [];
        List<JobEstimate> estimates = [];
        List<double> truth = [];
        double? named = null;
        for (int i = 0; i < job.Log.Samples.Count; i++)
        {
            TruthSample sample = job.Log.Samples[i];
            JobEstimate estimate = monitor.Update(DuringTheJob.Reading(sample));
            named ??= estimate.Conditions.Contains(JobCondition.HoseBlocked) ? sample.Time / 60 : null;
            if (i % Every == 0)
            {
                times.Add(sample.Time / 60);
                truth.Add(sample.Left);
                estimates.Add(estimate);
            }
        }

        double[] low = [.. estimates.Select(e => e.Remaining.Low.Kilograms)];
        double[] high = [.. estimates.Select(e => e.Remaining.High.Kilograms)];
        var band = plot.Add.FillY([.. times], low, high);
        band.FillColor = Colors.C0.WithAlpha(0.25);
        band.LineWidth = 0;
        band.LegendText = "nine times out of ten between";
        plot.Curve(times, estimates.Select(e => e.Remaining.Best.Kilograms), "estimated").Color = Colors.C0;
        plot.Curve(times, truth, "true").Color = Colors.Black;
        if (named is double at)
        {
            plot.Add.VerticalLine(at, 1.5f, Colors.C3, LinePattern.Dashed).LegendText = FormattableString.Invariant($"hose named as blocked, {at:F1} min");
        }

        plot.XLabel("time, min");
        plot.YLabel("refrigerant in the appliance, kg");
        plot.Axes.SetLimits(0, times[^1] * 1.02, 0, high.Max() * 1.05);
        plot.ShowLegend(Alignment.UpperRight);
    }
}
