using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Root of a continuous function between two points where its signs differ.</summary>
/// <remarks>
/// Chandrupatla 1997, Adv. Eng. Software 28, 145, doi:10.1016/S0965-9978(96)00051-8: inverse quadratic interpolation where it is
/// safe, bisection elsewhere. It cannot leave the bracket.
/// </remarks>
internal static class BracketedRoot
{
    private const int MaximumIterations = 200;

    /// <summary>The root, to <paramref name="tolerance"/> in x. The signs at both ends must differ (one value may be zero).</summary>
    /// <exception cref="ConvergenceException">The signs do not differ, or the bound on steps was reached.</exception>
    public static double Find<TFunction>(ref TFunction function, double lower, double upper, double tolerance)
        where TFunction : struct, IScalarFunction
    {
        double a = upper;
        double b = lower;
        double fa = function.Value(a);
        double fb = function.Value(b);
        if (fa == 0)
        {
            return a;
        }

        if (fb == 0)
        {
            return b;
        }

        if (!(fa * fb < 0))
        {
            throw new ConvergenceException(
                $"No sign change between {Require.Text(lower)} ({Require.Text(fb)}) and {Require.Text(upper)} ({Require.Text(fa)}).", 0);
        }

        double share = 0.5;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double x = a + (share * (b - a));
            double fx = function.Value(x);
            double c = a;
            double fc = fa;
            if (fx > 0 == fa > 0)
            {
                a = x;
                fa = fx;
            }
            else
            {
                c = b;
                fc = fb;
                b = a;
                fb = fa;
                a = x;
                fa = fx;
            }

            double best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            double limit = (0.5 * tolerance) + (2.2e-16 * Math.Abs(best));
            double width = Math.Abs(b - a);
            if (fa == 0 || width <= 2 * limit)
            {
                return best;
            }

            double smallest = limit / width;
            double xi = (a - b) / (c - b);
            double phi = (fa - fb) / (fc - fb);
            share = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
                ? (fa / (fb - fa) * fc / (fb - fc)) + ((c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb))
                : 0.5;
            share = Math.Min(1 - smallest, Math.Max(smallest, share));
        }

        throw new ConvergenceException(
            $"No root to {Require.Text(tolerance)} between {Require.Text(lower)} and {Require.Text(upper)} in {MaximumIterations} steps.",
            MaximumIterations);
    }
}
