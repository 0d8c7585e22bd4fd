using System;
using MathNet.Numerics.LinearAlgebra;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Systems of normal equations.</summary>
internal static class PositiveDefinite
{
    /// <summary>Solves A·x = b by Cholesky's factors; null where A is not positive definite to working precision.</summary>
    public static Vector<double>? Solve(Matrix<double> a, Vector<double> b)
    {
        try
        {
            return a.Cholesky().Solve(b);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
