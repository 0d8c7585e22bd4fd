using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Sorts published terms into the columns of a <see cref="TermTable"/>.</summary>
internal sealed class ResidualLayout
{
    private readonly List<Term> _terms = [];

    /// <exception cref="ArgumentException">An exponent of δ is not a whole number from 0 to <see cref="TermTable.HighestPower"/>.</exception>
    public ResidualLayout(ResidualTerms terms)
    {
        Collect(terms);
        _terms.Sort(Compare);
        int[] lengths = new int[3];
        int highest = 0, exponentials = 0, common = _terms.Count == 0 ? 0 : int.MaxValue;
        foreach ((int first, int count) in Groups())
        {
            lengths[(int)_terms[first].Kind] += TermTable.Filled(count);
            exponentials += _terms[first].Kind == TermKind.Power ? 1 : 0;
        }

        foreach (Term term in _terms)
        {
            highest = Math.Max(highest, Math.Max(term.D, term.L));
            common = Math.Min(common, term.D);
        }

        if (exponentials > TermTable.MostExponentials)
        {
            throw new ArgumentException($"At most {TermTable.MostExponentials} different exponentials of a power of the density; there are {exponentials}.", nameof(terms));
        }

        int powerEnd = lengths[0] + lengths[1];
        Table = new TermTable(lengths[0], powerEnd, powerEnd + lengths[2], exponentials, highest, common);
        var special = new List<SpecialTerm>();
        int start = 0, exponential = -1;
        foreach ((int first, int count) in Groups())
        {
            if (_terms[first].Kind == TermKind.Power)
            {
                Table.Exponentials.Store(++exponential, _terms[first].G, _terms[first].L);
            }

            // Column by column, so that terms of like powers, which are large and cancel, are added to each other first.
            int rows = TermTable.Filled(count) / TermTable.Row;
            for (int k = 0; k < count; k++)
            {
                Term term = _terms[first + k];
                int i = start + ((k % rows) * TermTable.Row) + (k / rows);
                Store(i, term, exponential);
                if (term.Factor.Kind is TauFactorKind.DoubleExponential or TauFactorKind.GaoB)
                {
                    special.Add(new SpecialTerm(i, term.N, term.Factor));
                }
            }

            start += rows * TermTable.Row;
        }

        Special = [.. special];
    }

    /// <summary>How the exponential of δ of a term is made.</summary>
    private enum TermKind
    {
        Polynomial,
        Power,
        General,
    }

    public TermTable Table { get; }

    /// <summary>The terms whose factor of τ is neither a power nor a Gaussian.</summary>
    public SpecialTerm[] Special { get; }

    private static int Compare(Term x, Term y)
    {
        int c = x.Kind.CompareTo(y.Kind);
        c = c != 0 ? c : x.L.CompareTo(y.L);
        c = c != 0 ? c : x.G.CompareTo(y.G);
        c = c != 0 ? c : x.Eta.CompareTo(y.Eta);
        c = c != 0 ? c : x.Epsilon.CompareTo(y.Epsilon);
        c = c != 0 ? c : x.Beta.CompareTo(y.Beta);
        c = c != 0 ? c : x.Gamma.CompareTo(y.Gamma);
        c = c != 0 ? c : x.D.CompareTo(y.D);
        return c != 0 ? c : x.Order.CompareTo(y.Order);
    }

    private static TauFactor Power(double t) => new(TauFactorKind.Power, t, 0, 0, 0);

    private static int Whole(double exponent) =>
        exponent >= 0 && exponent <= TermTable.HighestPower && exponent == Math.Floor(exponent)
            ? (int)exponent
            : throw new ArgumentException($"Exponents of the density must be whole numbers from 0 to {TermTable.HighestPower}; one is {Require.Text(exponent)}.", nameof(exponent));

