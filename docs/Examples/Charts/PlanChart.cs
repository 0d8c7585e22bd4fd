using System;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>The course of the example job.</summary>
internal static class PlanChart
{
    /// <summary>What is in the appliance.</summary>
    public static void DrawMass(Plot plot)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(ExampleJob.Create());
        Draw(plot, plan, point => point.ApplianceMass.Kilograms);
        plot.YLabel("refrigerant in the appliance, kg");
        plot.Axes.SetLimitsY(0, 31);
    }

    /// <summary>Its pressure, on a logarithmic scale, and the level required.</summary>
    public static void DrawPressure(Plot plot)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(ExampleJob.Create());
        Draw(plot, plan, point => Math.Log10(point.AppliancePressure.Kilopascals));
        double level = plan.Requirement.RequiredPressure.Kilopascals;
        plot.Add.HorizontalLine(Math.Log10(level), 1.5f, Colors.C3, LinePattern.Dashed).LegendText =
            FormattableString.Invariant($"level required: {level:F1} kPa absolute");
        double[] labelled = [50, 100, 200, 500, 1000];
        plot.Axes.Left.TickGenerator = new NumericManual([.. labelled.Select(
            pressure => new Tick(Math.Log10(pressure), pressure.ToString("F0", CultureInfo.InvariantCulture)))]);
        plot.YLabel("pressure in the appliance, kPa absolute");
        plot.Axes.SetLimitsY(Math.Log10(50), Math.Log10(1500));
    }

    private static void Draw(Plot plot, RecoveryPlan plan, Func<TrajectoryPoint, double> value)
    {
        StageKind[] kinds = [StageKind.LiquidRecovery, StageKind.VaporRecovery, StageKind.Hold];
        for (int i = 0; i < kinds.Length; i++)
        {
            string label = Name(kinds[i]);
            foreach (IGrouping<PlannedStage, PlanPoint> stage in plan.Course().Where(p => p.Stage.Kind == kinds[i]).GroupBy(p => p.Stage))
            {
                var line = plot.Curve(stage.Select(p => p.Time.Minutes), stage.Select(p => value(p.Point)), label);
                line.Color = Colors.Category10[i];
                label = string.Empty;
            }
        }

        plot.XLabel("time on site, min");
        plot.Axes.SetLimitsX(0, plan.TotalDuration.Minutes * 1.02);
        plot.ShowLegend(Alignment.UpperRight);
    }

    private static string Name(StageKind kind) => kind switch
    {
        StageKind.LiquidRecovery => "liquid recovery",
        StageKind.VaporRecovery => "vapor recovery",
        _ => "hold",
    };
}
