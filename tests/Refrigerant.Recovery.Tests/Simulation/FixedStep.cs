using System;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>The classical Runge–Kutta method of order four with a fixed step, and roots by bisection and by chords: nothing of the library's integrator.</summary>
internal static class FixedStep
{
    public static void Integrate(double[] y, double seconds, int steps, Action<double[], double[]> slope)
    {
        var step = new Step(y.Length, slope);
        for (int i = 0; i < steps; i++)
        {
            step.Go(y, seconds / steps);
        }
    }

    /// <summary>Goes on until a margin falls below zero and finds the moment within the last step; returns the time, s.</summary>
    public static double Until(double[] y, double step, double longest, Action<double[], double[]> slope, Func<double[], double> margin)
    {
        var runge = new Step(y.Length, slope);
        double[] before = new double[y.Length];
        for (double time = 0; time < longest; time += step)
        {
            y.CopyTo(before, 0);
            runge.Go(y, step);
            if (margin(y) < 0)
            {
                double part = Root(0, step, 1e-12, h =>
                {
                    before.CopyTo(y, 0);
                    runge.Go(y, h);
                    return -margin(y);
                });
                before.CopyTo(y, 0);
                runge.Go(y, part);
                return time + part;
            }
        }

        throw new InvalidOperationException("The margin stays above zero.");
    }

    public static double Bisect(double low, double high, Func<double, bool> isBelow)
    {
        for (int i = 0; i < 70; i++)
        {
            double middle = 0.5 * (low + high);
            if (isBelow(middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }

    /// <summary>Where a value passes from below zero at the lower end to above: chords whose idle end counts half (Illinois).</summary>
    public static double Root(double low, double high, double tolerance, Func<double, double> value)
    {
        double atLow = value(low);
        double atHigh = value(high);
        if (!(atLow <= 0 && atHigh >= 0))
        {
            throw new InvalidOperationException(FormattableString.Invariant($"No root between {low} ({atLow}) and {high} ({atHigh})."));
        }

        int side = 0;
        for (int i = 0; i < 200 && high - low > tolerance * Math.Abs(high); i++)
        {
            double x = i % 20 == 19 ? 0.5 * (low + high) : high - (atHigh * (high - low) / (atHigh - atLow));
            double f = value(x);
            if (f == 0)
            {
                return x;
            }

            if (f < 0)
            {
                low = x;
                atLow = f;
                atHigh *= side == -1 ? 0.5 : 1;
                side = -1;
            }
            else
            {
                high = x;
                atHigh = f;
                atLow *= side == 1 ? 0.5 : 1;
                side = 1;
            }

            if (Math.Abs(f) < 1e-300)
            {
                break;
            }
        }

        return 0.5 * (low + high);
    }

    private sealed class Step(int n, Action<double[], double[]> slope)
    {
        private readonly double[] _k1 = new double[n];
        private readonly double[] _k2 = new double[n];
        private readonly double[] _k3 = new double[n];
        private readonly double[] _k4 = new double[n];
        private readonly double[] _probe = new double[n];

        public void Go(double[] y, double h)
        {
            slope(y, _k1);
            Move(y, _k1, 0.5 * h);
            slope(_probe, _k2);
            Move(y, _k2, 0.5 * h);
            slope(_probe, _k3);
            Move(y, _k3, h);
            slope(_probe, _k4);
            for (int i = 0; i < n; i++)
            {
                y[i] += h / 6 * (_k1[i] + (2 * _k2[i]) + (2 * _k3[i]) + _k4[i]);
            }
        }

        private void Move(double[] y, double[] k, double h)
        {
            for (int i = 0; i < n; i++)
            {
                _probe[i] = y[i] + (h * k[i]);
            }
        }
    }
}
