using System.Globalization;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>A number that a form asks for: its name in the address, its label, what it measures and what it is at first, in SI.</summary>
public sealed record Field(string Name, string Label, Measure Measure, double Initial, string Hint = "")
{
    /// <summary>What the field shows at first.</summary>
    public string InitialText(bool metric) => Text(Initial, metric, "G4");

    /// <summary>A value in SI as text in the unit shown.</summary>
    public string Text(double si, bool metric, string format = "G6") => Measure.In(metric).FromSi(si).ToString(format, CultureInfo.InvariantCulture);

    /// <summary>The value in SI of what was typed, or null where it is no number.</summary>
    public double? Parse(string text, bool metric) =>
        double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? Measure.In(metric).ToSi(value)
            : null;
}
