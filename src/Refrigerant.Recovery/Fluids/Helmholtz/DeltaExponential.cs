using System;
using System.Runtime.CompilerServices;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// An exponential of δ that groups of terms share: exp(F) with F = −g·δ^l, or F = −eta·(δ − epsilon)² − beta·(δ − gamma);
/// 1 where g, eta and beta are 0.
/// </summary>
internal readonly struct DeltaExponential
{
    private readonly double _g;
    private readonly int _l;
    private readonly double _eta;
    private readonly double _epsilon;
    private readonly double _beta;
    private readonly double _gamma;

    public DeltaExponential(DeltaExponent exponent, int firstGroup, int endGroup)
    {
        _g = exponent.G;
        _l = exponent.L;
        _eta = exponent.Eta;
        _epsilon = exponent.Epsilon;
        _beta = exponent.Beta;
        _gamma = exponent.Gamma;
        FirstGroup = firstGroup;
        EndGroup = endGroup;
    }

    /// <summary>The first group that has this factor.</summary>
    public int FirstGroup { get; }

    /// <summary>One past the last group that has this factor.</summary>
    public int EndGroup { get; }

    /// <summary>exp(F), δF' and (δF')² + δ²F''.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Evaluate(double delta, ReadOnlySpan<double> powers, out double e, out double e1, out double e2)
    {
        if (_l > 0)
        {
            double f = _g * powers[_l];
            e = Math.Exp(-f);
            e1 = -_l * f;
            e2 = (e1 * e1) - (_l * (_l - 1) * f);
        }
        else if (_eta != 0 || _beta != 0)
        {
            double x = delta - _epsilon;
            e = Math.Exp((-_eta * x * x) - (_beta * (delta - _gamma)));
            e1 = -delta * ((2 * _eta * x) + _beta);
            e2 = (e1 * e1) - (2 * _eta * delta * delta);
        }
        else
        {
            e = 1;
            e1 = 0;
            e2 = 0;
        }
    }
}

/// <summary>The constants of a <see cref="DeltaExponential"/>.</summary>
internal readonly record struct DeltaExponent(double G, int L, double Eta, double Epsilon, double Beta, double Gamma);
