using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The vapor fraction that given K factors make of a composition (Rachford and Rice 1952): Σ z_i (K_i − 1)/(1 + β (K_i − 1)) = 0.</summary>
internal static class RachfordRice
{
    private const int MaximumIterations = 100;

    /// <summary>The molar vapor fraction, kept between 0 and 1.</summary>
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
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - beta) < 1e-13)
            {
                return next;
            }

            beta = next;
        }

        return beta;
    }
}
