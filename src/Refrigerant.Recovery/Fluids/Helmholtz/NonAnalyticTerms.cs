using System;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The terms that carry the critical region of carbon dioxide (Span and Wagner 1996, J. Phys. Chem. Ref. Data 25, 1509,
/// doi:10.1063/1.555991, table 32): n·Δ^b·δ·ψ with ψ = exp(−C·(δ − 1)² − D·(τ − 1)²). Immutable; allocates nothing.
/// </summary>
/// <remarks>Terms share most of their constants, so what a term has in common with the one before it is not computed again.</remarks>
internal sealed class NonAnalyticTerms
{
    /// <summary>Where ψ is below exp(−50) ≈ 2e-22 the terms and their derivatives are lost in rounding.</summary>
    private const double NegligibleExponent = 50;

    /// <summary>Keeps Δ^(b − 2) finite in the critical point itself, where the second derivatives diverge.</summary>
    private const double SmallestDistance = 1e-30;

    /// <summary>Keeps ln (δ − 1)² finite at δ = 1.</summary>
    private const double SmallestSquare = 1e-300;

    private readonly Term[] _terms;

    /// <param name="rows">Rows n, a, b, beta, A, B, C, D.</param>
    public NonAnalyticTerms(double[,] rows)
    {
        _terms = new Term[rows.GetLength(0)];
        for (int i = 0; i < _terms.Length; i++)
        {
            _terms[i] = new Term(
                rows[i, 0], rows[i, 1], rows[i, 2], 0.5 / rows[i, 3], rows[i, 4], rows[i, 5], rows[i, 6], rows[i, 7], i == 0 ? null : _terms[i - 1]);
        }
    }

    /// <summary>Whether there are none, as in every other fluid.</summary>
    public bool IsEmpty => _terms.Length == 0;

    /// <summary>Adds the terms and all derivatives up to second order.</summary>
    [MethodImpl(Jit.Hot)]
    public void Add(double tau, double delta, ref HelmholtzDerivatives sum)
    {
        double x = delta - 1;
        double y = tau - 1;
        var g = new Geometry(x, y);
        foreach (ref readonly Term term in _terms.AsSpan())
        {
            if (!g.Move(term))
            {
                continue;
            }

            double c = term.C, d = term.D, psi = g.Psi;
            double psiD = -2 * c * x * psi;
            double psiDD = 2 * c * ((2 * c * g.Square) - 1) * psi;
            double psiT = -2 * d * y * psi;
            double psiTT = 2 * d * ((2 * d * y * y) - 1) * psi;
            double psiDT = 4 * c * d * x * y * psi;

            double f = Math.Exp(term.B * g.LogDistance);
            double f1 = term.B * f / g.Distance;
            double f2 = (term.B - 1) * f1 / g.Distance;
            double fD = f1 * g.DistanceD;
            double fDD = (f1 * g.DistanceDD) + (f2 * g.DistanceD * g.DistanceD);
            double fT = -2 * g.Theta * f1;
            double fTT = (2 * f1) + (4 * g.Theta * g.Theta * f2);
            double fDT = (-4 * term.K * term.CapitalA * x * g.PowerK * f1) - (2 * g.Theta * f2 * g.DistanceD);

            double psiPlus = psi + (delta * psiD);
            double n = term.N * delta;
            sum.A += n * f * psi;
            sum.D += n * ((f * psiPlus) + (delta * fD * psi));
            sum.DD += n * delta * ((f * ((2 * psiD) + (delta * psiDD))) + (2 * fD * psiPlus) + (delta * fDD * psi));
            sum.T += n * tau * ((fT * psi) + (f * psiT));
            sum.TT += n * tau * tau * ((fTT * psi) + (2 * fT * psiT) + (f * psiTT));
            sum.DT += n * tau * ((f * (psiT + (delta * psiDT))) + (delta * fD * psiT) + (fT * psiPlus) + (delta * fDT * psi));
        }
    }

    /// <summary>Adds only δ·∂α/∂δ and δ²·∂²α/∂δ².</summary>
    [MethodImpl(Jit.Hot)]
    public void AddByDensity(double tau, double delta, ref double byDelta, ref double byDelta2)
    {
        double x = delta - 1;
        var g = new Geometry(x, tau - 1);
        foreach (ref readonly Term term in _terms.AsSpan())
        {
            if (!g.Move(term))
            {
                continue;
            }

            double psi = g.Psi;
            double psiD = -2 * term.C * x * psi;
            double psiDD = 2 * term.C * ((2 * term.C * g.Square) - 1) * psi;
            double f = Math.Exp(term.B * g.LogDistance);
            double f1 = term.B * f / g.Distance;
            double fD = f1 * g.DistanceD;
            double fDD = (f1 * g.DistanceDD) + ((term.B - 1) * f1 / g.Distance * g.DistanceD * g.DistanceD);
            double psiPlus = psi + (delta * psiD);
            double n = term.N * delta;
            byDelta += n * ((f * psiPlus) + (delta * fD * psi));
            byDelta2 += n * delta * ((f * ((2 * psiD) + (delta * psiDD))) + (2 * fD * psiPlus) + (delta * fDD * psi));
        }
    }

    /// <summary>The constants of a term, k = 1/(2·beta), and what it shares with the one before.</summary>
    private readonly struct Term(double n, double a, double b, double k, double capitalA, double capitalB, double c, double d, Term? before)
    {
        public double N { get; } = n;

        public double A { get; } = a;

        public double B { get; } = b;

        public double K { get; } = k;

        public double CapitalA { get; } = capitalA;

        public double CapitalB { get; } = capitalB;

        public double C { get; } = c;

        public double D { get; } = d;

        public bool SharesPowers { get; } = before is { } p && p.A == a && p.K == k;

        public bool SharesPsi { get; } = before is { } p && p.C == c && p.D == d;

        public bool SharesDistance { get; } = before is { } p && p.A == a && p.K == k && p.CapitalA == capitalA && p.CapitalB == capitalB;
    }

    /// <summary>ψ, and Δ = θ² + B·((δ − 1)²)^a with θ = 1 − τ + A·((δ − 1)²)^k, with their derivatives by δ.</summary>
    private struct Geometry(double x, double y)
    {
        private readonly double _x = x;
        private readonly double _y = y;
        private readonly double _logSquare = Math.Log(Math.Max(x * x, SmallestSquare));
        private double _powerA;
        private bool _isNegligible;
        private bool _hasPowers;
        private bool _hasDistance;

        public double Square { get; } = x * x;

        public double Psi { get; private set; }

        public double PowerK { get; private set; }

        public double Theta { get; private set; }

        public double Distance { get; private set; }

        public double LogDistance { get; private set; }

        public double DistanceD { get; private set; }

        public double DistanceDD { get; private set; }

        /// <summary>Moves on to a term; false where the term is negligible.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public bool Move(in Term term)
        {
            if (!term.SharesPsi)
            {
                double exponent = (term.C * Square) + (term.D * _y * _y);
                _isNegligible = exponent > NegligibleExponent;
                Psi = _isNegligible ? 0 : Math.Exp(-exponent);
            }

            bool hadPowers = _hasPowers && term.SharesPowers;
            bool hadDistance = _hasDistance && term.SharesDistance;
            _hasPowers = hadPowers;
            _hasDistance = hadDistance;
            if (_isNegligible)
            {
                return false;
            }

            if (!hadPowers)
            {
                PowerK = Math.Exp((term.K - 1) * _logSquare);
                _powerA = Math.Exp((term.A - 1) * _logSquare);
                _hasPowers = true;
            }

            if (!hadDistance)
            {
                FindDistance(term);
                _hasDistance = true;
            }

            return true;
        }

        private void FindDistance(in Term term)
        {
            double k = term.K, a = term.A, capitalA = term.CapitalA, capitalB = term.CapitalB;
            Theta = -_y + (capitalA * PowerK * Square);
            Distance = Math.Max((Theta * Theta) + (capitalB * _powerA * Square), SmallestDistance);
            LogDistance = Math.Log(Distance);
            double slope = (4 * k * capitalA * Theta * PowerK) + (2 * capitalB * a * _powerA);
            DistanceD = _x * slope;
            DistanceDD = slope
                + (4 * capitalB * a * (a - 1) * _powerA)
                + (8 * k * k * capitalA * capitalA * Square * PowerK * PowerK)
                + (8 * k * (k - 1) * capitalA * Theta * PowerK);
        }
    }
}
