using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Student's t distribution of four degrees of freedom, in closed form: what is known of a charge has longer tails than a normal one.</summary>
/// <remarks>Shaw, J. Comput. Finance 9(4), 37 (2006): the quantile for even degrees of freedom.</remarks>
internal static class StudentT
{
    private const double Smallest = 1e-9;

    /// <summary>Probability below t.</summary>
    public static double Below(double t)
    {
        double y = t / (2 * Math.Sqrt(1 + (0.25 * t * t)));
        return 0.5 + (0.75 * y * (1 - (y * y / 3)));
    }

    /// <summary>The t below which a probability lies.</summary>
    public static double Quantile(double probability)
    {
        double p = Math.Max(Smallest, Math.Min(1 - Smallest, probability));
        double root = Math.Sqrt(4 * p * (1 - p));
        double q = Math.Cos(Math.Acos(Math.Min(1, root)) / 3) / root;
        return Math.Sign(p - 0.5) * 2 * Math.Sqrt(Math.Max(0, q - 1));
    }
}
