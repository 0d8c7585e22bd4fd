using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Equilibrium states of a bulk composition at a temperature and a pressure or a density: one phase, or two by a flash.</summary>
internal static class BlendStates
{
    private const int MaximumIterations = 80;

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
        if (outcome == SplitOutcome.TwoPhase || TryByVolume(engine, scratch, temperature, pressure, bubble, dew))
        {
            return engine.TwoPhase(scratch.Split);
        }

        // So near a boundary that one phase is lost in rounding.
        return Math.Abs(pressure - bubble.Pressure) < Math.Abs(pressure - dew.Pressure) ? Content(bubble) : Content(dew);
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
        if (scratch.Split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, volume) == SplitOutcome.TwoPhase)
        {
            return true;
        }

        // Start in the middle, where both phases are plentiful, and move the volume.
        PhaseSplit split = scratch.Split;
        SplitStart.AtFraction(engine, scratch, temperature, 0.5);
        double at = split.LiquidVolume + split.VaporVolume;
        if (split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, at) != SplitOutcome.TwoPhase)
        {
            return false;
        }

        double ratio = Math.Pow(volume / at, 0.25);
        for (int k = 0; k < MaximumIterations && at != volume; k++)
        {
            double next = Math.Abs(Math.Log(volume / at)) <= Math.Abs(Math.Log(ratio)) ? volume : at * ratio;
            split.VaporVolume += Math.Max(-0.9 * split.VaporVolume, next - at);
            if (split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, next) == SplitOutcome.TwoPhase)
            {
                at = next;
                continue;
            }

            ratio = Math.Sqrt(ratio);
            SplitStart.AtVolume(engine, scratch, temperature, at);
            if (split.Solve(SplitGoal.TemperatureVolume, engine.Composition, temperature, at) != SplitOutcome.TwoPhase)
            {
                return false;
            }
        }

        return at == volume;
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
