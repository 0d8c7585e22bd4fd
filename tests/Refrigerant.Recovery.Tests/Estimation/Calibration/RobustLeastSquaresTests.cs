using System;
using System.Threading;
using Refrigerant.Recovery.Estimation.Calibration;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>The solver against closed forms.</summary>
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

    /// <summary>Cancelled from within, at the third time that it asks for residuals: it makes no further iteration.</summary>
    [Fact]
    public void Cancelled_on_its_way_it_makes_no_further_iteration()
    {
        using var cancellation = new CancellationTokenSource();
        int asked = 0;
        var line = new Line([1, 2, 3, 1], [0.4, 0.9, 1.7, 0.2])
        {
            Asked = () =>
            {
                asked++;
                if (asked == 3)
                {
                    cancellation.Cancel();
                }
            },
        };
        Assert.Throws<OperationCanceledException>(() => new RobustLeastSquares(line).Solve([5], cancellation.Token));
        Assert.InRange(asked, 3, 9);
    }

    private sealed class Line(double[] slopes, double[] values) : ILeastSquaresProblem
    {
        public int Unknowns => 1;

        public int Readings => slopes.Length;

        public Action Asked { get; init; } = () => { };

        public void Residuals(double[] unknowns, double[] residuals)
        {
            Asked();
            for (int i = 0; i < slopes.Length; i++)
            {
                residuals[i] = (slopes[i] * unknowns[0]) - values[i];
            }

            residuals[slopes.Length] = unknowns[0];
        }
    }
}
