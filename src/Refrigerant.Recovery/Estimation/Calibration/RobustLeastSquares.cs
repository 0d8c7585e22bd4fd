using System;
using System.Threading;
using MathNet.Numerics.LinearAlgebra;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Nonlinear least squares with priors, in which a wild reading weighs no more than its distance.</summary>
/// <remarks>
/// Levenberg and Marquardt's method (Marquardt, J. Soc. Ind. Appl. Math. 11, 431, 1963) on iteratively reweighted residuals with Huber's
/// function (Huber, Ann. Math. Stat. 35, 73, 1964): r² up to k, then 2·k·|r| − k².
/// </remarks>
internal sealed class RobustLeastSquares
{
    private const double Huber = 4;
    private const int MostIterations = 50;
    private const int MostTries = 7;

    /// <summary>Step for slopes to either side, prior standard deviations: wide enough that the moment at which the last liquid goes, between two readings, does not make them rough.</summary>
    private const double Difference = 0.1;

    /// <summary>Relative gain of the sum of squares, by a step that is hardly damped, that is not worth another iteration.</summary>
    private const double Enough = 1e-4;

    private const double LargestStep = 1.5;
    private const double FirstDamping = 1e-2, LeastDamping = 1e-6;

    private readonly ILeastSquaresProblem _problem;
    private readonly int _all;
    private readonly double[] _below;

    public RobustLeastSquares(ILeastSquaresProblem problem)
    {
        _problem = problem;
        _all = problem.Readings + problem.Unknowns;
        _below = new double[_all];
    }

    /// <summary>Finds the unknowns with the smallest sum of squares that a start leads to.</summary>
    public Solution Solve(double[] start, CancellationToken cancellation = default)
    {
        double[] unknowns = (double[])start.Clone();
        var residuals = new double[_all];
        var trial = new double[_all];
        _problem.Residuals(unknowns, residuals);
        double cost = Cost(residuals);
        double damping = FirstDamping;
        Matrix<double> slopes = Matrix<double>.Build.Dense(_all, _problem.Unknowns);
        Matrix<double> normal = slopes;
        bool converged = false;
        for (int iteration = 0; iteration < MostIterations && !converged; iteration++)
        {
            cancellation.ThrowIfCancellationRequested();
            Slopes(unknowns, trial, slopes);
            Vector<double> roots = Roots(residuals);
            Matrix<double> weighted = Scaled(slopes, roots);
            normal = weighted.TransposeThisAndMultiply(weighted);
            Vector<double> gradient = weighted.TransposeThisAndMultiply(Vector<double>.Build.Dense(_all, i => roots[i] * residuals[i]));
            converged = true;
            for (int t = 0; t < MostTries; t++)
            {
                Matrix<double> damped = normal.Clone();
                damped.SetDiagonal(normal.Diagonal() * (1 + damping));
                if (PositiveDefinite.Solve(damped, -gradient) is not Vector<double> step)
                {
                    damping *= 5;
                    continue;
                }

                var next = new double[unknowns.Length];
                for (int j = 0; j < next.Length; j++)
                {
                    next[j] = unknowns[j] + Math.Max(-LargestStep, Math.Min(LargestStep, step[j]));
                }

                _problem.Residuals(next, trial);
                double reached = Cost(trial);
                if (reached < cost)
                {
                    converged = cost - reached < Enough * cost && damping <= FirstDamping;
                    (residuals, trial) = (trial, residuals);
                    unknowns = next;
                    cost = reached;
                    damping = Math.Max(LeastDamping, damping / 5);
                    break;
                }

                damping *= 5;
            }
        }

        Slopes(unknowns, trial, slopes);
        Vector<double> last = Roots(residuals);
        Matrix<double> final = Scaled(slopes, last);
        return new Solution(unknowns, cost, converged, final, Vector<double>.Build.Dense(_all, i => last[i] * residuals[i]), _problem.Readings);
    }

    private static Matrix<double> Scaled(Matrix<double> slopes, Vector<double> roots) =>
        Matrix<double>.Build.Dense(slopes.RowCount, slopes.ColumnCount, (i, j) => roots[i] * slopes[i, j]);

    private double Cost(double[] residuals)
    {
        double sum = 0;
        for (int i = 0; i < residuals.Length; i++)
        {
            double r = Math.Abs(residuals[i]);
            sum += i >= _problem.Readings || r < Huber ? r * r : (2 * Huber * r) - (Huber * Huber);
        }

        return sum;
    }

    /// <summary>Roots of the weights; the priors' are one.</summary>
    private Vector<double> Roots(double[] residuals) => Vector<double>.Build.Dense(
        _all, i => i >= _problem.Readings || Math.Abs(residuals[i]) < Huber ? 1 : Math.Sqrt(Huber / Math.Abs(residuals[i])));

    private void Slopes(double[] unknowns, double[] trial, Matrix<double> slopes)
    {
        for (int j = 0; j < unknowns.Length; j++)
        {
            double at = unknowns[j];
            unknowns[j] = at + Difference;
            _problem.Residuals(unknowns, trial);
            unknowns[j] = at - Difference;
            _problem.Residuals(unknowns, _below);
            unknowns[j] = at;
            for (int i = 0; i < trial.Length; i++)
            {
                slopes[i, j] = (trial[i] - _below[i]) / (2 * Difference);
            }
        }
    }

    /// <summary>Where the search ended.</summary>
    internal sealed class Solution(double[] unknowns, double cost, bool converged, Matrix<double> slopes, Vector<double> residuals, int readings)
    {
        /// <summary>The unknowns.</summary>
        public double[] Unknowns { get; } = unknowns;

        /// <summary>Sum of squares, wild ones held down, priors included.</summary>
        public double Cost { get; } = cost;

        /// <summary>Whether another iteration would not have been worth it.</summary>
        public bool Converged { get; } = converged;

        /// <summary>Slopes of the weighted residuals.</summary>
        public Matrix<double> Slopes { get; } = slopes;

        /// <summary>Weighted residuals.</summary>
        public Vector<double> Residuals { get; } = residuals;

        /// <summary>How many of them are of readings.</summary>
        public int Readings { get; } = readings;
    }
}
