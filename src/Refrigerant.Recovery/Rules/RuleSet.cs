using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>The rules of a place: level, proof of the level, filling, records, warming potentials. Immutable.</summary>
/// <remarks>
/// A result by one set holds no figure of another; where a place has no figure, the result says so. Figures as read on the editions named
/// beside each; local codes and licensed practice govern.
/// </remarks>
/// <example>
/// <code>
/// EvacuationRequirement level = EvacuationRequirement.For(
///     Fluid.Get("R-410A"),
///     charge: Mass.FromKilograms(3),
///     new EvacuationOptions { Rules = RuleSet.Japan });
/// Console.WriteLine($"{level.RequiredPressure.Kilopascals:F0} kPa"); // 90 kPa
/// </code>
/// </example>
public sealed class RuleSet : IEquatable<RuleSet>
{
    private readonly Func<SubstanceFamily, AssessmentReport>? _report;

    private RuleSet(string place, ILevelRules levels, FillRules fill, IReadOnlyList<RecordRule> records, Func<SubstanceFamily, AssessmentReport>? report)
    {
        Place = place;
        Levels = levels;
        Fill = fill;
        Records = records;
        _report = report;
    }

    /// <summary>United States: 40 CFR 82 Subpart F and 49 CFR. The default everywhere.</summary>
    public static RuleSet UnitedStates { get; } = new(
        "United States", new UnitedStatesLevels(), FillRules.UnitedStates, RecordFigures.UnitedStates, _ => AssessmentReport.Fourth);

    /// <summary>UN Model Regulations and ADR/RID: filling and transport only.</summary>
    public static RuleSet UnitedNations { get; } = new(
        "UN Model Regulations, ADR/RID", new LevelsWithoutFigure(PlaceFigures.TransportNone), FillRules.UnitedNations, [], null);

    /// <summary>European Union: Regulation (EU) 2024/573, which states no pressure, with the levels of EN 378-4; ADR.</summary>
    public static RuleSet EuropeanUnion { get; } = new(
        "European Union", new EuropeanLevels(spain: false), FillRules.EuropeanUnion, RecordFigures.EuropeanUnion, European);

    /// <summary>Spain: as the European Union, by RD 552/2019, which is stricter before service.</summary>
    public static RuleSet Spain { get; } = new(
        "Spain", new EuropeanLevels(spain: true), FillRules.EuropeanUnion, RecordFigures.Spain, European);

    /// <summary>Japan: Ordinance 7 of 2014 and the Cylinder Safety Ordinance.</summary>
    public static RuleSet Japan { get; } = new("Japan", new JapanLevels(), FillRules.Japan, RecordFigures.Japan, null);

    /// <summary>Canada, federal: SOR/2022-110, which states no pressure and no filling figure.</summary>
    public static RuleSet Canada { get; } = new(
        "Canada", new LevelsWithoutFigure(PlaceFigures.CanadaNone), FillRules.Canada, RecordFigures.Canada, null);

    /// <summary>The places that the library knows.</summary>
    public static IReadOnlyList<RuleSet> All { get; } = [UnitedStates, UnitedNations, EuropeanUnion, Spain, Japan, Canada];

    /// <summary>The place.</summary>
    public string Place { get; }

    /// <summary>The filling rules, for <see cref="FillOptions.Rules"/>.</summary>
    public FillRules Fill { get; }

    /// <summary>What is written down; empty where nothing was found.</summary>
    public IReadOnlyList<RecordRule> Records { get; }

    internal ILevelRules Levels { get; }

    /// <summary>The caller's own level; null where the set is a place's.</summary>
    internal CallersLevels? Own => Levels as CallersLevels;

    /// <summary>Rules of the caller's own.</summary>
    /// <param name="place">What the set is called: not blank, and not as one of <see cref="All"/> is.</param>
    /// <param name="level">The absolute pressure to reach, greater than zero, at most 10 MPa.</param>
    /// <param name="fill">The filling rules.</param>
    /// <param name="source">Where the level comes from, for the record.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A text is blank, or the place is called like a set of the library.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is outside its range.</exception>
    public static RuleSet FromCaller(string place, Pressure level, FillRules fill, string source) => new(
        OwnName(place),
        new CallersLevels(Held.Kilopascals(CallersLevels.Checked(level, nameof(level))), Require.NotEmpty(source, nameof(source))),
        Require.NotNull(fill, nameof(fill)),
        [],
        null);

    /// <summary>The set of that place; null where the library knows none.</summary>
    /// <param name="place">Such as "Japan".</param>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public static RuleSet? Find(string place)
    {
        Require.NotNull(place, nameof(place));
        foreach (RuleSet set in All)
        {
            if (string.Equals(set.Place, place, StringComparison.OrdinalIgnoreCase))
            {
                return set;
            }
        }

        return null;
    }

    /// <summary>Whether both are the same place's, or the caller's own with the same figures.</summary>
    /// <param name="other">Another.</param>
    public bool Equals(RuleSet? other) => other is not null && (ReferenceEquals(this, other)
        || (Own is { } own && own.Equals(other.Own) && Place == other.Place && Fill.Equals(other.Fill)));

    /// <summary>Whether two sets are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(RuleSet? left, RuleSet? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two sets differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(RuleSet? left, RuleSet? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as RuleSet);

    /// <inheritdoc/>
    public override int GetHashCode() => Place.GetHashCode();

    /// <summary>The warming potential that the law of the place uses; null where it names no source that was found, or the figure was not.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    public SourcedFigure? WarmingPotential(Fluid fluid)
    {
        RefrigerantFacts facts = RefrigerantFacts.For(fluid);
        return _report is null ? null : facts.GlobalWarmingPotential(_report);
    }

    /// <summary>The place.</summary>
    public override string ToString() => Place;

    /// <summary>Regulation (EU) 2024/573: saturated HFC by the fourth report, all else by the sixth (read second-hand).</summary>
    private static string OwnName(string place) => Find(Require.NotEmpty(place, nameof(place))) is null
        ? place
        : throw new ArgumentException($"{nameof(place)} is \"{place}\", a set of the library; give rules of your own another name.", nameof(place));

    private static AssessmentReport European(SubstanceFamily family) => family == SubstanceFamily.Hfc ? AssessmentReport.Fourth : AssessmentReport.Sixth;
}
