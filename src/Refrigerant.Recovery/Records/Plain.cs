using System;
using System.Globalization;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Quantities of a result as plain numbers of a document. They are written with 12 significant digits: more than any instrument has, and
/// few enough that 21.5 kg stays 21.5 through the conversion of units.
/// </summary>
internal static class Plain
{
    private const string TwelveDigits = "G12";
    private const int CelsiusDecimals = 9;

    /// <summary>The number rounded; adding zero turns a negative zero into a plain one.</summary>
    public static double Number(double value) =>
        double.Parse(value.ToString(TwelveDigits, CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture) + 0.0;

    /// <summary>A number as JSON has it.</summary>
    public static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static double Kilograms(Mass value) => Number(value.Kilograms);

    public static double Kilopascals(Pressure value) => Number(value.Pascals / 1e3);

    public static double Celsius(Temperature value) => Number(Math.Round(value.Kelvins - 273.15, CelsiusDecimals));

    public static double Seconds(Duration value) => Number(value.Seconds);
}
