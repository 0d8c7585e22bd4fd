using MathNet.Numerics.Distributions;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>How few and how many of some tries may do what is stated of all, by chance.</summary>
internal static class Bounds
{
    /// <summary>A test fails by chance this seldom.</summary>
    private const double Chance = 1e-3;

    /// <summary>The count below which tries of the stated probability fall less often than by chance.</summary>
    public static int Least(int tries, double probability)
    {
        int least = 0;
        while (least < tries && Binomial.CDF(probability, tries, least) < Chance)
        {
            least++;
        }

        return least;
    }

    /// <summary>The number that events of the stated mean exceed less often than by chance.</summary>
    public static int Most(double mean)
    {
        int most = 0;
        while (1 - Poisson.CDF(mean, most) >= Chance)
        {
            most++;
        }

        return most;
    }
}
