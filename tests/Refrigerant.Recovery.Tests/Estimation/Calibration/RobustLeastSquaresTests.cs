using System.Linq;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>The solver against a closed form, and against MathNet.Numerics' on the same logs.</summary>
public class RobustLeastSquaresTests
{
    /// <summary>Residuals a·z − b with priors z: the normal equations give z = Σa·b/(1 + Σa²).</summary>
    [Fact]
    public void A_straight_line_with_a_prior_has_its_closed_form()
    {
        var line = new Line([1, 2, 3, 1], [0.4, 0.9, 1.7, 0.2]);
        RobustLeastSquares.Solution found = new RobustLeastSquares(line).Solve([0]);
        Assert.True(found.Converged);
        Assert.Equal((0.4 + 1.8 + 5.1 + 0.2) / (1 + 1 + 4 + 9 + 1), found.Unknowns[0], 1e-6);
    }

    /// <summary>Beyond k = 4 a residual counts linearly: with one reading at b far away, z + a·sign·4 = 0.</summary>
    [Fact]
    public void A_wild_reading_pulls_with_a_bounded_force()
    {
        RobustLeastSquares.Solution near = new RobustLeastSquares(new Line([1], [50])).Solve([0]);
        RobustLeastSquares.Solution far = new RobustLeastSquares(new Line([1], [5000])).Solve([0]);
        Assert.Equal(4, near.Unknowns[0], 1e-2);
        Assert.Equal(4, far.Unknowns[0], 1e-2);
    }

    [Fact]
    public void It_ends_no_higher_than_the_general_solver()
    {
        for (int seed = 0; seed < 6; seed++)
        {
            SimulatedJob job = SimulatedJob.Draw(6000 + seed);
            FitProblem problem = CalibrationFit.Problem([new LoggedJob(job.Told, Simulation.Log(job, seed, rests: true, discharge: false))], new CalibrationOptions());
            double own = Squares(problem, new RobustLeastSquares(problem).Solve(new double[problem.Unknowns]).Unknowns);
            Assert.InRange(own, 0, 1.02 * Squares(problem, General(problem)));
        }
    }

    private static double Squares(FitProblem problem, double[] unknowns)
    {
        var residuals = new double[problem.Readings + problem.Unknowns];
        problem.Residuals(unknowns, residuals);
        return residuals.Sum(r => r * r);
    }

    private static double[] General(FitProblem problem)
    {
        int all = problem.Readings + problem.Unknowns;
        Vector<double> places = Vector<double>.Build.Dense(all, i => i);
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
            (unknowns, _) =>
            {
                var residuals = new double[all];
                problem.Residuals(unknowns.ToArray(), residuals);
                return Vector<double>.Build.Dense(residuals);
            },
            places,
            Vector<double>.Build.Dense(all),
            null,
            1);
        return new LevenbergMarquardtMinimizer(maximumIterations: 60, functionTolerance: 1e-8, stepTolerance: 1e-6, gradientTolerance: 1e-6)
            .FindMinimum(objective, Vector<double>.Build.Dense(problem.Unknowns)).MinimizingPoint.ToArray();
    }

    private sealed class Line(double[] slopes, double[] values) : ILeastSquaresProblem
    {
        public int Unknowns => 1;

        public int Readings => slopes.Length;

        public void Residuals(double[] unknowns, double[] residuals)
        {
            for (int i = 0; i < slopes.Length; i++)
            {
                residuals[i] = (slopes[i] * unknowns[0]) - values[i];
            }

            residuals[slopes.Length] = unknowns[0];
        }
    }
}
