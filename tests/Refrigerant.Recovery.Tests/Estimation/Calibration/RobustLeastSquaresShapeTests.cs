using System;
using Refrigerant.Recovery.Estimation.Calibration;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>RobustLeastSquares on problems whose answers are known.</summary>
public class RobustLeastSquaresShapeTests
{
    /// <summary>Two unknowns: the normal equations (AᵀA + 1)·z = Aᵀb, solved by hand, and the sum of squares with them.</summary>
    [Fact]
    public void Two_unknowns_have_their_closed_form()
    {
        double[] b = [1.2, 0.7, 2.9, 1.1];
        double[,] a = { { 1, 0 }, { 0, 1 }, { 1, 1 }, { 2, -1 } };
        RobustLeastSquares.Solution found = new RobustLeastSquares(new Problem(2, 4, (z, r) =>
        {
            for (int i = 0; i < 4; i++)
            {
                r[i] = (a[i, 0] * z[0]) + (a[i, 1] * z[1]) - b[i];
            }
        })).Solve([0, 0]);

        // AᵀA + 1 = [7 −1; −1 4], Aᵀb = [6.3; 2.5].
        double x = ((4 * 6.3) + 2.5) / 27;
        double y = ((7 * 2.5) + 6.3) / 27;
        Assert.Equal(x, found.Unknowns[0], 1e-4);
        Assert.Equal(y, found.Unknowns[1], 1e-4);
        double cost = (x * x) + (y * y);
        for (int i = 0; i < 4; i++)
        {
            double r = (a[i, 0] * x) + (a[i, 1] * y) - b[i];
            cost += r * r;
            Assert.Equal(a[i, 0], found.Slopes[i, 0], 1e-9);
            Assert.Equal(a[i, 1], found.Slopes[i, 1], 1e-9);
            Assert.Equal(r, found.Residuals[i], 1e-3);
        }

        Assert.Equal(cost, found.Cost, 1e-4);
        Assert.Equal(4, found.Readings);
        Assert.Equal(x, found.Residuals[4], 1e-4);
        Assert.True(found.Converged);
    }

    /// <summary>Rosenbrock's valley without priors that count: from (−1.2, 1) to (1, 1) (Rosenbrock, Comput. J. 3, 175, 1960), here scaled so that the priors move it by next to nothing.</summary>
    [Fact]
    public void A_curved_valley_is_followed_to_its_end()
    {
        const double Weight = 30;
        RobustLeastSquares.Solution found = new RobustLeastSquares(new Problem(2, 2, (z, r) =>
        {
            r[0] = Weight * 10 * (z[1] - (z[0] * z[0]));
            r[1] = Weight * (1 - z[0]);
        })).Solve([-1.2, 1]);
        Assert.Equal(1, found.Unknowns[0], 0.05);
        Assert.Equal(found.Unknowns[0] * found.Unknowns[0], found.Unknowns[1], 0.02);
    }

    /// <summary>Beyond 4 a residual of a reading counts as 2·4·|r| − 16, its slopes by √(4/|r|); a prior's as it is.</summary>
    [Fact]
    public void A_wild_reading_counts_by_its_distance()
    {
        RobustLeastSquares.Solution found = new RobustLeastSquares(new Problem(1, 1, (z, r) => r[0] = z[0] - 100)).Solve([0]);
        Assert.Equal(4, found.Unknowns[0], 0.05);
        double off = 100 - found.Unknowns[0];
        Assert.Equal((8 * off) - 16 + (found.Unknowns[0] * found.Unknowns[0]), found.Cost, 1e-6);
        Assert.Equal(Math.Sqrt(4 / off), found.Slopes[0, 0], 1e-6);
        Assert.Equal(-Math.Sqrt(4 * off), found.Residuals[0], 1e-4);

        // A start far away is not let down by its prior: all of its pull counts.
        Assert.Equal(0, new RobustLeastSquares(new Problem(1, 0, (_, _) => { })).Solve([9]).Unknowns[0], 1e-2);
    }

    /// <summary>No step is longer than one and a half standard deviations.</summary>
    [Fact]
    public void Steps_are_held()
    {
        double last = 0;
        double longest = 0;
        bool isFirst = true;
        new RobustLeastSquares(new Problem(1, 1, (z, r) =>
        {
            // Slopes are taken a tenth to either side.
            longest = isFirst ? 0 : Math.Max(longest, Math.Abs(z[0] - last));
            isFirst = false;
            last = z[0];
            r[0] = 3 * (z[0] - 8);
        })).Solve([0]);
        Assert.InRange(longest, 1.4, 1.61);
    }

    /// <summary>What it was given stays as it was.</summary>
    [Fact]
    public void A_start_is_not_changed()
    {
        double[] start = [0.3];
        new RobustLeastSquares(new Problem(1, 1, (z, r) => r[0] = z[0] - 2)).Solve(start);
        Assert.Equal(0.3, start[0]);
    }

    private sealed class Problem(int unknowns, int readings, Action<double[], double[]> residuals) : ILeastSquaresProblem
    {
        public int Unknowns => unknowns;

        public int Readings => readings;

        public void Residuals(double[] z, double[] r)
        {
            residuals(z, r);
            Array.Copy(z, 0, r, readings, unknowns);
        }
    }
}
