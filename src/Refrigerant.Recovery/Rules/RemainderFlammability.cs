using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>Whether what is left of a blend burns, after its composition has shifted. Immutable.</summary>
/// <remarks>
/// By the safety groups of the components and of the blend as charged. Where components that burn have gained on the others, nothing
/// published decides. The lower limit is by Le Chatelier's rule over the components that burn, none of the others credited: c = Σw/Σ(w/c_i),
/// the lower bound.
/// </remarks>
public sealed record RemainderFlammability
{
    /// <summary>Shares that differ by less are the same. Our choice: the tolerances of blends are no tighter.</summary>
    private const double ShareTolerance = 0.005;

    private readonly double? _limit;

    private RemainderFlammability(FlammabilityVerdict verdict, double? limit, IReadOnlyList<Finding> findings)
    {
        Verdict = verdict;
        _limit = limit;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The verdict.</summary>
    public FlammabilityVerdict Verdict { get; }

    /// <summary>Lower bound of the lower flammability limit in air; null where nothing in it burns, or a limit was not found.</summary>
    public Density? LowerLimit => _limit is double value ? new Density(value, DensityUnit.KilogramPerCubicMeter) : null;

    /// <summary>The caution where it burns or may burn.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Judges a composition.</summary>
    /// <param name="fluid">The blend as charged.</param>
    /// <param name="massFractions">What is left of each component, by mass, in the order of <see cref="Fluid.Composition"/>; their sum is taken as the whole.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">Not one share for each component.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share is negative, or all are zero.</exception>
    public static RemainderFlammability Judge(Fluid fluid, IReadOnlyList<double> massFractions)
    {
        IReadOnlyList<FluidComponent> parts = Require.NotNull(fluid, nameof(fluid)).Composition;
        if (Require.NotNull(massFractions, nameof(massFractions)).Count != parts.Count)
        {
            throw new ArgumentException($"{nameof(massFractions)} has {massFractions.Count} shares; it must have {parts.Count}.", nameof(massFractions));
        }

        double sum = Require.Positive(massFractions.Sum(share => Require.NotNegative(share, string.Empty, nameof(massFractions))), string.Empty, nameof(massFractions));
        double[] shares = [.. massFractions.Select(share => share / sum)];
        bool?[] burns = [.. parts.Select(part => Burns(part.Designation))];
        if (burns.All(flag => flag == false))
        {
            return new RemainderFlammability(FlammabilityVerdict.DoesNotBurn, null, []);
        }

        int[] burning = [.. Enumerable.Range(0, parts.Count).Where(i => burns[i] != false && shares[i] > 0)];
        bool gained = burning.Any(i => shares[i] > parts[i].MassFraction + ShareTolerance);
        bool lost = burning.Any(i => shares[i] < parts[i].MassFraction - ShareTolerance);
        bool? whole = RefrigerantFacts.For(fluid).IsFlammable;
        FlammabilityVerdict verdict = burning.Length == 0 || (whole == false && !gained) ? FlammabilityVerdict.DoesNotBurn
            : burns.All(flag => flag == true) || (whole == true && !lost) ? FlammabilityVerdict.Burns
            : FlammabilityVerdict.CannotTell;
        double? limit = verdict == FlammabilityVerdict.DoesNotBurn ? null : Limit(parts, shares, burning);
        return new RemainderFlammability(verdict, limit, verdict == FlammabilityVerdict.DoesNotBurn ? [] : [Caution(fluid, verdict, burning.Sum(i => shares[i]), limit)]);
    }

    /// <summary>The verdict.</summary>
    public override string ToString() => Verdict.ToString();

    private static bool? Burns(string designation) => PureFacts.Find(designation)?.Group is SourcedText group ? group.Value[1] != '1' : null;

    private static double? Limit(IReadOnlyList<FluidComponent> parts, double[] shares, int[] burning)
    {
        double sum = 0;
        foreach (int i in burning)
        {
            if (FlammabilityFigures.Find(parts[i].Designation) is not (double limit, _))
            {
                return null;
            }

            sum += shares[i] / limit;
        }

        return burning.Sum(i => shares[i]) / sum;
    }

    private static Finding Caution(Fluid fluid, FlammabilityVerdict verdict, double share, double? limit) => new(
        RuleCodes.RemainderBurns,
        Severity.Warning,
        "ASHRAE Standard 34 (from memory); Le Chatelier's rule",
        $"What is left of {fluid.Designation} is {FindingValue.Fraction("share that burns", share)} by mass of components that burn: {(verdict == FlammabilityVerdict.Burns ? "it burns." : "no published class tells whether it burns; treat it as flammable.")}",
        limit is double value
            ? (FormattableString)$"Its lower limit is {FindingValue.Density("lower limit", new Density(value, DensityUnit.KilogramPerCubicMeter))} at least."
            : null);
}
