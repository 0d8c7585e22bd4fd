using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// Quantities in the unit in which they are held, which is that of their member in a document: so what is written and read back is the same number, and two of the
/// same value are equal whatever unit they were given in.
/// </summary>
internal static class Held
{
    private const int ReadDecimals = 9;

    public static Mass Kilograms(Mass value) => new(value.Kilograms, MassUnit.Kilogram);

    public static Mass? Kilograms(Mass? value) => value is Mass given ? Kilograms(given) : null;

    public static MolarMass? GramsPerMole(MolarMass? value) => value is MolarMass given ? new MolarMass(given.GramsPerMole, MolarMassUnit.GramPerMole) : null;

    public static MassFlow? KilogramsPerSecond(MassFlow? value) =>
        value is MassFlow given ? new MassFlow(given.KilogramsPerSecond, MassFlowUnit.KilogramPerSecond) : null;

    public static Volume Liters(Volume value) => new(value.Liters, VolumeUnit.Liter);

    public static Volume? Liters(Volume? value) => value is Volume given ? Liters(given) : null;

    public static Volume Milliliters(Volume value) => new(value.Milliliters, VolumeUnit.Milliliter);

    public static VolumeFlow LitersPerSecond(VolumeFlow value) => new(value.LitersPerSecond, VolumeFlowUnit.LiterPerSecond);

    public static Pressure Kilopascals(Pressure value) => new(value.Kilopascals, PressureUnit.Kilopascal);

    public static Pressure? Kilopascals(Pressure? value) => value is Pressure given ? Kilopascals(given) : null;

    public static Temperature Celsius(Temperature value) => new(value.DegreesCelsius, TemperatureUnit.DegreeCelsius);

    public static Temperature? Celsius(Temperature? value) => value is Temperature given ? Celsius(given) : null;

    /// <summary>What an instrument shows, to 1e-9 K: kelvins that were made of degrees carry the noise of the sum.</summary>
    public static Temperature? ReadCelsius(Temperature? value) =>
        value is Temperature given ? new Temperature(System.Math.Round(given.DegreesCelsius, ReadDecimals), TemperatureUnit.DegreeCelsius) : null;

    public static TemperatureDelta Kelvins(TemperatureDelta value) => new(value.Kelvins, TemperatureDeltaUnit.Kelvin);

    public static Duration Seconds(Duration value) => new(value.Seconds, DurationUnit.Second);

    public static Duration Minutes(Duration value) => new(value.Minutes, DurationUnit.Minute);

    public static Duration Hours(Duration value) => new(value.Hours, DurationUnit.Hour);

    public static Duration? Hours(Duration? value) => value is Duration given ? Hours(given) : null;

    public static Length Meters(Length value) => new(value.Meters, LengthUnit.Meter);

    public static Length Millimeters(Length value) => new(value.Millimeters, LengthUnit.Millimeter);

    public static Area SquareMeters(Area value) => new(value.SquareMeters, AreaUnit.SquareMeter);

    public static Power Watts(Power value) => Power.FromWatts((double)value.Watts);

    public static Ratio Fractions(Ratio value) => new(value.DecimalFractions, RatioUnit.DecimalFraction);

    public static Entropy JoulesPerKelvin(Entropy value) => new(value.JoulesPerKelvin, EntropyUnit.JoulePerKelvin);

    public static SpecificEntropy JoulesPerKilogramKelvin(SpecificEntropy value) =>
        new(value.JoulesPerKilogramKelvin, SpecificEntropyUnit.JoulePerKilogramKelvin);

    public static ThermalResistance SquareMeterKelvinsPerWatt(ThermalResistance value) =>
        new(value.SquareMeterKelvinsPerWatt, ThermalResistanceUnit.SquareMeterKelvinPerWatt);

    public static ThermalResistance? SquareMeterKelvinsPerWatt(ThermalResistance? value) =>
        value is ThermalResistance given ? SquareMeterKelvinsPerWatt(given) : null;

    /// <summary>The day without a time of day.</summary>
    public static System.DateTime? Day(System.DateTime? value) => value?.Date;
}
