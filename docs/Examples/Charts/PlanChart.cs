using System.Linq;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Planning;
using ScottPlot;

namespace Refrigerant.Recovery.Docs.Charts;

/// <summary>The course of the example job: what is in the appliance and its pressure.</summary>
internal static class PlanChart
{
    public static void Draw(Plot plot)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(ExampleJob.Create());
        PlanPoint[] course = [.. plan.Course().Where(point => point.Stage.Kind is StageKind.PushPull or StageKind.VaporRecovery or StageKind.Hold)];
        double[] minutes = [.. course.Select(point => point.Time.Minutes)];
        plot.Curve(minutes, course.Select(point => point.Point.ApplianceMass.Kilograms), "in the appliance, kg");
        plot.Curve(minutes, course.Select(point => point.Point.AppliancePressure.Bars), "pressure in it, bar absolute");
        foreach (PlannedStage stage in plan.Stages)
        {
            plot.Add.VerticalLine(stage.Start.Minutes, 1, Colors.LightGray);
        }

        plot.XLabel("time on site, min");
        plot.YLabel("kg, or bar absolute");
        plot.Axes.SetLimits(0, plan.TotalDuration.Minutes * 1.02, 0, 32);
        plot.ShowLegend(Alignment.UpperRight);
    }
}