    private void Collect(ResidualTerms terms)
    {
        ForEach(terms.Power, r => Add(r[0], Power(r[2]), r[1], l: r[3], g: r[3] == 0 ? 0 : 1));
        ForEach(terms.Exponential, r => Add(r[0], Power(r[2]), r[1], l: r[4], g: r[3]));
        ForEach(terms.Gaussian, r => Add(r[0], new(TauFactorKind.Gaussian, r[2], r[4], r[5], 0), r[1], eta: r[3], epsilon: r[6]));
        ForEach(terms.GaoB, r => Add(r[0], new(TauFactorKind.GaoB, r[2], r[4], r[5], r[7]), r[1], eta: -r[3], epsilon: r[6]));
        ForEach(terms.Gerg, r => Add(r[0], Power(r[2]), r[1], eta: r[3], epsilon: r[6], beta: r[4], gamma: r[5]));
        ForEach(terms.DoubleExponential, r => Add(
            r[0],
            r[4] == 0 ? Power(r[2]) : new(TauFactorKind.DoubleExponential, r[2], r[4], 0, 0),
            r[1],
            l: r[3],
            g: r[3] == 0 ? 0 : 1));
    }

    private static void ForEach(double[,] rows, Action<double[]> add)
    {
        for (int i = 0; i < rows.GetLength(0); i++)
        {
            var row = new double[rows.GetLength(1)];
            for (int j = 0; j < row.Length; j++)
            {
                row[j] = rows[i, j];
            }

            add(row);
        }
    }

    private void Add(
        double n, TauFactor factor, double d, double l = 0, double g = 0, double eta = 0, double epsilon = 0, double beta = 0, double gamma = 0)
    {
        TermKind kind = factor.Kind != TauFactorKind.Power || eta != 0 || beta != 0 ? TermKind.General
            : g != 0 ? TermKind.Power
            : TermKind.Polynomial;
        _terms.Add(new Term(_terms.Count, kind, n, factor, Whole(d), Whole(l), g, eta, epsilon, beta, gamma));
    }

    /// <summary>The sorted terms in groups that fill rows of their own: by kind, and by g and l where these make the exponential.</summary>
    private List<(int First, int Count)> Groups()
    {
        var groups = new List<(int First, int Count)>();
        int first = 0;
        for (int k = 1; k <= _terms.Count; k++)
        {
            if (k == _terms.Count
                || _terms[k].Kind != _terms[first].Kind
                || (_terms[k].Kind == TermKind.Power && (_terms[k].L != _terms[first].L || _terms[k].G != _terms[first].G)))
            {
                groups.Add((first, k - first));
                first = k;
            }
        }

        return groups;
    }

    private void Store(int i, in Term term, int exponential)
    {
        double t = term.Factor.Exponent;
        Table.N[i] = term.N;
        Table.T[i] = t;
        Table.TT[i] = t * (t - 1);
        Table.D[i] = term.D - Table.Common;
        Table.Degree[i] = term.D;
        if (term.Kind == TermKind.Power)
        {
            Table.ExponentialOfRow[(i - Table.PolynomialEnd) / TermTable.Row] = exponential;
        }
        else if (term.Kind == TermKind.General)
        {
            GeneralExponents general = Table.General;
            int k = i - Table.PowerEnd;
            general.Power.Store(k, term.G, term.L);
            general.Eta[k] = term.Eta;
            general.Epsilon[k] = term.Epsilon;
            general.Beta[k] = term.Beta;
            general.Gamma[k] = term.Gamma;
            if (term.Factor.Kind == TauFactorKind.Gaussian)
            {
                general.TauBeta[k] = term.Factor.Beta;
                general.TauGamma[k] = term.Factor.Gamma;
            }
        }
    }

    private readonly record struct Term(
        int Order, TermKind Kind, double N, TauFactor Factor, int D, int L, double G, double Eta, double Epsilon, double Beta, double Gamma);
}

/// <summary>A term of a <see cref="TermTable"/> whose factor of τ is neither a power nor a Gaussian.</summary>
/// <param name="Index">Its place in the table.</param>
/// <param name="N">n.</param>
/// <param name="Factor">The factor.</param>
internal readonly record struct SpecialTerm(int Index, double N, TauFactor Factor);
