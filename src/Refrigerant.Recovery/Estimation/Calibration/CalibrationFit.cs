using System;
using System.Linq;
using System.Threading;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Logs fitted: the values that bring the reduced model closest, and how sure they are.</summary>
internal sealed class CalibrationFit
{
    /// <summary>Blocks a log is split into for the jackknife.</summary>
    private const int BlocksPerLog = 8;

    /// <summary>
    /// Charges and what the oil holds tried as starts, prior standard deviations: a dry-out seen where there was none is a valley of its own, and so is oil that gives off what was liquid.
    /// </summary>
    private static readonly (double Charge, double Dissolved)[] Starts = [(0, -1.5), (-1.2, 0), (1.2, 0)];

    private CalibrationFit(FitPrior prior, int[] first, double[] values, double[] curvature, double[] blocks, double misfit, bool converged)
    {
        Prior = prior;
        First = first;
        Values = values;
        Curvature = curvature;
        Blocks = blocks;
        Misfit = misfit;
        Converged = converged;
    }

    /// <summary>What was known before.</summary>
    public FitPrior Prior { get; }

    /// <summary>The first reading taken of each log; not the first one where liquid was pushed before.</summary>
    public int[] First { get; }

    /// <summary>The parameters of the reduced model for each job as told.</summary>
    public required ReducedParameters[] Typical { get; init; }

    /// <summary>Viscosity of the vapor of each job, Pa·s.</summary>
    public required double[] Viscosity { get; init; }

    /// <summary>Fitted values, in the places of <see cref="FitIndex"/>.</summary>
    public double[] Values { get; }

    /// <summary>Variances after the fit over those before it, were the model without error.</summary>
    public double[] Curvature { get; }

    /// <summary>Variances over those before the fit, from how it moves as stretches of the logs are left out.</summary>
    public double[] Blocks { get; }

    /// <summary>Root of the mean square of the residuals of readings, over what each is trusted to.</summary>
    public double Misfit { get; }

    /// <summary>Whether the search came to rest.</summary>
    public bool Converged { get; }

    /// <summary>Fits logs.</summary>
    public static CalibrationFit Run(LoggedJob[] jobs, CalibrationOptions options, CancellationToken cancellation)
    {
        Setup setup = Prepare(jobs, options);
        FitPrior prior = setup.Prior;
        FitProblem problem = setup.Problem;
        var solver = new RobustLeastSquares(problem);
        RobustLeastSquares.Solution? best = null;
        foreach ((double charge, double dissolved) in Starts)
        {
            var start = new double[problem.Unknowns];
            for (int log = 0; log < jobs.Length; log++)
            {
                start[FitIndex.Set(log) + FitIndex.Charge] = charge;
                start[FitIndex.Set(log) + FitIndex.Dissolved] = dissolved;
            }

            RobustLeastSquares.Solution found = solver.Solve(start, cancellation);
            best = best is null || found.Cost < best.Cost ? found : best;
        }

        (double[] curvature, double[] blocks) = BlockJackknife.Variances(best!, problem.Places(), BlocksPerLog);
        var values = new double[problem.Unknowns];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = prior.Mean[i] + (prior.Sigma[i] * FitProblem.Bounded(best!.Unknowns[i]));
        }

        double misfit = Math.Sqrt(best!.Residuals.Take(best.Readings).Sum(r => r * r) / Math.Max(1, best.Readings));
        return new CalibrationFit(prior, setup.First, values, curvature, blocks, misfit, best.Converged)
        {
            Typical = setup.Typical,
            Viscosity = setup.Viscosity,
        };
    }

    /// <summary>What is made small for logs.</summary>
    internal static FitProblem Problem(LoggedJob[] jobs, CalibrationOptions options) => Prepare(jobs, options).Problem;

    private static Setup Prepare(LoggedJob[] jobs, CalibrationOptions options)
    {
        ReducedModel[] models = [.. jobs.Select(job => new ReducedModel(new SaturationTable(job.Job.Appliance.Fluid.Model)))];
        ReducedParameters[] typical = [.. jobs.Select((job, i) => ReducedParameters.FromJob(job.Job, models[i].Table))];
        ScaleCourse[] scales = [.. jobs.Select(job => ScaleCourse.Of(job.Log, job.Job))];
        int[] first = [.. jobs.Select((job, i) => LiquidStart.End(job.Job, in typical[i], models[i].Table, job.Log, scales[i]))];
        LogCourse[] courses = [.. jobs.Select((job, i) => LogCourse.Of(job, scales[i], first[i], models[i].Table, options.Instruments))];
        FitPrior prior = FitPrior.Of(jobs, typical, first, options);
        return new Setup(
            prior,
            new FitProblem(courses, models, typical, prior, options.Instruments),
            first,
            typical,
            [.. models.Select(model => model.Table.VaporViscosity)]);
    }

    private sealed record Setup(FitPrior Prior, FitProblem Problem, int[] First, ReducedParameters[] Typical, double[] Viscosity);
}
