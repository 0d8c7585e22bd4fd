using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Michelsen's tangent-plane test (1982, Fluid Phase Equilib. 9, 1, doi:10.1016/0378-3812(82)85001-2) of a phase against one trial phase, by
/// successive substitution.
/// </summary>
internal static class PhaseStability
{
    private const int MaximumIterations = 60;

    /// <summary>How far the sum of the trial's amounts must exceed 1.</summary>
    private const double Excess = 1e-9;

    private const double Arrived = 1e-10;

    /// <summary>Whether a trial phase that starts from a composition would form.</summary>
    /// <param name="bulk">The phase tested, evaluated.</param>
    /// <param name="trial">The trial phase; its composition at the end is that which would form.</param>
    /// <param name="amounts">The start; the trial's amounts at the end.</param>
    /// <param name="isLiquid">Whether the trial is a liquid.</param>
    /// <param name="reducedStart">Where a liquid's density is sought from, in reducing densities: just above that of the liquids at hand.</param>
    /// <param name="excess">The sum of the trial's amounts less 1; −1 where no trial phase other than the bulk was found.</param>
    public static bool Forms(MixturePhase bulk, MixturePhase trial, Span<double> amounts, bool isLiquid, double reducedStart, out double excess)
    {
        excess = -1;
        double pressure = bulk.Pressure;
        if (!(pressure > 0))
        {
            return !isLiquid;
        }

        for (int k = 0; k < MaximumIterations; k++)
        {
            trial.SetAmounts(amounts);
            trial.SetTemperature(bulk.T);

            // Without a root at the composition of the moment there may be one at the next.
            bool isRoot = isLiquid ? DensityRoot.TryLiquid(trial, pressure, out double density, reducedStart) : DensityRoot.TryVapor(trial, pressure, out density);
            trial.SetDensity(density);
            double sum = 0, change = 0, distance = Math.Abs(Math.Log(trial.Rho / bulk.Rho));
            for (int i = 0; i < amounts.Length; i++)
            {
                double next = bulk.X[i] * bulk.Rho * Math.Exp(bulk.LogPhi[i] - trial.LogPhi[i]) / trial.Rho;
                change = Math.Max(change, Math.Abs(next - amounts[i]));
                distance = Math.Max(distance, Math.Abs(trial.X[i] - bulk.X[i]));
                amounts[i] = next;
                sum += next;
            }

            if (!(sum > 0) || double.IsInfinity(sum) || distance < 1e-4)
            {
                break;
            }

            if (isRoot && (change < Arrived || (sum > 1 + Excess && change < 1e-3)))
            {
                excess = sum - 1;
                return sum > 1 + Excess;
            }
        }

        return false;
    }
}
