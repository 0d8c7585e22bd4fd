using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Equilibrium states of a bulk composition at a temperature and a pressure or a density: one phase, or two by a flash.</summary>
internal static class BlendStates
{
    private const int MaximumIterations = 80;

    /// <summary>How far a two-phase pressure may lie outside dew and bubble pressure, relative: the error of the curves.</summary>
    private const double BoundaryMargin = 1e-8;

    /// <summary>A volume whose logarithm is this near to that asked for is a start for Newton.</summary>
    private const double Near = 0.1;

    /// <summary>A state this near to a boundary, relative, for which no split is found is taken as saturated: of the other phase there is as good as nothing.</summary>
    private const double LastMargin = 1e-5;

    /// <summary>Relative width of a bracket at which a fallback by bisection ends.</summary>
    private const double Closed = 1e-13;

    /// <summary>The stable content at a temperature and a pressure.</summary>
    public static VesselPoint AtPressure(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure)
    {
        if (temperature > engine.Curves.MaximumTemperature)
        {
            return NearCritical.AtPressure(engine, scratch, temperature, pressure);
        }

        StatePoint bubble = engine.Curves.Bubble.At(temperature);
        if (pressure >= bubble.Pressure)
        {
            return Content(engine.Liquid(scratch, bubble, pressure));
        }

        StatePoint dew = engine.Curves.Dew.At(temperature);
        if (pressure <= dew.Pressure)
        {
            return Content(engine.Vapor(scratch, dew, pressure));
        }

        SplitStart.AtPressure(engine, scratch, temperature, pressure);
        SplitOutcome outcome = scratch.Split.Solve(SplitGoal.TemperaturePressure, engine.Composition, temperature, pressure);
        if (outcome == SplitOutcome.TwoPhase)
        {
            return engine.TwoPhase(scratch.Split);
        }

        // So near a boundary that the curves' own error, or rounding, decides.
        if (outcome == SplitOutcome.NoVapor && pressure > bubble.Pressure * (1 - BoundaryMargin))
        {
            return Content(bubble);
        }

        if (outcome == SplitOutcome.NoLiquid && pressure < dew.Pressure * (1 + BoundaryMargin))
        {
            return Content(dew);
        }

        return TryBySubstitution(engine, scratch, temperature, pressure)
            ? engine.TwoPhase(scratch.Split)
            : pressure > bubble.Pressure * (1 - LastMargin) ? Content(bubble)
            : pressure < dew.Pressure * (1 + LastMargin) ? Content(dew)
            : throw new ConvergenceException(
                $"No equilibrium of two phases found at {Require.Text(temperature)} K and {Require.Text(pressure)} Pa.",
                MaximumIterations);
    }

    /// <summary>The stable content at a temperature and a mean density, kg/m³.</summary>
    public static VesselPoint AtDensity(MixtureEngine engine, MixtureScratch scratch, double temperature, double density)
    {
        if (temperature > engine.Curves.MaximumTemperature)
        {
            return NearCritical.AtDensity(engine, scratch, temperature, density);
        }

        StatePoint bubble = engine.Curves.Bubble.At(temperature);
        if (density >= bubble.Density)
        {
            return Content(engine.Single(scratch, Phase.Liquid, temperature, density));
        }

        StatePoint dew = engine.Curves.Dew.At(temperature);
        if (density <= dew.Density)
        {
            return Content(engine.Single(scratch, Phase.Vapor, temperature, density));
        }

        double volume = engine.MolarMass / density;
        return TryVolume(engine, scratch, temperature, volume)
            ? engine.TwoPhase(scratch.Split)
            : density > bubble.Density * (1 - LastMargin) ? Content(bubble)
            : density < dew.Density * (1 + LastMargin) ? Content(dew)
            : throw new ConvergenceException(
                $"No equilibrium of two phases found at {Require.Text(temperature)} K and {Require.Text(density)} kg/m³.",
                MaximumIterations);
    }

    /// <summary>Solves two phases at a temperature on the curves and a molar volume between those of bubble and dew.</summary>
    public static bool TryVolume(MixtureEngine engine, MixtureScratch scratch, double temperature, double volume)
    {
        SplitStart.AtVolume(engine, scratch, temperature, volume);
        if (scratch.Split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, volume) == SplitOutcome.TwoPhase
            && IsBetween(engine, temperature, scratch.Split.Pressure))
        {
            return true;
        }

        return TryVolumeBySubstitution(engine, scratch, temperature, volume);
    }

    /// <summary>Whether a pressure lies between dew and bubble pressure, so that a two-phase solution is the physical one.</summary>
    public static bool IsBetween(MixtureEngine engine, double temperature, double pressure) =>
        pressure >= engine.Curves.Dew.PressureAt(temperature) * (1 - BoundaryMargin)
        && pressure <= engine.Curves.Bubble.PressureAt(temperature) * (1 + BoundaryMargin);

    /// <summary>One phase as the content of a vessel.</summary>
    public static VesselPoint Content(in StatePoint point) =>
        point.Phase == Phase.Liquid ? new VesselPoint(point, point, default) : new VesselPoint(point, default, point);

    private static bool TryBySubstitution(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure)
    {
        SplitStart.AtPressure(engine, scratch, temperature, pressure);
        return SubstitutionFlash.TrySolve(engine, scratch, temperature, pressure);
    }

    /// <summary>The pressure between dew and bubble point at which the volume is that asked for: it falls as the volume grows.</summary>
    private static bool TryVolumeBySubstitution(MixtureEngine engine, MixtureScratch scratch, double temperature, double volume)
    {
        PhaseSplit split = scratch.Split;
        double low = Math.Log(engine.Curves.Dew.PressureAt(temperature));
        double high = Math.Log(engine.Curves.Bubble.PressureAt(temperature));
        double atLow = Math.Log(engine.MolarMass / (engine.Curves.Dew.At(temperature).Density * volume));
        double atHigh = Math.Log(engine.MolarMass / (engine.Curves.Bubble.At(temperature).Density * volume));
        for (int k = 0; k < MaximumIterations && high - low > Closed; k++)
        {
            // Regula falsi, every other step a bisection.
            double middle = k % 2 == 0 ? low + ((high - low) * atLow / (atLow - atHigh)) : 0.5 * (low + high);
            if (!TryBySubstitution(engine, scratch, temperature, Math.Exp(middle)))
            {
                return false;
            }

            double excess = Math.Log((split.LiquidVolume + split.VaporVolume) / volume);
            if (Math.Abs(excess) < Near
                && split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, volume, oneLiquid: true) == SplitOutcome.TwoPhase
                && IsBetween(engine, temperature, split.Pressure))
            {
                return true;
            }

            if (excess > 0)
            {
                low = middle;
                atLow = excess;
            }
            else
            {
                high = middle;
                atHigh = excess;
            }
        }

        return false;
    }
}
