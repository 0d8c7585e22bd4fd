using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Quantities of a job and a log as plain numbers of a document and back, without loss: they are held in these units.</summary>
internal static class Exact
{
    /// <summary>Adding zero turns a negative zero into a plain one.</summary>
    public static double Number(double value) => value + 0.0;

    public static double Kilograms(Mass value) => Number(value.Kilograms);

    public static double Liters(Volume value) => Number(value.Liters);

    public static double Milliliters(Volume value) => Number(value.Milliliters);

    public static double Watts(Power value) => Number((double)value.Watts);

    public static double Kilopascals(Pressure value) => Number(value.Kilopascals);

    public static double Celsius(Temperature value) => Number(value.DegreesCelsius);

    public static double Seconds(Duration value) => Number(value.Seconds);

    public static double Minutes(Duration value) => Number(value.Minutes);

    public static double Hours(Duration value) => Number(value.Hours);

    public static double Millimeters(Length value) => Number(value.Millimeters);

    public static double Meters(Length value) => Number(value.Meters);

    public static double Resistance(ThermalResistance value) => Number(value.SquareMeterKelvinsPerWatt);

    public static Mass MassOf(double kilograms) => new(kilograms, MassUnit.Kilogram);

    public static Volume VolumeOf(double liters) => new(liters, VolumeUnit.Liter);

    public static Volume SmallVolumeOf(double milliliters) => new(milliliters, VolumeUnit.Milliliter);

    public static Pressure PressureOf(double kilopascals) => new(kilopascals, PressureUnit.Kilopascal);

    public static Temperature TemperatureOf(double celsius) => new(celsius, TemperatureUnit.DegreeCelsius);

    public static TemperatureDelta DifferenceOf(double kelvins) => new(kelvins, TemperatureDeltaUnit.Kelvin);

    public static Duration MinutesOf(double minutes) => new(minutes, DurationUnit.Minute);

    public static Duration HoursOf(double hours) => new(hours, DurationUnit.Hour);

    public static Length LengthOf(double meters) => new(meters, LengthUnit.Meter);

    public static Length BoreOf(double millimeters) => new(millimeters, LengthUnit.Millimeter);

    public static ThermalResistance ResistanceOf(double value) => new(value, ThermalResistanceUnit.SquareMeterKelvinPerWatt);
}
