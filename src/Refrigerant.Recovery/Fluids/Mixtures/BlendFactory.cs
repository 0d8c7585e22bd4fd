using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Makes fluids of compositions: of the catalogue's blends, and of those that a caller gives.</summary>
internal static class BlendFactory
{
    /// <summary>How far fractions may add up to something else than 1.</summary>
    private const double SumTolerance = 1e-6;

    /// <summary>How far the sum of normalized fractions may be off one: a few units in the last place.</summary>
    private const double Rounding = 4e-15;

    /// <summary>A row of the blend table: designation, then component and percent by mass.</summary>
    public static (string Designation, IReadOnlyList<KeyValuePair<string, double>> MassFractions) Parse(string row)
    {
        const double percent = 100;
        string[] cells = row.Split('|');
        var fractions = cells[1].Trim().Split(' ')
            .Select(part => part.Split(':'))
            .Select(part => new KeyValuePair<string, double>(part[0], double.Parse(part[1], CultureInfo.InvariantCulture) / percent))
            .ToArray();
        return (cells[0].Trim(), fractions);
    }

    /// <summary>The model of a blend whose composition is known to be right.</summary>
    public static PropertyModel Create(
        string designation, IReadOnlyList<KeyValuePair<string, double>> fractions, bool byMass, Func<string, Fluid> find)
    {
        HelmholtzModel[] models = [.. fractions.Select(part => (HelmholtzModel)find(part.Key).Model)];
        double[] given = [.. fractions.Select(part => part.Value)];
        double[] other = [.. given.Select((f, i) => byMass ? f / models[i].MolarMass : f * models[i].MolarMass)];
        double[] first = Normalized(given), second = Normalized(other);
        return new MixtureModel(designation, models, byMass ? first : second, byMass ? second : first);
    }

    /// <summary>A fluid of the caller's composition; a single component, or one whose fraction is 1, is that pure fluid.</summary>
    public static Fluid FromCaller(string? designation, IEnumerable<KeyValuePair<string, double>> fractions, bool byMass, string parameter)
    {
        var parts = new List<KeyValuePair<string, double>>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        double sum = 0;
        foreach (KeyValuePair<string, double> part in Require.NotNull(fractions, parameter))
        {
            Fluid component = Component(part.Key, parameter);
            double fraction = Fraction(component.Designation, part.Value, parameter);
            if (!seen.Add(component.Designation))
            {
                throw new ArgumentException($"{parameter} names {component.Designation} more than once.", parameter);
            }

            sum += fraction;
            if (fraction > 0)
            {
                parts.Add(new KeyValuePair<string, double>(component.Designation, fraction));
            }
        }

        if (!(Math.Abs(sum - 1) <= SumTolerance))
        {
            throw new ArgumentException(
                $"{parameter} add up to {Require.Text(sum)}; {(byMass ? "mass" : "mole")} fractions must add up to 1 within {Require.Text(SumTolerance)}.",
                parameter);
        }

        return parts.Count == 1
            ? FluidCatalogue.Get(parts[0].Key)
            : Fluid.FromModel(Create(Name(designation, parts, byMass), parts, byMass, FluidCatalogue.Get));
    }

    private static Fluid Component(string? designation, string parameter)
    {
        if (designation is null)
        {
            throw new ArgumentException($"{parameter} has a component without a designation.", parameter);
        }

        Fluid component = FluidCatalogue.Get(designation);
        return component.IsBlend
            ? throw new ArgumentException($"{parameter} has {component.Designation}, which is itself a blend; give its components.", parameter)
            : component;
    }

    private static double Fraction(string designation, double fraction, string parameter) =>
        fraction >= 0 && fraction <= 1
            ? fraction
            : throw new ArgumentOutOfRangeException(
                parameter,
                $"{parameter}: the fraction of {designation} is {Require.Text(fraction)}; it must be from 0 to 1.");

    private static string Name(string? designation, List<KeyValuePair<string, double>> parts, bool byMass) =>
        designation ?? string.Join("/", parts.Select(p => p.Key)) + " ("
            + string.Join("/", parts.Select(p => Require.Text(100 * p.Value))) + (byMass ? " % by mass)" : " % by mole)");

    /// <summary>Fractions that add up to one but for rounding stay as they are, so that those of a blend make the same blend again.</summary>
    private static double[] Normalized(double[] values)
    {
        double sum = values.Sum();
        return Math.Abs(sum - 1) <= Rounding ? values : Array.ConvertAll(values, v => v / sum);
    }
}
