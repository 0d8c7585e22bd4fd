using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Findings;

/// <summary>Quantities as a technician reads them: in the units of the gauge and the scale, with the digits that matter; invariant culture.</summary>
/// <remarks>
/// What is asked to be rounded down or up is rounded so in the unit that is printed. An absolute pressure or a depth of vacuum below zero
/// throws <see cref="ArgumentOutOfRangeException"/>.
/// </remarks>
/// <example>
/// <code>
/// Mass charge = Mass.FromPounds(5.5);
/// DisplayUnits customary = DisplayUnits.UnitedStatesCustomary;
/// Console.WriteLine(QuantityText.Mass(charge, customary)); // 5 lb 8 oz
/// Console.WriteLine(QuantityText.Mass(charge, DisplayUnits.International)); // 2.49 kg
/// </code>
/// </example>
public static partial class QuantityText
{
    private const double KilogramsPerPound = 0.45359237;
    private const double OuncesPerPound = 16;

    /// <summary>From here, pounds with one decimal, as platform scales show; below, pounds and ounces. Our choice.</summary>
    private const double DecimalPounds = 20;

    /// <summary>Below this many pounds, tenths of an ounce. Our choice.</summary>
    private const double FinePounds = 4;

    /// <summary>Digits of a reading. Our choice: no gauge and no scale on site shows more that counts.</summary>
    private const int Digits = 3;

    private const double CubicMetersPerGallon = 3.785411784e-3;
    private const double CubicMetersPerFluidOunce = CubicMetersPerGallon / 128;
    private const double CubicMetersPerCubicFoot = 0.3048 * 0.3048 * 0.3048;
    private const double MetersPerInch = 0.0254;
    private const double MetersPerFoot = 0.3048;
    private const double WattsPerBtuPerHour = 1055.05585262 / 3600;

