using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>The filling rules of a place. Immutable.</summary>
/// <remarks>A limit by one set holds no figure of another. Figures as read on the editions named beside each; local codes govern.</remarks>
public sealed class FillRules : IEquatable<FillRules>
{
    private const string AdrOverdue = "ADR/RID 2025, 4.1.6.10";

    private readonly HashSet<FillRuleKind> _kinds;

    private FillRules(string place, params FillRuleKind[] kinds)
    {
        Place = place;
        Kinds = Array.AsReadOnly(kinds);
        _kinds = [.. kinds];
    }

    /// <summary>United States: 49 CFR, with the filling ratios of the UN Model Regulations and the trade's guideline. The default.</summary>
    public static FillRules UnitedStates { get; } = new(
        "United States",
        FillRuleKind.EightyPercentAt25C,
        FillRuleKind.NotLiquidFullAt55C,
        FillRuleKind.LiquidDensityAt50C,
        FillRuleKind.NotLiquidFullAt60C,
        FillRuleKind.TestPressureAt65C,
        FillRuleKind.ListedFillingRatio,
        FillRuleKind.ListedFillingDensity,
        FillRuleKind.PressureAt55C,
        FillRuleKind.PressureAt21C,
        FillRuleKind.RecoveredWithOil,
        FillRuleKind.EightyPercentOfWaterCapacity)
    {
        Requalification = FillFigures.Requalification.Source,
        NonRefillable = FillFigures.NonRefillable.Source,
        Weighing = FillFigures.ByWeight.Source,
    };

    /// <summary>UN Model Regulations and ADR/RID: packing instruction P200 and nothing else.</summary>
    public static FillRules UnitedNations { get; } = new(
        "UN Model Regulations, ADR/RID",
        FillRuleKind.LiquidDensityAt50C,
        FillRuleKind.NotLiquidFullAt60C,
        FillRuleKind.TestPressureAt65C,
        FillRuleKind.ListedFillingRatio)
    {
        Requalification = AdrOverdue,
    };

    /// <summary>European Union: ADR, and 80 % of the volume as liquid at 20 °C, as Spain's law states it.</summary>
    public static FillRules EuropeanUnion { get; } = new(
        "European Union",
        FillRuleKind.LiquidDensityAt50C,
        FillRuleKind.NotLiquidFullAt60C,
        FillRuleKind.TestPressureAt65C,
        FillRuleKind.ListedFillingRatio,
        FillRuleKind.EightyPercentAt20C)
    {
        Requalification = AdrOverdue,
        NonRefillable = "Regulation (EU) 2024/573, art. 11 (from memory)",
        Weighing = FillFigures.EightyPercentAt20C.Source,
    };

    /// <summary>Japan: the constants of the Cylinder Safety Ordinance.</summary>
    public static FillRules Japan { get; } = new("Japan", FillRuleKind.ListedFillingConstant)
    {
        Requalification = FillConstantFigures.Reinspection.Source,
    };

    /// <summary>Canada: the federal regulation asks for a refillable container made for the refrigerant and names no filling figure that was found.</summary>
    public static FillRules Canada { get; } = new("Canada")
    {
        WithoutFigure = "No filling figure of Canada's was found: SOR/2022-110 asks for a refillable container made for the refrigerant.",
        NonRefillable = "SOR/2022-110, s. 6, 15, 16",
    };

    /// <summary>The places that the library knows.</summary>
    internal static IReadOnlyList<FillRules> All { get; } = [UnitedStates, UnitedNations, EuropeanUnion, Japan, Canada];

    /// <summary>The place, for the record.</summary>
    public string Place { get; }

    /// <summary>The rules that apply there, where they give a figure.</summary>
    public IReadOnlyList<FillRuleKind> Kinds { get; }

    /// <summary>What stands behind the requalification date.</summary>
    internal string Requalification { get; init; } = Sources.CommonPractice;

    /// <summary>What forbids to fill a non-refillable cylinder.</summary>
    internal string NonRefillable { get; init; } = Sources.CommonPractice;

    /// <summary>What asks for weighing.</summary>
    internal string Weighing { get; init; } = Sources.CommonPractice;

    /// <summary>The sentence that says that the place has no figure; null where it has.</summary>
    internal string? WithoutFigure { get; init; }

    /// <summary>The caller's own rule: the share of the volume that is liquid at a temperature; null where there is none.</summary>
    internal (double Share, double Celsius, RuleFigure Figure)? Own { get; private init; }

    /// <summary>Rules of the caller's own: liquid fills a share of the volume at a temperature.</summary>
    /// <param name="place">What the set is called: not blank, and not as a set of the library is.</param>
    /// <param name="liquidShare">The share, above 0, at most 1.</param>
    /// <param name="temperature">The temperature at which it holds, greater than 0 K.</param>
    /// <param name="source">Where it comes from, for the record.</param>
    /// <exception cref="ArgumentNullException">A text is null.</exception>
    /// <exception cref="ArgumentException">A text is blank, or the place is called like a set of the library.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static FillRules FromCaller(string place, Ratio liquidShare, Temperature temperature, string source)
    {
        double share = Require.InRange(Require.Positive(liquidShare.DecimalFractions, string.Empty, nameof(liquidShare)), 0, 1, string.Empty, nameof(liquidShare));
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        string at = Require.Text(Math.Round(kelvins - 273.15, 3));
        if (All.Any(set => string.Equals(set.Place, Require.NotEmpty(place, nameof(place)), StringComparison.OrdinalIgnoreCase)))
        {
            throw new ArgumentException($"{nameof(place)} is \"{place}\", a set of the library; give rules of your own another name.", nameof(place));
        }

        return new FillRules(place, FillRuleKind.GivenByCaller)
        {
            Own = (share, temperature.DegreesCelsius, new RuleFigure(
                $"liquid fills {Require.Text(share * 100)} % of the volume at {at} °C",
                $"{Require.Text(share)}·V·ρ'({at} °C)",
                Require.NotEmpty(source, nameof(source)),
                Editions.None,
                Evidence.GivenByCaller)),
        };
    }

    /// <summary>Whether both are the same place's, or the caller's own with the same figures.</summary>
    /// <param name="other">Another.</param>
    public bool Equals(FillRules? other) => other is not null && (ReferenceEquals(this, other)
        || (Own is { } own && other.Own is { } its && Place == other.Place && own.Share.Equals(its.Share) && own.Celsius.Equals(its.Celsius) && own.Figure.Source == its.Figure.Source));

    /// <summary>Whether two sets are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(FillRules? left, FillRules? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two sets differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(FillRules? left, FillRules? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FillRules);

    /// <inheritdoc/>
    public override int GetHashCode() => Place.GetHashCode();

    /// <summary>The place.</summary>
    public override string ToString() => Place;

    internal bool Has(FillRuleKind kind) => _kinds.Contains(kind);
}
