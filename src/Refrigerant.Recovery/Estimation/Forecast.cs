using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Runs the reduced model on to a level.</summary>
internal static class Forecast
{
    /// <summary>Step as a share of the time in which the present flow would empty the appliance.</summary>
    private const double StepShare = 0.06;

    private const double ShortestStep = 1;
    private const double LongestStep = 30;

    /// <summary>Nothing flows that counts where the charge would take this long, s.</summary>
    private const double Stalled = 1e6;

    /// <summary>Time until the pressure in the appliance reaches a level with the machine running, s; the state is moved there.</summary>
    /// <param name="model">The model.</param>
    /// <param name="state">The state, moved to the end.</param>
    /// <param name="parameters">The parameters.</param>
    /// <param name="airTemperature">K.</param>
    /// <param name="level">Absolute pressure, Pa.</param>
    /// <param name="limit">The longest time looked ahead, s.</param>
    /// <param name="reached">Whether the level is reached within it.</param>
    public static double TimeTo(
        ReducedModel model, ref ReducedState state, in ReducedParameters parameters, double airTemperature, double level, double limit, out bool reached)
    {
        var inputs = new ReducedInputs(airTemperature, true);
        double time = 0;
        double previous = 0;
        double step = 0;
        while (true)
        {
            model.Evaluate(in state, in parameters, in inputs, out ReducedOutput now);
            if (now.Pressure <= level)
            {
                reached = true;
                return previous > now.Pressure && time > 0
                    ? Math.Max(0, time - (step * (level - now.Pressure) / (previous - now.Pressure)))
                    : time;
            }

            double empty = now.Flow > 0 ? now.Mass / now.Flow : double.PositiveInfinity;
            bool settled = Math.Abs(state.Temperature - state.MetalTemperature) < 0.1;
            if (time >= limit || (empty > Stalled && settled))
            {
                reached = false;
                return limit;
            }

            previous = now.Pressure;
            step = Math.Max(ShortestStep, Math.Min(LongestStep, StepShare * empty));
            model.AdvanceSecondOrder(ref state, in parameters, in inputs, step);
            time += step;
        }
    }
}
