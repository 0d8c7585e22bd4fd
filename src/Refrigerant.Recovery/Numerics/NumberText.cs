using System;
using System.Globalization;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Numbers as people read them: no exponent, no "-0", no more digits than asked for; invariant culture.</summary>
internal static class NumberText
{
    /// <summary>Decimals at most: a double holds no more.</summary>
    private const int MostDecimals = 15;

    /// <summary>A share of the last digit that counts as noise when a number is rounded to one side.</summary>
    private const double Noise = 1e-6;

    /// <summary>
    /// A number with so many significant digits, zeros at the end left out. Digits before the point are never given up: 1234.5 with three
    /// is "1235", not "1230".
    /// </summary>
    public static string Significant(double value, int digits, RoundingMode mode = RoundingMode.Nearest)
    {
        double magnitude = Math.Abs(value);
        int leading = magnitude > 0 ? (int)Math.Floor(Math.Log10(magnitude)) : 0;
        return Fixed(value, digits - 1 - leading, mode);
    }

    /// <summary>A number with so many decimals at most, zeros at the end left out.</summary>
    public static string Fixed(double value, int decimals, RoundingMode mode = RoundingMode.Nearest)
    {
        int places = Math.Min(Math.Max(decimals, 0), MostDecimals);
        double rounded = Round(value, places, mode);
        string text = rounded.ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        text = places > 0 ? text.TrimEnd('0').TrimEnd('.') : text;
        return text == "-0" ? "0" : text;
    }

    /// <summary>Rounds to so many decimals, to one side where asked.</summary>
    public static double Round(double value, int decimals, RoundingMode mode)
    {
        double scale = Math.Pow(10, decimals);
        return Require.Defined(mode, "rounding") switch
        {
            RoundingMode.Down => Math.Floor((value * scale) + Noise) / scale,
            RoundingMode.Up => Math.Ceiling((value * scale) - Noise) / scale,
            _ => Math.Round(value, decimals, MidpointRounding.AwayFromZero),
        };
    }
}
