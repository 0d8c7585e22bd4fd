using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Small dense linear systems, solved in place without allocation.</summary>
internal static class DenseLinear
{
    private const int OnStack = 32;

    /// <summary>Solves A·x = b. A (row-major) is destroyed, b becomes x.</summary>
    /// <returns>Whether A is regular to working precision.</returns>
    public static bool Solve(Span<double> a, Span<double> b, int n)
    {
        Span<int> pivots = n <= OnStack ? stackalloc int[OnStack] : new int[n];
        Span<double> scales = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        return Factor(a, pivots, scales, n) && Substitute(a, pivots, scales, b, n);
    }

    /// <summary>Factors A (row-major) in place into L·U, by Gaussian elimination of its scaled rows with partial pivoting.</summary>
    /// <param name="a">The matrix; becomes its factors.</param>
    /// <param name="pivots">Receives the row exchanged with each.</param>
    /// <param name="scales">Receives what each row is multiplied by.</param>
    /// <param name="n">Number of rows.</param>
    /// <returns>Whether A is regular to working precision.</returns>
    public static bool Factor(Span<double> a, Span<int> pivots, Span<double> scales, int n)
    {
        for (int i = 0; i < n; i++)
        {
            double largest = 0;
            for (int j = 0; j < n; j++)
            {
                largest = Math.Max(largest, Math.Abs(a[(i * n) + j]));
            }

            if (!(largest > 0) || double.IsInfinity(largest))
            {
                return false;
            }

            scales[i] = 1 / largest;
            for (int j = 0; j < n; j++)
            {
                a[(i * n) + j] *= scales[i];
            }
        }

        for (int k = 0; k < n; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < n; i++)
            {
                if (Math.Abs(a[(i * n) + k]) > Math.Abs(a[(pivot * n) + k]))
                {
                    pivot = i;
                }
            }

            pivots[k] = pivot;
            double p = a[(pivot * n) + k];
            if (p == 0 || double.IsNaN(p))
            {
                return false;
            }

            if (pivot != k)
            {
                for (int j = 0; j < n; j++)
                {
                    (a[(k * n) + j], a[(pivot * n) + j]) = (a[(pivot * n) + j], a[(k * n) + j]);
                }
            }

            for (int i = k + 1; i < n; i++)
            {
                double factor = a[(i * n) + k] / p;
                a[(i * n) + k] = factor;
                if (factor == 0)
                {
                    continue;
                }

                for (int j = k + 1; j < n; j++)
                {
                    a[(i * n) + j] -= factor * a[(k * n) + j];
                }
            }
        }

        return true;
    }

    /// <summary>Solves with the factors of <see cref="Factor"/>; b becomes x.</summary>
    /// <returns>Whether x is finite.</returns>
    public static bool Substitute(ReadOnlySpan<double> factors, ReadOnlySpan<int> pivots, ReadOnlySpan<double> scales, Span<double> b, int n)
    {
        for (int i = 0; i < n; i++)
        {
            b[i] *= scales[i];
        }

        for (int k = 0; k < n; k++)
        {
            (b[k], b[pivots[k]]) = (b[pivots[k]], b[k]);
        }

        for (int i = 1; i < n; i++)
        {
            double value = b[i];
            for (int j = 0; j < i; j++)
            {
                value -= factors[(i * n) + j] * b[j];
            }

            b[i] = value;
        }

        for (int i = n - 1; i >= 0; i--)
        {
            double value = b[i];
            for (int j = i + 1; j < n; j++)
            {
                value -= factors[(i * n) + j] * b[j];
            }

            b[i] = value / factors[(i * n) + i];
            if (double.IsNaN(b[i]) || double.IsInfinity(b[i]))
            {
                return false;
            }
        }

        return true;
    }
}
