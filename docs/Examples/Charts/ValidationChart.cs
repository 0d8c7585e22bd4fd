using System.Linq;
using Refrigerant.Recovery.Docs.Validation;
using ScottPlot;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>What others measured beside what is simulated.</summary>
internal static class ValidationChart
{
    /// <summary>What one pull leaves in a vehicle's air conditioner: bands and measurements.</summary>
    public static void DrawVehicle(Plot plot)
    {
        (string Name, (double Least, double Most) Band, double Measured)[] rows =
        [
            ("21 °C (fitted)", (VehicleRecovery.LeftWarm, VehicleRecovery.LeftWarm), VehicleRecovery.LeftWarm),
            ("10 °C", VehicleRecovery.PredictedCold(), VehicleRecovery.LeftCold),
            ("20 to 28 °C, any system", VehicleRecovery.AnySystem(), VehicleRecovery.LeftLater),
        ];
        for (int i = 0; i < rows.Length; i++)
        {
            var band = plot.Add.Line(i, 100 * rows[i].Band.Least, i, 100 * rows[i].Band.Most);
            band.LineWidth = 24;
            band.LineColor = Colors.C0.WithAlpha(0.5);
            band.LegendText = i == 0 ? "simulated" : string.Empty;
            var mark = plot.Add.Marker(i, 100 * rows[i].Measured, MarkerShape.FilledDiamond, 12, Colors.C1);
            mark.LegendText = i == 0 ? "measured" : string.Empty;
        }

        plot.Axes.Bottom.SetTicks([.. rows.Select((_, i) => (double)i)], [.. rows.Select(row => row.Name)]);
        plot.YLabel("left after one pull to 4 inHg, % of the charge");
        plot.Axes.SetLimits(-0.5, rows.Length - 0.5, 0, 50);
        plot.ShowLegend(Alignment.UpperLeft);
    }

    /// <summary>Solubility measured against that of the pair, and of Raoult's rule.</summary>
    public static void DrawOil(Plot plot)
    {
        double[] measured = [.. OilPairs.Points.Select(point => point.Fraction)];
        double[] pair = [.. OilPairs.Points.Select(point => OilPairs.OfPair(point.Refrigerant, point.Kind, point.Celsius, point.Kilopascals))];
        double[] raoult = [.. OilPairs.Points.Select(point => OilPairs.OfRaoult(point.Refrigerant, point.Celsius, point.Kilopascals))];
        plot.Add.Markers(measured, pair, MarkerShape.FilledCircle, 9).LegendText = "factor of the pair";
        plot.Add.Markers(measured, raoult, MarkerShape.OpenTriangleUp, 9).LegendText = "Raoult's rule";
        double[] ends = [0, 0.6];
        plot.Curve(ends, ends, "as measured");
        plot.Curve(ends, ends.Select(x => 1.15 * x), "15 % more");
        plot.Curve(ends, ends.Select(x => 0.85 * x), "15 % less");
        plot.XLabel("mole fraction of refrigerant in the oil, measured");
        plot.YLabel("the same, of the model");
        plot.Axes.SetLimits(0, 0.6, 0, 0.6);
        plot.ShowLegend(Alignment.UpperLeft);
    }
}
