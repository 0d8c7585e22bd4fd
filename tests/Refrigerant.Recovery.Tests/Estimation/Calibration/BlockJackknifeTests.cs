using System;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;
using Refrigerant.Recovery.Estimation.Calibration;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

public class BlockJackknifeTests
{
    /// <summary>A mean of n readings of unit trust with a prior of one: the curvature leaves 1/(n + 1); without a block the mean of the rest, (B − 1)/B·Σ(θ₍b₎ − mean)² of which is by hand.</summary>
    [Fact]
    public void A_mean_has_the_variances_by_hand()
    {
        double[] read = [1.0, 1.4, 0.2, 2.0, 0.7, 1.9, 3.1, 0.4];
        const int Blocks = 4;
        int n = read.Length;
        double fit = read.Sum() / (n + 1);
        (double[] curvature, double[] blocks) = BlockJackknife.Variances(Solution(read, fit), [.. Enumerable.Range(0, n).Select(i => (i + 0.5) / n)], Blocks);
        Assert.Equal(1.0 / (n + 1), curvature[0], 1e-12);

        // The step without block b: −(gradient of the rest)/(curvature of the rest).
        double[] without = [.. Enumerable.Range(0, Blocks).Select(b => read.Where((_, i) => i / 2 != b).Sum() / (n - 2 + 1))];
        Assert.Equal((Blocks - 1.0) / Blocks * without.Sum(t => Math.Pow(t - without.Average(), 2)), blocks[0], 1e-12);
    }

    /// <summary>Two logs have twice the blocks: each reading belongs to a stretch of its own log.</summary>
    [Fact]
    public void Each_log_has_its_blocks()
    {
        double[] read = [1.0, 1.4, 0.2, 2.0];
        double fit = read.Sum() / 5;
        (_, double[] blocks) = BlockJackknife.Variances(Solution(read, fit), [0.1, 0.9, 1.1, 1.9], 2);
        double[] without = [.. Enumerable.Range(0, 4).Select(b => read.Where((_, i) => i != b).Sum() / 4)];
        Assert.Equal(0.75 * without.Sum(t => Math.Pow(t - without.Average(), 2)), blocks[0], 1e-12);
    }

    /// <summary>Where the equations cannot be solved nothing was told: what was known before stays.</summary>
    [Fact]
    public void Without_a_solution_nothing_was_told()
    {
        Matrix<double> slopes = Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, 1.0 }, { 2.0, 2.0 } });
        var solution = new RobustLeastSquares.Solution([0, 0], 1, true, slopes, Vector<double>.Build.Dense(2, 1), 2);
        (double[] curvature, double[] blocks) = BlockJackknife.Variances(solution, [0.2, 0.8], 2);
        Assert.Equal([1, 1], curvature);
        Assert.Equal([0, 0], blocks);
    }

    [Fact]
    public void Normal_equations_are_solved_where_they_can_be()
    {
        Matrix<double> a = Matrix<double>.Build.DenseOfArray(new[,] { { 4.0, 1.0 }, { 1.0, 3.0 } });
        Vector<double> x = PositiveDefinite.Solve(a, Vector<double>.Build.DenseOfArray([1, 2]))!;
        Assert.Equal(1.0 / 11, x[0], 1e-12);
        Assert.Equal(7.0 / 11, x[1], 1e-12);
        Assert.Null(PositiveDefinite.Solve(Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, 2.0 }, { 2.0, 1.0 } }), x));
    }

    private static RobustLeastSquares.Solution Solution(double[] read, double fit)
    {
        // Residuals fit − reading, and that of the prior.
        int n = read.Length;
        return new RobustLeastSquares.Solution(
            [fit], 1, true, Matrix<double>.Build.Dense(n + 1, 1, 1), Vector<double>.Build.Dense(n + 1, i => i < n ? fit - read[i] : fit), n);
    }
}
