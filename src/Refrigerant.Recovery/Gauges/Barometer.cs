using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Gauges;

/// <summary>
/// The pressure of the surrounding air, which turns gauge and vacuum readings into absolute pressures and back. Immutable.
/// </summary>
/// <remarks>
/// A gauge shows the difference to the air around it: "15 inHg" of vacuum is 50.5 kPa absolute at sea level and 32.7 kPa at 1600 m.
/// Vacuum readings are positive below the barometer. For inches of mercury see <see cref="Mercury"/>.
/// </remarks>
public sealed class Barometer : IEquatable<Barometer>
{
    /// <summary>Lowest accepted reading, Pa. Our choice, to catch slips of the unit: below any inhabited place.</summary>
    private const double LowestReading = 10_000;

    /// <summary>Highest accepted reading, Pa. Our choice, to catch slips of the unit: deeper than any mine.</summary>
    private const double HighestReading = 200_000;

    private readonly double _pascals;

    private Barometer(double pascals, string description, double? elevation = null, double? kilopascals = null)
    {
        _pascals = pascals;
        Kilopascals = kilopascals ?? pascals / 1e3;
        ElevationMeters = elevation;
        Description = description;
    }

    /// <summary>The standard atmosphere, 101 325 Pa (U.S. Standard Atmosphere 1976).</summary>
    public static Barometer Standard { get; } = new(StandardAtmosphere.SeaLevelPressure, "standard atmosphere");

    /// <summary>Absolute pressure of the surrounding air.</summary>
    public Pressure Pressure => new(_pascals, PressureUnit.Pascal);

    /// <summary>Where the pressure comes from, such as "1600 m above sea level"; culture-invariant.</summary>
    public string Description { get; }

    /// <summary>The pressure as a document has it, kPa.</summary>
    internal double Kilopascals { get; }

    /// <summary>The elevation that the pressure was computed for, m; null where it was not.</summary>
    internal double? ElevationMeters { get; }

    /// <summary>The barometer that the U.S. Standard Atmosphere 1976 gives for an elevation.</summary>
    /// <param name="elevation">
    /// Elevation above sea level, from −430 m (the lowest land) to 11 km (the tropopause), taken as geopotential altitude: at 4000 m the
    /// difference to a geometric one moves the pressure by 0.03 %, the weather by up to 3 %.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range, or not a finite number.</exception>
    /// <example>
    /// <code>
    /// Barometer here = Barometer.AtElevation(Length.FromMeters(1600));
    /// Pressure absolute = here.FromVacuum(Mercury.FromInches(15));
    /// Console.WriteLine($"{absolute.Kilopascals:F1} kPa"); // 32.7 kPa
    /// </code>
    /// </example>
    public static Barometer AtElevation(Length elevation)
    {
        double meters = elevation.Meters;
        Require.InRange(meters, StandardAtmosphere.LowestLand, StandardAtmosphere.Tropopause, "m above sea level", nameof(elevation));
        return new Barometer(
            StandardAtmosphere.PressureAt(meters),
            $"standard atmosphere at {Require.Text(meters)} m above sea level",
            meters);
    }

    /// <summary>The barometer as read at the place.</summary>
    /// <param name="absolute">Absolute ("station") pressure, not reduced to sea level, from 10 to 200 kPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range, or not a finite number.</exception>
    public static Barometer Reading(Pressure absolute)
    {
        double pascals = absolute.Pascals;
        Require.InRange(pascals, LowestReading, HighestReading, "Pa absolute", nameof(absolute));
        return new Barometer(pascals, "barometer reading", kilopascals: absolute.Kilopascals);
    }

    /// <summary>Absolute pressure of a gauge reading; negative readings are vacuum.</summary>
    /// <param name="gauge">Gauge pressure, not below −(this barometer).</param>
    /// <exception cref="ArgumentOutOfRangeException">Below absolute zero pressure on this barometer, or not a finite number.</exception>
    public Pressure FromGauge(Pressure gauge) => FromGauge(gauge, nameof(gauge));

    /// <summary>The same of a reading that its caller knows by another name.</summary>
    internal Pressure FromGauge(Pressure gauge, string parameter)
    {
        double pascals = Require.Finite(gauge.Pascals, "Pa", parameter);
        if (pascals < -_pascals)
        {
            throw BelowZero(pascals, "Pa gauge; it must be " + Require.Text(-_pascals) + " Pa or more", parameter);
        }

        return new Pressure(_pascals + pascals, PressureUnit.Pascal);
    }

    /// <summary>Absolute pressure of a vacuum reading, which is positive below the barometer.</summary>
    /// <param name="vacuum">Vacuum, from 0 to this barometer.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, deeper than the barometer, or not a finite number.</exception>
    public Pressure FromVacuum(Pressure vacuum)
    {
        double pascals = Require.NotNegative(vacuum.Pascals, "Pa of vacuum", nameof(vacuum));
        if (pascals > _pascals)
        {
            throw BelowZero(pascals, "Pa of vacuum; it must be from 0 to " + Require.Text(_pascals) + " Pa", nameof(vacuum));
        }

        return new Pressure(_pascals - pascals, PressureUnit.Pascal);
    }

    /// <summary>Gauge reading of an absolute pressure; negative where it is a vacuum.</summary>
    /// <param name="absolute">Absolute pressure, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not a finite number.</exception>
    public Pressure ToGauge(Pressure absolute) =>
        new(Require.NotNegative(absolute.Pascals, "Pa absolute", nameof(absolute)) - _pascals, PressureUnit.Pascal);

    /// <summary>Vacuum reading of an absolute pressure at or below the barometer.</summary>
    /// <param name="absolute">Absolute pressure, from 0 to this barometer. Above it there is no vacuum: see <see cref="ToGauge"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, above the barometer, or not a finite number.</exception>
    public Pressure ToVacuum(Pressure absolute)
    {
        double pascals = absolute.Pascals;
        if (!(pascals >= 0 && pascals <= _pascals))
        {
            throw new ArgumentOutOfRangeException(
                nameof(absolute), $"{nameof(absolute)} is {Require.Text(pascals)} Pa; it must be from 0 to {Require.Text(_pascals)} Pa, the pressure of the air ({Description}).");
        }

        return new Pressure(_pascals - pascals, PressureUnit.Pascal);
    }

    /// <summary>Whether both are of the same pressure and come from the same elevation or reading.</summary>
    /// <param name="other">The other barometer.</param>
    public bool Equals(Barometer? other) =>
        other is not null && other.Kilopascals.Equals(Kilopascals) && Nullable.Equals(other.ElevationMeters, ElevationMeters) && other.Description == Description;

    /// <summary>Whether two barometers are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(Barometer? left, Barometer? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two barometers differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(Barometer? left, Barometer? right) => !(left == right);

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as Barometer);

    /// <inheritdoc />
    public override int GetHashCode() => Kilopascals.GetHashCode();

    /// <summary>Description and pressure, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Description}, {_pascals / 1000:F3} kPa absolute");

    private ArgumentOutOfRangeException BelowZero(double value, string rest, string parameter) => new(
        parameter,
        $"{parameter} is {Require.Text(value)} {rest}: the barometer is {Require.Text(_pascals)} Pa absolute ({Description}), "
        + "and no pressure is below absolute zero.");
}
