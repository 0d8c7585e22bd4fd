using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>What a refrigerant is: name, composition, safety group, ozone depletion and warming potentials, oils. Immutable.</summary>
/// <remarks>A figure that was not found is null, never guessed. A blend's potentials are mass-weighted from its components and marked as computed.</remarks>
public sealed record RefrigerantFacts
{
    /// <summary>
    /// Where one report lists no value for a component, another report's stands in if it is at most this: hydrocarbons and olefins, a few
    /// percent of a blend, which it cannot move by more than that share of ten.
    /// </summary>
    private const double StandInLimit = 10;

    /// <summary>Mass fractions that differ by less than half of the last digit of the listed ones are the same.</summary>
    private const double SameFraction = 6e-4;

    private const string WeightedSource = "mass-weighted from the components";

    private readonly IReadOnlyList<(PureFacts Facts, double MassFraction)>? _parts;

    private RefrigerantFacts(Fluid fluid, IReadOnlyList<(PureFacts Facts, double MassFraction)>? parts)
    {
        Fluid = fluid;
        _parts = parts;
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>Chemical name; of a blend, the names of its components; null where the refrigerant is not known here.</summary>
    public string? ChemicalName => _parts is null ? null : string.Join(" / ", _parts.Select(part => part.Facts.Name));

    /// <summary>The components with their mass and mole fractions.</summary>
    public IReadOnlyList<FluidComponent> Composition => Fluid.Composition;

    /// <summary>What kind of substance it is; null where the refrigerant is not known here.</summary>
    public SubstanceFamily? Family =>
        _parts is null ? null
        : _parts.All(part => part.Facts.Family == _parts[0].Facts.Family) ? _parts[0].Facts.Family
        : SubstanceFamily.Mixed;

    /// <summary>ASHRAE 34 safety group, such as "A2L"; null where none was found.</summary>
    public SourcedText? SafetyGroup =>
        _parts is { Count: 1 } ? _parts[0].Facts.Group
        : IsAsListed && BlendGroups.Find(Fluid.Designation) is string group ? new SourcedText(group, "ASHRAE Standard 34", Evidence.FromMemory)
        : null;

    /// <summary>Whether it is made as the refrigerant that is listed by its designation: a caller's own blend may bear any name.</summary>
    private bool IsAsListed
    {
        get
        {
            IReadOnlyList<FluidComponent> own = Fluid.Composition;
            return Fluid.TryGet(Fluid.Designation, out Fluid? listed) && listed.Composition.Count == own.Count
                && listed.Composition.All(part => own.Any(other => other.Designation == part.Designation && Math.Abs(other.MassFraction - part.MassFraction) < SameFraction));
        }
    }

    /// <summary>Whether the safety group says that it burns (2L, 2 or 3); null where no group was found.</summary>
    public bool? IsFlammable => SafetyGroup is SourcedText group ? group.Value[1] != '1' : null;

    /// <summary>Whether the safety group says that it is of higher toxicity (B); null where no group was found.</summary>
    public bool? IsToxic => SafetyGroup is SourcedText group ? group.Value[0] == 'B' : null;

    /// <summary>Ozone depletion potential, regulatory where there is one; null where none was found for a component.</summary>
    public SourcedFigure? OzoneDepletionPotential => Weighted(facts => facts.Ozone);

    /// <summary>Oils in customary use (common practice); <see cref="OilFamilies.None"/> where not known here.</summary>
    public OilFamilies Oils
    {
        get
        {
            if (_parts is null)
            {
                return OilFamilies.None;
            }

            // One component with chlorine makes a blend an interim refrigerant for mineral oil; one without hydrocarbons needs polyol ester.
            if (_parts.Any(part => part.Facts.Oils == OilFamilies.Mineral))
            {
                return OilFamilies.Mineral;
            }

            OilFamilies common = _parts[0].Facts.Oils;
            foreach ((PureFacts facts, _) in _parts)
            {
                common &= facts.Oils;
            }

            return common == OilFamilies.None ? OilFamilies.PolyolEster : common;
        }
    }

    /// <summary>Cautions that go with the safety group.</summary>
    public IReadOnlyList<Finding> Findings => [.. Cautions()];

    /// <summary>The facts of a refrigerant; for one that is not known here, such as a caller's own, with nothing but its composition.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    public static RefrigerantFacts For(Fluid fluid)
    {
        Require.NotNull(fluid, nameof(fluid));
        List<(PureFacts, double)> parts = [];
        foreach (FluidComponent component in fluid.Composition)
        {
            if (PureFacts.Find(component.Designation) is not PureFacts facts)
            {
                return new RefrigerantFacts(fluid, null);
            }

            parts.Add((facts, component.MassFraction));
        }

        return new RefrigerantFacts(fluid, parts);
    }

    /// <summary>Global warming potential over 100 years by an IPCC report; null where a component's was not found.</summary>
    /// <param name="report">The report.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such report.</exception>
    public SourcedFigure? GlobalWarmingPotential(AssessmentReport report)
    {
        Require.Defined(report, nameof(report));
        bool isBlend = _parts is { Count: > 1 };
        return Weighted(facts => facts.Gwp(report) ?? (isBlend ? StandIn(facts) : null));
    }

    /// <summary>CO2-equivalent of a mass; null where no warming potential was found.</summary>
    /// <param name="mass">The mass, zero or more.</param>
    /// <param name="report">The IPCC report.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is negative or not finite, or there is no such report.</exception>
    public Mass? CarbonDioxideEquivalent(Mass mass, AssessmentReport report)
    {
        double kilograms = Require.NotNegative(mass.Kilograms, "kg", nameof(mass));
        return GlobalWarmingPotential(report) is SourcedFigure figure ? new Mass(kilograms * figure.Value, MassUnit.Kilogram) : null;
    }

    /// <summary>Whether both are of the same fluid, of which all facts follow.</summary>
    /// <param name="other">The other, or null.</param>
    public bool Equals(RefrigerantFacts? other) => other is not null && Fluid == other.Fluid;

    /// <inheritdoc/>
    public override int GetHashCode() => Fluid.GetHashCode();

    /// <summary>Designation, name and group.</summary>
    public override string ToString() => $"{Fluid.Designation}: {ChemicalName ?? "not known here"}, {SafetyGroup?.Value ?? "no safety group found"}";

    /// <summary>The warming potential where each component's report depends on what it is.</summary>
    internal SourcedFigure? GlobalWarmingPotential(Func<SubstanceFamily, AssessmentReport> report) =>
        Weighted(facts => facts.Gwp(report(facts.Family)) ?? (_parts is { Count: > 1 } ? StandIn(facts) : null));

    private static SourcedFigure? StandIn(PureFacts facts)
    {
        SourcedFigure? other = facts.Gwp(AssessmentReport.Fourth) ?? facts.Gwp(AssessmentReport.Sixth) ?? facts.Gwp(AssessmentReport.Fifth);
        return other is { Value: <= StandInLimit } ? other : null;
    }

    private SourcedFigure? Weighted(Func<PureFacts, SourcedFigure?> select)
    {
        if (_parts is null)
        {
            return null;
        }

        if (_parts.Count == 1)
        {
            return select(_parts[0].Facts);
        }

        double sum = 0;
        foreach ((PureFacts facts, double fraction) in _parts)
        {
            if (select(facts) is not SourcedFigure figure)
            {
                return null;
            }

            sum += fraction * figure.Value;
        }

        return new SourcedFigure(sum, false, WeightedSource, Evidence.Computed);
    }

    private IEnumerable<Finding> Cautions()
    {
        if (SafetyGroup is not SourcedText group)
        {
            yield return new Finding(
                RuleCodes.GroupUnknown,
                Severity.Caution,
                Sources.CommonPractice,
                $"No safety group was found for {Fluid.Designation}: treat it as flammable and toxic until its data sheet says otherwise.");
            yield break;
        }

        if (IsFlammable == true)
        {
            yield return new Finding(
                RuleCodes.Burns,
                Severity.Warning,
                group.Source,
                $"{Fluid.Designation} burns (group {FindingValue.Text("group", group.Value)}): equipment made for flammable refrigerants, no source of ignition, ventilation, hoses purged of air, a cylinder of its own.");
        }

        if (IsToxic == true)
        {
            yield return new Finding(
                RuleCodes.Toxic,
                Severity.Warning,
                group.Source,
                $"{Fluid.Designation} is of higher toxicity (group {FindingValue.Text("group", group.Value)}): ventilate, wear protection and have breathing protection for it at hand, watch a detector, keep others away. Local codes say who may handle it and how.");
        }

        if (Fluid.Composition.Any(part => part.Designation == "R-717"))
        {
            yield return new Finding(
                RuleCodes.AttacksCopper,
                Severity.Warning,
                Sources.CommonPractice,
                $"{Fluid.Designation} attacks copper and brass: machine, hoses, valves, gauges and cylinders made for ammonia only, of steel or aluminium.");
        }
    }
}
