using System;
using System.Runtime.CompilerServices;
#if NET
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
#endif
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The terms that carry the critical region of carbon dioxide (Span and Wagner 1996, J. Phys. Chem. Ref. Data 25, 1509,
/// doi:10.1063/1.555991, table 32): n·Δ^b·δ·ψ with ψ = exp(−C·(δ − 1)² − D·(τ − 1)²) and Δ = θ² + B·((δ − 1)²)^a, θ = 1 − τ + A·((δ − 1)²)^k. Immutable;
/// allocates nothing. Four terms at a time where the processor can, one by one elsewhere, with the same digits.
/// </summary>
internal sealed class NonAnalyticTerms
{
    /// <summary>Where ψ is below exp(−50) ≈ 2e-22 the terms and their derivatives are lost in rounding.</summary>
    private const double NegligibleExponent = 50;

    /// <summary>Keeps Δ^(b − 2) finite in the critical point itself, where the second derivatives diverge.</summary>
    private const double SmallestDistance = 1e-30;

    /// <summary>Keeps ln (δ − 1)² finite at δ = 1.</summary>
    private const double SmallestSquare = 1e-300;

    private const int Lanes = TermTable.Row;

    /// <summary>n, a, b, k = 1/(2·beta), A, B, C and D of four terms each; where there are fewer, the last one again with n = 0.</summary>
    private readonly double[] _n, _a, _b, _k, _capitalA, _capitalB, _c, _d;

    private readonly double _leastC, _leastD;

    /// <param name="rows">Rows n, a, b, beta, A, B, C, D.</param>
    public NonAnalyticTerms(double[,] rows)
    {
        int count = rows.GetLength(0);
        int length = TermTable.Filled(count);
        double[] Column(int column, Func<double, double>? change = null)
        {
            var values = new double[length];
            for (int i = 0; i < length; i++)
            {
                double value = rows[Math.Min(i, count - 1), column];
                values[i] = change is null ? value : change(value);
            }

            return values;
        }

        _n = Column(0);
        Array.Clear(_n, count, length - count);
        _a = Column(1);
        _b = Column(2);
        _k = Column(3, beta => 0.5 / beta);
        _capitalA = Column(4);
        _capitalB = Column(5);
        _c = Column(6);
        _d = Column(7);
        (_leastC, _leastD) = (Least(_c), Least(_d));
    }

    /// <summary>Whether there are none, as in every other fluid.</summary>
    public bool IsEmpty => _n.Length == 0;

    /// <summary>Adds the terms and all derivatives up to second order.</summary>
    public void Add(double tau, double delta, ref HelmholtzDerivatives sum)
    {
        double x = delta - 1, y = tau - 1;
        if ((_leastC * (x * x)) + (_leastD * (y * y)) > NegligibleExponent)
        {
            return;
        }

#if NET
        if (VectorTerms.IsSupported)
        {
            AddByVector(tau, delta, x, y, ref sum);
            return;
        }
#endif
        AddOneByOne(tau, delta, x, y, ref sum);
    }

    /// <summary>Adds only δ·∂α/∂δ and δ²·∂²α/∂δ².</summary>
    public void AddByDensity(double tau, double delta, ref double byDelta, ref double byDelta2)
    {
        HelmholtzDerivatives sum = default;
        Add(tau, delta, ref sum);
        byDelta += sum.D;
        byDelta2 += sum.DD;
    }

    /// <summary>Adds term by term; every fourth term goes to the same sum.</summary>
    [MethodImpl(Jit.Hot)]
    internal void AddOneByOne(double tau, double delta, double x, double y, ref HelmholtzDerivatives sum)
    {
        Span<double> sums = stackalloc double[6 * Lanes];
        double square = x * x;
        double logSquare = Math.Log(Math.Max(square, SmallestSquare));
        for (int i = 0; i < _n.Length; i++)
        {
            double a = _a[i], b = _b[i], k = _k[i], capitalA = _capitalA[i], capitalB = _capitalB[i], c = _c[i], d = _d[i];
            double cx = c * x, dy = d * y;
            double psi = Exponential.Of(-((cx * x) + (dy * y)));
            double powerK = Exponential.Of((k - 1) * logSquare);
            double powerA = Exponential.Of((a - 1) * logSquare);
            double bend = capitalA * powerK;
            double theta = (bend * square) - y;
            double wall = capitalB * powerA;
            double distance = (theta * theta) + (wall * square);
            distance = distance > SmallestDistance ? distance : SmallestDistance;
            double inverse = 1 / distance;
            double slope = ((4 * k) * (theta * bend)) + ((2 * a) * wall);
            double distanceD = x * slope;
            double distanceDD = (slope + (((4 * a) * (a - 1)) * wall)) + ((((8 * k) * k) * ((bend * bend) * square)) + (((8 * k) * (k - 1)) * (theta * bend)));

            double psiD = -2 * cx;
            double psiDD = (psiD * psiD) - (2 * c);
            double psiT = -2 * dy;
            double psiTT = (psiT * psiT) - (2 * d);
            double f = Exponential.Of(b * NaturalLogarithm.Of(distance));
            double f1 = b * inverse;
            double f2 = ((b - 1) * f1) * inverse;
            double fD = f1 * distanceD;
            double fDD = (f1 * distanceDD) + (f2 * (distanceD * distanceD));
            double fT = -2 * (theta * f1);
            double fTT = (2 * f1) + ((4 * f2) * (theta * theta));
            double fDT = -2 * ((((2 * k) * bend) * (x * f1)) + ((theta * f2) * distanceD));

            // Everything over f·ψ, which multiplies it in the end.
            double v = (_n[i] * delta) * (f * psi);
            double plus = 1 + (delta * psiD);
            int lane = i & (Lanes - 1);
            sums[lane] += v;
            sums[Lanes + lane] += v * (plus + (delta * fD));
            sums[(2 * Lanes) + lane] += (v * delta) * ((((2 * psiD) + (delta * psiDD)) + (2 * (fD * plus))) + (delta * fDD));
            sums[(3 * Lanes) + lane] += (v * tau) * (fT + psiT);
            sums[(4 * Lanes) + lane] += (v * tau) * (((psiT * plus) + ((delta * fD) * psiT)) + ((fT * plus) + (delta * fDT)));
            sums[(5 * Lanes) + lane] += ((v * tau) * tau) * ((fTT + (2 * (fT * psiT))) + psiTT);
        }

        sum.A += (sums[0] + sums[2]) + (sums[1] + sums[3]);
        sum.D += (sums[4] + sums[6]) + (sums[5] + sums[7]);
        sum.DD += (sums[8] + sums[10]) + (sums[9] + sums[11]);
        sum.T += (sums[12] + sums[14]) + (sums[13] + sums[15]);
        sum.DT += (sums[16] + sums[18]) + (sums[17] + sums[19]);
        sum.TT += (sums[20] + sums[22]) + (sums[21] + sums[23]);
    }

#if NET
    /// <summary>Adds four terms at a time.</summary>
    [MethodImpl(Jit.Hot)]
    internal void AddByVector(double tau, double delta, double x, double y, ref HelmholtzDerivatives sum)
    {
        Vector256<double> sumA = default, sumD = default, sumDD = default, sumT = default, sumDT = default, sumTT = default;
        double square = x * x;
        double logSquare = Math.Log(Math.Max(square, SmallestSquare));
        Vector256<double> one = Vector256.Create(1.0);
        for (int i = 0; i < _n.Length; i += Lanes)
        {
            Vector256<double> a = Load(_a, i), b = Load(_b, i), k = Load(_k, i), c = Load(_c, i), d = Load(_d, i);
            Vector256<double> cx = c * x, dy = d * y;
            Vector256<double> psi = Exponential.Of(-((cx * x) + (dy * y)));
            Vector256<double> powerK = Exponential.Of((k - one) * logSquare);
            Vector256<double> powerA = Exponential.Of((a - one) * logSquare);
            Vector256<double> bend = Load(_capitalA, i) * powerK;
            Vector256<double> theta = (bend * square) - Vector256.Create(y);
            Vector256<double> wall = Load(_capitalB, i) * powerA;
            Vector256<double> distance = (theta * theta) + (wall * square);
            Vector256<double> least = Vector256.Create(SmallestDistance);
            distance = Vector256.ConditionalSelect(Vector256.GreaterThan(distance, least), distance, least);
            Vector256<double> inverse = one / distance;
            Vector256<double> slope = ((k * 4) * (theta * bend)) + ((a * 2) * wall);
            Vector256<double> distanceD = slope * x;
            Vector256<double> distanceDD = (slope + (((a * 4) * (a - one)) * wall)) + ((((k * 8) * k) * ((bend * bend) * square)) + (((k * 8) * (k - one)) * (theta * bend)));

            Vector256<double> psiD = cx * -2;
            Vector256<double> psiDD = (psiD * psiD) - (c * 2);
            Vector256<double> psiT = dy * -2;
            Vector256<double> psiTT = (psiT * psiT) - (d * 2);
            Vector256<double> f = Exponential.Of(b * NaturalLogarithm.Of(distance));
            Vector256<double> f1 = b * inverse;
            Vector256<double> f2 = ((b - one) * f1) * inverse;
            Vector256<double> fD = f1 * distanceD;
            Vector256<double> fDD = (f1 * distanceDD) + (f2 * (distanceD * distanceD));
            Vector256<double> fT = (theta * f1) * -2;
            Vector256<double> fTT = (f1 * 2) + ((f2 * 4) * (theta * theta));
            Vector256<double> fDT = ((((k * 2) * bend) * (f1 * x)) + ((theta * f2) * distanceD)) * -2;

            Vector256<double> v = (Load(_n, i) * delta) * (f * psi);
            Vector256<double> plus = one + (psiD * delta);
            sumA += v;
            sumD += v * (plus + (fD * delta));
            sumDD += (v * delta) * ((((psiD * 2) + (psiDD * delta)) + ((fD * plus) * 2)) + (fDD * delta));
            sumT += (v * tau) * (fT + psiT);
            sumDT += (v * tau) * (((psiT * plus) + ((fD * delta) * psiT)) + ((fT * plus) + (fDT * delta)));
            sumTT += ((v * tau) * tau) * ((fTT + ((fT * psiT) * 2)) + psiTT);
        }

        sum.A += VectorTerms.Sum(sumA);
        sum.D += VectorTerms.Sum(sumD);
        sum.DD += VectorTerms.Sum(sumDD);
        sum.T += VectorTerms.Sum(sumT);
        sum.DT += VectorTerms.Sum(sumDT);
        sum.TT += VectorTerms.Sum(sumTT);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(double[] column, int i) => Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)i);
#endif

    private static double Least(double[] values)
    {
        double least = double.PositiveInfinity;
        foreach (double value in values)
        {
            least = Math.Min(least, value);
        }

        return least;
    }
}
