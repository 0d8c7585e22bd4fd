using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// A two-phase equilibrium at a temperature and a pressure by successive substitution of K factors: slow, but it goes downhill in Gibbs energy
/// where Newton has no near start, as in cold liquids that almost split into two (Michelsen 1982, doi:10.1016/0378-3812(82)85002-4). Every few
/// steps the dominant eigenvalue is extrapolated (Orbach and Crowe 1971, doi:10.1002/cjce.5450490405). It ends in a start for Newton. The liquid
/// counts as one phase, even where it would itself split into two (R-446A below 173 K).
/// </summary>
internal static class SubstitutionFlash
{
    private const int MaximumIterations = 600;

    /// <summary>Change of ln K at which Newton takes over.</summary>
    private const double Arrived = 1e-8;

    /// <summary>Steps between two extrapolations.</summary>
    private const int Cycle = 6;

    /// <summary>The largest eigenvalue that is extrapolated.</summary>
    private const double LargestEigenvalue = 0.98;

    /// <summary>The vapor fraction stays this far from 0 and 1.</summary>
    private const double Inside = 1e-12;

    /// <summary>
    /// Solves from the K factors in <see cref="MixtureScratch.LogK"/>; true where both phases are there.
    /// </summary>
    /// <param name="engine">The blend.</param>
    /// <param name="scratch">Its scratchpad, with a start.</param>
    /// <param name="temperature">K.</param>
    /// <param name="pressure">Pa, between that of the dew and that of the bubble point.</param>
    public static bool TrySolve(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure)
    {
        PhaseSplit split = scratch.Split;
        double[] z = engine.Composition;
        double[] logK = scratch.LogK;
        double[] last = scratch.OtherLogK;
        double beta = 0.5;
        double lastSquare = 0;
        double reduced = ReducedLiquid(engine, scratch.Bulk, temperature);
        for (int k = 1; k <= MaximumIterations; k++)
        {
            beta = Math.Max(Inside, Math.Min(1 - Inside, RachfordRice.VaporFraction(z, logK)));

            // Without roots at the compositions of the moment there may be some at the next.
            _ = TryEvaluate(split, z, logK, beta, temperature, pressure, reduced);
            double offset = Math.Log(split.Liquid.Rho / split.Vapor.Rho);
            double change = 0, square = 0, product = 0;
            for (int i = 0; i < z.Length; i++)
            {
                double step = split.Liquid.LogPhi[i] - split.Vapor.LogPhi[i] + offset - logK[i];
                change = Math.Max(change, Math.Abs(step));
                square += step * step;
                product += step * last[i];
                last[i] = step;
                logK[i] += step;
            }

            if (!(change < double.PositiveInfinity))
            {
                return false;
            }

            if (change < Arrived)
            {
                break;
            }

            double eigenvalue = lastSquare > 0 ? product / lastSquare : 0;
            lastSquare = square;
            if (k % Cycle == 0 && eigenvalue > 0 && eigenvalue < LargestEigenvalue)
            {
                for (int i = 0; i < z.Length; i++)
                {
                    logK[i] += last[i] * eigenvalue / (1 - eigenvalue);
                }
            }
        }

        beta = Math.Max(Inside, Math.Min(1 - Inside, RachfordRice.VaporFraction(z, logK)));
        if (!TryEvaluate(split, z, logK, beta, temperature, pressure, reduced))
        {
            return false;
        }

        split.Temperature = temperature;
        split.LiquidVolume = (1 - beta) / split.Liquid.Rho;
        split.VaporVolume = beta / split.Vapor.Rho;
        return split.Solve(SplitGoal.TemperaturePressure, z, temperature, pressure, oneLiquid: true) == SplitOutcome.TwoPhase;
    }

    /// <summary>Liquid and vapor of the K factors, with the densities they have at the pressure; false where one of them has none.</summary>
    private static bool TryEvaluate(
        PhaseSplit split, double[] z, double[] logK, double beta, double temperature, double pressure, double reducedLiquid)
    {
        for (int i = 0; i < z.Length; i++)
        {
            double k = Math.Exp(logK[i]);
            double liquid = z[i] / (1 + (beta * (k - 1)));
            split.LiquidAmounts[i] = liquid;
            split.VaporAmounts[i] = k * liquid;
        }

        split.Liquid.SetAmounts(split.LiquidAmounts);
        split.Vapor.SetAmounts(split.VaporAmounts);
        split.Liquid.SetTemperature(temperature);
        split.Vapor.SetTemperature(temperature);
        bool areRoots = DensityRoot.TryLiquid(split.Liquid, pressure, out double liquidDensity, reducedLiquid)
            & DensityRoot.TryVapor(split.Vapor, pressure, out double vaporDensity);
        split.Liquid.SetDensity(liquidDensity);
        split.Vapor.SetDensity(vaporDensity);
        for (int i = 0; i < z.Length; i++)
        {
            split.VaporAmounts[i] *= beta;
        }

        return areRoots;
    }

    /// <summary>A little more than the reduced density of the bulk's saturated liquid.</summary>
    private static double ReducedLiquid(MixtureEngine engine, MixturePhase bulk, double temperature)
    {
        const double margin = 1.08;
        return margin * engine.Curves.Bubble.At(temperature).Density / (engine.MolarMass * bulk.ReducingDensity);
    }
}
