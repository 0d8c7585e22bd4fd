using System;

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
    private readonly double[] _degree;
    private readonly double[] _degreePair;
    private readonly int[] _power;
    private readonly DeltaExponential[] _exponentials;
    private readonly int _highestPower;
    private readonly double[,] _nonAnalytic;

    public ResidualHelmholtz(ResidualTerms terms)
    {
        var layout = new ResidualLayout(terms);
        _factors = layout.Factors;
        _termN = layout.TermN;
        _termFactor = layout.TermFactor;
        _termGroup = layout.TermGroup;
        _power = layout.GroupPower;
        _degree = Array.ConvertAll(_power, d => (double)d);
        _degreePair = Array.ConvertAll(_power, d => (double)d * (d - 1));
        _exponentials = layout.Exponentials;
        _highestPower = layout.HighestPower;
        _nonAnalytic = terms.NonAnalytic;
    }

    /// <summary>The number of doubles that an isotherm takes.</summary>
    public int IsothermLength => 3 * _power.Length;

    /// <summary>Fills the τ-dependent coefficients: for every group its value, τ times its first, τ² times its second derivative.</summary>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="isotherm">At least <see cref="IsothermLength"/> doubles.</param>
    public void Isotherm(double tau, Span<double> isotherm)
    {
        int groups = _power.Length;
        Span<double> c = isotherm.Slice(0, groups);
        Span<double> cT = isotherm.Slice(groups, groups);
        Span<double> cTT = isotherm.Slice(2 * groups, groups);
        isotherm.Slice(0, 3 * groups).Clear();
        double log = Math.Log(tau);
        Span<double> values = stackalloc double[3 * _factors.Length];
        for (int j = 0; j < _factors.Length; j++)
        {
            _factors[j].Evaluate(tau, log, out values[3 * j], out values[(3 * j) + 1], out values[(3 * j) + 2]);
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
                double term = isotherm[g] * powers[_power[g]];
                p += term;
                p1 += _degree[g] * term;
                p2 += _degreePair[g] * term;
            }

            exponential.Evaluate(delta, powers, out double e, out double e1, out double e2);
            d += e * (p1 + (e1 * p));
            dd += e * (p2 + (2 * e1 * p1) + (e2 * p));
        }

        if (_nonAnalytic.Length != 0)
        {
            HelmholtzDerivatives sum = default;
            NonAnalyticTerms.Add(_nonAnalytic, tau, delta, ref sum);
            d += sum.D;
            dd += sum.DD;
        }
    }

    /// <summary>The value and all derivatives up to second order.</summary>
    /// <param name="tau">The τ of the isotherm.</param>
    /// <param name="delta">Reduced density, 0 or more.</param>
    /// <param name="isotherm">As <see cref="Isotherm"/> filled it.</param>
    public HelmholtzDerivatives At(double tau, double delta, ReadOnlySpan<double> isotherm)
    {
        int groups = _power.Length;
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
                double power = powers[_power[g]];
                double term = c[g] * power;
                double termT = cT[g] * power;
                p += term;
                p1 += _degree[g] * term;
                p2 += _degreePair[g] * term;
                q += termT;
                q1 += _degree[g] * termT;
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

        if (_nonAnalytic.Length != 0)
        {
            NonAnalyticTerms.Add(_nonAnalytic, tau, delta, ref sum);
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
}
