using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The content of a closed vessel of known volume and internal energy. At a fixed density the internal energy rises with temperature
/// throughout. First a temperature is found with liquid and vapor taken from the bubble and dew curves of the bulk, which is exact where one
/// phase begins or ends; from there Newton solves the two phases as they are.
/// </summary>
internal static class BlendVessel
{
    private const int MaximumSteps = 100;

    /// <summary>Relative temperature step at which the search has arrived.</summary>
    private const double Tolerance = 1e-10;

    /// <summary>Relative temperature step at which a start is good enough for Newton.</summary>
    private const double StartTolerance = 1e-4;

    private const double FirstTemperature = 0.8;

    /// <summary>Finds the content; false where its temperature would lie outside the range.</summary>
    public static bool TryFind(
        MixtureEngine engine, MixtureScratch scratch, PropertyRange range, double density, double energy, out VesselPoint vessel)
    {
        vessel = default;
        if (!TrySearch(engine, scratch, range, density, energy, exact: false, out double temperature, out bool isTwoPhase, out vessel))
        {
            return false;
        }

        if (!isTwoPhase)
        {
            return true;
        }

        PhaseSplit split = scratch.Split;
        if (temperature <= engine.Curves.MaximumTemperature)
        {
            double volume = engine.MolarMass / density;
            SplitStart.AtVolume(engine, scratch, temperature, volume);
            SplitOutcome outcome = split.Solve(SplitGoal.EnergyVolume, engine.Composition, energy * engine.MolarMass, volume);
            if (outcome == SplitOutcome.TwoPhase
                && split.Temperature >= range.MinimumTemperature
                && split.Temperature <= engine.Curves.MaximumTemperature
                && BlendStates.IsBetween(engine, split.Temperature, split.Pressure))
            {
                vessel = engine.TwoPhase(split);
                return true;
            }
        }

        return TrySearch(engine, scratch, range, density, energy, exact: true, out _, out _, out vessel);
    }

    /// <summary>Energy of the content at a temperature, J/kg.</summary>
    public static double Energy(MixtureEngine engine, MixtureScratch scratch, double temperature, double density) =>
        BlendStates.AtDensity(engine, scratch, temperature, density).Bulk.InternalEnergy;

    private static bool TrySearch(
        MixtureEngine engine,
        MixtureScratch scratch,
        PropertyRange range,
        double density,
        double energy,
        bool exact,
        out double temperature,
        out bool isTwoPhase,
        out VesselPoint vessel)
    {
        var bracket = new RisingBracket(range.MinimumTemperature, range.MaximumTemperature);
        temperature = bracket.Within(FirstTemperature * engine.Critical.Temperature);
        for (int step = 0; step < MaximumSteps; step++)
        {
            double value = Evaluate(engine, scratch, temperature, density, exact, out double slope, out isTwoPhase, out vessel);
            double missing = energy - value;
            double change = missing / slope;
            double tolerance = isTwoPhase && !exact ? StartTolerance : Tolerance;
            if (Math.Abs(change) <= tolerance * temperature || bracket.Width <= Tolerance * 1e-2)
            {
                return true;
            }

            if (bracket.IsBeyond(temperature, missing))
            {
                return false;
            }

            temperature = bracket.Next(temperature, missing, change, bisect: step > MaximumSteps / 4);
        }

        throw new ConvergenceException(
            $"No temperature found for {Require.Text(density)} kg/m³ and {Require.Text(energy)} J/kg.",
            MaximumSteps);
    }

    private static double Evaluate(
        MixtureEngine engine,
        MixtureScratch scratch,
        double temperature,
        double density,
        bool exact,
        out double slope,
        out bool isTwoPhase,
        out VesselPoint vessel)
    {
        double end = engine.Curves.MaximumTemperature;
        if (!exact && temperature <= end && TryLever(engine, temperature, density, out double energy))
        {
            // A one-sided difference that stays on the curves.
            double h = Math.Max(1e-3, 1e-5 * temperature);
            double other = temperature - h > engine.Curves.MinimumTemperature ? temperature - h : temperature + h;
            isTwoPhase = true;
            vessel = default;
            slope = TryLever(engine, other, density, out double next) ? (energy - next) / (temperature - other) : double.NaN;
            if (slope > 0)
            {
                return energy;
            }

            slope = 1000;
            return energy;
        }

        vessel = BlendStates.AtDensity(engine, scratch, temperature, density);
        isTwoPhase = vessel.Bulk.Phase == Phase.TwoPhase;
        slope = isTwoPhase
            ? Slope(engine, scratch, temperature, density, vessel.Bulk.InternalEnergy)
            : scratch.Bulk.HeatCapacity / engine.MolarMass;
        return vessel.Bulk.InternalEnergy;
    }

    private static double Slope(MixtureEngine engine, MixtureScratch scratch, double temperature, double density, double energy)
    {
        double h = 1e-4 * temperature;
        return (energy - BlendStates.AtDensity(engine, scratch, temperature - h, density).Bulk.InternalEnergy) / h;
    }

    private static bool TryLever(MixtureEngine engine, double temperature, double density, out double energy)
    {
        StatePoint bubble = engine.Curves.Bubble.At(temperature);
        StatePoint dew = engine.Curves.Dew.At(temperature);
        if (density >= bubble.Density || density <= dew.Density)
        {
            energy = double.NaN;
            return false;
        }

        double quality = ((1 / density) - (1 / bubble.Density)) / ((1 / dew.Density) - (1 / bubble.Density));
        energy = bubble.InternalEnergy + (quality * (dew.InternalEnergy - bubble.InternalEnergy));
        return true;
    }
}
