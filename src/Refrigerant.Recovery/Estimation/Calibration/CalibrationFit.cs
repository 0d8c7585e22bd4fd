using System;
using System.Linq;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Logs fitted: the values that bring the reduced model closest, and how sure they are.</summary>
internal sealed class CalibrationFit
{
    /// <summary>Blocks a log is split into for the jackknife.</summary>
    private const int Blocks = 8;

    /// <summary>Charges tried as starts, prior standard deviations: a dry-out seen where there was none is a valley of its own.</summary>
    private static readonly double[] Starts = [0, -1.2, 1.2];

    private CalibrationFit(FitPrior prior, double[] values, double[] sigma, double misfit, bool converged)
    {
        Prior = prior;
        Values = values;
        Sigma = sigma;
        Misfit = misfit;
        Converged = converged;
    }

    /// <summary>What was known before.</summary>
    public FitPrior Prior { get; }

    /// <summary>Fitted values, in the places of <see cref="FitIndex"/>.</summary>
    public double[] Values { get; }

    /// <summary>Standard deviations after the fit, not above those before.</summary>
    public double[] Sigma { get; }

    /// <summary>Root of the mean square of the residuals of readings, over what each is trusted to.</summary>
    public double Misfit { get; }

    /// <summary>Whether the search came to rest.</summary>
    public bool Converged { get; }

    /// <summary>Fits logs.</summary>
    public static CalibrationFit Run(LoggedJob[] jobs, LogCourse[] courses, CalibrationOptions options)
    {
        ReducedModel[] models = [.. jobs.Select(job => new ReducedModel(new SaturationTable(job.Job.Appliance.Fluid.Model)))];
        ReducedParameters[] typical = [.. jobs.Select((job, i) => ReducedParameters.FromJob(job.Job, models[i].Table))];
        FitPrior prior = FitPrior.Of(jobs, typical, options);
        var problem = new FitProblem(courses, models, typical, prior, options.Instruments);
        var solver = new RobustLeastSquares(problem);
        RobustLeastSquares.Solution? best = null;
        foreach (double charge in Starts)
        {
            var start = new double[problem.Unknowns];
            for (int log = 0; log < jobs.Length; log++)
            {
                start[FitIndex.Set(log) + FitIndex.Charge] = charge;
            }

            RobustLeastSquares.Solution found = solver.Solve(start);
            best = best is null || found.Cost < best.Cost ? found : best;
        }

        double[] variances = BlockJackknife.Variances(best!, problem.Places(), Blocks);
        var values = new double[problem.Unknowns];
        var sigma = new double[problem.Unknowns];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = prior.Mean[i] + (prior.Sigma[i] * best!.Unknowns[i]);
            sigma[i] = prior.Sigma[i] * Math.Sqrt(variances[i]);
        }

        double misfit = Math.Sqrt(best!.Residuals.Take(best.Readings).Sum(r => r * r) / Math.Max(1, best.Readings));
        return new CalibrationFit(prior, values, sigma, misfit, best.Converged);
    }
}
