using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Small dense linear systems, solved in place without allocation.</summary>
internal static class DenseLinear
{
    /// <summary>
    /// Solves A·x = b by Gaussian elimination with scaled partial pivoting. A (row-major) is destroyed, b becomes x.
    /// </summary>
    /// <returns>Whether A is regular to working precision.</returns>
    public static bool Solve(Span<double> a, Span<double> b, int n)
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

            double scale = 1 / largest;
            for (int j = 0; j < n; j++)
            {
                a[(i * n) + j] *= scale;
            }

            b[i] *= scale;
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

            double p = a[(pivot * n) + k];
            if (p == 0 || double.IsNaN(p))
            {
                return false;
            }

            if (pivot != k)
            {
                for (int j = k; j < n; j++)
                {
                    (a[(k * n) + j], a[(pivot * n) + j]) = (a[(pivot * n) + j], a[(k * n) + j]);
                }

                (b[k], b[pivot]) = (b[pivot], b[k]);
            }

            for (int i = k + 1; i < n; i++)
            {
                double factor = a[(i * n) + k] / p;
                if (factor == 0)
                {
                    continue;
                }

                for (int j = k + 1; j < n; j++)
                {
                    a[(i * n) + j] -= factor * a[(k * n) + j];
                }

                b[i] -= factor * b[k];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            double value = b[i];
            for (int j = i + 1; j < n; j++)
            {
                value -= a[(i * n) + j] * b[j];
            }

            b[i] = value / a[(i * n) + i];
            if (double.IsNaN(b[i]) || double.IsInfinity(b[i]))
            {
                return false;
            }
        }

        return true;
    }
}
