using System;
using System.Runtime.CompilerServices;
#if NET
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
#endif
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The ideal-gas part of a reduced Helmholtz energy without ln(delta) and without the two constants of the reference state:
/// logTau·ln τ + tauLogTau·τ·ln τ + Σ n·τ^t + Σ n·ln(1 − exp(−t·τ)). Four terms at a time where the processor can, one by one elsewhere, with the same
/// digits.
/// </summary>
internal sealed class IdealHelmholtz
{
    private const int Lanes = TermTable.Row;
    private const int LastLane = Lanes - 1;

    private readonly double _logTau;
    private readonly double _tauLogTau;

    /// <summary>n and t of the powers, then of the Planck–Einstein terms, each filled up to a multiple of four with terms that are 0.</summary>
    private readonly double[] _n;
    private readonly double[] _t;
    private readonly int _powers;

    /// <param name="logTau">Coefficient of ln τ.</param>
    /// <param name="tauLogTau">Coefficient of τ·ln τ.</param>
    /// <param name="powers">Rows n, t: n·τ^t.</param>
    /// <param name="planckEinstein">Rows n, t: n·ln(1 − exp(−t·τ)).</param>
    public IdealHelmholtz(double logTau, double tauLogTau, double[,] powers, double[,] planckEinstein)
    {
        _logTau = logTau;
        _tauLogTau = tauLogTau;
        _powers = Filled(powers.GetLength(0));
        int length = _powers + Filled(planckEinstein.GetLength(0));
        _n = new double[length];
        _t = new double[length];
        for (int i = 0; i < length; i++)
        {
            // Of the terms that only fill up, ln(1 − exp(−τ)) must be a number.
            _t[i] = 1;
        }

        Store(powers, 0);
        Store(planckEinstein, _powers);
    }

    /// <summary>The value, τ times the first and τ² times the second derivative by τ.</summary>
    public void Evaluate(double tau, out double a, out double t, out double tt)
    {
        double log = Math.Log(tau);
#if NET
        if (VectorTerms.IsSupported)
        {
            SumByVector(tau, log, out a, out t, out tt);
        }
        else
#endif
        {
            SumOneByOne(tau, log, out a, out t, out tt);
        }

        a += (_logTau + (_tauLogTau * tau)) * log;
        t += _logTau + (_tauLogTau * tau * (log + 1));
        tt += (_tauLogTau * tau) - _logTau;
    }

    /// <summary>The sums, term by term.</summary>
    [MethodImpl(Jit.Hot)]
    internal void SumOneByOne(double tau, double log, out double a, out double t, out double tt)
    {
        Span<double> sums = stackalloc double[3 * Lanes];
        for (int i = 0; i < _n.Length; i++)
        {
            Span<double> lane = sums.Slice(i & LastLane);
            double n = _n[i], exponent = _t[i];
            if (i < _powers)
            {
                double v = n * Exponential.Of(exponent * log);
                double vt = v * exponent;
                lane[0] += v;
                lane[Lanes] += vt;
                lane[2 * Lanes] += (vt * exponent) - vt;
            }
            else
            {
                double x = exponent * tau;
                double e = Exponential.Of(-x);
                double rest = 1 - e;
                double inverse = 1 / rest;
                double energy = (n * x) * (e * inverse);
                lane[0] += n * NaturalLogarithm.Of(rest);
                lane[Lanes] += energy;
                lane[2 * Lanes] -= (energy * x) * inverse;
            }
        }

        a = (sums[0] + sums[2]) + (sums[1] + sums[3]);
        t = (sums[Lanes] + sums[Lanes + 2]) + (sums[Lanes + 1] + sums[Lanes + 3]);
        tt = (sums[2 * Lanes] + sums[(2 * Lanes) + 2]) + (sums[(2 * Lanes) + 1] + sums[(2 * Lanes) + 3]);
    }

#if NET
    /// <summary>The sums, four terms at a time.</summary>
    [MethodImpl(Jit.Hot)]
    internal void SumByVector(double tau, double log, out double a, out double t, out double tt)
    {
        Vector256<double> sumA = default, sumT = default, sumTT = default;
        ref double ns = ref MemoryMarshal.GetArrayDataReference(_n);
        ref double ts = ref MemoryMarshal.GetArrayDataReference(_t);
        int i = 0;
        for (; i < _powers; i += Lanes)
        {
            Vector256<double> exponent = Vector256.LoadUnsafe(ref ts, (nuint)i);
            Vector256<double> v = Vector256.LoadUnsafe(ref ns, (nuint)i) * Exponential.Of(exponent * Vector256.Create(log));
            Vector256<double> vt = v * exponent;
            sumA += v;
            sumT += vt;
            sumTT += (vt * exponent) - vt;
        }

        for (; i < _n.Length; i += Lanes)
        {
            Vector256<double> n = Vector256.LoadUnsafe(ref ns, (nuint)i);
            Vector256<double> x = Vector256.LoadUnsafe(ref ts, (nuint)i) * Vector256.Create(tau);
            Vector256<double> e = Exponential.Of(-x);
            Vector256<double> rest = Vector256.Create(1.0) - e;
            Vector256<double> inverse = Vector256.Create(1.0) / rest;
            Vector256<double> energy = (n * x) * (e * inverse);
            sumA += n * NaturalLogarithm.Of(rest);
            sumT += energy;
            sumTT -= (energy * x) * inverse;
        }

        a = VectorTerms.Sum(sumA);
        t = VectorTerms.Sum(sumT);
        tt = VectorTerms.Sum(sumTT);
    }
#endif

    private static int Filled(int count) => (count + Lanes - 1) / Lanes * Lanes;

    private void Store(double[,] rows, int start)
    {
        for (int i = 0; i < rows.GetLength(0); i++)
        {
            _n[start + i] = rows[i, 0];
            _t[start + i] = rows[i, 1];
        }
    }
}
