using System;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Sums over a <see cref="TermTable"/>, term by term, where there are no vectors of four. Every fourth term goes to the same sum and the four are added
/// as vectors are, so that the digits are the same.
/// </summary>
internal static class PlainTerms
{
    private const int Most = TermTable.MostExponentials;
    private const int Lanes = TermTable.Row;
    private const int LastLane = Lanes - 1;

    [MethodImpl(Jit.Hot)]
    public static void Isotherm(TermTable table, double tau, double log, Span<double> isotherm)
    {
        double first = Exponential.FirstDigits(log), rest = log - first;
        for (int i = 0; i < table.PowerEnd; i++)
        {
            double t = table.T[i];
            isotherm[i] = table.N[i] * (t == 0 ? 1 : Exponential.Of(t * first, t * rest));
        }

        double twoTau = tau + tau, twoTau2 = twoTau * tau;
        GeneralExponents general = table.General;
        int length = table.Length - table.PowerEnd;
        for (int k = 0; k < length; k++)
        {
            int i = table.PowerEnd + k;
            double t = table.T[i], beta = general.TauBeta[k];
            double y = tau - general.TauGamma[k];
            double by = beta * y;
            double slope = t - (by * twoTau);
            isotherm[i] = table.N[i] * Exponential.Of((t * first) - (by * y), t * rest);
            isotherm[table.Length + k] = slope;
            isotherm[table.Length + length + k] = (slope * slope) - (t + (beta * twoTau2));
        }
    }

    [MethodImpl(Jit.Hot)]
    public static void ByDensity(TermTable table, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm, out double d, out double dd)
    {
        Span<double> exponentials = stackalloc double[3 * Most];
        Evaluate(table.Exponentials, powers, exponentials);
        Span<double> sums = stackalloc double[2 * Lanes];
        for (int i = 0; i < table.Length; i++)
        {
            double v = isotherm[i] * Factor(table, i, delta, powers, exponentials, out double first, out double second, out double e);
            v *= e;
            double vd = v * first;
            Span<double> lane = sums.Slice(i & LastLane);
            lane[0] += vd;
            lane[Lanes] += i < table.PolynomialEnd ? (vd * first) - vd : v * second;
        }

        double common = powers[table.Common];
        d = common * Sum(sums);
        dd = common * Sum(sums.Slice(Lanes));
    }

    [MethodImpl(Jit.Hot)]
    public static HelmholtzDerivatives At(TermTable table, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm)
    {
        Span<double> exponentials = stackalloc double[3 * Most];
        Evaluate(table.Exponentials, powers, exponentials);
        Span<double> sums = stackalloc double[6 * Lanes];
        int length = table.Length - table.PowerEnd;
        for (int i = 0; i < table.Length; i++)
        {
            double v = isotherm[i] * Factor(table, i, delta, powers, exponentials, out double first, out double second, out double e);
            v *= e;
            double vd = v * first;
            bool isGeneral = i >= table.PowerEnd;
            double t = isGeneral ? isotherm[i + length] : table.T[i];
            double tt = isGeneral ? isotherm[i + (2 * length)] : table.TT[i];
            Span<double> lane = sums.Slice(i & LastLane);
            lane[0] += v;
            lane[Lanes] += vd;
            lane[2 * Lanes] += i < table.PolynomialEnd ? (vd * first) - vd : v * second;
            lane[3 * Lanes] += v * t;
            lane[4 * Lanes] += vd * t;
            lane[5 * Lanes] += v * tt;
        }

        double common = powers[table.Common];
        HelmholtzDerivatives sum;
        sum.A = common * Sum(sums);
        sum.D = common * Sum(sums.Slice(Lanes));
        sum.DD = common * Sum(sums.Slice(2 * Lanes));
        sum.T = common * Sum(sums.Slice(3 * Lanes));
        sum.DT = common * Sum(sums.Slice(4 * Lanes));
        sum.TT = common * Sum(sums.Slice(5 * Lanes));
        return sum;
    }

    /// <summary>exp(−g·δ^l), l·g·δ^l and l·(l − 1)·g·δ^l.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Evaluate(PowerExponentials exponentials, ReadOnlySpan<double> powers, Span<double> e)
    {
        for (int k = 0; k < exponentials.Length; k++)
        {
            double f = exponentials.G[k] * powers[exponentials.L[k]];
            e[k] = Exponential.Of(-f);
            e[k + Most] = exponentials.Degree[k] * f;
            e[k + (2 * Most)] = exponentials.Pair[k] * f;
        }
    }

    /// <summary>
    /// δ^d·exp(F) as a product of the value and <paramref name="e"/>, and what its first and second derivative are multiples of it by.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Factor(
        TermTable table, int i, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> exponentials, out double first, out double second, out double e)
    {
        double degree = table.Degree[i];
        double power = powers[table.D[i]];
        if (i < table.PolynomialEnd)
        {
            e = 1;
            first = degree;
            second = 0;
            return power;
        }

        if (i < table.PowerEnd)
        {
            int row = table.ExponentialOfRow[(i - table.PolynomialEnd) / Lanes];
            e = exponentials[row];
            first = degree - exponentials[row + Most];
            second = (first * first) - (degree + exponentials[row + (2 * Most)]);
            return power;
        }

        GeneralExponents general = table.General;
        int k = i - table.PowerEnd;
        double f = general.Power.G[k] * powers[general.Power.L[k]];
        double x = delta - general.Epsilon[k], eta = general.Eta[k], beta = general.Beta[k];
        double ex = eta * x;
        double exponential = Exponential.Of(-((f + (ex * x)) + (beta * (delta - general.Gamma[k]))));
        first = degree - (((general.Power.Degree[k] * f) + (ex * (delta + delta))) + (beta * delta));
        second = (first * first) - ((degree + (general.Power.Pair[k] * f)) + (eta * ((delta + delta) * delta)));
        e = 1;
        return power * exponential;
    }

    private static double Sum(ReadOnlySpan<double> lanes) => (lanes[0] + lanes[2]) + (lanes[1] + lanes[3]);
}