    /// <summary>A mass: "5 lb 8 oz", "22.5 lb", "5.3 oz"; "2.49 kg", "150 g".</summary>
    /// <param name="mass">Any finite mass.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Mass(Mass mass, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double kilograms = mass.Kilograms;
        return IsInternational(units)
            ? Metric(kilograms, rounding)
            : kilograms < 0 ? "-" + Pounds(-kilograms / KilogramsPerPound, Opposite(rounding)) : Pounds(kilograms / KilogramsPerPound, rounding);
    }

    /// <summary>A volume: "6.3 gal", "34 fl oz", "21 ft³"; "2.5 L", "350 mL", "1.2 m³".</summary>
    /// <param name="volume">Any finite volume.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Volume(Volume volume, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double cubicMeters = volume.CubicMeters;
        double size = Math.Abs(cubicMeters);
        if (IsInternational(units))
        {
            return size < 1e-3 ? Text(cubicMeters * 1e6, "mL", rounding)
                : size < 1 ? Text(cubicMeters * 1e3, "L", rounding)
                : Text(cubicMeters, "m³", rounding);
        }

        double gallons = size / CubicMetersPerGallon;
        return gallons < 0.5 ? Text(cubicMeters / CubicMetersPerFluidOunce, "fl oz", rounding)
            : gallons < 50 ? Text(cubicMeters / CubicMetersPerGallon, "gal", rounding)
            : Text(cubicMeters / CubicMetersPerCubicFoot, "ft³", rounding);
    }

    /// <summary>A length: "0.31 in", "5 ft", "5250 ft"; "8 mm", "1.5 m", "1600 m".</summary>
    /// <param name="length">Any finite length.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Length(Length length, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double meters = length.Meters;
        double size = Math.Abs(meters);
        return IsInternational(units)
            ? size < 1 ? Text(meters * 1e3, "mm", rounding) : Text(meters, "m", rounding)
            : size < 2 * MetersPerFoot ? Text(meters / MetersPerInch, "in", rounding) : Text(meters / MetersPerFoot, "ft", rounding);
    }

    /// <summary>A time, the same in both systems: "45 s", "3 min 12 s", "35 min", "1 h 18 min".</summary>
    /// <param name="duration">Any finite time.</param>
    public static string Duration(Duration duration)
    {
        double seconds = duration.Seconds;
        return seconds < 0 ? "-" + Clock(-seconds) : Clock(seconds);
    }

    /// <summary>Electric and shaft power, in watts in both systems as heaters and motors are marked: "1500 W", "12.5 kW".</summary>
    /// <param name="power">Any finite power.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 7.9e28 W either way.</exception>
    public static string Power(Power power) => Watts(Require.Watts(power, nameof(power)));

    private static string Watts(double watts)
    {
        return Math.Abs(watts) < 1e4 ? Text(watts, "W") : Text(watts / 1e3, "kW");
    }

    /// <summary>Heat that flows: "5120 Btu/h"; "1500 W", "12.5 kW".</summary>
    /// <param name="heat">Any finite flow of heat.</param>
    /// <param name="units">The units.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 7.9e28 W either way.</exception>
    public static string HeatFlow(Power heat, DisplayUnits units)
    {
        double watts = Require.Watts(heat, nameof(heat));
        return IsInternational(units) ? Watts(watts) : Text(watts / WattsPerBtuPerHour, "Btu/h");
    }

    /// <summary>A flow of mass: "0.99 lb/min", "1.3 oz/min"; "0.45 kg/min", "36 g/min".</summary>
    /// <param name="flow">Any finite flow.</param>
    /// <param name="units">The units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> is no member of its enumeration.</exception>
    public static string MassFlow(MassFlow flow, DisplayUnits units)
    {
        double perMinute = flow.KilogramsPerSecond * 60;
        bool small = Math.Abs(perMinute) < 0.1;
        return IsInternational(units)
            ? small ? Text(perMinute * 1e3, "g/min") : Text(perMinute, "kg/min")
            : small ? Text(perMinute / KilogramsPerPound * OuncesPerPound, "oz/min") : Text(perMinute / KilogramsPerPound, "lb/min");
    }

    /// <summary>A flow of volume: "1.06 cfm"; "0.5 L/s".</summary>
    /// <param name="flow">Any finite flow.</param>
    /// <param name="units">The units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> is no member of its enumeration.</exception>
    public static string VolumeFlow(VolumeFlow flow, DisplayUnits units)
    {
        double perSecond = flow.CubicMetersPerSecond;
        return IsInternational(units) ? Text(perSecond * 1e3, "L/s") : Text(perSecond * 60 / CubicMetersPerCubicFoot, "cfm");
    }

    /// <summary>A density or concentration: "66.2 lb/ft³"; "1060 kg/m³", "38 g/m³".</summary>
    /// <param name="density">Any finite density.</param>
    /// <param name="units">The units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> is no member of its enumeration.</exception>
    public static string Density(Density density, DisplayUnits units)
    {
        double kilograms = density.KilogramsPerCubicMeter;
        return !IsInternational(units) ? Text(kilograms / KilogramsPerPound * CubicMetersPerCubicFoot, "lb/ft³")
            : Math.Abs(kilograms) < 1 ? Text(kilograms * 1e3, "g/m³")
            : Text(kilograms, "kg/m³");
    }

    /// <summary>A share in percent: "80 %", "0.52 %".</summary>
    /// <param name="share">Any finite share.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Share(Ratio share, RoundingMode rounding = RoundingMode.Nearest) =>
        Text(share.DecimalFractions * 100, "%", rounding);

    private static string Metric(double kilograms, RoundingMode rounding) =>
        Math.Abs(kilograms) < 1 && kilograms != 0 ? Text(kilograms * 1e3, "g", rounding) : Text(kilograms, "kg", rounding);

    private static string Pounds(double pounds, RoundingMode rounding)
    {
        if (pounds == 0 || pounds >= DecimalPounds)
        {
            return NumberText.Fixed(pounds, pounds < 1000 ? 1 : 0, rounding) + " lb";
        }

        double ounces = pounds * OuncesPerPound;
        if (pounds < 1)
        {
            return (ounces < 1 ? NumberText.Significant(ounces, 2, rounding) : NumberText.Fixed(ounces, 1, rounding)) + " oz";
        }

        double rounded = NumberText.Round(ounces, pounds < FinePounds ? 1 : 0, rounding);
        double whole = Math.Floor(rounded / OuncesPerPound);
        double rest = rounded - (whole * OuncesPerPound);
        string text = NumberText.Fixed(whole, 0) + " lb";
        return rest > 0 ? text + " " + NumberText.Fixed(rest, 1) + " oz" : text;
    }

    private static string Clock(double seconds)
    {
        if (seconds < 59.5)
        {
            return (seconds < 9.95 ? NumberText.Fixed(seconds, 1) : NumberText.Fixed(seconds, 0)) + " s";
        }

        double whole = Math.Round(seconds, MidpointRounding.AwayFromZero);
        if (whole < 600)
        {
            return Two(whole, 60, "min", "s");
        }

        double minutes = Math.Round(seconds / 60, MidpointRounding.AwayFromZero);
        return minutes < 60 ? NumberText.Fixed(minutes, 0) + " min" : Two(minutes, 60, "h", "min");
    }

    private static string Two(double total, double per, string large, string small)
    {
        double whole = Math.Floor(total / per);
        double rest = total - (whole * per);
        string text = NumberText.Fixed(whole, 0) + " " + large;
        return rest > 0 ? text + " " + NumberText.Fixed(rest, 0) + " " + small : text;
    }

    private static bool IsInternational(DisplayUnits units) => Require.Defined(units, nameof(units)) == DisplayUnits.International;

    private static RoundingMode Opposite(RoundingMode rounding) => Require.Defined(rounding, nameof(rounding)) switch
    {
        RoundingMode.Down => RoundingMode.Up,
        RoundingMode.Up => RoundingMode.Down,
        _ => RoundingMode.Nearest,
    };

    private static string Text(double value, string unit, RoundingMode rounding = RoundingMode.Nearest) =>
        NumberText.Significant(value, Digits, rounding) + " " + unit;
}
