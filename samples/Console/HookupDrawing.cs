using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using SkiaSharp;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>What is connected to what in each stage, as SVG and PNG beside the course: one panel a kind of stage.</summary>
internal static class HookupDrawing
{
    private const int PanelWidth = 620;
    private const int PanelHeight = 470;
    private const int Columns = 2;
    private const float ListTop = 285;
    private const float LineHeight = 17;

    private static readonly string[] SansSerif = ["DejaVu Sans", "Liberation Sans", "Noto Sans", "Arial", "Helvetica"];

    private static readonly Dictionary<HookupPort, SKPoint> Ports = new()
    {
        [HookupPort.ApplianceVapor] = new(170, 95),
        [HookupPort.ApplianceSecondVapor] = new(170, 135),
        [HookupPort.ApplianceLiquid] = new(170, 225),
        [HookupPort.MachineInlet] = new(270, 110),
        [HookupPort.MachineOutlet] = new(390, 110),
        [HookupPort.MachineDrain] = new(330, 150),
        [HookupPort.CylinderVapor] = new(490, 140),
        [HookupPort.CylinderLiquid] = new(540, 140),
        [HookupPort.Air] = new(480, 75),
        [HookupPort.Nitrogen] = new(330, 62),
        [HookupPort.OilContainer] = new(330, 235),
        [HookupPort.OilMeasure] = new(330, 235),
    };

