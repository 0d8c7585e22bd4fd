using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Eigenvalues of small symmetric matrices by Jacobi rotations (Golub and Van Loan, Matrix Computations, section 8.5).</summary>
internal static class SymmetricEigen
{
    private const int MaximumSweeps = 40;

    /// <summary>The smallest eigenvalue and its unit eigenvector, largest component positive. The matrix (row-major) is destroyed.</summary>
    public static double Smallest(Span<double> a, Span<double> vector, int n)
    {
        Span<double> v = stackalloc double[n * n];
        v.Clear();
        for (int i = 0; i < n; i++)
        {
            v[(i * n) + i] = 1;
        }

        for (int sweep = 0; sweep < MaximumSweeps; sweep++)
        {
            double off = 0, diagonal = 0;
            for (int i = 0; i < n; i++)
            {
                diagonal += a[(i * n) + i] * a[(i * n) + i];
                for (int j = i + 1; j < n; j++)
                {
                    off += a[(i * n) + j] * a[(i * n) + j];
                }
            }

            if (off <= 1e-30 * (diagonal + off))
            {
                break;
            }

            for (int p = 0; p < n; p++)
            {
                for (int q = p + 1; q < n; q++)
                {
                    Rotate(a, v, n, p, q);
                }
            }
        }

        int least = 0;
        for (int i = 1; i < n; i++)
        {
            if (a[(i * n) + i] < a[(least * n) + least])
            {
                least = i;
            }
        }

        int largest = 0;
        for (int i = 0; i < n; i++)
        {
            vector[i] = v[(i * n) + least];
            if (Math.Abs(vector[i]) > Math.Abs(vector[largest]))
            {
                largest = i;
            }
        }

        if (vector[largest] < 0)
        {
            for (int i = 0; i < n; i++)
            {
                vector[i] = -vector[i];
            }
        }

        return a[(least * n) + least];
    }

    private static void Rotate(Span<double> a, Span<double> v, int n, int p, int q)
    {
        double apq = a[(p * n) + q];
        if (apq == 0)
        {
            return;
        }

        double theta = (a[(q * n) + q] - a[(p * n) + p]) / (2 * apq);
        double t = (theta >= 0 ? 1 : -1) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1));
        double c = 1 / Math.Sqrt((t * t) + 1);
        double s = t * c;
        for (int k = 0; k < n; k++)
        {
            double x = a[(k * n) + p], y = a[(k * n) + q];
            a[(k * n) + p] = (c * x) - (s * y);
            a[(k * n) + q] = (s * x) + (c * y);
        }

        for (int k = 0; k < n; k++)
        {
            double x = a[(p * n) + k], y = a[(q * n) + k];
            a[(p * n) + k] = (c * x) - (s * y);
            a[(q * n) + k] = (s * x) + (c * y);
            double vx = v[(k * n) + p], vy = v[(k * n) + q];
            v[(k * n) + p] = (c * vx) - (s * vy);
            v[(k * n) + q] = (s * vx) + (c * vy);
        }
    }
}
