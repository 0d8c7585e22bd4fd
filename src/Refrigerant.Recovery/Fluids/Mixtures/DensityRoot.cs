using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Density roots of p(ρ) on an isotherm of a <see cref="MixturePhase"/> whose composition and temperature are set.</summary>
internal static class DensityRoot
{
    /// <summary>Where the reduced density of a cold liquid is sought first.</summary>
    public const double ColdLiquid = 3.2;

    private const int MaximumIterations = 60;

    /// <summary>Steps of a search between bounds: half of them halve the bounds if Newton's do not lead to the root.</summary>
    private const int MaximumSteps = 120;

    /// <summary>Relative change of the density at which a search from afar has arrived.</summary>
    private const double Near = 1e-10;

    /// <summary>Relative change of the density at which Newton has arrived between bounds.</summary>
    private const double Arrived = 1e-14;

    /// <summary>Finds the root on the liquid branch, from above.</summary>
    /// <param name="phase">The phase.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="rho">Molar density, mol/m³.</param>
    /// <param name="reducedStart">Where to start, in reducing densities: above the root.</param>
    /// <returns>Whether the branch reaches the pressure; if not, the density is no root.</returns>
    public static bool TryLiquid(MixturePhase phase, double pressure, out double rho, double reducedStart = ColdLiquid) =>
        TryFind(phase, pressure, reducedStart * phase.ReducingDensity, largestStep: 0.1, whereUnstable: 1.05, out rho);

    /// <summary>Finds the root on the vapor branch, from the ideal gas.</summary>
    /// <param name="phase">The phase.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="rho">Molar density, mol/m³.</param>
    /// <returns>Whether the branch reaches the pressure; if not, the density is no root.</returns>
    public static bool TryVapor(MixturePhase phase, double pressure, out double rho) =>
        TryFind(phase, pressure, pressure / (MixtureEquation.GasConstant * phase.T), largestStep: 0.3, whereUnstable: 0.7, out rho);

    /// <summary>The root between two densities that bracket it, on a rising branch: Newton, kept inside by bisection.</summary>
    /// <exception cref="ConvergenceException">It was not found.</exception>
    public static double Between(MixturePhase phase, double pressure, double low, double high, double start)
    {
        double rho = start;
        for (int k = 0; k < MaximumSteps; k++)
        {
            double p = phase.PressureAt(rho, out double slope);
            double excess = p - pressure;
            if (excess > 0)
            {
                high = rho;
            }
            else
            {
                low = rho;
            }

            double next = slope > 0 && (k & 1) + (k >> 5) < 2 ? rho - (excess / slope) : double.NaN;
            if (!(next > low && next < high))
            {
                next = Math.Abs(next - rho) < Arrived * rho ? rho : 0.5 * (low + high);
            }

            double change = Math.Abs(next - rho);
            rho = next;
            if (change <= Arrived * rho || high - low <= Arrived * rho)
            {
                return rho;
            }
        }

        throw new ConvergenceException(
            $"Density at {Require.Text(phase.T)} K and {Require.Text(pressure)} Pa not found: between {Require.Text(low)} and {Require.Text(high)} mol/m³.",
            MaximumSteps);
    }

    /// <summary>
    /// Sets the phase to the root near a density, caloric properties included: Newton's steps with a correction of second order, as long as each is much smaller
    /// than the one before; the last is taken to first order.
    /// </summary>
    /// <param name="phase">The phase.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="rho">Molar density near the root, mol/m³.</param>
    /// <param name="curvature">About half of the relative change of the isotherm's slope with the logarithm of density.</param>
    /// <returns>Whether the density was near the root; if not, the phase is set to no state.</returns>
    public static bool TrySettle(MixturePhase phase, double pressure, double rho, double curvature)
    {
        const double firstStep = 0.5, slowest = 0.3, lastStep = 1e-5;
        double limit = firstStep;
        double perRt = pressure / (MixtureEquation.GasConstant * phase.T);
        for (int k = 0; k < MaximumIterations; k++)
        {
            phase.SetDensity(rho);
            double step = ((perRt / rho) - phase.Z) / phase.Stiffness;
            double size = Math.Abs(step) * (1 + Math.Abs(curvature));
            if (!(phase.Stiffness > 0) || !(size <= limit))
            {
                return false;
            }

            rho *= 1 + (step * (1 - (curvature * step)));
            if (size <= lastStep)
            {
                phase.SetIdealGas();
                phase.MoveDensity(rho);
                return true;
            }

            limit = slowest * size;
        }

        return false;
    }

    private static bool TryFind(MixturePhase phase, double pressure, double start, double largestStep, double whereUnstable, out double rho)
    {
        rho = start;
        for (int k = 0; k < MaximumIterations; k++)
        {
            double p = phase.PressureAt(rho, out double slope);
            if (!(slope > 0))
            {
                rho *= whereUnstable;
                continue;
            }

            double step = (pressure - p) / slope;
            step = Math.Max(-largestStep * rho, Math.Min(largestStep * rho, step));
            rho += step;
            if (Math.Abs(step) < Near * rho)
            {
                return true;
            }
        }

        return false;
    }
}
