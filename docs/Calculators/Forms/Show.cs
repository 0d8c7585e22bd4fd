using System;
using System.Globalization;
using Refrigerant.Recovery.Gauges;
using UnitsNet;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>Answers in the reader's units.</summary>
public sealed record Show(bool IsMetric)
{
    public string Mass(Mass mass) => IsMetric
        ? mass.Kilograms < 1 ? Text($"{mass.Grams:F1} g") : Text($"{mass.Kilograms:F2} kg")
        : mass.Pounds < 1 ? Text($"{mass.Ounces:F2} oz") : Text($"{mass.Pounds:F2} lb");

    public string Temperature(Temperature temperature) =>
        IsMetric ? Text($"{temperature.DegreesCelsius:F1} °C") : Text($"{temperature.DegreesFahrenheit:F1} °F");

    public string Absolute(Pressure pressure) =>
        IsMetric ? Text($"{pressure.Kilopascals:F1} kPa abs") : Text($"{pressure.PoundsForcePerSquareInch:F1} psia");

    /// <summary>What a gauge shows here: below the air a vacuum.</summary>
    public string OnGauge(Pressure absolute, Barometer air)
    {
        Pressure gauge = air.ToGauge(absolute);
        return gauge.Pascals >= 0
            ? IsMetric ? Text($"{gauge.Kilopascals:F1} kPa gauge") : Text($"{gauge.PoundsForcePerSquareInch:F1} psig")
            : IsMetric ? Text($"{air.ToVacuum(absolute).Kilopascals:F1} kPa vacuum") : Text($"{Mercury.ToInches(air.ToVacuum(absolute)):F1} inHg vacuum");
    }

    public static string Time(Duration duration) => TimeSpan.FromSeconds(Math.Round(duration.Seconds)).ToString(@"h\:mm\:ss", CultureInfo.InvariantCulture);

    public static string Percent(Ratio share) => Text($"{share.Percent:F1} %");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
