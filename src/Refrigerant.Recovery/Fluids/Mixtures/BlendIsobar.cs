using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The state of a blend at a pressure and an enthalpy or entropy: both rise with temperature along an isobar, glide included.</summary>
internal static class BlendIsobar
{
    private const int MaximumSteps = 100;

    /// <summary>Relative temperature step at which the search has arrived.</summary>
    private const double Tolerance = 1e-11;

    /// <summary>How far a two-phase temperature may lie outside bubble and dew temperature, relative: the error of the curves.</summary>
    private const double GlideMargin = 1e-9;

    /// <summary>Finds the state; false where its temperature would lie outside the range.</summary>
    public static bool TryFind(
        MixtureEngine engine, MixtureScratch scratch, PropertyRange range, double pressure, double target, bool isEntropy, out StatePoint state)
    {
        double low = range.MinimumTemperature;
        double high = range.MaximumTemperature;
        BlendCurves curves = engine.Curves;
        double start = Math.Min(high, engine.Critical.Temperature);
        if (pressure >= curves.Bubble.MinimumPressure
            && pressure <= Math.Min(curves.Bubble.MaximumPressure, curves.Dew.MaximumPressure))
        {
            StatePoint bubble = curves.Bubble.At(curves.Bubble.TemperatureOf(pressure));
            StatePoint dew = curves.Dew.At(curves.Dew.TemperatureOf(pressure));
            double atBubble = isEntropy ? bubble.Entropy : bubble.Enthalpy;
            double atDew = isEntropy ? dew.Entropy : dew.Enthalpy;
            if (target > atBubble && target < atDew)
            {
                double share = (target - atBubble) / (atDew - atBubble);
                start = bubble.Temperature + (share * (dew.Temperature - bubble.Temperature));
                if (TryTwoPhase(engine, scratch, pressure, target, isEntropy, start, bubble.Temperature, dew.Temperature, out state))
                {
                    return true;
                }

                low = Math.Max(low, bubble.Temperature * (1 - GlideMargin));
                high = Math.Min(high, dew.Temperature * (1 + GlideMargin));
            }
            else if (target <= atBubble)
            {
                start = bubble.Temperature;
                high = Math.Min(high, start * (1 + GlideMargin));
            }
            else
            {
                start = dew.Temperature;
                low = Math.Max(low, start * (1 - GlideMargin));
            }
        }

        return TrySearch(engine, scratch, pressure, target, isEntropy, low, high, start, out state);
    }

    /// <summary>Enthalpy or entropy at a temperature and a pressure.</summary>
    public static double ValueAt(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure, bool isEntropy)
    {
        StatePoint state = BlendStates.AtPressure(engine, scratch, temperature, pressure).Bulk;
        return isEntropy ? state.Entropy : state.Enthalpy;
    }

    private static bool TryTwoPhase(
        MixtureEngine engine, MixtureScratch scratch, double pressure, double target, bool isEntropy, double temperature, double bubble, double dew, out StatePoint state)
    {
        SplitStart.AtPressure(engine, scratch, temperature, pressure);
        SplitGoal goal = isEntropy ? SplitGoal.EntropyPressure : SplitGoal.EnthalpyPressure;
        bool found = scratch.Split.Solve(goal, engine.Composition, target * engine.MolarMass, pressure) == SplitOutcome.TwoPhase
            && scratch.Split.Temperature >= bubble * (1 - GlideMargin)
            && scratch.Split.Temperature <= dew * (1 + GlideMargin);
        state = found ? engine.TwoPhase(scratch.Split).Bulk : default;
        return found;
    }

    private static bool TrySearch(
        MixtureEngine engine,
        MixtureScratch scratch,
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
            state = BlendStates.AtPressure(engine, scratch, temperature, pressure).Bulk;
            double missing = target - (isEntropy ? state.Entropy : state.Enthalpy);
            double slope = state.Phase == Phase.TwoPhase
                ? TwoPhaseSlope(engine, scratch, state, pressure, isEntropy)
                : SinglePhaseSlope(engine, scratch, temperature, isEntropy);
            double change = missing / slope;
            if (Math.Abs(change) <= Tolerance * temperature || bracket.Width <= Tolerance * 1e-2)
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
            $"No temperature found at {Require.Text(pressure)} Pa for "
            + (isEntropy ? $"an entropy of {Require.Text(target)} J/(kg·K)." : $"an enthalpy of {Require.Text(target)} J/kg."),
            MaximumSteps);
    }

    private static double SinglePhaseSlope(MixtureEngine engine, MixtureScratch scratch, double temperature, bool isEntropy)
    {
        MixturePhase phase = scratch.Bulk;
        double cp = (phase.HeatCapacity + (MixtureEquation.GasConstant * phase.ZByT * phase.ZByT / phase.Stiffness)) / engine.MolarMass;
        return isEntropy ? cp / temperature : cp;
    }

    private static double TwoPhaseSlope(MixtureEngine engine, MixtureScratch scratch, in StatePoint state, double pressure, bool isEntropy)
    {
        double h = 1e-5 * state.Temperature;
        StatePoint other = BlendStates.AtPressure(engine, scratch, state.Temperature - h, pressure).Bulk;
        return ((isEntropy ? state.Entropy : state.Enthalpy) - (isEntropy ? other.Entropy : other.Enthalpy)) / h;
    }
}
