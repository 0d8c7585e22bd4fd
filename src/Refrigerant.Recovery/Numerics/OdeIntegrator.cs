using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// Adaptive integration with events: the explicit pair of Dormand and Prince, and from where the system turns stiff the implicit method of
/// <see cref="Rosenbrock"/>. Linear invariants of f (mass and energy balances) are kept to rounding by every step and in between.
/// </summary>
/// <remarks>
/// Starting step and step control: Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, 2nd ed., section II.4; stiffness:
/// Hairer and Wanner, II, section IV.2. Thin vapor on warm metal is stiff: its temperature follows the metal's in a fraction of a second
/// while the pull takes half an hour. Buffers are reused from one integration to the next; an instance is not thread-safe.
/// </remarks>
internal sealed class OdeIntegrator
{
    private const double Safety = 0.9;
    private const double SmallestFactor = 0.2;
    private const double LargestFactor = 6;

    /// <summary>Exponent of the proportional–integral step control (Hairer et al., section IV.2).</summary>
    private const double Beta = 0.04;

    /// <summary>Where f fails the step is cut by this factor.</summary>
    private const double InvalidFactor = 0.25;

    /// <summary>A step shorter than this share of the longest one is not tried any more.</summary>
    private const double ShortestStepShare = 1e-13;

    /// <summary>A step may be this share of the time that has passed where that is more than the longest at the start.</summary>
    private const double ElapsedShare = 0.1;

    /// <summary>An event is located to this share of its step; the bound is far above what bisection alone would need.</summary>
    private const double EventTolerance = 1e-13;
    private const int MaximumEventIterations = 100;

    /// <summary>
    /// The explicit pair is stable to 3.3 on the negative real axis, and step control settles just below; accuracy alone keeps a step shorter.
    /// So many steps beyond the bound tell stiffness.
    /// </summary>
    private const double StabilityBound = 2.5;
    private const int StiffSteps = 8;
    private const int CalmSteps = 6;

    /// <summary>
    /// A hand on a valve that follows a small surface makes a limit cycle of short explicit steps, some beyond the bound and some before it, that a run of steps does not show: so many steps near
    /// the bound, in a run or not, tell stiffness too.
    /// </summary>
    private const double NearStability = 0.5;
    private const int MostNearSteps = 300;

    private readonly OdeSystem _system;
    private readonly int _dimension;
    private readonly int _controlled;
    private readonly DormandPrince _explicit;
    private readonly double[] _state;
    private readonly double[] _next;
    private readonly double[] _probe;
    private readonly double[] _probeSlope;
    private readonly double[] _eventsBefore;
    private readonly double[] _eventsAfter;
    private readonly double[] _eventsProbe;
    private readonly bool[] _fired;
    private double[] _slope;
    private double[] _nextSlope;
    private Rosenbrock? _implicit;
    private OdeStepper _stepper;
    private int _stiff;
    private int _calm;
    private int _nearSteps;

    public OdeIntegrator(OdeSystem system)
    {
        _system = system;
        _dimension = system.Dimension;
        _controlled = system.ControlledDimension;
        _explicit = new DormandPrince(system);
        _stepper = _explicit;
        _state = new double[_dimension];
        _next = new double[_dimension];
        _probe = new double[_dimension];
        _probeSlope = new double[_dimension];
        _slope = new double[_dimension];
        _nextSlope = new double[_dimension];
        _eventsBefore = new double[system.EventCount];
        _eventsAfter = new double[system.EventCount];
        _eventsProbe = new double[system.EventCount];
        _fired = new bool[system.EventCount];
    }

    /// <summary>The step that error control would take next, s.</summary>
    public double NextStep { get; private set; }

