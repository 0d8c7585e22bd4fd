using MathNet.Numerics.LinearAlgebra;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Variances of what was fitted: by the curvature of the sum of squares, and from how it moves as whole stretches of the logs are left out.</summary>
/// <remarks>
/// Delete-a-block jackknife (Kunsch, Ann. Stat. 17, 1217, 1989): variance = (B − 1)/B·Σ(θ₍b₎ − mean)². The curvature counts residuals as
/// independent, which those of a model that is slightly wrong are not: it does not stand alone. Each fit without a block is one Gauss–Newton step
/// from the full one.
/// </remarks>
internal static class BlockJackknife
{
    /// <summary>Variances of the unknowns over those of their priors.</summary>
    /// <param name="solution">The full fit.</param>
    /// <param name="places">Where each reading lies: number of its log plus share of it.</param>
    /// <param name="blocks">Blocks a log.</param>
    /// <returns>By the curvature, priors included; by the blocks.</returns>
    public static (double[] Curvature, double[] Blocks) Variances(RobustLeastSquares.Solution solution, double[] places, int blocks)
    {
        Matrix<double> slopes = solution.Slopes;
        Matrix<double> normal = slopes.TransposeThisAndMultiply(slopes);
        Vector<double> gradient = slopes.TransposeThisAndMultiply(solution.Residuals);
        int logs = 1 + (int)places[places.Length - 1];
        int count = blocks * logs;
        int unknowns = solution.Unknowns.Length;
        var moved = new Vector<double>[count];
        Vector<double> mean = Vector<double>.Build.Dense(unknowns);
        for (int b = 0; b < count; b++)
        {
            Matrix<double> without = normal.Clone();
            Vector<double> rest = gradient.Clone();
            for (int i = 0; i < places.Length; i++)
            {
                if ((int)(places[i] * blocks) == b)
                {
                    Vector<double> row = slopes.Row(i);
                    without -= row.OuterProduct(row);
                    rest -= row * solution.Residuals[i];
                }
            }

            if (PositiveDefinite.Solve(without, -rest) is not Vector<double> step)
            {
                return Unknown(unknowns);
            }

            moved[b] = step;
            mean += step / count;
        }

        var curvature = new double[unknowns];
        for (int j = 0; j < unknowns; j++)
        {
            if (PositiveDefinite.Solve(normal, Vector<double>.Build.Dense(unknowns, k => k == j ? 1 : 0)) is not Vector<double> column)
            {
                return Unknown(unknowns);
            }

            curvature[j] = column[j];
        }

        Vector<double> variances = Vector<double>.Build.Dense(unknowns);
        foreach (Vector<double> each in moved)
        {
            Vector<double> away = each - mean;
            variances += away.PointwiseMultiply(away) * ((count - 1.0) / count);
        }

        return (curvature, variances.ToArray());
    }

    /// <summary>The variances of the priors: where the equations cannot be solved to working precision nothing was told.</summary>
    private static (double[] Curvature, double[] Blocks) Unknown(int unknowns) => (Vector<double>.Build.Dense(unknowns, 1).ToArray(), new double[unknowns]);
}
