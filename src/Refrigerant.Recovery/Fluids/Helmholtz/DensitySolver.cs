using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The stable density of a pure fluid at a temperature and a pressure. The saturation curve says on which side of the two-phase region the
/// state lies; on that side the isotherm rises, and the root between the bounds is found by Newton's method, halved where it leaves them.
/// </summary>
internal static class DensitySolver
{
    private const int MaximumSteps = 100;

    /// <summary>
    /// Relative density step after which the next one is some 1e-8 (quadratic convergence); less where the isotherm is flat. That next one
    /// is taken by <see cref="PureEquation.CaloricAtPressure"/>, which has all derivatives at hand, and leaves an error of its square.
    /// </summary>
    private const double Tolerance = 5e-5;

    /// <summary>
    /// Exponent of Murnaghan's isotherm p ~ ρ^n, which liquids follow closely (Murnaghan 1944, Proc. Natl. Acad. Sci. 30, 244,
    /// doi:10.1073/pnas.30.9.244). It only shapes the steps.
    /// </summary>
    private const double LiquidExponent = 8;

    /// <summary>Largest growth of density in one step.</summary>
    private const double LargestGrowth = 1.3;

    /// <summary>Liquid: from its saturation density upwards.</summary>
    /// <param name="residual">The residual Helmholtz energy.</param>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="target">p/(ρr·R·T), the reduced pressure δ·(1 + δα_δ).</param>
    /// <param name="lowest">A reduced density that the liquid's is not below.</param>
    /// <param name="estimate">The reduced density to start from.</param>
    /// <param name="isotherm">The isotherm of tau.</param>
    public static double Liquid(
        ResidualHelmholtz residual,
        double tau,
        double target,
        double lowest,
        double estimate,
        ReadOnlySpan<double> isotherm) =>
        Solve(residual, tau, target, lowest, double.PositiveInfinity, estimate, LiquidExponent, isotherm);

    /// <summary>Vapor: from zero up to its saturation density.</summary>
    /// <param name="residual">The residual Helmholtz energy.</param>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="target">p/(ρr·R·T).</param>
    /// <param name="highest">A reduced density that the vapor's is not above.</param>
    /// <param name="estimate">The reduced density to start from.</param>
    /// <param name="isotherm">The isotherm of tau.</param>
    public static double Vapor(
        ResidualHelmholtz residual,
        double tau,
        double target,
        double highest,
        double estimate,
        ReadOnlySpan<double> isotherm) =>
        Solve(residual, tau, target, 0, highest, estimate, 1, isotherm);

    /// <summary>Fluid above the critical temperature, where the isotherm rises throughout.</summary>
    /// <param name="residual">The residual Helmholtz energy.</param>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="target">p/(ρr·R·T).</param>
    /// <param name="estimate">The reduced density to start from.</param>
    /// <param name="isotherm">The isotherm of tau.</param>
    public static double Supercritical(
        ResidualHelmholtz residual,
        double tau,
        double target,
        double estimate,
        ReadOnlySpan<double> isotherm) =>
        Solve(residual, tau, target, 0, double.PositiveInfinity, estimate, 0, isotherm);

    private static double Solve(
        ResidualHelmholtz residual,
        double tau,
        double target,
        double low,
        double high,
        double delta,
        double exponent,
        ReadOnlySpan<double> isotherm)
    {
        for (int step = 0; step < MaximumSteps; step++)
        {
            residual.ByDensity(tau, delta, isotherm, out double d, out double dd);
            double reduced = delta * (1 + d);
            double slope = delta * (1 + (2 * d) + dd);
            double missing = target - reduced;
            if (missing >= 0)
            {
                low = delta;
            }
            else
            {
                high = delta;
            }

            double next = slope > 0 ? Step(delta, missing, target, reduced, slope, exponent) : double.NaN;
            if (Math.Abs(next - delta) <= Tolerance * Math.Min(delta, slope) && next > 0)
            {
                return next;
            }

            next = Math.Min(next, LargestGrowth * delta);
            if (!(next > low && next < high))
            {
                next = double.IsPositiveInfinity(high) ? LargestGrowth * delta : 0.5 * (low + high);
                if (high - low <= 1e-15 * high)
                {
                    return next;
                }
            }

            delta = next;
        }

        throw new ConvergenceException(
            $"Density at reduced pressure {Require.Text(target)} and inverse reduced temperature {Require.Text(tau)} not found: "
            + $"between {Require.Text(low)} and {Require.Text(high)} of the reducing density.",
            MaximumSteps);
    }

    /// <summary>Newton's step for p ~ ρ^n: plain for n = 1, with n of the isotherm itself (in logarithms) for n = 0.</summary>
    private static double Step(double delta, double missing, double target, double reduced, double slope, double exponent)
    {
        if (exponent == 1 || Math.Abs(missing) < 1e-4 * slope)
        {
            return delta * (1 + (missing / slope));
        }

        if (exponent == 0)
        {
            return reduced > 0 ? delta * Math.Exp(Math.Log(target / reduced) * reduced / slope) : double.NaN;
        }

        double argument = 1 + (exponent * missing / slope);
        return argument > 0 ? delta * Math.Pow(argument, 1 / exponent) : double.NaN;
    }
}
