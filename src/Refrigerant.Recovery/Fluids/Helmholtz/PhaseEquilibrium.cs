using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Vapor-liquid equilibrium of a pure fluid at a temperature: equal pressure and equal Gibbs energy by Newton's method in the two
/// densities (Akasaka 2008, J. Therm. Sci. Technol. 3, 442, doi:10.1299/jtst.3.442), written for the logarithms of the densities so that
/// vapor of any dilution keeps its digits.
/// </summary>
internal static class PhaseEquilibrium
{
    /// <summary>Newton's steps at most; from a continued estimate three or four do.</summary>
    private const int MaximumSteps = 60;

    /// <summary>Relative density step at which the next one is below rounding (quadratic convergence).</summary>
    private const double Tolerance = 1e-9;

    /// <summary>Largest change of a logarithm of density in one step.</summary>
    private const double LargestStep = 0.2;

    /// <summary>Improves both reduced densities to equilibrium.</summary>
    /// <returns>Whether it converged to two distinct, mechanically stable densities.</returns>
    public static bool TrySolve(
        ResidualHelmholtz residual,
        double tau,
        ReadOnlySpan<double> isotherm,
        ref double liquid,
        ref double vapor)
    {
        double last = double.MaxValue;
        for (int step = 0; step < MaximumSteps; step++)
        {
            HelmholtzDerivatives l = residual.At(tau, liquid, isotherm);
            HelmholtzDerivatives v = residual.At(tau, vapor, isotherm);
            double pressure = (vapor * (1 + v.D)) - (liquid * (1 + l.D));
            double gibbs = v.D + v.A - l.D - l.A + Math.Log(vapor / liquid);
            double slopeL = 1 + (2 * l.D) + l.DD;
            double slopeV = 1 + (2 * v.D) + v.DD;
            double changeV = (pressure - (liquid * gibbs)) / (liquid - vapor);
            double changeL = changeV + gibbs;
            double stepL = changeL / slopeL;
            double stepV = changeV / slopeV;
            if (!(slopeL > 0 && slopeV > 0) || double.IsNaN(stepL) || double.IsNaN(stepV))
            {
                return false;
            }

            liquid *= Math.Exp(Limit(stepL));
            vapor *= Math.Exp(Limit(stepV));
            double size = Math.Max(Math.Abs(stepL), Math.Abs(stepV));
            if (size < Tolerance || (size < RoundingFloor(slopeL, slopeV) && size >= last))
            {
                return liquid > vapor;
            }

            last = size;
        }

        return false;
    }

    /// <summary>
    /// Liquid and vapor at a temperature far below critical, from nothing but an estimate of the liquid's density: the liquid at zero
    /// pressure, and vapor as dilute as its fugacity demands.
    /// </summary>
    public static bool TryStart(
        ResidualHelmholtz residual,
        double tau,
        ReadOnlySpan<double> isotherm,
        double estimate,
        out double liquid,
        out double vapor)
    {
        liquid = estimate;
        for (int step = 0; step < MaximumSteps; step++)
        {
            residual.ByDensity(tau, liquid, isotherm, out double d, out double dd);
            double slope = 1 + (2 * d) + dd;
            double change = slope > 0 ? Limit(-(1 + d) / slope) : LargestStep / 10;
            liquid *= Math.Exp(change);
            if (Math.Abs(change) < Tolerance)
            {
                break;
            }
        }

        HelmholtzDerivatives l = residual.At(tau, liquid, isotherm);
        vapor = liquid * Math.Exp(l.A + l.D);
        return TrySolve(residual, tau, isotherm, ref liquid, ref vapor);
    }

    private static double Limit(double step) => Math.Max(-LargestStep, Math.Min(LargestStep, step));

    /// <summary>Where the isotherm is flat, rounding of the pressure keeps the density from settling any closer.</summary>
    private static double RoundingFloor(double slopeL, double slopeV) => 1e-13 / Math.Min(slopeL, slopeV);
}
