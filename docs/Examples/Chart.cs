using System;
using System.IO;
using ScottPlot;
using SkiaSharp;

namespace Refrigerant.Recovery.Docs;

/// <summary>A picture that a page shows.</summary>
/// <param name="File">The file in docs/images.</param>
/// <param name="Draw">Draws it.</param>
internal sealed record Chart(string File, Action<Plot> Draw)
{
    private const int Width = 1120;
    private const int Height = 620;
    private const double Scale = 1.45;

    /// <summary>The picture's path.</summary>
    public string Path => System.IO.Path.Combine(Repository.Docs, "images", File);

    /// <summary>Draws the picture and writes it.</summary>
    public void Save()
    {
        using Plot plot = new() { ScaleFactor = Scale };
        plot.Font.Set("DejaVu Sans");
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Left.Label.Bold = false;
        plot.Legend.Alignment = Alignment.UpperRight;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Legend.OutlineColor = Colors.LightGray;
        Draw(plot);
        plot.Font.Set("DejaVu Sans");

        using SKBitmap bitmap = SKBitmap.Decode(plot.GetImageBytes(Width, Height));
        using SKPixmap pixels = bitmap.PeekPixels();
        using FileStream file = System.IO.File.Create(Path);
        pixels.Encode(file, new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, 9));
    }

    /// <summary>The name, for test reports.</summary>
    public override string ToString() => File;
}
