using System.Linq;
using Refrigerant.Recovery.Gauges;
using ScottPlot;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>What a vacuum gauge must show at each elevation for the same absolute pressure.</summary>
internal static class ElevationChart
{
    public static void Draw(Plot plot)
    {
        double[] meters = [.. Enumerable.Range(0, 61).Select(i => 50.0 * i)];
        foreach (double level in new[] { 15.0, 10.0, 4.0 })
        {
            Pressure required = Barometer.Standard.FromVacuum(Mercury.FromInches(level));
            double[] reading = [.. meters.Select(m => Mercury.ToInches(Barometer.AtElevation(Length.FromMeters(m)).Pressure - required))];
            var line = plot.Add.ScatterLine(meters, reading);
            line.LineWidth = 2;
            line.LegendText = level + " inHg at sea level";
        }

        plot.XLabel("elevation, m");
        plot.YLabel("gauge reading, inHg of vacuum");
        plot.ShowLegend();
    }
}