    /// <summary>Integrates from <paramref name="start"/> to <paramref name="end"/>; <paramref name="state"/> becomes the final state.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public OdeOutcome Integrate(double[] state, double start, double end, in OdeOptions options)
    {
        int before = _explicit.Evaluations + (_implicit?.Evaluations ?? 0);
        int Evaluations() => _explicit.Evaluations + (_implicit?.Evaluations ?? 0) - before;
        _implicit?.SystemChanged();
        _stepper = _explicit;
        _stiff = 0;
        _calm = 0;
        _nearSteps = 0;
        Array.Clear(_fired, 0, _fired.Length);
        Array.Copy(state, _state, _dimension);
        double time = start;
        if (!_explicit.Evaluate(_state, _slope) || !_system.Events(_state, _eventsBefore))
        {
            return new OdeOutcome(OdeStopReason.InvalidState, time, -1, 0, 0, Evaluations());
        }

        _system.OnStep(time, _state);
        double longest = Math.Min(options.MaximumStep, end - start);
        double shortest = longest * ShortestStepShare;
        double step = options.FirstStep > 0 ? Math.Min(options.FirstStep, longest) : StartingStep(longest, options.RelativeTolerance);
        double proposed = step;
        double previousError = 1e-4;
        int accepted = 0;
        int rejected = 0;
        OdeStopReason reason = OdeStopReason.EndTime;
        int stoppedBy = -1;
        while (time < end)
        {
            options.Cancellation.ThrowIfCancellationRequested();
            if (accepted + rejected >= options.MaximumSteps)
            {
                reason = OdeStopReason.StepLimit;
                break;
            }

            if (step < shortest)
            {
                reason = OdeStopReason.InvalidState;
                break;
            }

            bool last = time + (step * (1 + 1e-12)) >= end;
            double used = last ? end - time : step;
            if (!_stepper.Step(_state, _slope, used, _next, _nextSlope) || !_system.Events(_next, _eventsAfter))
            {
                step = used * InvalidFactor;
                rejected++;
                continue;
            }

            double error = _stepper.ErrorNorm(_state, _next, options.RelativeTolerance);
            if (!(error <= 1))
            {
                step = used * (double.IsNaN(error) ? InvalidFactor : Math.Max(SmallestFactor, Safety * Math.Pow(error, -_stepper.ErrorExponent)));
                rejected++;
                continue;
            }

            accepted++;
            double factor = Safety * Math.Pow(Math.Max(error, 1e-10), (0.75 * Beta) - _stepper.ErrorExponent) * Math.Pow(previousError, Beta);
            proposed = used * Math.Min(LargestFactor, Math.Max(SmallestFactor, factor));
            step = Math.Min(Math.Max(longest, ElapsedShare * (time - start)), proposed);
            previousError = Math.Max(error, 1e-4);

            int occurred = FirstEvent(out double share);
            if (occurred >= 0)
            {
                _fired[occurred] = true;
                _stepper.Interpolate(_state, share, _next);
                double at = time + (share * used);
                EventAction action = _system.OnEvent(occurred, at, _next);
                _stepper.SystemChanged();
                Array.Copy(_next, _state, _dimension);
                time = at;
                if (!_explicit.Evaluate(_state, _slope) || !_system.Events(_state, _eventsBefore))
                {
                    reason = OdeStopReason.InvalidState;
                    break;
                }

                _system.OnStep(time, _state);
                if (action == EventAction.Stop)
                {
                    reason = OdeStopReason.Event;
                    stoppedBy = occurred;
                    break;
                }

                step = Math.Max(Math.Min(step, used), shortest);
                continue;
            }

            WatchStiffness();
            time = last ? end : time + used;
            Array.Copy(_next, _state, _dimension);
            (_slope, _nextSlope) = (_nextSlope, _slope);
            Array.Copy(_eventsAfter, _eventsBefore, _eventsBefore.Length);
            _system.OnStep(time, _state);
        }

        NextStep = proposed;
        Array.Copy(_state, state, _dimension);
        return new OdeOutcome(reason, time, stoppedBy, accepted, rejected, Evaluations());
    }

