using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Density roots of p(ρ) on an isotherm of a <see cref="MixturePhase"/> whose composition and temperature are set.</summary>
internal static class DensityRoot
{
    /// <summary>Where the reduced density of a cold liquid is sought first.</summary>
    public const double ColdLiquid = 3.2;

    private const int MaximumIterations = 60;

    /// <summary>Relative change of the density at which Newton has arrived.</summary>
    private const double Arrived = 1e-14;

    /// <summary>The root on the liquid branch, from above: a cold liquid, where the branch exists. Falls back to the stiffest point found.</summary>
    public static double Liquid(MixturePhase phase, double pressure, double reducedStart = ColdLiquid)
    {
        double rho = reducedStart * phase.ReducingDensity;
        for (int k = 0; k < MaximumIterations; k++)
        {
            double p = phase.PressureAt(rho, out double slope);
            if (slope <= 0)
            {
                rho *= 1.05;
                continue;
            }

            double step = (pressure - p) / slope;
            step = Math.Max(-0.1 * rho, Math.Min(0.1 * rho, step));
            rho += step;
            if (Math.Abs(step) < 1e-10 * rho)
            {
                break;
            }
        }

        return rho;
    }

    /// <summary>The root on the vapor branch, from the ideal gas.</summary>
    public static double Vapor(MixturePhase phase, double pressure)
    {
        double rho = pressure / (MixtureEquation.GasConstant * phase.T);
        for (int k = 0; k < MaximumIterations; k++)
        {
            double p = phase.PressureAt(rho, out double slope);
            if (slope <= 0)
            {
                rho *= 0.7;
                continue;
            }

            double step = (pressure - p) / slope;
            step = Math.Max(-0.3 * rho, Math.Min(0.3 * rho, step));
            rho += step;
            if (Math.Abs(step) < 1e-10 * rho)
            {
                break;
            }
        }

        return rho;
    }

    /// <summary>The root between two densities that bracket it, on a rising branch: Newton, kept inside by bisection.</summary>
    public static double Between(MixturePhase phase, double pressure, double low, double high, double start)
    {
        double rho = start;
        for (int k = 0; k < MaximumIterations; k++)
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

            double next = slope > 0 ? rho - (excess / slope) : double.NaN;
            if (!(next > low && next < high))
            {
                next = Math.Abs(next - rho) < Arrived * rho ? rho : 0.5 * (low + high);
            }

            double change = Math.Abs(next - rho);
            rho = next;
            if (change <= Arrived * rho || high - low <= Arrived * rho)
            {
                break;
            }
        }

        return rho;
    }
}
