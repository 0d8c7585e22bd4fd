using System;

namespace Refrigerant.Recovery.Fluids;

/// <summary>One equilibrium state in plain SI doubles, as <see cref="PropertyModel"/> returns it.</summary>
/// <remarks>
/// Enthalpy and entropy references: 200 kJ/kg and 1 kJ/(kg·K) for saturated liquid at 0 °C (IIR reference state); R-14: zero for
/// saturated liquid at 101 325 Pa; a blend: the mass-weighted sum of its components', each on its own reference.
/// </remarks>
public readonly record struct StatePoint
{
    /// <summary>Creates a state; no check is made: the property model vouches for it.</summary>
    /// <param name="phase">The phase.</param>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="pressure">Absolute pressure, Pa.</param>
    /// <param name="density">Density, kg/m³.</param>
    /// <param name="enthalpy">Specific enthalpy, J/kg.</param>
    /// <param name="entropy">Specific entropy, J/(kg·K).</param>
    /// <param name="vaporFraction">Vapor mass fraction (quality): 0 for liquid, 1 for vapor and supercritical fluid.</param>
    public StatePoint(Phase phase, double temperature, double pressure, double density, double enthalpy, double entropy, double vaporFraction)
    {
        Phase = phase;
        Temperature = temperature;
        Pressure = pressure;
        Density = density;
        Enthalpy = enthalpy;
        Entropy = entropy;
        VaporFraction = vaporFraction;
    }

    /// <summary>The phase.</summary>
    public Phase Phase { get; }

    /// <summary>Temperature, K.</summary>
    public double Temperature { get; }

    /// <summary>Absolute pressure, Pa.</summary>
    public double Pressure { get; }

    /// <summary>Density, kg/m³.</summary>
    public double Density { get; }

    /// <summary>Specific enthalpy, J/kg.</summary>
    public double Enthalpy { get; }

    /// <summary>Specific entropy, J/(kg·K).</summary>
    public double Entropy { get; }

    /// <summary>Vapor mass fraction (quality): 0 for liquid, 1 for vapor and supercritical fluid, between for two phases.</summary>
    public double VaporFraction { get; }

    /// <summary>The same state with the pressure it was asked by, which differs by rounding.</summary>
    internal StatePoint WithPressure(double pressure) => new(Phase, Temperature, pressure, Density, Enthalpy, Entropy, VaporFraction);

    /// <summary>Specific internal energy h − p/ρ, J/kg.</summary>
    public double InternalEnergy => Enthalpy - (Pressure / Density);

    /// <summary>Phase, temperature and pressure.</summary>
    public override string ToString() => FormattableString.Invariant($"{Phase} at {Temperature:G7} K, {Pressure:G7} Pa, {Density:G7} kg/m³");
}
