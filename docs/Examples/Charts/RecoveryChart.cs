using System;
using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Processes;
using ScottPlot;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>Refrigerant left in the appliance over time, with much heat, little heat and none.</summary>
internal static class RecoveryChart
{
    public static void Draw(Plot plot)
    {
        double longest = 0;
        foreach ((string label, double resistance) in new[]
        {
            ("200 W/K: fans on", 0.005),
            ("50 W/K: fans off", 0.02),
            ("no heat at all", 1e6),
        })
        {
            StageResult result = OneStage.WithHeat(resistance);
            longest = Math.Max(longest, result.Duration.Minutes);
            plot.Curve(
                result.Trajectory.Select(point => point.Time.Minutes),
                result.Trajectory.Select(point => point.ApplianceMass.Kilograms),
                FormattableString.Invariant($"{label}; {result.RemainingMass.Kilograms:F1} kg left at 10 inHg"));
        }

        plot.XLabel("time, min");
        plot.YLabel("refrigerant in the appliance, kg");
        plot.Axes.SetLimitsY(0, 19);
        plot.Axes.SetLimitsX(0, longest * 1.05);
        plot.ShowLegend(Alignment.UpperRight);
    }
}