    public static void Write(RecoveryPlan plan, string folder)
    {
        Directory.CreateDirectory(folder);
        PlannedStage[] stages = [.. plan.Stages.GroupBy(stage => stage.Kind).Select(group => group.First())];
        int rows = (stages.Length + Columns - 1) / Columns;
        SKSizeI size = new(Columns * PanelWidth, rows * PanelHeight);
        string png = Path.GetFullPath(Path.Combine(folder, "hookups.png"));
        string svg = Path.ChangeExtension(png, ".svg");
        using (SKSurface surface = SKSurface.Create(new SKImageInfo(size.Width, size.Height)))
        {
            Draw(surface.Canvas, size, stages);
            using SKImage image = surface.Snapshot();
            using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
            using FileStream stream = File.Create(png);
            data.SaveTo(stream);
        }

        using (FileStream stream = File.Create(svg))
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, size.Width, size.Height), stream))
        {
            Draw(canvas, size, stages);
        }

        Screen.Say(png);
        Screen.Say(svg);
    }

    private static void Draw(SKCanvas canvas, SKSizeI size, PlannedStage[] stages)
    {
        using var white = new SKPaint { Color = SKColors.White };
        canvas.DrawRect(0, 0, size.Width, size.Height, white);
        string family = SansSerif.FirstOrDefault(SKFontManager.Default.FontFamilies.Contains) ?? string.Empty;
        using SKTypeface face = SKTypeface.FromFamilyName(family) ?? SKTypeface.Default;
        using var large = new SKFont(face, 18);
        using var small = new SKFont(face, 13);
        for (int i = 0; i < stages.Length; i++)
        {
            canvas.Save();
            canvas.Translate(i % Columns * PanelWidth, i / Columns * PanelHeight);
            Panel(canvas, stages[i], large, small);
            canvas.Restore();
        }
    }

    private static void Panel(SKCanvas canvas, PlannedStage stage, SKFont large, SKFont small)
    {
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        using var frame = new SKPaint { Color = SKColors.Gray, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 1.5f };
        canvas.DrawRect(8, 8, PanelWidth - 16, PanelHeight - 16, frame);
        canvas.DrawText(StageNames.Of(stage.Kind), 24, 36, large, ink);
        Box(canvas, new SKRect(40, 70, 170, 250), "appliance", small, ink, frame);
        Box(canvas, new SKRect(270, 75, 390, 150), "machine", small, ink, frame);
        Box(canvas, new SKRect(470, 140, 560, 260), stage.Cylinder ?? "cylinder", small, ink, frame);
        foreach (HookupLine line in stage.Hookup.Lines)
        {
            Line(canvas, line, small, ink);
        }

        float y = ListTop;
        foreach (string text in stage.Hookup.Settings.Select(setting => setting.ToString()).Concat(stage.Hookup.Watches.Select(watch => "watch " + watch.ToText(DisplayUnits.UnitedStatesCustomary))))
        {
            if (y > PanelHeight - 20)
            {
                break;
            }

            canvas.DrawText(Fit(text, small), 24, y, small, ink);
            y += LineHeight;
        }
    }

    private static string Fit(string text, SKFont font)
    {
        string shown = text;
        while (shown.Length > 8 && font.MeasureText(shown) > PanelWidth - 48)
        {
            shown = shown[..^5].TrimEnd() + "…";
        }

        return shown;
    }

    private static void Box(SKCanvas canvas, SKRect box, string name, SKFont font, SKPaint ink, SKPaint frame)
    {
        canvas.DrawRoundRect(box, 8, 8, frame);
        canvas.DrawText(name, box.MidX, box.MidY, SKTextAlign.Center, font, ink);
    }

    private static void Line(SKCanvas canvas, HookupLine line, SKFont font, SKPaint ink)
    {
        SKPoint from = Ports[line.From], to = Ports[line.To];
        bool liquid = line.From == HookupPort.ApplianceLiquid || line.To is HookupPort.CylinderLiquid or HookupPort.OilContainer || line.From == HookupPort.OilMeasure;
        using var stroke = new SKPaint
        {
            Color = liquid ? SKColors.SteelBlue : SKColors.DarkOrange,
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = liquid ? 4 : 2.5f,
        };
        float bend = Math.Abs(to.X - from.X) > 200 ? (liquid ? 60 : -45) : 0;
        SKPoint middle = new((from.X + to.X) / 2, ((from.Y + to.Y) / 2) + bend);
        using var path = new SKPath();
        path.MoveTo(from);
        path.QuadTo(middle, to);
        canvas.DrawPath(path, stroke);
        Arrow(canvas, middle, to, stroke.Color);
        foreach (HookupPort port in new[] { line.From, line.To })
        {
            string name = Name(port);
            SKPoint at = Ports[port];
            bool left = port is HookupPort.ApplianceVapor or HookupPort.ApplianceSecondVapor or HookupPort.ApplianceLiquid or HookupPort.MachineOutlet;
            canvas.DrawText(name, left ? at.X - 6 : at.X + 6, at.Y + (at.Y < 130 ? -7 : 18), left ? SKTextAlign.Right : SKTextAlign.Left, font, ink);
        }
    }

    private static void Arrow(SKCanvas canvas, SKPoint from, SKPoint to, SKColor color)
    {
        double angle = Math.Atan2(to.Y - from.Y, to.X - from.X);
        using var fill = new SKPaint { Color = color, IsAntialias = true };
        using var path = new SKPath();
        path.MoveTo(to);
        foreach (double side in new[] { -0.4, 0.4 })
        {
            path.LineTo(to.X - (float)(14 * Math.Cos(angle + side)), to.Y - (float)(14 * Math.Sin(angle + side)));
        }

        path.Close();
        canvas.DrawPath(path, fill);
    }

    private static string Name(HookupPort port) => port switch
    {
        HookupPort.ApplianceVapor or HookupPort.CylinderVapor => "vapor",
        HookupPort.ApplianceSecondVapor => "second vapor",
        HookupPort.ApplianceLiquid or HookupPort.CylinderLiquid => "liquid",
        HookupPort.MachineInlet => "inlet",
        HookupPort.MachineOutlet => "outlet",
        HookupPort.MachineDrain => "drain",
        HookupPort.Air => "air, never refrigerant",
        HookupPort.Nitrogen => "dry nitrogen",
        HookupPort.OilContainer => "vented container",
        _ => "measured oil",
    };
}
