using System;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>The classical Runge–Kutta method of order four with a fixed step: nothing of the library's integrator.</summary>
internal static class FixedStep
{
    public static void Integrate(double[] y, double seconds, int steps, Action<double[], double[]> slope)
    {
        int n = y.Length;
        double h = seconds / steps;
        double[] k1 = new double[n], k2 = new double[n], k3 = new double[n], k4 = new double[n], probe = new double[n];
        for (int step = 0; step < steps; step++)
        {
            slope(y, k1);
            Move(y, k1, 0.5 * h, probe);
            slope(probe, k2);
            Move(y, k2, 0.5 * h, probe);
            slope(probe, k3);
            Move(y, k3, h, probe);
            slope(probe, k4);
            for (int i = 0; i < n; i++)
            {
                y[i] += h / 6 * (k1[i] + (2 * k2[i]) + (2 * k3[i]) + k4[i]);
            }
        }
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

    private static void Move(double[] y, double[] k, double h, double[] result)
    {
        for (int i = 0; i < y.Length; i++)
        {
            result[i] = y[i] + (h * k[i]);
        }
    }
}
