namespace Refrigerant.Recovery.Estimation;

/// <summary>Runs the reduced model on to a level.</summary>
internal static class Forecast
{
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
        var run = new ForecastRun(in state, in parameters);
        int steps = int.MaxValue;
        run.Run(model, airTemperature, level, limit, ref steps);
        state = run.State;
        reached = run.IsReached;
        return run.Time;
    }
}
