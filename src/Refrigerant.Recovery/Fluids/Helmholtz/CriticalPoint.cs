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

    /// <summary>Relative temperature step at which the search ends, and up to which a step that is no smaller than the last is one of rounding.</summary>
    private const double Tolerance = 1e-15, Rounding = 1e-9;

    /// <summary>Finds the reduced inverse temperature and density, starting from the stated point.</summary>
    /// <returns>Whether the search arrived, near the stated point.</returns>
    public static bool TryFind(ResidualHelmholtz residual, double statedTau, double statedDelta, out double tau, out double delta)
    {
        Span<double> isotherm = stackalloc double[residual.IsothermLength];
        delta = statedDelta;
        double tau0 = statedTau * 1.001;
        _ = TryLeastSlope(residual, tau0, isotherm, ref delta, out double slope0);
        tau = statedTau;
        double last = double.PositiveInfinity;
        for (int step = 0; step < MaximumSteps; step++)
        {
            bool isFound = TryLeastSlope(residual, tau, isotherm, ref delta, out double slope);
            double change = -slope * (tau - tau0) / (slope - slope0);
            double size = Math.Abs(change);
            if (double.IsNaN(change))
            {
                // Two equal slopes, down to the last digit: nothing is left to find if they are those of a point next to it.
                return isFound && last < Rounding * tau && IsNear(tau, statedTau, delta, statedDelta);
            }

            tau0 = tau;
            slope0 = slope;
            tau += Math.Max(-0.01, Math.Min(0.01, change));
            if (isFound && (size < Tolerance * tau || (size >= last && size < Rounding * tau)))
            {
                return IsNear(tau, statedTau, delta, statedDelta);
            }

            last = size;
        }

        return false;
    }

    private static bool IsNear(double tau, double statedTau, double delta, double statedDelta) =>
        Math.Abs((tau / statedTau) - 1) < 0.01 && Math.Abs((delta / statedDelta) - 1) < 0.1;

    /// <summary>The least (∂p/∂ρ)/(RT) on an isotherm near a density, and that density; false where the search for it did not arrive.</summary>
    private static bool TryLeastSlope(ResidualHelmholtz residual, double tau, Span<double> isotherm, ref double delta, out double slope)
    {
        const double arrived = 1e-10, rounding = 1e-7;
        residual.Isotherm(tau, isotherm);
        double last = double.PositiveInfinity;
        bool isFound = false;
        for (int step = 0; step < MaximumSteps && !isFound; step++)
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
            double size = Math.Abs(change);
            isFound = size < arrived || (size >= last && size < rounding);
            last = size;
        }

        slope = Slope(residual, tau, delta, isotherm);
        return isFound;
    }

    private static double Slope(ResidualHelmholtz residual, double tau, double delta, ReadOnlySpan<double> isotherm)
    {
        residual.ByDensity(tau, delta, isotherm, out double d, out double dd);
        return 1 + (2 * d) + dd;
    }
}
