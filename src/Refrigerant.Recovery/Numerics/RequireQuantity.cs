using System;
using UnitsNet;

namespace Refrigerant.Recovery.Numerics;

/// <summary>The same checks for quantities, in SI units; they return what they were given.</summary>
internal static partial class Require
{
    /// <summary>Decimals of K that are compared,</summary>
    private const int Decimals = 9;

    /// <summary>and the share of s that is not.</summary>
    private const double LastDigits = 1e-14;

    public static Pressure Positive(Pressure value, string unit, string parameter)
    {
        Positive(value.Pascals, unit, parameter);
        return value;
    }

    /// <summary>Nothing, or what is greater than zero.</summary>
    public static Pressure? Positive(Pressure? value, string unit, string parameter) => value is Pressure given ? Positive(given, unit, parameter) : null;

    public static Pressure NotNegative(Pressure value, string unit, string parameter)
    {
        NotNegative(value.Pascals, unit, parameter);
        return value;
    }

    public static Pressure InRange(Pressure value, double minimum, double maximum, string parameter)
    {
        InRange(value.Pascals, minimum, maximum, "Pa", parameter);
        return value;
    }

    public static Temperature Positive(Temperature value, string parameter)
    {
        Positive(value.Kelvins, "K", parameter);
        return value;
    }

    public static TemperatureDelta NotNegative(TemperatureDelta value, string parameter)
    {
        NotNegative(value.Kelvins, "K", parameter);
        return value;
    }

    public static TemperatureDelta InRange(TemperatureDelta value, double minimum, double maximum, string parameter)
    {
        InRange(value.Kelvins, minimum, maximum, "K", parameter);
        return value;
    }

    public static Mass InRange(Mass value, double minimum, double maximum, string parameter)
    {
        InRange(value.Kilograms, minimum, maximum, "kg", parameter);
        return value;
    }

    /// <summary>W of a power, which is held in decimal numbers and may be more than those hold in watts.</summary>
    public static double Watts(Power value, string parameter)
    {
        try
        {
            return (double)value.Watts;
        }
        catch (OverflowException)
        {
            throw new ArgumentOutOfRangeException(
                parameter, FormattableString.Invariant($"{parameter} is {(double)value.Value:G7} {value.Unit}s; it must be from -7.9E+28 to 7.9E+28 W."));
        }
    }

    /// <summary>A temperature between two of K; one that is given in degrees is a sum whose last digits are rounded.</summary>
    public static void Kelvins(Temperature value, double minimum, double maximum, string parameter) =>
        InRange(Math.Round(value.Kelvins, Decimals), minimum, maximum, "K", parameter);

    /// <summary>A time between two of s; one that is given in minutes is a product whose last digits are rounded.</summary>
    public static void Seconds(Duration value, double minimum, double maximum, string parameter) =>
        InRange(Math.Abs(value.Seconds - maximum) <= LastDigits * maximum ? maximum : value.Seconds, minimum, maximum, "s", parameter);

    public static Ratio InRange(Ratio value, double minimum, double maximum, string parameter)
    {
        InRange(value.DecimalFractions, minimum, maximum, string.Empty, parameter);
        return value;
    }
}
