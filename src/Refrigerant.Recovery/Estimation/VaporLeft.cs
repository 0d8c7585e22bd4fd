using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What is left where there is vapor only: charge less what has left and what oil holds. Never none, so that it is its logarithm that spreads.</summary>
internal static class VaporLeft
{
    /// <summary>Share of the charge that it never falls below.</summary>
    private const double Least = 1e-5;

    /// <summary>kg.</summary>
    public static double Of(double charge, double delivered, double dissolved) => Math.Max(Least * charge, charge - delivered - dissolved);

    /// <summary>What it is multiplied by where it changes by a share: one and the share for small ones, and the inverse for the opposite share.</summary>
    public static double Factor(double share)
    {
        double root = Math.Sqrt(1 + (share * share));
        return share >= 0 ? root + share : 1 / (root - share);
    }
}
