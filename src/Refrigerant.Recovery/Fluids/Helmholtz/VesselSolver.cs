using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The content of a closed vessel of a pure fluid: one phase, or two on the saturation curves. At a fixed density the internal energy rises
/// with temperature throughout, so a given energy has one temperature, found by Newton's method within bounds.
/// </summary>
internal static class VesselSolver
{
    private const int MaximumSteps = 100;

    /// <summary>Relative temperature step after which the next one is below rounding (quadratic convergence).</summary>
    private const double Tolerance = 1e-10;

    /// <summary>Relative density excess up to which a liquid is saturated.</summary>
    private const double SaturatedDensity = 1e-12;

    /// <summary>Share of the critical temperature to start from.</summary>
    private const double FirstTemperature = 0.8;

    /// <summary>The content at a temperature.</summary>
    public static VesselPoint AtTemperature(PureEngine engine, double temperature, double density)
    {
        SaturationCurves curves = engine.Curves;
        if (temperature > curves.MaximumTemperature)
        {
            bool isDense = density >= engine.EndDensity;
            Phase phase = temperature > curves.CriticalTemperature ? Phase.Supercritical : isDense ? Phase.Liquid : Phase.Vapor;
            return Single(engine.Single(phase, temperature, density));
        }

        SaturationValues s = curves.AtTemperature(temperature);
        if (density >= s.LiquidDensity)
        {
            // The last digits of a cold liquid's density are more pressure than it has.
            if (density <= s.LiquidDensity * (1 + SaturatedDensity))
            {
                return Single(new StatePoint(
                    Phase.Liquid, temperature, s.Pressure, density, s.LiquidEnthalpy, s.LiquidEntropy, 0));
            }

            return Single(engine.Single(Phase.Liquid, temperature, density));
        }

        if (density <= s.VaporDensity)
        {
            return Single(engine.Single(Phase.Vapor, temperature, density));
        }

        double quality = Quality(s, density);
        StatePoint liquid = s.Liquid;
        StatePoint vapor = s.Vapor;
        var bulk = new StatePoint(
            Phase.TwoPhase,
            temperature,
            s.Pressure,
            density,
            liquid.Enthalpy + (quality * (vapor.Enthalpy - liquid.Enthalpy)),
            liquid.Entropy + (quality * (vapor.Entropy - liquid.Entropy)),
            quality);
        return new VesselPoint(bulk, liquid, vapor);
    }

    /// <summary>The temperature at which the content has an internal energy.</summary>
    /// <param name="engine">The fluid.</param>
    /// <param name="density">Mean density, kg/m³.</param>
    /// <param name="energy">Specific internal energy, J/kg.</param>
    /// <param name="temperature">K.</param>
    /// <returns>Whether the temperature lies in the equation's range.</returns>
    /// <exception cref="ConvergenceException">The iteration did not end.</exception>
    public static bool TryFindTemperature(PureEngine engine, double density, double energy, out double temperature)
    {
        double lowest = engine.Equation.Data.MinimumTemperature;
        double highest = engine.Equation.Data.MaximumTemperature;
        var bracket = new RisingBracket(lowest, highest);
        temperature = bracket.Within(FirstTemperature * engine.Curves.CriticalTemperature);
        for (int step = 0; step < MaximumSteps; step++)
        {
            Energy(engine, temperature, density, out double value, out double slope);
            double missing = energy - value;
            double change = missing / slope;
            if (Math.Abs(change) <= Tolerance * temperature)
            {
                temperature = bracket.Within(temperature + change);
                return true;
            }

            if (bracket.IsBeyond(temperature, missing))
            {
                return false;
            }

            temperature = bracket.Next(temperature, missing, change, bisect: step > MaximumSteps / 4);
            if (bracket.Width <= Tolerance * 1e-3)
            {
                return true;
            }
        }

        throw new ConvergenceException(
            $"{engine.Equation.Data.Designation}: no temperature found for {Require.Text(density)} kg/m³ and {Require.Text(energy)} J/kg.",
            MaximumSteps);
    }

    /// <summary>Internal energy of the content, J/kg, and its slope with temperature at constant density, J/(kg·K).</summary>
    public static void Energy(PureEngine engine, double temperature, double density, out double energy, out double slope)
    {
        if (temperature <= engine.Curves.MaximumTemperature)
        {
            SaturationValues s = engine.Curves.AtTemperature(temperature);
            if (density < s.LiquidDensity && density > s.VaporDensity)
            {
                SaturationValues d = engine.Curves.SlopesAt(temperature);
                TwoPhaseEnergy(s, d, density, out energy, out slope);
                return;
            }
        }

        IsochoricSlopes single = engine.Equation.Slopes(temperature, density);
        energy = single.InternalEnergy;
        slope = single.HeatCapacity;
    }

    private static void TwoPhaseEnergy(in SaturationValues s, in SaturationValues d, double density, out double energy, out double slope)
    {
        double liquidVolume = 1 / s.LiquidDensity;
        double vaporVolume = 1 / s.VaporDensity;
        double liquidVolumeSlope = -d.LiquidDensity * liquidVolume * liquidVolume;
        double vaporVolumeSlope = -d.VaporDensity * vaporVolume * vaporVolume;
        double liquid = s.LiquidEnthalpy - (s.Pressure * liquidVolume);
        double vapor = s.VaporEnthalpy - (s.Pressure * vaporVolume);
        double liquidSlope = d.LiquidEnthalpy - (d.Pressure * liquidVolume) - (s.Pressure * liquidVolumeSlope);
        double vaporSlope = d.VaporEnthalpy - (d.Pressure * vaporVolume) - (s.Pressure * vaporVolumeSlope);
        double volumes = vaporVolume - liquidVolume;
        double quality = ((1 / density) - liquidVolume) / volumes;
        double qualitySlope = -(liquidVolumeSlope + (quality * (vaporVolumeSlope - liquidVolumeSlope))) / volumes;
        energy = liquid + (quality * (vapor - liquid));
        slope = liquidSlope + (quality * (vaporSlope - liquidSlope)) + (qualitySlope * (vapor - liquid));
    }

    private static double Quality(in SaturationValues s, double density) =>
        ((1 / density) - (1 / s.LiquidDensity)) / ((1 / s.VaporDensity) - (1 / s.LiquidDensity));

    private static VesselPoint Single(in StatePoint point) =>
        point.Phase == Phase.Liquid ? new VesselPoint(point, point, default) : new VesselPoint(point, default, point);
}
