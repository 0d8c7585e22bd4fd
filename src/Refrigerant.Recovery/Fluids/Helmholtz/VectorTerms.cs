#if NET
using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Sums over a <see cref="TermTable"/>, four terms at a time. <see cref="PlainTerms"/> does the same operations one by one.</summary>
internal static class VectorTerms
{
    private const int Most = TermTable.MostExponentials;

    /// <summary>Whether the processor has what it takes.</summary>
    public static bool IsSupported => Vector256.IsHardwareAccelerated;

    [MethodImpl(Jit.Hot)]
    public static void Isotherm(TermTable table, double tau, double log, Span<double> isotherm)
    {
        ref double a = ref MemoryMarshal.GetReference(isotherm);
        double first = Exponential.FirstDigits(log);
        Vector256<double> logs = Vector256.Create(first), rests = Vector256.Create(log - first);
        int i = 0;
        for (; i < table.PowerEnd; i += TermTable.Row)
        {
            Vector256<double> t = Load(table.T, i);
            (Load(table.N, i) * Exponential.Of(t * logs, t * rests)).StoreUnsafe(ref a, (nuint)i);
        }

        Vector256<double> taus = Vector256.Create(tau), twoTau = taus + taus, twoTau2 = twoTau * taus;
        GeneralExponents general = table.General;
        int length = table.Length - table.PowerEnd;
        for (int k = 0; k < length; i += TermTable.Row, k += TermTable.Row)
        {
            Vector256<double> t = Load(table.T, i), beta = Load(general.TauBeta, k);
            Vector256<double> y = taus - Load(general.TauGamma, k);
            Vector256<double> by = beta * y;
            Vector256<double> slope = t - (by * twoTau);
            (Load(table.N, i) * Exponential.Of((t * logs) - (by * y), t * rests)).StoreUnsafe(ref a, (nuint)i);
            slope.StoreUnsafe(ref a, (nuint)(table.Length + k));
            ((slope * slope) - (t + (beta * twoTau2))).StoreUnsafe(ref a, (nuint)(table.Length + length + k));
        }
    }

    [MethodImpl(Jit.Hot)]
    public static void ByDensity(TermTable table, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm, out double d, out double dd)
    {
        Vector256<double> sumD = default, sumDD = default;
        ref double power = ref MemoryMarshal.GetReference(powers);
        ref double a = ref MemoryMarshal.GetReference(isotherm);
        Span<double> exponentials = stackalloc double[3 * Most];
        ref double e = ref MemoryMarshal.GetReference(exponentials);
        Evaluate(table.Exponentials, ref power, ref e);
        int i = 0;
        for (; i < table.PolynomialEnd; i += TermTable.Row)
        {
            Vector256<double> v = Load(ref a, i) * Gather(ref power, table.D, i);
            Vector256<double> degree = Load(table.Degree, i);
            Vector256<double> vd = v * degree;
            sumD += vd;
            sumDD += (vd * degree) - vd;
        }

        foreach (int k in table.ExponentialOfRow)
        {
            Vector256<double> v = Load(ref a, i) * Gather(ref power, table.D, i) * Broadcast(ref e, k);
            Vector256<double> degree = Load(table.Degree, i);
            Vector256<double> first = degree - Broadcast(ref e, k + Most);
            sumD += v * first;
            sumDD += v * ((first * first) - (degree + Broadcast(ref e, k + (2 * Most))));
            i += TermTable.Row;
        }

        Vector256<double> deltas = Vector256.Create(delta), twoDelta = deltas + deltas, twoDelta2 = twoDelta * deltas;
        for (; i < table.Length; i += TermTable.Row)
        {
            Vector256<double> v = Load(ref a, i) * General(table, i, deltas, twoDelta, twoDelta2, ref power, out Vector256<double> first, out Vector256<double> second);
            sumD += v * first;
            sumDD += v * second;
        }

        double common = powers[table.Common];
        d = common * Sum(sumD);
        dd = common * Sum(sumDD);
    }

