using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// Interpolation in Chebyshev nodes on [−1, 1], delivered as the coefficients of an ordinary polynomial (Trefethen 2013, Approximation
/// Theory and Approximation Practice, SIAM). For the few coefficients used here the change of basis costs no digits, because those of
/// high order are small.
/// </summary>
internal static class ChebyshevFit
{
    /// <summary>The i-th of n nodes of the first kind, from near +1 down to near −1.</summary>
    public static double Node(int i, int n) => Math.Cos(Math.PI * (i + 0.5) / n);

    /// <summary>Turns values in the nodes into polynomial coefficients, constant first.</summary>
    /// <param name="values">Values in the nodes.</param>
    /// <param name="coefficients">As many coefficients.</param>
    public static void Polynomial(ReadOnlySpan<double> values, Span<double> coefficients)
    {
        int n = values.Length;
        Span<double> previous = stackalloc double[n];
        Span<double> current = stackalloc double[n];
        Span<double> next = stackalloc double[n];
        previous.Clear();
        current.Clear();
        coefficients.Clear();
        previous[0] = 1;
        current[Math.Min(1, n - 1)] = 1;
        coefficients[0] = Coefficient(values, 0);
        for (int k = 1; k < n; k++)
        {
            double c = Coefficient(values, k);
            for (int j = 0; j <= k; j++)
            {
                coefficients[j] += c * current[j];
            }

            next.Clear();
            for (int j = 0; j < n; j++)
            {
                next[j] = (j > 0 ? 2 * current[j - 1] : 0) - previous[j];
            }

            current.CopyTo(previous);
            next.CopyTo(current);
        }
    }

    private static double Coefficient(ReadOnlySpan<double> values, int k)
    {
        int n = values.Length;
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            sum += values[i] * Math.Cos(Math.PI * k * (i + 0.5) / n);
        }

        return sum * (k == 0 ? 1.0 : 2.0) / n;
    }
}
