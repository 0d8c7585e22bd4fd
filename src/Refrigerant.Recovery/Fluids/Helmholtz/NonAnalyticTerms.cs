using System;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The terms that carry the critical region of carbon dioxide (Span and Wagner 1996, J. Phys. Chem. Ref. Data 25, 1509,
/// doi:10.1063/1.555991, table 32): n·Δ^b·δ·ψ with ψ = exp(−C·(δ − 1)² − D·(τ − 1)²).
/// </summary>
internal static class NonAnalyticTerms
{
    /// <summary>Where ψ is below exp(−50) ≈ 2e-22 the terms and their derivatives are lost in rounding.</summary>
    private const double NegligibleExponent = 50;

    /// <summary>Keeps Δ^(b − 2) finite in the critical point itself, where the second derivatives diverge.</summary>
    private const double SmallestDistance = 1e-30;

    /// <summary>Adds the terms and all derivatives up to second order.</summary>
    [MethodImpl(Jit.Hot)]
    public static void Add(double[,] rows, double tau, double delta, ref HelmholtzDerivatives sum)
    {
        double x = delta - 1;
        double square = x * x;
        double y = tau - 1;
        double powerK = 0, powerA = 0, knownK = 0, knownA = 0;
        for (int i = 0; i < rows.GetLength(0); i++)
        {
            double n = rows[i, 0], a = rows[i, 1], b = rows[i, 2], k = 0.5 / rows[i, 3];
            double capitalA = rows[i, 4], capitalB = rows[i, 5], c = rows[i, 6], d = rows[i, 7];
            double exponent = (c * square) + (d * y * y);
            if (exponent > NegligibleExponent)
            {
                continue;
            }

            double psi = Math.Exp(-exponent);
            double psiD = -2 * c * x * psi;
            double psiDD = 2 * c * ((2 * c * square) - 1) * psi;
            double psiT = -2 * d * y * psi;
            double psiTT = 2 * d * ((2 * d * y * y) - 1) * psi;
            double psiDT = 4 * c * d * x * y * psi;

            if (k != knownK)
            {
                powerK = Math.Pow(square, k - 1);
                knownK = k;
            }

            if (a != knownA)
            {
                powerA = Math.Pow(square, a - 1);
                knownA = a;
            }

            double theta = -y + (capitalA * powerK * square);
            double distance = Math.Max((theta * theta) + (capitalB * powerA * square), SmallestDistance);
            double slope = (4 * k * capitalA * theta * powerK) + (2 * capitalB * a * powerA);
            double distanceD = x * slope;
            double distanceDD = slope
                + (4 * capitalB * a * (a - 1) * powerA)
                + (8 * k * k * capitalA * capitalA * square * powerK * powerK)
                + (8 * k * (k - 1) * capitalA * theta * powerK);

            double f = Math.Pow(distance, b);
            double f1 = b * f / distance;
            double f2 = (b - 1) * f1 / distance;
            double fD = f1 * distanceD;
            double fDD = (f1 * distanceDD) + (f2 * distanceD * distanceD);
            double fT = -2 * theta * f1;
            double fTT = (2 * f1) + (4 * theta * theta * f2);
            double fDT = (-4 * k * capitalA * x * powerK * f1) - (2 * theta * f2 * distanceD);

            double psiPlus = psi + (delta * psiD);
            sum.A += n * delta * f * psi;
            sum.D += n * delta * ((f * psiPlus) + (delta * fD * psi));
            sum.DD += n * delta * delta * ((f * ((2 * psiD) + (delta * psiDD))) + (2 * fD * psiPlus) + (delta * fDD * psi));
            sum.T += n * delta * tau * ((fT * psi) + (f * psiT));
            sum.TT += n * delta * tau * tau * ((fTT * psi) + (2 * fT * psiT) + (f * psiTT));
            sum.DT += n * delta * tau
                * ((f * (psiT + (delta * psiDT))) + (delta * fD * psiT) + (fT * psiPlus) + (delta * fDT * psi));
        }
    }
}