    /// <summary>Passes to the implicit method where a run of steps shows that stability bounds the explicit one.</summary>
    private void WatchStiffness()
    {
        if (_stepper != _explicit)
        {
            return;
        }

        double rate = _explicit.StepTimesRate(_next, _nextSlope);
        if (rate > NearStability && ++_nearSteps == MostNearSteps)
        {
            _stepper = _implicit ??= new Rosenbrock(_system);
            return;
        }

        if (rate > StabilityBound)
        {
            _calm = 0;
            if (++_stiff == StiffSteps)
            {
                _stepper = _implicit ??= new Rosenbrock(_system);
            }
        }
        else if (++_calm == CalmSteps)
        {
            _stiff = 0;
        }
    }

    private double StartingStep(double longest, double tolerance)
    {
        double[] f = _slope;
        double size = 0;
        double speed = 0;
        for (int i = 0; i < _controlled; i++)
        {
            double scale = tolerance * _system.Size(i, _state);
            size += _state[i] / scale * (_state[i] / scale);
            speed += f[i] / scale * (f[i] / scale);
        }

        double first = size < 1e-10 || speed < 1e-10 ? 1e-6 * longest : 0.01 * Math.Sqrt(size / speed);
        first = Math.Min(first, longest);
        for (int i = 0; i < _dimension; i++)
        {
            _probe[i] = _state[i] + (first * f[i]);
        }

        if (!_explicit.Evaluate(_probe, _probeSlope))
        {
            return 0.01 * first;
        }

        double bend = 0;
        for (int i = 0; i < _controlled; i++)
        {
            double scale = tolerance * _system.Size(i, _state);
            double change = (_probeSlope[i] - f[i]) / scale;
            bend += change * change;
        }

        double steepest = Math.Max(Math.Sqrt(speed / _controlled), Math.Sqrt(bend / _controlled) / first);
        double second = steepest <= 1e-15 ? Math.Max(1e-6 * longest, first * 1e-3) : Math.Pow(0.01 / steepest, 0.2);
        return Math.Min(Math.Min(100 * first, second), longest);
    }

    private int FirstEvent(out double share)
    {
        int first = -1;
        share = 1;
        bool prepared = false;
        for (int e = 0; e < _fired.Length; e++)
        {
            if (_fired[e] || !(_eventsBefore[e] > 0) || _eventsAfter[e] > 0)
            {
                continue;
            }

            if (!prepared)
            {
                _stepper.PrepareInterpolation(_state, _slope, _next, _nextSlope);
                prepared = true;
            }

            double at = Locate(e);
            if (first < 0 || at < share)
            {
                first = e;
                share = at;
            }
        }

        return first;
    }

    /// <summary>Where in the step event <paramref name="e"/> happens: regula falsi (Illinois), the upper end of the bracket.</summary>
    private double Locate(int e)
    {
        double low = 0;
        double high = 1;
        double fLow = _eventsBefore[e];
        double fHigh = _eventsAfter[e];
        int side = 0;
        for (int i = 0; i < MaximumEventIterations && high - low > EventTolerance && fHigh < 0; i++)
        {
            double at = ((low * fHigh) - (high * fLow)) / (fHigh - fLow);
            if (!(at > low && at < high))
            {
                at = 0.5 * (low + high);
            }

            _stepper.Interpolate(_state, at, _probe);
            bool valid = _system.Events(_probe, _eventsProbe);
            if (!valid || !(_eventsProbe[e] > 0))
            {
                fHigh = valid ? _eventsProbe[e] : fHigh;
                high = at;
                fLow = side < 0 ? 0.5 * fLow : fLow;
                side = -1;
            }
            else
            {
                fLow = _eventsProbe[e];
                low = at;
                fHigh = side > 0 ? 0.5 * fHigh : fHigh;
                side = 1;
            }
        }

        return high;
    }
}
