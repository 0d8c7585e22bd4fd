using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Findings;

public sealed partial record FindingValue
{
    /// <summary>A name or a mark.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="text">How it is written.</param>
    /// <exception cref="System.ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Text(string name, string text) => new(name, FindingValueKind.Text, 0, text: text);

    /// <summary>A plain number.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The number, finite.</param>
    /// <param name="digits">Significant digits that are written, 1 to 15.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">A number outside its range.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Number(string name, double value, int digits = 3)
    {
        Require.InRange(digits, 1, 15, "digits", nameof(digits));
        return new FindingValue(
            name, FindingValueKind.Number, value, text: NumberText.Significant(Require.Finite(value, string.Empty, nameof(value)), digits));
    }

    /// <summary>A share, in percent for people.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="share">The share.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue Share(string name, Ratio share, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Share, share.DecimalFractions, rounding);

    /// <summary>A mass.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="mass">The mass.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue Mass(string name, Mass mass, RoundingMode rounding = RoundingMode.Nearest) => Kilograms(name, mass.Kilograms, rounding);

    /// <summary>An absolute pressure, zero or more.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="absolute">The pressure.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">Negative.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue AbsolutePressure(string name, Pressure absolute, RoundingMode rounding = RoundingMode.Nearest) =>
        Pascals(name, absolute.Pascals, rounding);

    /// <summary>A gauge reading; negative is vacuum.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="gauge">The pressure above the air at the place.</param>
    /// <param name="rounding">To which side it is written: down is a deeper vacuum.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue GaugePressure(string name, Pressure gauge, RoundingMode rounding = RoundingMode.Nearest) =>
        GaugePascals(name, gauge.Pascals, rounding);

    /// <summary>A depth of vacuum, zero or more.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="vacuum">How far below the atmosphere.</param>
    /// <param name="rounding">To which side it is written: up is a deeper vacuum.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">Negative.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Vacuum(string name, Pressure vacuum, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Vacuum, Require.NotNegative(vacuum.Pascals, "Pa of vacuum", nameof(vacuum)), rounding);

    /// <summary>A difference of pressures.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="difference">The difference.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue PressureDifference(string name, Pressure difference, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.PressureDifference, difference.Pascals, rounding);

    /// <summary>A rise of pressure with temperature.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="perKelvin">The rise for each kelvin.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue PressurePerTemperature(string name, Pressure perKelvin) =>
        new(name, FindingValueKind.PressurePerTemperature, perKelvin.Pascals);

    /// <summary>A temperature.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="temperature">The temperature.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue Temperature(string name, Temperature temperature, RoundingMode rounding = RoundingMode.Nearest) =>
        Kelvins(name, temperature.Kelvins, rounding);

    /// <summary>A difference of temperatures.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="difference">The difference.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue TemperatureDifference(string name, TemperatureDelta difference, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.TemperatureDifference, difference.Kelvins, rounding);

    /// <summary>A volume.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="volume">The volume.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue Volume(string name, Volume volume, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Volume, volume.CubicMeters, rounding);

    /// <summary>A length.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="length">The length.</param>
    /// <param name="rounding">To which side it is written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rounding"/> is no member of its enumeration.</exception>
    public static FindingValue Length(string name, Length length, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Length, length.Meters, rounding);

    /// <summary>A time.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="duration">The time.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Duration(string name, Duration duration) => Seconds(name, duration.Seconds);

    /// <summary>Electric or shaft power.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="power">The power.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 7.9e28 W either way.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Power(string name, Power power) => new(name, FindingValueKind.Power, Require.Watts(power, nameof(power)));

    /// <summary>A flow of heat.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="heat">The flow.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 7.9e28 W either way.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue HeatFlow(string name, Power heat) => new(name, FindingValueKind.HeatFlow, Require.Watts(heat, nameof(heat)));

    /// <summary>A flow of mass.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="flow">The flow.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue MassFlow(string name, MassFlow flow) => new(name, FindingValueKind.MassFlow, flow.KilogramsPerSecond);

    /// <summary>A flow of volume.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="flow">The flow.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue VolumeFlow(string name, VolumeFlow flow) => new(name, FindingValueKind.VolumeFlow, flow.CubicMetersPerSecond);

    /// <summary>A density or a concentration.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="density">The density.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    public static FindingValue Density(string name, Density density) => new(name, FindingValueKind.Density, density.KilogramsPerCubicMeter);

    internal static FindingValue Kilograms(string name, double kilograms, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Mass, kilograms, rounding);

    /// <summary>Absolute.</summary>
    internal static FindingValue Pascals(string name, double absolute, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.AbsolutePressure, Require.NotNegative(absolute, "Pa absolute", nameof(absolute)), rounding);

    internal static FindingValue GaugePascals(string name, double gauge, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.GaugePressure, gauge, rounding);

    internal static FindingValue Kelvins(string name, double kelvins, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Temperature, kelvins, rounding);

    internal static FindingValue Seconds(string name, double seconds) => new(name, FindingValueKind.Duration, seconds);

    internal static FindingValue Fraction(string name, double fraction, RoundingMode rounding = RoundingMode.Nearest) =>
        new(name, FindingValueKind.Share, fraction, rounding);
}
