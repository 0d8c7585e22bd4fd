using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Random numbers that are the same on every platform: xorshift64* (Vigna, ACM Trans. Math. Softw. 42, 30, 2016).</summary>
internal struct RandomNumbers
{
    private const double Scale = 1.0 / (1L << 53);

    private ulong _state;

    public RandomNumbers(int seed)
    {
        _state = 0x9E3779B97F4A7C15UL ^ ((ulong)(uint)seed * 0xBF58476D1CE4E5B9UL);
        for (int i = 0; i < 8; i++)
        {
            Next();
        }
    }

    /// <summary>Above 0 and below 1.</summary>
    public double Next()
    {
        _state ^= _state >> 12;
        _state ^= _state << 25;
        _state ^= _state >> 27;
        return (((_state * 0x2545F4914F6CDD1DUL) >> 11) + 0.5) * Scale;
    }

    /// <summary>From 0 to below a number.</summary>
    public int Below(int number) => (int)(Next() * number);

    /// <summary>Normal, mean 0 and standard deviation 1 (Box and Muller, Ann. Math. Stat. 29, 610, 1958).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(Next())) * Math.Cos(2 * Math.PI * Next());
}
