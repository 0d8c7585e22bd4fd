using System;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Evaluates a residual Helmholtz energy α_r(τ, δ) with analytic derivatives up to second order (Span 2000, Multiparameter Equations
/// of State, Springer). Immutable; allocates nothing.
/// </summary>
/// <remarks>
/// Every family but the non-analytic one separates into n·A(τ)·B(δ) with A and B powers and exponentials, whose derivatives are multiples of
/// themselves. So an isotherm costs the n·A once (<see cref="Isotherm(double, Span{double})"/>), and every density on it only the B. Several fluids, or a fluid and a
/// departure function, may be evaluated at one (τ, δ), each with its own isotherm.
/// </remarks>
internal sealed class ResidualHelmholtz
{
    private readonly TermTable _table;
    private readonly SpecialTerm[] _special;
    private readonly NonAnalyticTerms _nonAnalytic;

    public ResidualHelmholtz(ResidualTerms terms)
    {
        var layout = new ResidualLayout(terms);
        _table = layout.Table;
        _special = layout.Special;
        _nonAnalytic = new NonAnalyticTerms(terms.NonAnalytic);
    }

    /// <summary>The number of doubles that an isotherm takes.</summary>
    public int IsothermLength => _table.IsothermLength;

    /// <summary>The terms but for the non-analytic ones.</summary>
    public TermTable Table => _table;

    /// <summary>Fills the τ-dependent factors of all terms.</summary>
    /// <param name="tau">Inverse reduced temperature.</param>
    /// <param name="isotherm">At least <see cref="IsothermLength"/> doubles.</param>
    public void Isotherm(double tau, Span<double> isotherm) => Isotherm(tau, Math.Log(tau), isotherm);

    /// <summary>The same with the logarithm of tau at hand.</summary>
    public void Isotherm(double tau, double log, Span<double> isotherm)
    {
#if NET
        if (VectorTerms.IsSupported)
        {
            VectorTerms.Isotherm(_table, tau, log, isotherm);
        }
        else
#endif
        {
            PlainTerms.Isotherm(_table, tau, log, isotherm);
        }

        foreach (ref readonly SpecialTerm term in _special.AsSpan())
        {
            int k = _table.Length + term.Index - _table.PowerEnd;
            term.Factor.Evaluate(tau, log, out double a, out isotherm[k], out isotherm[k + _table.Length - _table.PowerEnd]);
            isotherm[term.Index] = term.N * a;
        }
    }

    /// <summary>Only δ·∂α/∂δ and δ²·∂²α/∂δ², for density iterations.</summary>
    /// <param name="tau">The τ of the isotherm.</param>
    /// <param name="delta">Reduced density, 0 or more.</param>
    /// <param name="isotherm">As <see cref="Isotherm(double, Span{double})"/> filled it.</param>
    /// <param name="d">δ·∂α/∂δ.</param>
    /// <param name="dd">δ²·∂²α/∂δ².</param>
    public void ByDensity(double tau, double delta, ReadOnlySpan<double> isotherm, out double d, out double dd)
    {
        Span<double> powers = stackalloc double[TermTable.HighestPower + 1];
        FillPowers(delta, powers.Slice(0, _table.Powers));
        ByDensity(tau, delta, powers, isotherm, out d, out dd);
    }

    /// <summary>The same with the powers of delta at hand.</summary>
    public void ByDensity(double tau, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm, out double d, out double dd)
    {
#if NET
        if (VectorTerms.IsSupported)
        {
            VectorTerms.ByDensity(_table, delta, powers, isotherm, out d, out dd);
        }
        else
#endif
        {
            PlainTerms.ByDensity(_table, delta, powers, isotherm, out d, out dd);
        }

        if (!_nonAnalytic.IsEmpty)
        {
            _nonAnalytic.AddByDensity(tau, delta, ref d, ref dd);
        }
    }

    /// <summary>The value and all derivatives up to second order.</summary>
    /// <param name="tau">The τ of the isotherm.</param>
    /// <param name="delta">Reduced density, 0 or more.</param>
    /// <param name="isotherm">As <see cref="Isotherm(double, Span{double})"/> filled it.</param>
    public HelmholtzDerivatives At(double tau, double delta, ReadOnlySpan<double> isotherm)
    {
        Span<double> powers = stackalloc double[TermTable.HighestPower + 1];
        FillPowers(delta, powers.Slice(0, _table.Powers));
        return At(tau, delta, powers, isotherm);
    }

    /// <summary>The same with the powers of delta at hand.</summary>
    public HelmholtzDerivatives At(double tau, double delta, ReadOnlySpan<double> powers, ReadOnlySpan<double> isotherm)
    {
        HelmholtzDerivatives sum =
#if NET
            VectorTerms.IsSupported ? VectorTerms.At(_table, delta, powers, isotherm) :
#endif
            PlainTerms.At(_table, delta, powers, isotherm);
        if (!_nonAnalytic.IsEmpty)
        {
            _nonAnalytic.Add(tau, delta, ref sum);
        }

        return sum;
    }

    /// <summary>δ^0, δ^1, … by few multiplications in a row.</summary>
    [MethodImpl(Jit.Hot)]
    public static void FillPowers(double delta, Span<double> powers)
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
