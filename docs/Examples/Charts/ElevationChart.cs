using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using ScottPlot;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>What the gauge must show at each elevation for the level that the law requires.</summary>
internal static class ElevationChart
{
    public static void Draw(Plot plot)
    {
        Fluid medium = Fluid.Get("R-134a");
        Reading(plot, EvacuationRequirement.For(medium, Mass.FromPounds(300)), "15 inHg by law (medium pressure, 200 lb and more)");
        Reading(plot, EvacuationRequirement.For(medium, Mass.FromPounds(20)), "10 inHg by law (medium pressure, below 200 lb)");
        Reading(plot, EvacuationRequirement.For(Fluid.Get("R-22"), Mass.FromPounds(20)), "0 inHg by law (high pressure, below 200 lb)");
        plot.Add.HorizontalLine(0, 1, Colors.Gray);
        plot.XLabel("elevation, m");
        plot.YLabel("gauge, inHg of vacuum (below 0: pressure)");
        plot.Axes.SetLimits(0, 3100, -12, 24);
        plot.ShowLegend(Alignment.UpperRight);
    }

    private static void Reading(Plot plot, EvacuationRequirement level, string label) => plot.Curve(
        Curves.Range(0, 3000, 60),
        meters => -Mercury.ToInches(level.GaugeReadingOn(Barometer.AtElevation(Length.FromMeters(meters)))),
        label);
}
