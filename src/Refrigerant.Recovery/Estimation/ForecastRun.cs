using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>The reduced model on its way to a level, in slices.</summary>
internal struct ForecastRun
{
    public ReducedState State;
    public ReducedParameters Parameters;

    /// <summary>Step as a share of the time in which the present flow would empty the appliance.</summary>
    public double StepShare;

    /// <summary>Longest step, s.</summary>
    public double LongestStep;

    private const double ShortestStep = 1;

    /// <summary>Nothing flows that counts where the charge would take this long, s.</summary>
    private const double Stalled = 1e6;

    /// <summary>K between refrigerant and metal at which a stalled job stays so.</summary>
    private const double Settled = 0.1;

    private double _previous;
    private double _step;

    public ForecastRun(in ReducedState state, in ReducedParameters parameters, double stepShare = 0.04, double longestStep = 30)
    {
        this = default;
        State = state;
        Parameters = parameters;
        StepShare = stepShare;
        LongestStep = longestStep;
    }

    /// <summary>s so far.</summary>
    public double Time { get; private set; }

    /// <summary>Whether the level was reached.</summary>
    public bool IsReached { get; private set; }

    /// <summary>Runs on with the machine on.</summary>
    /// <param name="model">The model.</param>
    /// <param name="airTemperature">K.</param>
    /// <param name="level">Absolute pressure in the appliance, Pa.</param>
    /// <param name="limit">The longest time looked ahead, s.</param>
    /// <param name="steps">Steps of the model that may be made; what is left of them.</param>
    /// <returns>Whether it came to its end.</returns>
    public bool Run(ReducedModel model, double airTemperature, double level, double limit, ref int steps)
    {
        var inputs = new ReducedInputs(airTemperature, true);
        while (steps > 0)
        {
            model.Evaluate(in State, in Parameters, in inputs, out ReducedOutput now);
            if (now.Pressure <= level)
            {
                IsReached = true;
                if (_previous > now.Pressure && Time > 0)
                {
                    Time = Math.Max(0, Time - (_step * (level - now.Pressure) / (_previous - now.Pressure)));
                }

                return true;
            }

            double empty = now.Flow > 0 ? now.Mass / now.Flow : double.PositiveInfinity;
            if (Time >= limit || (empty > Stalled && Math.Abs(State.Temperature - State.MetalTemperature) < Settled))
            {
                Time = limit;
                return true;
            }

            _previous = now.Pressure;
            _step = Math.Max(ShortestStep, Math.Min(LongestStep, StepShare * empty));
            model.AdvanceSecondOrder(ref State, in Parameters, in inputs, _step);
            Time += _step;
            steps -= 4;
        }

        return false;
    }
}
