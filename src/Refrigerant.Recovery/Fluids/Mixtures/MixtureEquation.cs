using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The multi-fluid Helmholtz model of a set of components (Kunz and Wagner 2012, doi:10.1021/je300655b), for any composition of them:
/// <c>α_r = Σ x_i α_r,i(τ, δ) + Σ_{i&lt;j} x_i x_j F_ij α_r,ij(τ, δ)</c>. Immutable; a <see cref="MixturePhase"/> evaluates it.
/// </summary>
internal sealed class MixtureEquation
{
    /// <summary>Molar gas constant of mixtures, J/(mol·K): CODATA 2018, for every component.</summary>
    public const double GasConstant = 8.314462618;

    public MixtureEquation(IReadOnlyList<MixtureComponent> components)
    {
        Components = [.. components];
        int n = Components.Length;
        var pairs = new List<BinaryPair>();
        var departures = new List<PairDeparture>();
        var sources = new List<string>();
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                BinaryPair pair = BinaryPairs.Get(Components[i].Designation, Components[j].Designation);
                pairs.Add(pair);
                if (pair.Departure is { } departure && pair.Weight != 0)
                {
                    departures.Add(new PairDeparture(i, j, pair.Weight, departure.Residual));
                }

                if (pair.Source is null)
                {
                    Quality = ModelQuality.Estimated;
                }
                else if (!sources.Contains(pair.Source))
                {
                    sources.Add(pair.Source);
                }
            }
        }

        Departures = [.. departures];
        Powers = Components.Select(c => c.Residual).Concat(departures.Select(d => d.Residual)).Max(r => r.Table.Powers);
        Sources = sources;
        Reducing = new ReducingFunctions(
            Array.ConvertAll(Components, c => c.Data.ReducingTemperature),
            Array.ConvertAll(Components, c => c.Data.ReducingMolarDensity),
            [.. pairs]);
    }

    public MixtureComponent[] Components { get; }

    public PairDeparture[] Departures { get; }

    public ReducingFunctions Reducing { get; }

    /// <summary>How many powers of δ the terms have, the zeroth included.</summary>
    public int Powers { get; }

    /// <summary>Whether every pair has published parameters.</summary>
    public ModelQuality Quality { get; }

    /// <summary>The publications of the pairs.</summary>
    public IReadOnlyList<string> Sources { get; }

    public int Count => Components.Length;
}

/// <summary>A departure function with its place in the mixture.</summary>
internal readonly record struct PairDeparture(int First, int Second, double Weight, ResidualHelmholtz Residual);
