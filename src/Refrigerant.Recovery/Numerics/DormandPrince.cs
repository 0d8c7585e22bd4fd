using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// Adaptive Runge–Kutta integration with the 5(4) pair of Dormand and Prince, dense output and event location.
/// Linear invariants of f (mass and energy balances) are kept to rounding by every step and by the dense output.
/// </summary>
/// <remarks>
/// Dormand and Prince 1980, J. Comput. Appl. Math. 6, 19, doi:10.1016/0771-050X(80)90013-3; dense output, starting step and
/// step control: Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, 2nd ed., sections II.4 to II.6.
/// Buffers are reused from one integration to the next; an instance is not thread-safe.
/// </remarks>
internal sealed class DormandPrince
{
    private const double Safety = 0.9;
    private const double SmallestFactor = 0.2;
    private const double LargestFactor = 6;

    /// <summary>Exponents of the proportional–integral step control (Hairer et al., section IV.2).</summary>
    private const double Beta = 0.04;
    private const double Alpha = 0.2 - (0.75 * Beta);

    /// <summary>Where f fails the step is cut by this factor.</summary>
    private const double InvalidFactor = 0.25;

    /// <summary>A step shorter than this share of the longest one is not tried any more.</summary>
    private const double ShortestStepShare = 1e-13;

    /// <summary>An event is located to this share of its step; the bound is far above what bisection alone would need.</summary>
    private const double EventTolerance = 1e-13;
    private const int MaximumEventIterations = 100;

    private readonly OdeSystem _system;
    private readonly int _dimension;
    private readonly int _controlled;
    private readonly double[][] _slope = new double[7][];
    private readonly double[] _state;
    private readonly double[] _next;
    private readonly double[] _probe;
    private readonly double[] _dense1;
    private readonly double[] _dense2;
    private readonly double[] _dense3;
    private readonly double[] _dense4;
    private readonly double[] _eventsBefore;
    private readonly double[] _eventsAfter;
    private readonly double[] _eventsProbe;
    private readonly bool[] _fired;
    private int _evaluations;

    public DormandPrince(OdeSystem system)
    {
        _system = system;
        _dimension = system.Dimension;
        _controlled = system.ControlledDimension;
        for (int i = 0; i < _slope.Length; i++)
        {
            _slope[i] = new double[_dimension];
        }

        _state = new double[_dimension];
        _next = new double[_dimension];
        _probe = new double[_dimension];
        _dense1 = new double[_dimension];
        _dense2 = new double[_dimension];
        _dense3 = new double[_dimension];
        _dense4 = new double[_dimension];
        _eventsBefore = new double[system.EventCount];
        _eventsAfter = new double[system.EventCount];
        _eventsProbe = new double[system.EventCount];
        _fired = new bool[system.EventCount];
    }

