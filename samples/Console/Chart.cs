using System;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Planning;
using ScottPlot;
using SkiaSharp;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>The course of a recovery as a picture: pressure, temperature and mass over time, as SVG and PNG.</summary>
internal static class Chart
{
    private const int Width = 1000;
    private const int Height = 900;

    private static readonly string[] SansSerif = ["DejaVu Sans", "Liberation Sans", "Noto Sans", "Arial", "Helvetica"];

    public static void Write(RecoveryPlan plan, string folder)
    {
        UseInstalledFont();
        Save(Draw(plan), folder, "recovery", Height);
    }

    /// <summary>The first font of the list that the machine has.</summary>
    public static void UseInstalledFont() => Fonts.Default = SansSerif.FirstOrDefault(SKFontManager.Default.FontFamilies.Contains) ?? Fonts.Default;

    /// <summary>Saves a chart as PNG and SVG, and says where.</summary>
    public static void Save(Multiplot chart, string folder, string name, int height)
    {
        Directory.CreateDirectory(folder);
        string png = Path.GetFullPath(Path.Combine(folder, name + ".png"));
        string svg = Path.ChangeExtension(png, ".svg");
        chart.SavePng(png, Width, height);
        using (FileStream stream = File.Create(svg))
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, height), stream))
        {
            chart.Render(canvas, new PixelRect(0, Width, height, 0));
        }

        Screen.Heading("The recovery as a picture");
        Screen.Say(png);
        Screen.Say(svg);
        if (SKFontManager.Default.FontFamilyCount == 0)
        {
            Screen.Say("This machine has no fonts, so the PNG has no labels; the SVG has them.");
        }
    }

    private static Multiplot Draw(RecoveryPlan plan)
    {
        PlanPoint[] course = [.. plan.Course()];
        PlanPoint[] connected = [.. course.Where(point => point.Stage.Kind != StageKind.Hold)];
        var chart = new Multiplot();
        chart.AddPlots(3);

        Plot pressure = chart.GetPlot(0);
        pressure.Title(FormattableString.Invariant($"{plan.Job.Appliance.Fluid.Designation}, {plan.Job.Appliance.Charge.Kilograms:F0} kg: {plan.TotalDuration.Minutes:F0} min on site"));
        Line(pressure, connected, point => point.Point.SuctionPressure.Kilopascals, "machine's inlet");
        Line(pressure, connected, point => point.Point.DischargePressure.Kilopascals, "machine's outlet");
        Line(pressure, course, point => point.Point.AppliancePressure.Kilopascals, "appliance");
        ScottPlot.Plottables.HorizontalLine level = pressure.Add.HorizontalLine(plan.Requirement.RequiredPressure.Kilopascals, 1, Colors.Red, LinePattern.Dashed);
        level.LegendText = "required level";
        pressure.YLabel("kPa absolute");

        Plot temperature = chart.GetPlot(1);
        Line(temperature, course, point => point.Point.ApplianceTemperature.DegreesCelsius, "refrigerant in the appliance");
        Line(temperature, course, point => point.Point.MetalTemperature.DegreesCelsius, "metal of the appliance");
        Line(temperature, connected, point => point.Point.CylinderTemperature.DegreesCelsius, "cylinder");
        temperature.Add.HorizontalLine(0, 1, Colors.SteelBlue, LinePattern.Dotted).LegendText = "water freezes";
        temperature.YLabel("°C");

        Plot mass = chart.GetPlot(2);
        Line(mass, course, point => point.Point.ApplianceMass.Kilograms, "in the appliance");
        Line(mass, course, point => point.Point.LiquidMass.Kilograms, "of that, liquid");
        mass.YLabel("kg");
        mass.XLabel("minutes since the start");

        foreach (Plot plot in new[] { pressure, temperature, mass })
        {
            foreach (PlannedStage stage in plan.Stages.Where(stage => stage.Start.Seconds > 0))
            {
                plot.Add.VerticalLine(stage.Start.Minutes, 1, Colors.Gray.WithAlpha(0.4));
            }

            plot.Axes.SetLimitsX(0, plan.TotalDuration.Minutes);
            plot.ShowLegend(Alignment.UpperRight);
        }

        return chart;
    }

    /// <summary>One line a stage, so that handling in between shows as a gap; one legend entry for all of them.</summary>
    private static void Line(Plot plot, PlanPoint[] course, Func<PlanPoint, double> value, string name)
    {
        Color color = plot.Add.Palette.GetColor(plot.GetPlottables().OfType<ScottPlot.Plottables.Scatter>().Select(line => line.LegendText).Where(text => text.Length > 0).Distinct().Count());
        bool first = true;
        foreach (IGrouping<PlannedStage, PlanPoint> stage in course.GroupBy(point => point.Stage))
        {
            ScottPlot.Plottables.Scatter line = plot.Add.ScatterLine(
                stage.Select(point => point.Time.Minutes).ToArray(), stage.Select(value).ToArray(), color);
            line.LineWidth = 2;
            line.LegendText = first ? name : string.Empty;
            first = false;
        }
    }
}