    [MethodImpl(Jit.Hot)]
    public static HelmholtzDerivatives At(TermTable table, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm)
    {
        Vector256<double> sumA = default, sumD = default, sumDD = default, sumT = default, sumDT = default, sumTT = default;
        ref double power = ref MemoryMarshal.GetReference(powers);
        ref double a = ref MemoryMarshal.GetReference(isotherm);
        Span<double> exponentials = stackalloc double[3 * Most];
        ref double e = ref MemoryMarshal.GetReference(exponentials);
        Evaluate(table.Exponentials, ref power, ref e);
        int i = 0;
        for (; i < table.PolynomialEnd; i += TermTable.Row)
        {
            Vector256<double> v = Load(ref a, i) * Gather(ref power, table.D, i);
            Vector256<double> degree = Load(table.Degree, i);
            Vector256<double> vd = v * degree, t = Load(table.T, i);
            sumA += v;
            sumD += vd;
            sumDD += (vd * degree) - vd;
            sumT += v * t;
            sumDT += vd * t;
            sumTT += v * Load(table.TT, i);
        }

        foreach (int k in table.ExponentialOfRow)
        {
            Vector256<double> v = Load(ref a, i) * Gather(ref power, table.D, i) * Broadcast(ref e, k);
            Vector256<double> degree = Load(table.Degree, i);
            Vector256<double> first = degree - Broadcast(ref e, k + Most);
            Vector256<double> vd = v * first, t = Load(table.T, i);
            sumA += v;
            sumD += vd;
            sumDD += v * ((first * first) - (degree + Broadcast(ref e, k + (2 * Most))));
            sumT += v * t;
            sumDT += vd * t;
            sumTT += v * Load(table.TT, i);
            i += TermTable.Row;
        }

        Vector256<double> deltas = Vector256.Create(delta), twoDelta = deltas + deltas, twoDelta2 = twoDelta * deltas;
        for (int k = table.Length; i < table.Length; i += TermTable.Row, k += TermTable.Row)
        {
            Vector256<double> v = Load(ref a, i) * General(table, i, deltas, twoDelta, twoDelta2, ref power, out Vector256<double> first, out Vector256<double> second);
            Vector256<double> vd = v * first, t = Load(ref a, k);
            sumA += v;
            sumD += vd;
            sumDD += v * second;
            sumT += v * t;
            sumDT += vd * t;
            sumTT += v * Load(ref a, k + table.Length - table.PowerEnd);
        }

        double common = powers[table.Common];
        HelmholtzDerivatives sum;
        sum.A = common * Sum(sumA);
        sum.D = common * Sum(sumD);
        sum.DD = common * Sum(sumDD);
        sum.T = common * Sum(sumT);
        sum.DT = common * Sum(sumDT);
        sum.TT = common * Sum(sumTT);
        return sum;
    }

    /// <summary>(0 + 2) + (1 + 3).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Sum(Vector256<double> v)
    {
        Vector128<double> half = v.GetLower() + v.GetUpper();
        return half.ToScalar() + half.GetElement(1);
    }

    /// <summary>exp(−g·δ^l), l·g·δ^l and l·(l − 1)·g·δ^l.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Evaluate(PowerExponentials exponentials, ref double power, ref double e)
    {
        for (int k = 0; k < exponentials.Length; k += TermTable.Row)
        {
            Vector256<double> f = Load(exponentials.G, k) * Gather(ref power, exponentials.L, k);
            Exponential.Of(-f).StoreUnsafe(ref e, (nuint)k);
            (Load(exponentials.Degree, k) * f).StoreUnsafe(ref e, (nuint)(k + Most));
            (Load(exponentials.Pair, k) * f).StoreUnsafe(ref e, (nuint)(k + (2 * Most)));
        }
    }

    /// <summary>δ^d·exp(F) and what its first and second derivative are multiples of it by.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> General(
        TermTable table,
        int i,
        Vector256<double> delta,
        Vector256<double> twoDelta,
        Vector256<double> twoDelta2,
        ref double power,
        out Vector256<double> first,
        out Vector256<double> second)
    {
        GeneralExponents general = table.General;
        int k = i - table.PowerEnd;
        Vector256<double> f = Load(general.Power.G, k) * Gather(ref power, general.Power.L, k);
        Vector256<double> x = delta - Load(general.Epsilon, k), eta = Load(general.Eta, k), beta = Load(general.Beta, k);
        Vector256<double> ex = eta * x;
        Vector256<double> e = Exponential.Of(-((f + (ex * x)) + (beta * (delta - Load(general.Gamma, k)))));
        Vector256<double> degree = Load(table.Degree, i);
        first = degree - (((Load(general.Power.Degree, k) * f) + (ex * twoDelta)) + (beta * delta));
        second = (first * first) - ((degree + (Load(general.Power.Pair, k) * f)) + (eta * twoDelta2));
        return Gather(ref power, table.D, i) * e;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(double[] column, int i) => Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)i);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(ref double first, int i) => Vector256.LoadUnsafe(ref first, (nuint)i);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Broadcast(ref double first, int i) => Vector256.Create(Unsafe.Add(ref first, i));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Gather(ref double power, int[] column, int i)
    {
        ref int index = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), i);
        return Vector256.Create(
            Unsafe.Add(ref power, index),
            Unsafe.Add(ref power, Unsafe.Add(ref index, 1)),
            Unsafe.Add(ref power, Unsafe.Add(ref index, 2)),
            Unsafe.Add(ref power, Unsafe.Add(ref index, 3)));
    }
}
#endif
