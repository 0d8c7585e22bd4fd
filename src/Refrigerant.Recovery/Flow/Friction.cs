using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Friction in round pipes.</summary>
public static class Friction
{
    /// <summary>Below it the factor would be infinite.</summary>
    private const double SmallestReynolds = 1e-300;

    /// <summary>Darcy friction factor for every Reynolds number, laminar to fully rough.</summary>
    /// <param name="reynolds">Reynolds number ρ·v·D/μ, 1e-300 or more.</param>
    /// <param name="relativeRoughness">Roughness over inner diameter ε/D, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <remarks>
    /// Churchill 1977, Chem. Eng. 84(24), 91: f = 8·[(8/Re)¹² + (A + B)^(−3/2)]^(1/12),
    /// A = {2.457·ln[1/((7/Re)^0.9 + 0.27·ε/D)]}¹⁶, B = (37530/Re)¹⁶.
    /// </remarks>
    public static double Factor(double reynolds, double relativeRoughness)
    {
        Require.InRange(reynolds, SmallestReynolds, double.MaxValue, string.Empty, nameof(reynolds));
        Require.InRange(relativeRoughness, 0, 1, string.Empty, nameof(relativeRoughness));
        return Churchill(reynolds, relativeRoughness);
    }

    internal static double Churchill(double reynolds, double relativeRoughness)
    {
        double laminar = 8 / reynolds;
        if (reynolds < 1)
        {
            return 8 * laminar;
        }

        double a = 2.457 * Math.Log(1 / (Math.Pow(7 / reynolds, 0.9) + (0.27 * relativeRoughness)));
        double b = 37530 / reynolds;
        double sum = Power16(a) + Power16(b);
        double laminar4 = laminar * laminar * laminar * laminar;
        double inner = (laminar4 * laminar4 * laminar4) + (1 / (sum * Math.Sqrt(sum)));
        return 8 * Math.Pow(inner, 1.0 / 12);
    }

    private static double Power16(double x)
    {
        double x2 = x * x;
        double x4 = x2 * x2;
        double x8 = x4 * x4;
        return x8 * x8;
    }
}
