using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>
/// The port that property engines implement: thermodynamic properties of one fluid in plain SI doubles (K, Pa, kg/m³, J/kg, J/(kg·K)).
/// All pressures are absolute. Simulations use it inside; a control loop may too.
/// </summary>
/// <remarks>
/// Implementations are immutable and thread-safe. Input that is NaN, infinite or outside <see cref="Range"/> throws
/// <see cref="PropertyRangeException"/>; an iteration that fails throws <see cref="ConvergenceException"/>; no method
/// returns NaN or infinity: a <see cref="Fluid"/> of an engine that does throws an <see cref="InvalidOperationException"/> that names engine and call. Methods of the embedded engine allocate nothing after the first call for a fluid.
/// </remarks>
public abstract class PropertyModel
{
    /// <summary>The fluid's designation, such as "R-134a".</summary>
    public abstract string Designation { get; }

    /// <summary>Molar mass, kg/mol.</summary>
    public abstract double MolarMass { get; }

    /// <summary>Critical temperature, K (of a blend: of the bulk composition).</summary>
    public abstract double CriticalTemperature { get; }

    /// <summary>Critical pressure, Pa.</summary>
    public abstract double CriticalPressure { get; }

    /// <summary>Critical density, kg/m³.</summary>
    public abstract double CriticalDensity { get; }

    /// <summary>The range in which the model may be asked.</summary>
    public abstract PropertyRange Range { get; }

    /// <summary>The components of the bulk composition; one for a pure fluid.</summary>
    public abstract IReadOnlyList<FluidComponent> Composition { get; }

    /// <summary>Whether all parameters behind the model are published.</summary>
    public abstract ModelQuality Quality { get; }

    /// <summary>The published source of the equations.</summary>
    public abstract string Source { get; }

    /// <summary>Saturated liquid and vapor at a temperature.</summary>
    /// <param name="temperature">Temperature, K, from Range.MinimumTemperature to Range.MaximumSaturationTemperature.</param>
    /// <exception cref="PropertyRangeException">The temperature is outside the saturation curves.</exception>
    public abstract SaturationPoint SaturationAtTemperature(double temperature);

    /// <summary>Saturated liquid and vapor at an absolute pressure.</summary>
    /// <param name="pressure">Absolute pressure, Pa, within the pressures of the saturation curves.</param>
    /// <exception cref="PropertyRangeException">The pressure is outside the saturation curves.</exception>
    public abstract SaturationPoint SaturationAtPressure(double pressure);

    /// <summary>The stable state at a temperature and an absolute pressure. A blend between its dew and bubble pressure is two-phase.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="pressure">Absolute pressure, Pa, greater than 0.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>.</exception>
    public abstract StatePoint StateAt(double temperature, double pressure);

    /// <summary>The content of a closed vessel at a temperature: one phase, or two in equilibrium.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="density">Mean density (mass over internal volume), kg/m³, greater than 0.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>.</exception>
    public abstract VesselPoint VesselAtTemperature(double temperature, double density);

    /// <summary>The content of a closed vessel of known internal energy: one phase, or two in equilibrium.</summary>
    /// <param name="density">Mean density (mass over internal volume), kg/m³, greater than 0.</param>
    /// <param name="internalEnergy">Specific internal energy, J/kg.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>.</exception>
    public abstract VesselPoint VesselAtEnergy(double density, double internalEnergy);

    /// <summary>The state of a given enthalpy at an absolute pressure, two-phase included.</summary>
    /// <param name="pressure">Absolute pressure, Pa.</param>
    /// <param name="enthalpy">Specific enthalpy, J/kg.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>.</exception>
    public abstract StatePoint StateAtEnthalpy(double pressure, double enthalpy);

    /// <summary>The state of a given entropy at an absolute pressure, two-phase included.</summary>
    /// <param name="pressure">Absolute pressure, Pa.</param>
    /// <param name="entropy">Specific entropy, J/(kg·K).</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>.</exception>
    public abstract StatePoint StateAtEntropy(double pressure, double entropy);

    /// <summary>Heat capacities, speed of sound and pressure derivatives of a single-phase state.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="density">Density of a stable or saturated single phase, kg/m³.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/> or mechanically unstable.</exception>
    public abstract StateDerivatives DerivativesAt(double temperature, double density);

