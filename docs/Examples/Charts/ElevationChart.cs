using Refrigerant.Recovery.Gauges;
using ScottPlot;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>What a vacuum gauge must show at each elevation for the same absolute pressure.</summary>
internal static class ElevationChart
{
    public static void Draw(Plot plot)
    {
        double[] meters = Curves.Range(0, 3000, 60);
        foreach (double level in new[] { 15.0, 10.0, 4.0, 0.0 })
        {
            Pressure required = Pressure.FromPascals((29.9 - level) * Mercury.FromInches(1).Pascals);
            plot.Curve(
                meters,
                m => Mercury.ToInches(Barometer.AtElevation(Length.FromMeters(m)).Pressure - required),
                $"required: {level:F0} inHg");
        }

        plot.Add.HorizontalLine(0, 1, Colors.Gray);
        plot.XLabel("elevation, m");
        plot.YLabel("what the gauge must show, inHg (below 0: a pressure)");
        plot.ShowLegend(Alignment.UpperRight);
    }
}