    /// <summary>Integrates from <paramref name="start"/> to <paramref name="end"/>; <paramref name="state"/> becomes the final state.</summary>
    public OdeOutcome Integrate(double[] state, double start, double end, in OdeOptions options)
    {
        _evaluations = 0;
        Array.Clear(_fired, 0, _fired.Length);
        Array.Copy(state, _state, _dimension);
        double time = start;
        if (!Evaluate(time, _state, _slope[0]) || !_system.Events(time, _state, _eventsBefore))
        {
            return new OdeOutcome(OdeStopReason.InvalidState, time, -1, 0, 0, _evaluations);
        }

        _system.OnStep(time, _state);
        double longest = Math.Min(options.MaximumStep, end - start);
        double shortest = longest * ShortestStepShare;
        double step = StartingStep(time, longest, options.RelativeTolerance);
        double previousError = 1e-4;
        int accepted = 0;
        int rejected = 0;
        OdeStopReason reason = OdeStopReason.EndTime;
        int stoppedBy = -1;
        while (time < end)
        {
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
            if (!Step(time, used) || !_system.Events(time + used, _next, _eventsAfter))
            {
                step = used * InvalidFactor;
                rejected++;
                continue;
            }

            double error = ErrorNorm(used, options.RelativeTolerance);
            if (!(error <= 1))
            {
                step = used * (double.IsNaN(error) ? InvalidFactor : Math.Max(SmallestFactor, Safety * Math.Pow(error, -0.2)));
                rejected++;
                continue;
            }

            accepted++;
            double factor = Safety * Math.Pow(Math.Max(error, 1e-10), -Alpha) * Math.Pow(previousError, Beta);
            step = Math.Min(longest, used * Math.Min(LargestFactor, Math.Max(SmallestFactor, factor)));
            previousError = Math.Max(error, 1e-4);

            int occurred = FirstEvent(time, used, out double share);
            if (occurred >= 0)
            {
                _fired[occurred] = true;
                Interpolate(share, _next);
                double at = time + (share * used);
                EventAction action = _system.OnEvent(occurred, at, _next);
                Array.Copy(_next, _state, _dimension);
                time = at;
                if (!Evaluate(time, _state, _slope[0]) || !_system.Events(time, _state, _eventsBefore))
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

            time = last ? end : time + used;
            Array.Copy(_next, _state, _dimension);
            (_slope[0], _slope[6]) = (_slope[6], _slope[0]);
            Array.Copy(_eventsAfter, _eventsBefore, _eventsBefore.Length);
            _system.OnStep(time, _state);
        }

        Array.Copy(_state, state, _dimension);
        return new OdeOutcome(reason, time, stoppedBy, accepted, rejected, _evaluations);
    }

    private bool Evaluate(double time, double[] state, double[] slope)
    {
        _evaluations++;
        return _system.Derivatives(time, state, slope);
    }

    private double StartingStep(double time, double longest, double tolerance)
    {
        double[] f = _slope[0];
        double size = 0;
        double speed = 0;
        for (int i = 0; i < _controlled; i++)
        {
            double scale = tolerance * (_system.AbsoluteScale(i) + Math.Abs(_state[i]));
            size += _state[i] / scale * (_state[i] / scale);
            speed += f[i] / scale * (f[i] / scale);
        }

        double first = size < 1e-10 || speed < 1e-10 ? 1e-6 * longest : 0.01 * Math.Sqrt(size / speed);
        first = Math.Min(first, longest);
        for (int i = 0; i < _dimension; i++)
        {
            _probe[i] = _state[i] + (first * f[i]);
        }

        if (!Evaluate(time + first, _probe, _slope[1]))
        {
            return 0.01 * first;
        }

        double bend = 0;
        for (int i = 0; i < _controlled; i++)
        {
            double scale = tolerance * (_system.AbsoluteScale(i) + Math.Abs(_state[i]));
            double change = (_slope[1][i] - f[i]) / scale;
            bend += change * change;
        }

        double steepest = Math.Max(Math.Sqrt(speed / _controlled), Math.Sqrt(bend / _controlled) / first);
        double second = steepest <= 1e-15 ? Math.Max(1e-6 * longest, first * 1e-3) : Math.Pow(0.01 / steepest, 0.2);
        return Math.Min(Math.Min(100 * first, second), longest);
    }

    /// <summary>One step into <see cref="_next"/>, its slope into the seventh slope.</summary>
    private bool Step(double time, double h)
    {
        double[] y = _state;
        double[] k1 = _slope[0], k2 = _slope[1], k3 = _slope[2], k4 = _slope[3], k5 = _slope[4], k6 = _slope[5];
        double[] trial = _next;
        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * (1.0 / 5 * k1[i]));
        }

