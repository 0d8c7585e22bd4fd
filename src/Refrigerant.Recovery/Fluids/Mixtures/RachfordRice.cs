using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The vapor fraction that given K factors make of a composition (Rachford and Rice 1952): Σ z_i (K_i − 1)/(1 + β (K_i − 1)) = 0.</summary>
internal static class RachfordRice
{
    /// <summary>Steps at most; after some of them every other one halves the bounds.</summary>
    private const int MaximumIterations = 150, PlainIterations = 30;

    /// <summary>Change of the fraction at which it is found.</summary>
    private const double Arrived = 1e-13;

    /// <summary>The molar vapor fraction, kept between 0 and 1.</summary>
    /// <exception cref="ConvergenceException">It was not found, as where a K factor is not a number.</exception>
    public static double VaporFraction(ReadOnlySpan<double> z, ReadOnlySpan<double> logK)
    {
        double low = 0, high = 1, beta = 0.5;
        for (int k = 0; k < MaximumIterations; k++)
        {
            double value = 0, slope = 0;
            for (int i = 0; i < z.Length; i++)
            {
                double excess = Math.Exp(logK[i]) - 1;
                double share = excess / (1 + (beta * excess));
                value += z[i] * share;
                slope -= z[i] * share * share;
            }

            if (value > 0)
            {
                low = beta;
            }
            else
            {
                high = beta;
            }

            double next = beta - (value / slope);
            if (!(next > low && next < high) || (k > PlainIterations && (k & 1) == 0))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - beta) < Arrived && !double.IsNaN(value))
            {
                return next;
            }

            beta = next;
        }

        throw new ConvergenceException($"No vapor fraction found: between {Require.Text(low)} and {Require.Text(high)}.", MaximumIterations);
    }
}
