using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The critical point of an equation of state itself, where (∂p/∂ρ) and (∂²p/∂ρ²) vanish together. It may differ from the stated one in
/// the fifth digit, and the saturation curves end here.
/// </summary>
internal static class CriticalPoint
{
    private const int MaximumSteps = 50;

    /// <summary>Step of the five-point differences in reduced density; their error is of its fourth power.</summary>
    private const double Step = 0.01;

    /// <summary>Relative temperature step at which the search ends.</summary>
    private const double Tolerance = 1e-15;

    /// <summary>Finds the reduced inverse temperature and density, starting from the stated point.</summary>
    public static bool TryFind(ResidualHelmholtz residual, double statedTau, double statedDelta, out double tau, out double delta)
    {
        Span<double> isotherm = stackalloc double[residual.IsothermLength];
        delta = statedDelta;
        double tau0 = statedTau * 1.001;
        double slope0 = LeastSlope(residual, tau0, isotherm, ref delta);
        tau = statedTau;
        for (int step = 0; step < MaximumSteps; step++)
        {
            double slope = LeastSlope(residual, tau, isotherm, ref delta);
            double change = -slope * (tau - tau0) / (slope - slope0);
            if (double.IsNaN(change))
            {
                break;
            }

            tau0 = tau;
            slope0 = slope;
            tau += Math.Max(-0.01, Math.Min(0.01, change));
            if (Math.Abs(change) < Tolerance * tau)
            {
                break;
            }
        }

        return Math.Abs((tau / statedTau) - 1) < 0.01 && Math.Abs((delta / statedDelta) - 1) < 0.1;
    }

    /// <summary>The least (∂p/∂ρ)/(RT) on an isotherm near a density, and that density.</summary>
    private static double LeastSlope(ResidualHelmholtz residual, double tau, Span<double> isotherm, ref double delta)
    {
        residual.Isotherm(tau, isotherm);
        for (int step = 0; step < MaximumSteps; step++)
        {
            double a = Slope(residual, tau, delta - (2 * Step), isotherm);
            double b = Slope(residual, tau, delta - Step, isotherm);
            double c = Slope(residual, tau, delta, isotherm);
            double d = Slope(residual, tau, delta + Step, isotherm);
            double e = Slope(residual, tau, delta + (2 * Step), isotherm);
            double first = (a - (8 * b) + (8 * d) - e) / (12 * Step);
            double second = (-a + (16 * b) - (30 * c) + (16 * d) - e) / (12 * Step * Step);
            double change = second > 0 ? -first / second : -Math.Sign(first) * Step;
            change = Math.Max(-0.05, Math.Min(0.05, change));
            delta += change;
            if (Math.Abs(change) < 1e-10)
            {
                break;
            }
        }

        return Slope(residual, tau, delta, isotherm);
    }

    private static double Slope(ResidualHelmholtz residual, double tau, double delta, ReadOnlySpan<double> isotherm)
    {
        residual.ByDensity(tau, delta, isotherm, out double d, out double dd);
        return 1 + (2 * d) + dd;
    }
}
