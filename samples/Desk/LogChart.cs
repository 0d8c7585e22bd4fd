using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Samples.Console;
using ScottPlot;
using ScottPlot.Plottables;

namespace Refrigerant.Recovery.Samples.Desk;

/// <summary>A job as planned, as logged and as estimated while it ran, over the same clock.</summary>
internal static class LogChart
{
    private const int Height = 1000;

    public static void Write(RecoveryPlan plan, JobLog log, string folder)
    {
        Chart.UseInstalledFont();
        Multiplot chart = new();
        chart.AddPlots(3);
        PlanPoint[] planned = [.. plan.Course().Where(point => point.Stage.Kind is not StageKind.HoseSweep)];
        double start = planned[0].Time.Minutes;
        double air = plan.Job.Barometer.Pressure.Kilopascals;
        JobReading[] gauge = [.. log.Readings.Where(reading => reading.SuctionGaugePressure is not null)];
        JobReading[] scale = [.. log.Readings.Where(reading => reading.GrossWeight is not null)];
        double first = log.Readings[0].Time.Minutes;

        Plot pressure = chart.GetPlot(0);
        Add(pressure, planned.Select(point => point.Time.Minutes - start), planned.Select(point => point.Point.SuctionPressure.Kilopascals), "planned", Colors.SteelBlue);
        Add(pressure, gauge.Select(reading => reading.Time.Minutes - first), gauge.Select(reading => reading.SuctionGaugePressure!.Value.Kilopascals + air), "measured", Colors.DarkOrange);
        pressure.Add.HorizontalLine(plan.Requirement.RequiredPressure.Kilopascals, 1, Colors.Gray, LinePattern.Dotted).LegendText = "level";
        pressure.YLabel("kPa absolute at the inlet");

        Plot mass = chart.GetPlot(1);
        double charge = plan.Job.Appliance.Charge.Kilograms;
        Add(mass, planned.Select(point => point.Time.Minutes - start), planned.Select(point => charge - point.Point.ApplianceMass.Kilograms), "planned", Colors.SteelBlue);
        Add(mass, scale.Select(reading => reading.Time.Minutes - first), scale.Select(reading => (reading.GrossWeight!.Value - scale[0].GrossWeight!.Value).Kilograms), "measured", Colors.DarkOrange);
        mass.YLabel("kg recovered");

        Plot left = chart.GetPlot(2);
        Add(left, planned.Select(point => point.Time.Minutes - start), planned.Select(point => point.Point.ApplianceMass.Kilograms), "planned", Colors.SteelBlue);
        Estimated(left, plan.Job, log, first);
        left.YLabel("kg left in the appliance");
        left.XLabel("minutes since the first refrigerant left");
        foreach (Plot plot in new[] { pressure, mass, left })
        {
            plot.ShowLegend(Alignment.UpperRight);
        }

        Chart.Save(chart, folder, "log", Height);
    }

    /// <summary>What the monitor knew of what was left as the readings came: median, and the range that holds nine times out of ten.</summary>
    private static void Estimated(Plot plot, RecoveryJob job, JobLog log, double first)
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(job);
        List<double> minutes = [];
        List<MassRange> ranges = [];
        foreach (JobReading reading in log.Readings)
        {
            MassRange remaining = monitor.Update(reading).Remaining;
            minutes.Add(reading.Time.Minutes - first);
            ranges.Add(remaining);
        }

        FillY band = plot.Add.FillY([.. minutes], [.. ranges.Select(range => range.Low.Kilograms)], [.. ranges.Select(range => range.High.Kilograms)]);
        band.FillColor = Colors.SeaGreen.WithAlpha(0.25);
        band.LineWidth = 0;
        band.LegendText = "estimated, nine times out of ten";
        Add(plot, minutes, ranges.Select(range => range.Best.Kilograms), "estimated, median", Colors.SeaGreen);
    }

    private static void Add(Plot plot, IEnumerable<double> minutes, IEnumerable<double> values, string name, Color color)
    {
        Scatter line = plot.Add.ScatterLine(minutes.ToArray(), values.ToArray(), color);
        line.LineWidth = 2;
        line.LegendText = name;
    }
}
