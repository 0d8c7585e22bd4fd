using System;

namespace Refrigerant.Recovery.Fluids;

/// <summary>Second-order properties of a single-phase state, in plain SI doubles.</summary>
public readonly record struct StateDerivatives
{
    /// <summary>Creates the set; no check is made: the property model vouches for it.</summary>
    /// <param name="isochoricHeatCapacity">cv, J/(kg·K).</param>
    /// <param name="isobaricHeatCapacity">cp, J/(kg·K).</param>
    /// <param name="speedOfSound">Speed of sound, m/s.</param>
    /// <param name="pressureByDensity">(∂p/∂ρ) at constant temperature, Pa·m³/kg.</param>
    /// <param name="pressureByTemperature">(∂p/∂T) at constant density, Pa/K.</param>
    public StateDerivatives(
        double isochoricHeatCapacity,
        double isobaricHeatCapacity,
        double speedOfSound,
        double pressureByDensity,
        double pressureByTemperature)
    {
        IsochoricHeatCapacity = isochoricHeatCapacity;
        IsobaricHeatCapacity = isobaricHeatCapacity;
        SpeedOfSound = speedOfSound;
        PressureByDensity = pressureByDensity;
        PressureByTemperature = pressureByTemperature;
    }

    /// <summary>Specific isochoric heat capacity cv, J/(kg·K).</summary>
    public double IsochoricHeatCapacity { get; }

    /// <summary>Specific isobaric heat capacity cp, J/(kg·K).</summary>
    public double IsobaricHeatCapacity { get; }

    /// <summary>Speed of sound, m/s.</summary>
    public double SpeedOfSound { get; }

    /// <summary>(∂p/∂ρ) at constant temperature, Pa·m³/kg.</summary>
    public double PressureByDensity { get; }

    /// <summary>(∂p/∂T) at constant density, Pa/K.</summary>
    public double PressureByTemperature { get; }

    /// <summary>Heat capacities and speed of sound.</summary>
    public override string ToString() => FormattableString.Invariant($"cv {IsochoricHeatCapacity:G7} J/(kg·K), cp {IsobaricHeatCapacity:G7} J/(kg·K), {SpeedOfSound:G7} m/s");
}
