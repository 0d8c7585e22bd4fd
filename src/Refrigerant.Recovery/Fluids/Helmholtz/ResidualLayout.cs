using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Sorts published terms into what <see cref="ResidualHelmholtz"/> evaluates: shared factors of τ, groups of δ, exponentials of δ.</summary>
internal sealed class ResidualLayout
{
    private readonly List<(double N, TauFactor Factor, int Power, DeltaExponent Exponent)> _terms = [];

    public ResidualLayout(ResidualTerms terms)
    {
        Collect(terms);
        _terms.Sort((x, y) => Compare(x.Exponent, x.Power, y.Exponent, y.Power));

        var factors = new List<TauFactor>();
        var powers = new List<int>();
        var exponentials = new List<DeltaExponential>();
        TermN = new double[_terms.Count];
        TermFactor = new int[_terms.Count];
        TermGroup = new int[_terms.Count];
        int firstGroup = 0;
        for (int i = 0; i < _terms.Count; i++)
        {
            (double n, TauFactor factor, int power, DeltaExponent exponent) = _terms[i];
            bool newExponential = i == 0 || exponent != _terms[i - 1].Exponent;
            if (newExponential || power != _terms[i - 1].Power)
            {
                powers.Add(power);
            }

            if (newExponential && i > 0)
            {
                exponentials.Add(new DeltaExponential(_terms[i - 1].Exponent, firstGroup, powers.Count - 1));
                firstGroup = powers.Count - 1;
            }

            int index = factors.IndexOf(factor);
            if (index < 0)
            {
                index = factors.Count;
                factors.Add(factor);
            }

            TermN[i] = n;
            TermFactor[i] = index;
            TermGroup[i] = powers.Count - 1;
            HighestPower = Math.Max(HighestPower, Math.Max(power, exponent.L));
        }

        if (_terms.Count > 0)
        {
            exponentials.Add(new DeltaExponential(_terms[_terms.Count - 1].Exponent, firstGroup, powers.Count));
        }

        Factors = factors.ToArray();
        GroupPower = powers.ToArray();
        Exponentials = exponentials.ToArray();
    }

    public TauFactor[] Factors { get; }

    public double[] TermN { get; }

    public int[] TermFactor { get; }

    public int[] TermGroup { get; }

    public int[] GroupPower { get; }

    public DeltaExponential[] Exponentials { get; }

    public int HighestPower { get; }

    private static int Compare(DeltaExponent x, int xPower, DeltaExponent y, int yPower)
    {
        int c = x.L.CompareTo(y.L);
        c = c != 0 ? c : x.G.CompareTo(y.G);
        c = c != 0 ? c : x.Eta.CompareTo(y.Eta);
        c = c != 0 ? c : x.Epsilon.CompareTo(y.Epsilon);
        c = c != 0 ? c : x.Beta.CompareTo(y.Beta);
        c = c != 0 ? c : x.Gamma.CompareTo(y.Gamma);
        return c != 0 ? c : xPower.CompareTo(yPower);
    }

    private static TauFactor Power(double t) => new(TauFactorKind.Power, t, 0, 0, 0);

    private void Collect(ResidualTerms terms)
    {
        ForEach(terms.Power, r => Add(r[0], Power(r[2]), r[1], new(r[3] == 0 ? 0 : 1, (int)r[3], 0, 0, 0, 0)));
        ForEach(terms.Exponential, r => Add(r[0], Power(r[2]), r[1], new(r[3], (int)r[4], 0, 0, 0, 0)));
        ForEach(terms.Gaussian, r => Add(r[0], new(TauFactorKind.Gaussian, r[2], r[4], r[5], 0), r[1], new(0, 0, r[3], r[6], 0, 0)));
        ForEach(terms.GaoB, r => Add(r[0], new(TauFactorKind.GaoB, r[2], r[4], r[5], r[7]), r[1], new(0, 0, -r[3], r[6], 0, 0)));
        ForEach(terms.Gerg, r => Add(r[0], Power(r[2]), r[1], new(0, 0, r[3], r[6], r[4], r[5])));
        ForEach(terms.DoubleExponential, r => Add(
            r[0],
            r[4] == 0 ? Power(r[2]) : new(TauFactorKind.DoubleExponential, r[2], r[4], 0, 0),
            r[1],
            new(r[3] == 0 ? 0 : 1, (int)r[3], 0, 0, 0, 0)));
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

    private void Add(double n, TauFactor factor, double power, DeltaExponent exponent) => _terms.Add((n, factor, (int)power, exponent));
}
