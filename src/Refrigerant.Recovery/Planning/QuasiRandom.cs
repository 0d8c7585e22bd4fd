using System;

namespace Refrigerant.Recovery.Planning;

/// <summary>
/// A low-discrepancy sequence in the unit cube: the additive recurrence x_k = frac(x_0 + k·α) with α_j = φ^−(j+1), φ the positive root of
/// x^(d+1) = x + 1 (Kronecker sequence: Niederreiter 1992, Random Number Generation and Quasi-Monte Carlo Methods, SIAM). The start x_0
/// follows from a seed, so the same seed gives the same sample on every platform.
/// </summary>
internal sealed class QuasiRandom
{
    private const int RootSteps = 64;

    private readonly double[] _start;
    private readonly double[] _step;

    public QuasiRandom(int dimensions, int seed)
    {
        double root = 2;
        for (int i = 0; i < RootSteps; i++)
        {
            root = Math.Pow(1 + root, 1.0 / (dimensions + 1));
        }

        _start = new double[dimensions];
        _step = new double[dimensions];
        ulong state = (uint)seed;
        for (int j = 0; j < dimensions; j++)
        {
            _step[j] = Math.Pow(1 / root, j + 1);
            _start[j] = Next(ref state);
        }
    }

    /// <summary>Coordinate <paramref name="dimension"/> of point <paramref name="index"/>, 0 (included) to 1 (excluded).</summary>
    public double At(int index, int dimension)
    {
        double value = _start[dimension] + ((index + 1) * _step[dimension]);
        return value - Math.Floor(value);
    }

    /// <summary>SplitMix64 (Steele, Lea and Flood 2014, OOPSLA, doi:10.1145/2660193.2660195), as a fraction of one.</summary>
    private static double Next(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
        }
    }
}
