using System;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Evaluates a residual Helmholtz energy α_r(τ, δ) with analytic derivatives up to second order (Span 2000, Multiparameter Equations
/// of State, Springer). Immutable; allocates nothing.
/// </summary>
/// <remarks>
/// Every family but the non-analytic one separates into n·A(τ)·B(δ). Terms that share A share one exponential of τ, terms that share B
/// are one group whose coefficient is a sum over τ, and groups that share the exponential in B are one polynomial in δ. So an isotherm
/// costs its exponentials of τ once (<see cref="Isotherm"/>), and every density on it only the polynomials.
/// Several fluids, or a fluid and a departure function, may be evaluated at one (τ, δ), each with its own isotherm.
/// </remarks>
internal sealed class ResidualHelmholtz
{
    private readonly TauFactor[] _factors;
    private readonly double[] _termN;
    private readonly int[] _termFactor;
    private readonly int[] _termGroup;
    private readonly Group[] _groups;
    private readonly DeltaExponential[] _exponentials;
    private readonly int _highestPower;
    private readonly NonAnalyticTerms _nonAnalytic;

    public ResidualHelmholtz(ResidualTerms terms)
    {
        var layout = new ResidualLayout(terms);
        _factors = layout.Factors;
        _termN = layout.TermN;
        _termFactor = layout.TermFactor;
        _termGroup = layout.TermGroup;
        _groups = Array.ConvertAll(layout.GroupPower, power => new Group(power));
        _exponentials = layout.Exponentials;
        _highestPower = layout.HighestPower;
        _nonAnalytic = new NonAnalyticTerms(terms.NonAnalytic);
    }

    /// <summary>The number of doubles that an isotherm takes.</summary>
    public int IsothermLength => 3 * _groups.Length;

    /// <summary>Fills the τ-dependent coefficients: for every group its value, τ times its first, τ² times its second derivative.</summary>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="isotherm">At least <see cref="IsothermLength"/> doubles.</param>
    [MethodImpl(Jit.Hot)]
    public void Isotherm(double tau, Span<double> isotherm)
    {
        int groups = _groups.Length;
        Span<double> c = isotherm.Slice(0, groups);
        Span<double> cT = isotherm.Slice(groups, groups);
        Span<double> cTT = isotherm.Slice(2 * groups, groups);
        isotherm.Slice(0, 3 * groups).Clear();
        double log = Math.Log(tau);
        Span<double> values = stackalloc double[3 * _factors.Length];
        for (int j = 0; j < _factors.Length; j++)
        {
            ref readonly TauFactor factor = ref _factors[j];
            if (factor.Kind == TauFactorKind.Power)
            {
                double t = factor.Exponent;
                double value = t == 0 ? 1 : t == 1 ? tau : Math.Exp(t * log);
                values[3 * j] = value;
                values[(3 * j) + 1] = t * value;
                values[(3 * j) + 2] = t * (t - 1) * value;
            }
            else
            {
                factor.Evaluate(tau, log, out values[3 * j], out values[(3 * j) + 1], out values[(3 * j) + 2]);
            }
        }

        for (int i = 0; i < _termN.Length; i++)
        {
            double n = _termN[i];
            int j = 3 * _termFactor[i];
            int g = _termGroup[i];
            c[g] += n * values[j];
            cT[g] += n * values[j + 1];
            cTT[g] += n * values[j + 2];
        }
    }

    /// <summary>Only δ·∂α/∂δ and δ²·∂²α/∂δ², for density iterations.</summary>
    /// <param name="tau">The τ of the isotherm.</param>
    /// <param name="delta">Reduced density, 0 or more.</param>
    /// <param name="isotherm">As <see cref="Isotherm"/> filled it.</param>
    /// <param name="d">δ·∂α/∂δ.</param>
    /// <param name="dd">δ²·∂²α/∂δ².</param>
    [MethodImpl(Jit.Hot)]
    public void ByDensity(double tau, double delta, ReadOnlySpan<double> isotherm, out double d, out double dd)
    {
        Span<double> powers = stackalloc double[_highestPower + 1];
        FillPowers(delta, powers);
        d = 0;
        dd = 0;
        for (int k = 0; k < _exponentials.Length; k++)
        {
            ref readonly DeltaExponential exponential = ref _exponentials[k];
            double p = 0, p1 = 0, p2 = 0;
            for (int g = exponential.FirstGroup; g < exponential.EndGroup; g++)
            {
                ref readonly Group group = ref _groups[g];
                double term = isotherm[g] * powers[group.Power];
                p += term;
                p1 += group.Degree * term;
                p2 += group.DegreePair * term;
            }

            exponential.Evaluate(delta, powers, out double e, out double e1, out double e2);
            d += e * (p1 + (e1 * p));
            dd += e * (p2 + (2 * e1 * p1) + (e2 * p));
        }

        if (!_nonAnalytic.IsEmpty)
        {
            _nonAnalytic.AddByDensity(tau, delta, ref d, ref dd);
        }
    }

    /// <summary>The value and all derivatives up to second order.</summary>
    /// <param name="tau">The τ of the isotherm.</param>
    /// <param name="delta">Reduced density, 0 or more.</param>
    /// <param name="isotherm">As <see cref="Isotherm"/> filled it.</param>
    [MethodImpl(Jit.Hot)]
    public HelmholtzDerivatives At(double tau, double delta, ReadOnlySpan<double> isotherm)
    {
        int groups = _groups.Length;
        ReadOnlySpan<double> c = isotherm.Slice(0, groups);
        ReadOnlySpan<double> cT = isotherm.Slice(groups, groups);
        ReadOnlySpan<double> cTT = isotherm.Slice(2 * groups, groups);
        Span<double> powers = stackalloc double[_highestPower + 1];
        FillPowers(delta, powers);
        HelmholtzDerivatives sum = default;
        for (int k = 0; k < _exponentials.Length; k++)
        {
            ref readonly DeltaExponential exponential = ref _exponentials[k];
            double p = 0, p1 = 0, p2 = 0, q = 0, q1 = 0, r = 0;
            for (int g = exponential.FirstGroup; g < exponential.EndGroup; g++)
            {
                ref readonly Group group = ref _groups[g];
                double power = powers[group.Power];
                double term = c[g] * power;
                double termT = cT[g] * power;
                p += term;
                p1 += group.Degree * term;
                p2 += group.DegreePair * term;
                q += termT;
                q1 += group.Degree * termT;
                r += cTT[g] * power;
            }

            exponential.Evaluate(delta, powers, out double e, out double e1, out double e2);
            sum.A += e * p;
            sum.D += e * (p1 + (e1 * p));
            sum.DD += e * (p2 + (2 * e1 * p1) + (e2 * p));
            sum.T += e * q;
            sum.DT += e * (q1 + (e1 * q));
            sum.TT += e * r;
        }

        if (!_nonAnalytic.IsEmpty)
        {
            _nonAnalytic.Add(tau, delta, ref sum);
        }

        return sum;
    }

    private static void FillPowers(double delta, Span<double> powers)
    {
        powers[0] = 1;
        if (powers.Length > 1)
        {
            powers[1] = delta;
        }

        for (int i = 2; i < powers.Length; i++)
        {
            powers[i] = powers[i >> 1] * powers[i - (i >> 1)];
        }
    }

    /// <summary>δ^d with the factors d and d·(d − 1) of its derivatives.</summary>
    private readonly struct Group(int power)
    {
        public int Power { get; } = power;

        public double Degree { get; } = power;

        public double DegreePair { get; } = (double)power * (power - 1);
    }
}
