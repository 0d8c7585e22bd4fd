using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>The range in which a property model may be asked, in plain SI doubles.</summary>
public sealed record PropertyRange
{
    /// <summary>Creates the range.</summary>
    /// <param name="minimumTemperature">Lowest temperature of any state, K.</param>
    /// <param name="maximumTemperature">Highest temperature of any state, K.</param>
    /// <param name="maximumPressure">Highest absolute pressure of any state, Pa.</param>
    /// <param name="maximumSaturationTemperature">Upper end of the saturation curves, K: at or just below the critical point.</param>
    /// <param name="minimumSaturationPressure">Lowest absolute pressure at which saturation may be asked, Pa.</param>
    /// <param name="maximumSaturationPressure">Highest absolute pressure at which saturation may be asked, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value that is not finite or is negative, or an upper end below its lower one.</exception>
    public PropertyRange(
        double minimumTemperature,
        double maximumTemperature,
        double maximumPressure,
        double maximumSaturationTemperature,
        double minimumSaturationPressure,
        double maximumSaturationPressure)
    {
        MinimumTemperature = Require.NotNegative(minimumTemperature, "K", nameof(minimumTemperature));
        MaximumTemperature = AtLeast(maximumTemperature, minimumTemperature, "K", nameof(maximumTemperature));
        MaximumPressure = Require.Positive(maximumPressure, "Pa", nameof(maximumPressure));
        MaximumSaturationTemperature = AtLeast(maximumSaturationTemperature, minimumTemperature, "K", nameof(maximumSaturationTemperature));
        MinimumSaturationPressure = Require.NotNegative(minimumSaturationPressure, "Pa", nameof(minimumSaturationPressure));
        MaximumSaturationPressure = AtLeast(maximumSaturationPressure, minimumSaturationPressure, "Pa", nameof(maximumSaturationPressure));
    }

    /// <summary>Creates the range of an engine that does not tell its saturation pressures: they count as from 0 to the highest pressure of any state.</summary>
    /// <param name="minimumTemperature">Lowest temperature of any state, K.</param>
    /// <param name="maximumTemperature">Highest temperature of any state, K.</param>
    /// <param name="maximumPressure">Highest absolute pressure of any state, Pa.</param>
    /// <param name="maximumSaturationTemperature">Upper end of the saturation curves, K: at or just below the critical point.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value that is not finite or is negative, or an upper end below its lower one.</exception>
    public PropertyRange(double minimumTemperature, double maximumTemperature, double maximumPressure, double maximumSaturationTemperature)
        : this(minimumTemperature, maximumTemperature, maximumPressure, maximumSaturationTemperature, 0, maximumPressure)
    {
    }

    /// <summary>Lowest temperature of any state and of the saturation curves, K.</summary>
    public double MinimumTemperature { get; }

    /// <summary>Highest temperature of any state, K.</summary>
    public double MaximumTemperature { get; }

    /// <summary>Highest absolute pressure of any state, Pa.</summary>
    public double MaximumPressure { get; }

    /// <summary>Upper end of the saturation curves, K: just below the critical point of the equation itself, which may lie a few thousandths of a kelvin above the published critical temperature.</summary>
    public double MaximumSaturationTemperature { get; }

    /// <summary>Lowest absolute pressure at which saturation may be asked, Pa.</summary>
    public double MinimumSaturationPressure { get; }

    /// <summary>Highest absolute pressure at which saturation may be asked, Pa; of a blend where bubble and dew point still have one temperature each.</summary>
    public double MaximumSaturationPressure { get; }

    /// <summary>The range of temperature and pressure.</summary>
    public override string ToString() => FormattableString.Invariant($"{MinimumTemperature:G7} K to {MaximumTemperature:G7} K, up to {MaximumPressure:G7} Pa; saturation up to {MaximumSaturationTemperature:G7} K");

    private static double AtLeast(double value, double minimum, string unit, string parameter) => Require.InRange(value, minimum, double.MaxValue, unit, parameter);
}
