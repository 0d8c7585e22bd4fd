using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>The state of a pure fluid at a pressure and an enthalpy or entropy: both rise with temperature along an isobar.</summary>
internal static class IsobarSolver
{
    private const int MaximumSteps = 100;

    /// <summary>Relative temperature step after which the next one is below rounding (quadratic convergence).</summary>
    private const double Tolerance = 1e-10;

    /// <summary>Finds the state; false where its temperature would lie outside the equation's range.</summary>
    /// <param name="engine">The fluid.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="target">Enthalpy in J/kg, or entropy in J/(kg·K).</param>
    /// <param name="isEntropy">Whether the target is an entropy.</param>
    /// <param name="state">The state.</param>
    /// <exception cref="ConvergenceException">The iteration did not end.</exception>
    public static bool TryFind(PureEngine engine, double pressure, double target, bool isEntropy, out StatePoint state)
    {
        double lowest = engine.Equation.Data.MinimumTemperature;
        double highest = engine.Equation.Data.MaximumTemperature;
        if (pressure > engine.MaximumSaturationPressure)
        {
            double guess = Math.Min(engine.Curves.CriticalTemperature, 0.5 * (lowest + highest));
            return TrySolve(engine, Phase.Undefined, pressure, target, isEntropy, lowest, highest, guess, out state);
        }

        if (pressure < engine.MinimumSaturationPressure)
        {
            return TrySolve(engine, Phase.Vapor, pressure, target, isEntropy, lowest, highest, lowest, out state);
        }

        SaturationValues s = engine.Curves.AtPressure(pressure);
        double liquid = isEntropy ? s.LiquidEntropy : s.LiquidEnthalpy;
        double vapor = isEntropy ? s.VaporEntropy : s.VaporEnthalpy;
        if (target < liquid)
        {
            return TrySolve(engine, Phase.Liquid, pressure, target, isEntropy, lowest, s.Temperature, s.Temperature, out state);
        }

        if (target > vapor)
        {
            return TrySolve(engine, Phase.Vapor, pressure, target, isEntropy, s.Temperature, highest, s.Temperature, out state);
        }

        double quality = (target - liquid) / (vapor - liquid);
        state = new StatePoint(
            Phase.TwoPhase,
            s.Temperature,
            pressure,
            1 / ((1 / s.LiquidDensity) + (quality * ((1 / s.VaporDensity) - (1 / s.LiquidDensity)))),
            s.LiquidEnthalpy + (quality * (s.VaporEnthalpy - s.LiquidEnthalpy)),
            s.LiquidEntropy + (quality * (s.VaporEntropy - s.LiquidEntropy)),
            quality);
        return true;
    }

    /// <summary>Enthalpy or entropy at an end of the temperature range, for the message of a range error.</summary>
    public static double ValueAt(PureEngine engine, double temperature, double pressure, bool isEntropy)
    {
        StatePoint state = engine.StateAt(temperature, pressure);
        return isEntropy ? state.Entropy : state.Enthalpy;
    }

    private static bool TrySolve(
        PureEngine engine,
        Phase branch,
        double pressure,
        double target,
        bool isEntropy,
        double lowest,
        double highest,
        double temperature,
        out StatePoint state)
    {
        var bracket = new RisingBracket(lowest, highest);
        for (int step = 0; step < MaximumSteps; step++)
        {
            Phase phase = PhaseOn(engine, branch, temperature, pressure);
            state = engine.StateAt(phase, temperature, pressure);
            double heatCapacity = engine.Equation.Derivatives(temperature, state.Density).IsobaricHeatCapacity;
            double missing = target - (isEntropy ? state.Entropy : state.Enthalpy);
            double change = missing / (isEntropy ? heatCapacity / temperature : heatCapacity);
            if (Math.Abs(change) <= Tolerance * temperature || bracket.Width <= Tolerance * 1e-3)
            {
                temperature = bracket.Within(temperature + change);
                state = engine.StateAt(PhaseOn(engine, branch, temperature, pressure), temperature, pressure);
                return true;
            }

            if (bracket.IsBeyond(temperature, missing))
            {
                return false;
            }

            temperature = bracket.Next(temperature, missing, change, bisect: step > MaximumSteps / 4);
        }

        throw new ConvergenceException(
            $"{engine.Equation.Data.Designation}: no temperature found at {Require.Text(pressure)} Pa for "
            + (isEntropy ? $"an entropy of {Require.Text(target)} J/(kg·K)." : $"an enthalpy of {Require.Text(target)} J/kg."),
            MaximumSteps);
    }

    private static Phase PhaseOn(PureEngine engine, Phase branch, double temperature, double pressure) =>
        temperature > engine.Curves.CriticalTemperature ? Phase.Supercritical
        : branch == Phase.Undefined ? engine.PhaseAt(temperature, pressure)
        : branch;
}