        if (!Evaluate(time + (h / 5), trial, k2))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((3.0 / 40 * k1[i]) + (9.0 / 40 * k2[i])));
        }

        if (!Evaluate(time + (h * 3 / 10), trial, k3))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((44.0 / 45 * k1[i]) - (56.0 / 15 * k2[i]) + (32.0 / 9 * k3[i])));
        }

        if (!Evaluate(time + (h * 4 / 5), trial, k4))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((19372.0 / 6561 * k1[i]) - (25360.0 / 2187 * k2[i]) + (64448.0 / 6561 * k3[i]) - (212.0 / 729 * k4[i])));
        }

        if (!Evaluate(time + (h * 8 / 9), trial, k5))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((9017.0 / 3168 * k1[i]) - (355.0 / 33 * k2[i]) + (46732.0 / 5247 * k3[i])
                + (49.0 / 176 * k4[i]) - (5103.0 / 18656 * k5[i])));
        }

        if (!Evaluate(time + h, trial, k6))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((35.0 / 384 * k1[i]) + (500.0 / 1113 * k3[i]) + (125.0 / 192 * k4[i])
                - (2187.0 / 6784 * k5[i]) + (11.0 / 84 * k6[i])));
        }

        return Evaluate(time + h, trial, _slope[6]);
    }

    /// <summary>Largest estimated local error of the controlled components over the error allowed.</summary>
    private double ErrorNorm(double h, double tolerance)
    {
        double[] k1 = _slope[0], k3 = _slope[2], k4 = _slope[3], k5 = _slope[4], k6 = _slope[5], k7 = _slope[6];
        double largest = 0;
        for (int i = 0; i < _controlled; i++)
        {
            double error = h * ((71.0 / 57600 * k1[i]) - (71.0 / 16695 * k3[i]) + (71.0 / 1920 * k4[i])
                - (17253.0 / 339200 * k5[i]) + (22.0 / 525 * k6[i]) - (1.0 / 40 * k7[i]));
            double allowed = tolerance * (_system.AbsoluteScale(i) + Math.Max(Math.Abs(_state[i]), Math.Abs(_next[i])));
            double ratio = Math.Abs(error) / allowed;
            if (!(ratio <= largest))
            {
                largest = ratio;
            }
        }

        return largest;
    }

    private int FirstEvent(double time, double h, out double share)
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
                PrepareInterpolation(h);
                prepared = true;
            }

            double at = Locate(e, time, h);
            if (first < 0 || at < share)
            {
                first = e;
                share = at;
            }
        }

        return first;
    }

    /// <summary>Where in the step event <paramref name="e"/> happens: regula falsi (Illinois), the upper end of the bracket.</summary>
    private double Locate(int e, double time, double h)
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

            Interpolate(at, _probe);
            bool valid = _system.Events(time + (at * h), _probe, _eventsProbe);
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

    private void PrepareInterpolation(double h)
    {
        double[] k1 = _slope[0], k3 = _slope[2], k4 = _slope[3], k5 = _slope[4], k6 = _slope[5], k7 = _slope[6];
        for (int i = 0; i < _dimension; i++)
        {
            double difference = _next[i] - _state[i];
            double bspline = (h * k1[i]) - difference;
            _dense1[i] = difference;
            _dense2[i] = bspline;
            _dense3[i] = difference - (h * k7[i]) - bspline;
            _dense4[i] = h * ((-12715105075.0 / 11282082432 * k1[i]) + (87487479700.0 / 32700410799 * k3[i])
                - (10690763975.0 / 1880347072 * k4[i]) + (701980252875.0 / 199316789632 * k5[i])
                - (1453857185.0 / 822651844 * k6[i]) + (69997945.0 / 29380423 * k7[i]));
        }
    }

    /// <summary>The continuous extension of order four at a share of the step (Hairer et al., eq. II.6.12, in the form of their DOPRI5).</summary>
    private void Interpolate(double share, double[] result)
    {
        double rest = 1 - share;
        for (int i = 0; i < _dimension; i++)
        {
            result[i] = _state[i] + (share * (_dense1[i] + (rest * (_dense2[i] + (share * (_dense3[i] + (rest * _dense4[i])))))));
        }
    }
}
