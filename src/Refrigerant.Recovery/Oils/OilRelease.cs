using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Oils;

/// <summary>Refrigerant that comes out of oil, in two regimes; plain SI doubles. An estimate.</summary>
/// <remarks>
/// The dissolved mass follows its equilibrium m_eq(p, T), only outwards: ṁ = (m − m_eq)·((1 − b)/τ_d + b/τ_f). Where the oil's own equilibrium
/// pressure exceeds the gas's by a factor of 1.5 bubbles begin, at 2 it foams throughout (from memory): b rises smoothly from 0 to 1 between them,
/// as 6z⁵ − 15z⁴ + 10z³. τ_f is one to two minutes, τ_d = 4L²/(π²·D) that of diffusion out of a layer of depth L, hours (from memory; Fukuta et al.,
/// Int. J. Refrig. 28 (2005) 997, for the kinds of regimes).
/// </remarks>
internal sealed class OilRelease
{
    private const double BubblesFrom = 1.5;
    private const double FoamsFrom = 2;

    private readonly OilSolution _solution;
    private readonly double _mass;
    private readonly double _foaming;
    private readonly double _diffusion;

    /// <param name="model">The refrigerant.</param>
    /// <param name="oil">The oil.</param>
    /// <param name="temperature">Temperature whose saturated liquid carries the energy of what comes out, K.</param>
    public OilRelease(PropertyModel model, ApplianceOil oil, double temperature)
    {
        _solution = new OilSolution(model, oil);
        _mass = oil.Mass.Kilograms;
        _foaming = 1 / oil.FoamingTime.Seconds;
        _diffusion = 1 / oil.DiffusionTime.Seconds;
        SpecificEnergy = model.SaturationAtTemperature(
            Math.Min(model.Range.MaximumSaturationTemperature, Math.Max(model.Range.MinimumTemperature, temperature))).Bubble.InternalEnergy;
    }

    /// <summary>Flow out of the oil, kg/s.</summary>
    public double Release { get; private set; }

    /// <summary>Energy that it carries: that of saturated liquid at the starting temperature, J/kg.</summary>
    public double SpecificEnergy { get; }

    /// <summary>Pressure of the oil's own equilibrium, Pa.</summary>
    public double EquilibriumPressure { get; private set; }

    /// <summary>Share of the oil that foams, 0 to 1.</summary>
    public double FoamingShare { get; private set; }

    /// <summary>Evaluates a state: pressure of the gas over the oil, temperature of the oil, dissolved mass.</summary>
    public void Solve(double pressure, double temperature, double dissolved)
    {
        double saturation = _solution.SaturationPressure(temperature);
        double share = pressure / saturation;
        double equilibrium = share < 1 ? _mass * _solution.MassRatio(share) : double.PositiveInfinity;
        EquilibriumPressure = dissolved > 0 && _mass > 0 ? saturation * _solution.ShareAt(dissolved / _mass) : 0;
        double z = Math.Min(1, Math.Max(0, ((EquilibriumPressure / pressure) - BubblesFrom) / (FoamsFrom - BubblesFrom)));
        FoamingShare = z * z * z * (10 + (z * ((6 * z) - 15)));
        Release = dissolved > equilibrium ? (dissolved - equilibrium) * (_diffusion + (FoamingShare * (_foaming - _diffusion))) : 0;
    }
}
