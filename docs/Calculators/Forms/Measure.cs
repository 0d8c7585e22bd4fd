using System;
using Refrigerant.Recovery.Gauges;
using UnitsNet;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>What a field measures: a unit of US customary use and one of the SI, with the way to the SI base unit and back.</summary>
public sealed record Measure(Measure.Unit Customary, Measure.Unit Metric)
{
    public static readonly Measure Temperature = new(
        new("°F", value => UnitsNet.Temperature.FromDegreesFahrenheit(value).Kelvins, si => UnitsNet.Temperature.FromKelvins(si).DegreesFahrenheit),
        new("°C", value => UnitsNet.Temperature.FromDegreesCelsius(value).Kelvins, si => UnitsNet.Temperature.FromKelvins(si).DegreesCelsius));

    public static readonly Measure TemperatureDifference = new(
        new("°F", value => TemperatureDelta.FromDegreesFahrenheit(value).Kelvins, si => TemperatureDelta.FromKelvins(si).DegreesFahrenheit),
        new("K", value => value, si => si));

    public static readonly Measure PressureDifference = new(
        new("psi", value => Pressure.FromPoundsForcePerSquareInch(value).Pascals, si => Pressure.FromPascals(si).PoundsForcePerSquareInch),
        new("kPa", value => Pressure.FromKilopascals(value).Pascals, si => Pressure.FromPascals(si).Kilopascals));

    public static readonly Measure GaugePressure = new(
        new("psig", value => Pressure.FromPoundsForcePerSquareInch(value).Pascals, si => Pressure.FromPascals(si).PoundsForcePerSquareInch),
        new("kPa gauge", value => Pressure.FromKilopascals(value).Pascals, si => Pressure.FromPascals(si).Kilopascals));

    public static readonly Measure Vacuum = new(
        new("inHg", value => Mercury.FromInches(value).Pascals, si => Mercury.ToInches(Pressure.FromPascals(si))),
        new("kPa", value => Pressure.FromKilopascals(value).Pascals, si => Pressure.FromPascals(si).Kilopascals));

    public static readonly Measure Mass = new(
        new("lb", value => UnitsNet.Mass.FromPounds(value).Kilograms, si => UnitsNet.Mass.FromKilograms(si).Pounds),
        new("kg", value => value, si => si));

    public static readonly Measure Volume = new(
        new("US gal", value => UnitsNet.Volume.FromUsGallons(value).CubicMeters, si => UnitsNet.Volume.FromCubicMeters(si).UsGallons),
        new("L", value => UnitsNet.Volume.FromLiters(value).CubicMeters, si => UnitsNet.Volume.FromCubicMeters(si).Liters));

    public static readonly Measure Flow = new(
        new("ft³/min", value => VolumeFlow.FromCubicFeetPerMinute(value).CubicMetersPerSecond, si => VolumeFlow.FromCubicMetersPerSecond(si).CubicFeetPerMinute),
        new("L/s", value => VolumeFlow.FromLitersPerSecond(value).CubicMetersPerSecond, si => VolumeFlow.FromCubicMetersPerSecond(si).LitersPerSecond));

    public static readonly Measure Length = new(
        new("ft", value => UnitsNet.Length.FromFeet(value).Meters, si => UnitsNet.Length.FromMeters(si).Feet),
        new("m", value => value, si => si));

    public static readonly Measure Bore = new(
        new("in", value => UnitsNet.Length.FromInches(value).Meters, si => UnitsNet.Length.FromMeters(si).Inches),
        new("mm", value => UnitsNet.Length.FromMillimeters(value).Meters, si => UnitsNet.Length.FromMeters(si).Millimeters));

    public Unit In(bool metric) => metric ? Metric : Customary;

    /// <summary>A unit as people write it, and its conversions.</summary>
    public sealed record Unit(string Symbol, Func<double, double> ToSi, Func<double, double> FromSi);
}
