using System;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>Random numbers that are the same everywhere for a seed (xorshift64*, Vigna, ACM Trans. Math. Softw. 42, 30, 2016).</summary>
internal sealed class Noise
{
    private ulong _state;

    public Noise(int seed)
    {
        _state = ((ulong)(uint)seed * 0x9E3779B97F4A7C15UL) + 0x632BE59BD9B4E019UL;
        for (int i = 0; i < 8; i++)
        {
            Next();
        }
    }

    public double Uniform(double low, double high) => low + ((high - low) * Next());

    public double Logarithmic(double low, double high) => Math.Exp(Uniform(Math.Log(low), Math.Log(high)));

    public int Below(int count) => Math.Min(count - 1, (int)(count * Next()));

    public double Gauss(double sigma) => sigma * Math.Sqrt(-2 * Math.Log(1 - Next())) * Math.Cos(2 * Math.PI * Next());

    private double Next()
    {
        _state ^= _state >> 12;
        _state ^= _state << 25;
        _state ^= _state >> 27;
        return (_state * 0x2545F4914F6CDD1DUL >> 11) * (1.0 / (1UL << 53));
    }
}
