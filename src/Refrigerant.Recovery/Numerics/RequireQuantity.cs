using UnitsNet;

namespace Refrigerant.Recovery.Numerics;

/// <summary>The same checks for quantities, in SI units; they return what they were given.</summary>
internal static partial class Require
{
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

    public static Ratio InRange(Ratio value, double minimum, double maximum, string parameter)
    {
        InRange(value.DecimalFractions, minimum, maximum, string.Empty, parameter);
        return value;
    }
}
