using System;
using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Quantities as plain numbers of a document, and back. Numbers are written with 12 significant digits: more than any instrument has, and
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

    public static double Liters(Volume value) => Number(value.CubicMeters * 1e3);

    public static double Milliliters(Volume value) => Number(value.CubicMeters * 1e6);

    public static double Watts(Power value) => Number((double)value.Watts);

    public static double Kilopascals(Pressure value) => Number(value.Pascals / 1e3);

    public static double Celsius(Temperature value) => Number(Math.Round(value.Kelvins - 273.15, CelsiusDecimals));

    public static double Seconds(Duration value) => Number(value.Seconds);

    public static double Minutes(Duration value) => Number(value.Seconds / 60);

    public static double Hours(Duration value) => Number(value.Seconds / 3600);

    public static double Millimeters(Length value) => Number(value.Meters * 1e3);

    public static double Meters(Length value) => Number(value.Meters);

    public static double Resistance(ThermalResistance value) => Number(value.SquareMeterKelvinsPerWatt);

    public static Mass MassOf(double kilograms) => new(kilograms, MassUnit.Kilogram);

    public static Volume VolumeOf(double liters) => new(liters / 1e3, VolumeUnit.CubicMeter);

    public static Pressure PressureOf(double kilopascals) => new(kilopascals * 1e3, PressureUnit.Pascal);

    public static Temperature TemperatureOf(double celsius) => new(celsius + 273.15, TemperatureUnit.Kelvin);

    public static TemperatureDelta DifferenceOf(double kelvins) => new(kelvins, TemperatureDeltaUnit.Kelvin);

    public static Duration DurationOf(double minutes) => new(minutes * 60, DurationUnit.Second);

    public static Length LengthOf(double meters) => new(meters, LengthUnit.Meter);

    public static ThermalResistance ResistanceOf(double value) => new(value, ThermalResistanceUnit.SquareMeterKelvinPerWatt);
}
