using System;
using System.IO;
using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>The fit of a log of 25 minutes: all of it, and one search by our solver and by MathNet.Numerics'.</summary>
[MemoryDiagnoser]
public class CalibrationBenchmarks
{
    private LoggedJob _logged = null!;
    private FitProblem _problem = null!;

    [GlobalSetup]
    public void Setup()
    {
        string folder = AppContext.BaseDirectory;
        _logged = new LoggedJob(
            RecoveryJobJson.Read(File.ReadAllText(Path.Combine(folder, "logged-job.json"))), JobLogCsv.Read(File.ReadAllText(Path.Combine(folder, "log.csv"))));
        _problem = CalibrationFit.Problem([_logged], new CalibrationOptions());
    }

    [Benchmark]
    public JobCalibration Fit() => JobCalibration.Fit(_logged.Job, _logged.Log);

    [Benchmark(Baseline = true)]
    public double OwnSolver() => new RobustLeastSquares(_problem).Solve(new double[_problem.Unknowns]).Cost;

    [Benchmark]
    public double MathNetSolver()
    {
        int all = _problem.Readings + _problem.Unknowns;
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
            (unknowns, _) =>
            {
                var residuals = new double[all];
                _problem.Residuals(unknowns.ToArray(), residuals);
                return Vector<double>.Build.Dense(residuals);
            },
            Vector<double>.Build.Dense(all, i => i),
            Vector<double>.Build.Dense(all),
            null,
            1);
        return new LevenbergMarquardtMinimizer(maximumIterations: 60, functionTolerance: 1e-8, stepTolerance: 1e-6, gradientTolerance: 1e-6)
            .FindMinimum(objective, Vector<double>.Build.Dense(_problem.Unknowns)).ModelInfoAtMinimum.Value;
    }
}
