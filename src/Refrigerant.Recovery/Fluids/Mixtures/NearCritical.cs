using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// States at temperatures above the end of the curves. Up to the highest temperature of the dew curve there may still be two phases: they are sought from
/// those at the end of the curves.
/// </summary>
internal static class NearCritical
{
    /// <summary>Up to this share of the critical temperature an isotherm is searched for more than one root.</summary>
    private const double SearchShare = 1.25;

    /// <summary>Step of that search, in reducing densities.</summary>
    private const double SearchStep = 0.05;

    private const double Packed = 5;

    public static VesselPoint AtPressure(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure)
    {
        if (temperature < engine.Curves.TwoPhaseLimit && TryTwoPhase(engine, scratch, temperature, pressure, isPressure: true))
        {
            return engine.TwoPhase(scratch.Split);
        }

        MixturePhase phase = scratch.Bulk;
        phase.SetTemperature(temperature);
        double vapor = InnerRoot(phase, pressure, engine.Critical.Temperature);
        phase.SetDensity(vapor);
        if (temperature < SearchShare * engine.Critical.Temperature)
        {
            double gibbs = Gibbs(phase);
            double liquid = OuterRoot(phase, pressure);
            phase.SetDensity(liquid);
            if (Gibbs(phase) > gibbs)
            {
                phase.SetDensity(vapor);
            }
        }

        // A single phase whose volume would hold two is none: from those two to the pressure asked.
        double density = phase.Rho;
        if (temperature < engine.Curves.TwoPhaseLimit
            && TryTwoPhase(engine, scratch, temperature, 1 / density, isPressure: false)
            && scratch.Split.Solve(SplitGoal.TemperaturePressure, engine.Composition, temperature, pressure) == SplitOutcome.TwoPhase)
        {
            return engine.TwoPhase(scratch.Split);
        }

        return Content(engine.Point(phase, engine.NameAbove(temperature, density), pressure));
    }

    public static VesselPoint AtDensity(MixtureEngine engine, MixtureScratch scratch, double temperature, double density)
    {
        if (temperature < engine.Curves.TwoPhaseLimit
            && TryTwoPhase(engine, scratch, temperature, engine.MolarMass / density, isPressure: false))
        {
            return engine.TwoPhase(scratch.Split);
        }

        return Content(engine.Single(scratch, engine.NameAbove(temperature, density / engine.MolarMass), temperature, density));
    }

    private static VesselPoint Content(in StatePoint point) => BlendStates.Content(point);

    /// <summary>Two phases at the temperature, continued from the end of the curves.</summary>
    private static bool TryTwoPhase(MixtureEngine engine, MixtureScratch scratch, double temperature, double second, bool isPressure)
    {
        double end = engine.Curves.MaximumTemperature;
        PhaseSplit split = scratch.Split;
        StatePoint bubble = engine.Curves.Bubble.At(end);
        StatePoint dew = engine.Curves.Dew.At(end);
        if (isPressure)
        {
            double margin = 0.05 * (bubble.Pressure - dew.Pressure);
            SplitStart.AtPressure(engine, scratch, end, Math.Max(dew.Pressure + margin, Math.Min(bubble.Pressure - margin, second)));
        }
        else
        {
            double low = engine.MolarMass / bubble.Density;
            double high = engine.MolarMass / dew.Density;
            double margin = 0.05 * (high - low);
            SplitStart.AtVolume(engine, scratch, end, Math.Max(low + margin, Math.Min(high - margin, second)));
        }

        SplitGoal goal = isPressure ? SplitGoal.TemperaturePressure : SplitGoal.TemperatureVolume;
        return split.Solve(goal, engine.Composition, temperature, second) == SplitOutcome.TwoPhase;
    }

    /// <summary>Σ x_i ln f_i: Gibbs energy but for terms that two densities share.</summary>
    private static double Gibbs(MixturePhase phase)
    {
        double sum = Math.Log(phase.Rho);
        for (int i = 0; i < phase.X.Length; i++)
        {
            sum += phase.X[i] * phase.LogPhi[i];
        }

        return sum;
    }

    /// <summary>The least density at which the isotherm reaches a pressure.</summary>
    private static double InnerRoot(MixturePhase phase, double pressure, double criticalTemperature)
    {
        double ideal = pressure / (MixtureEquation.GasConstant * phase.T);
        double step = SearchStep * phase.ReducingDensity;
        bool search = phase.T < SearchShare * criticalTemperature;
        double low = 0;
        double high = search ? step : Math.Max(ideal, step);
        while (phase.PressureAt(high, out _) < pressure && high < Packed * phase.ReducingDensity)
        {
            low = high;
            high = search ? high + step : high * 1.2;
        }

        return DensityRoot.Between(phase, pressure, low, high, Math.Max(low, Math.Min(high, ideal)));
    }

    /// <summary>The greatest density at which the isotherm reaches a pressure.</summary>
    private static double OuterRoot(MixturePhase phase, double pressure)
    {
        double step = SearchStep * phase.ReducingDensity;
        double high = 3 * phase.ReducingDensity;
        while (phase.PressureAt(high, out _) < pressure && high < Packed * phase.ReducingDensity)
        {
            high += step;
        }

        double low = high;
        do
        {
            high = low;
            low -= step;
        }
        while (low > 0 && phase.PressureAt(low, out _) > pressure);

        return DensityRoot.Between(phase, pressure, Math.Max(0, low), high, high);
    }
}
