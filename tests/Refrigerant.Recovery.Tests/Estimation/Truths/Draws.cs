using System;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>Random numbers of a truth.</summary>
public sealed class Draws(int seed)
{
    private readonly Random _random = new(seed);

    public double Unit() => _random.NextDouble();

    public int Below(int number) => _random.Next(number);

    public double Uniform(double low, double high) => low + ((high - low) * _random.NextDouble());

    public double LogUniform(double low, double high) => low * Math.Pow(high / low, _random.NextDouble());

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>One more or less a tolerance.</summary>
    public double Off(double tolerance) => 1 + (tolerance * ((2 * _random.NextDouble()) - 1));
}
