using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Equilibrium states of a bulk composition at a temperature and a pressure or a density: one phase, or two by a flash.</summary>
internal static class BlendStates
{
    private const int MaximumIterations = 80;

    /// <summary>Molar vapor fractions of other starts: next to the phase boundaries, where the curves are exact, and between.</summary>
    private static readonly double[] Fractions = [1e-4, 0.9999, 0.9, 0.5];

    /// <summary>The first step of a volume, as a ratio.</summary>
    private const double FirstRatio = 1.05;

    /// <summary>The step at which moving a volume is given up.</summary>
    private const double ShortestRatio = 1.0005;

    /// <summary>Steps of a volume before it is given up.</summary>
    private const int MostSteps = 400;

    /// <summary>How far a two-phase pressure may lie outside dew and bubble pressure, relative: the error of the curves.</summary>
    private const double BoundaryMargin = 1e-8;

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

        return TryByVolume(engine, scratch, temperature, pressure, bubble, dew)
            ? engine.TwoPhase(scratch.Split)
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
            : density > bubble.Density * (1 - BoundaryMargin) ? Content(bubble)
            : density < dew.Density * (1 + BoundaryMargin) ? Content(dew)
            : throw new ConvergenceException(
                $"No equilibrium of two phases found at {Require.Text(temperature)} K and {Require.Text(density)} kg/m³.",
                MostSteps);
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

        foreach (double fraction in Fractions)
        {
            if (TryFromFraction(engine, scratch, temperature, volume, fraction))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a pressure lies between dew and bubble pressure, so that a two-phase solution is the physical one.</summary>
    public static bool IsBetween(MixtureEngine engine, double temperature, double pressure) =>
        pressure >= engine.Curves.Dew.PressureAt(temperature) * (1 - BoundaryMargin)
        && pressure <= engine.Curves.Bubble.PressureAt(temperature) * (1 + BoundaryMargin);

    /// <summary>Starts at a vapor fraction and moves the volume from there.</summary>
    private static bool TryFromFraction(MixtureEngine engine, MixtureScratch scratch, double temperature, double volume, double fraction)
    {
        PhaseSplit split = scratch.Split;
        SplitStart.AtFraction(engine, scratch, temperature, fraction);
        double at = split.LiquidVolume + split.VaporVolume;
        double ratio = FirstRatio;
        bool isFirst = true;
        for (int k = 0; k < MostSteps && ratio > ShortestRatio; k++)
        {
            double next = isFirst ? at
                : Math.Abs(Math.Log(volume / at)) <= Math.Log(ratio) ? volume
                : volume > at ? at * ratio
                : at / ratio;
            split.Save();
            split.Stretch(next - at);
            if (split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, next) == SplitOutcome.TwoPhase
                && IsBetween(engine, temperature, split.Pressure))
            {
                at = next;
                isFirst = false;
                ratio *= Math.Sqrt(ratio);
                if (at == volume)
                {
                    return true;
                }

                continue;
            }

            if (isFirst)
            {
                return false;
            }

            split.Restore();
            ratio = Math.Sqrt(ratio);
        }

        return false;
    }

    /// <summary>One phase as the content of a vessel.</summary>
    public static VesselPoint Content(in StatePoint point) =>
        point.Phase == Phase.Liquid ? new VesselPoint(point, point, default) : new VesselPoint(point, default, point);

    private static bool TryByVolume(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure, in StatePoint bubble, in StatePoint dew)
    {
        // The pressure falls as the volume grows from the bubble to the dew point.
        double low = engine.MolarMass / bubble.Density;
        double high = engine.MolarMass / dew.Density;
        for (int k = 0; k < MaximumIterations; k++)
        {
            double middle = Math.Sqrt(low * high);
            if (!TryVolume(engine, scratch, temperature, middle))
            {
                return false;
            }

            if (scratch.Split.Pressure > pressure)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }

            if (high - low < Closed * high)
            {
                break;
            }
        }

        return true;
    }
}
