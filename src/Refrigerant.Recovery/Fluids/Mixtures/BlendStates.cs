using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Equilibrium states of a bulk composition at a temperature and a pressure or a density: one phase, or two by a flash.</summary>
internal static class BlendStates
{
    private const int MaximumIterations = 80;

    /// <summary>Molar vapor fraction of a start next to the bubble point.</summary>
    private const double BubbleSide = 1e-4;

    /// <summary>The first step of a volume, as a ratio.</summary>
    private const double FirstRatio = 1.05;

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

        return TryByVolume(engine, scratch, temperature, pressure, bubble, dew) ? engine.TwoPhase(scratch.Split)
            : Math.Abs(pressure - bubble.Pressure) < Math.Abs(pressure - dew.Pressure) ? Content(bubble)
            : Content(dew);
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
            : density - dew.Density > bubble.Density - density ? Content(bubble) : Content(dew);
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

        return TryFromBoundary(engine, scratch, temperature, volume, BubbleSide) || TryFromBoundary(engine, scratch, temperature, volume, 1 - BubbleSide);
    }

    /// <summary>Whether a pressure lies between dew and bubble pressure, so that a two-phase solution is the physical one.</summary>
    public static bool IsBetween(MixtureEngine engine, double temperature, double pressure) =>
        pressure >= engine.Curves.Dew.PressureAt(temperature) * (1 - BoundaryMargin)
        && pressure <= engine.Curves.Bubble.PressureAt(temperature) * (1 + BoundaryMargin);

    /// <summary>Starts next to a phase boundary, where the curves are exact, and moves the volume from there.</summary>
    private static bool TryFromBoundary(MixtureEngine engine, MixtureScratch scratch, double temperature, double volume, double fraction)
    {
        PhaseSplit split = scratch.Split;
        SplitStart.AtFraction(engine, scratch, temperature, fraction);
        double at = split.LiquidVolume + split.VaporVolume;
        double ratio = FirstRatio;
        bool isFirst = true;
        for (int k = 0; k < MaximumIterations; k++)
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
                ratio *= ratio;
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
            ratio = Math.Pow(ratio, 0.25);
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
