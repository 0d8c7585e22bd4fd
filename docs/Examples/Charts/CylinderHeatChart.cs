using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using ScottPlot;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Pressure in a closed cylinder as it warms: filled to the limit, and overfilled.</summary>
internal static class CylinderHeatChart
{
    public static void Draw(Plot plot)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        Fluid fluid = Fluid.Get("R-32");
        Mass limit = CylinderFill.Limit(cylinder, fluid).MaximumFill;
        Mass byWater = Mass.FromPounds(0.8 * 47.6);
        Curve(plot, cylinder, fluid, limit, $"at the limit, {limit.Pounds:F1} lb");
        Curve(plot, cylinder, fluid, byWater, $"80 % of WC, {byWater.Pounds:F1} lb");
        Curve(plot, cylinder, fluid, Mass.FromPounds(0.9 * 47.6), $"90 % of WC, {0.9 * 47.6:F1} lb");

        plot.XLabel("temperature of the cylinder, °C");
        plot.YLabel("pressure, bar absolute");
        plot.Axes.SetLimits(10, 75, 0, 150);
        plot.ShowLegend(Alignment.UpperLeft);
    }

    private static void Curve(Plot plot, RecoveryCylinder cylinder, Fluid fluid, Mass mass, string label)
    {
        CylinderHeatCurve curve = CylinderFill.HeatCurve(
            cylinder, fluid, mass, Temperature.FromDegreesCelsius(10), Temperature.FromDegreesCelsius(75), 130);
        plot.Curve(curve.Points.Select(p => p.Temperature.DegreesCelsius), curve.Points.Select(p => p.Pressure.Bars), label);
    }
}