    /// <summary>Dynamic viscosity of saturated liquid and vapor at a temperature.</summary>
    /// <param name="temperature">Temperature, K, on the saturation curves.</param>
    /// <exception cref="PropertyRangeException">The temperature is outside the saturation curves.</exception>
    public abstract SaturationViscosity ViscosityAtSaturation(double temperature);

    /// <summary>Saturated liquid and vapor at a temperature, without an exception where there are none: for control loops.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="saturation">The states; default where there are none.</param>
    /// <returns>Whether the temperature is on the saturation curves.</returns>
    public virtual bool TrySaturationAtTemperature(double temperature, out SaturationPoint saturation)
    {
        try
        {
            saturation = SaturationAtTemperature(temperature);
            return true;
        }
        catch (Exception problem) when (IsNoState(problem))
        {
            saturation = default;
            return false;
        }
    }

    /// <summary>Saturated liquid and vapor at an absolute pressure, without an exception where there are none.</summary>
    /// <param name="pressure">Absolute pressure, Pa.</param>
    /// <param name="saturation">The states; default where there are none.</param>
    /// <returns>Whether the pressure is on the saturation curves.</returns>
    public virtual bool TrySaturationAtPressure(double pressure, out SaturationPoint saturation)
    {
        try
        {
            saturation = SaturationAtPressure(pressure);
            return true;
        }
        catch (Exception problem) when (IsNoState(problem))
        {
            saturation = default;
            return false;
        }
    }

    /// <summary>The stable state at a temperature and an absolute pressure, without an exception where there is none.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="pressure">Absolute pressure, Pa.</param>
    /// <param name="state">The state; default where there is none.</param>
    /// <returns>Whether the state is inside <see cref="Range"/> and was found.</returns>
    public virtual bool TryStateAt(double temperature, double pressure, out StatePoint state)
    {
        try
        {
            state = StateAt(temperature, pressure);
            return true;
        }
        catch (Exception problem) when (IsNoState(problem))
        {
            state = default;
            return false;
        }
    }

    /// <summary>The content of a closed vessel at a temperature, without an exception where there is none.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="density">Mean density, kg/m³.</param>
    /// <param name="vessel">The content; default where there is none.</param>
    /// <returns>Whether the state is inside <see cref="Range"/> and was found.</returns>
    public virtual bool TryVesselAtTemperature(double temperature, double density, out VesselPoint vessel)
    {
        try
        {
            vessel = VesselAtTemperature(temperature, density);
            return true;
        }
        catch (Exception problem) when (IsNoState(problem))
        {
            vessel = default;
            return false;
        }
    }

    /// <summary>The content of a closed vessel of known internal energy, without an exception where there is none.</summary>
    /// <param name="density">Mean density, kg/m³.</param>
    /// <param name="internalEnergy">Specific internal energy, J/kg.</param>
    /// <param name="vessel">The content; default where there is none.</param>
    /// <returns>Whether the state is inside <see cref="Range"/> and was found.</returns>
    public virtual bool TryVesselAtEnergy(double density, double internalEnergy, out VesselPoint vessel)
    {
        try
        {
            vessel = VesselAtEnergy(density, internalEnergy);
            return true;
        }
        catch (Exception problem) when (IsNoState(problem))
        {
            vessel = default;
            return false;
        }
    }

    private static bool IsNoState(Exception problem) => problem is PropertyRangeException or ConvergenceException;

    /// <summary>Vapor that is known to be one phase, with what follows it as it changes; in one evaluation where the model can.</summary>
    /// <param name="temperature">Temperature, K.</param>
    /// <param name="density">Density, kg/m³, at most that of saturated vapor.</param>
    /// <exception cref="PropertyRangeException">The state is outside <see cref="Range"/>, or no stable phase.</exception>
    internal virtual IsochoricSlopes VaporAt(double temperature, double density)
    {
        StatePoint bulk = VesselAtTemperature(temperature, density).Bulk;
        StateDerivatives slopes = DerivativesAt(temperature, density);
        return new IsochoricSlopes(bulk.Pressure, bulk.InternalEnergy, slopes.IsochoricHeatCapacity, slopes.PressureByTemperature);
    }
}
