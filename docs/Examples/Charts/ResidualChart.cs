using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Residuals;
using ScottPlot;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Vapor left in each liter of an appliance against the vacuum, at 20 °C.</summary>
internal static class ResidualChart
{
    public static void Draw(Plot plot)
    {
        double[] inches = Curves.Range(0, 29, 58);
        foreach (string designation in new[] { "R-22", "R-134a", "R-32", "R-290" })
        {
            Fluid fluid = Fluid.Get(designation);
            plot.Curve(inches, vacuum => Left(fluid, vacuum), designation);
        }

        plot.XLabel("vacuum at sea level, inHg");
        plot.YLabel("vapor left, g for each liter of the appliance");
        plot.Axes.SetLimits(0, 30, 0, 4.9);
        plot.ShowLegend(Alignment.UpperRight);
    }

    private static double Left(Fluid fluid, double vacuum) => ResidualCharge.Estimate(
        fluid,
        Volume.FromLiters(1),
        Temperature.FromDegreesCelsius(20),
        Barometer.Standard.FromVacuum(Mercury.FromInches(vacuum))).Vapor.Grams;
}
