using System;

namespace Refrigerant.Recovery.Mutation;

/// <summary>What a share in a sample says of the whole.</summary>
internal static class Binomial
{
    /// <summary>Two-sided 95 % of the normal distribution.</summary>
    private const double Quantile = 1.95996;

    /// <summary>95 % range of a share, after Wilson 1927 (J. Am. Stat. Assoc. 22, 209).</summary>
    public static (double Low, double High) Range(int hits, int of)
    {
        double share = (double)hits / of;
        double square = Quantile * Quantile / of;
        double middle = share + (square / 2);
        double half = Quantile * Math.Sqrt((share * (1 - share) / of) + (square / (4 * of)));
        return ((middle - half) / (1 + square), (middle + half) / (1 + square));
    }
}
