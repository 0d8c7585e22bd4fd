using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Rules;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Rules of one's own: a level, and filling rules of a place or of one's own.</summary>
internal sealed record OwnRulesDocument
{
    public const string OneOf = "give one of fillRules and ownFillRules.";

    /// <summary>What the set is called.</summary>
    public required string Place { get; init; }

    /// <summary>The absolute pressure to reach, greater than zero.</summary>
    public required double LevelKilopascalsAbsolute { get; init; }

    /// <summary>Where the level comes from, for the record.</summary>
    public required string Source { get; init; }

    /// <summary>The place whose filling rules hold, such as "European Union". Give this or ownFillRules.</summary>
    public string? FillRules { get; init; }

    /// <summary>Filling rules of one's own. Give this or fillRules.</summary>
    public OwnFillRulesDocument? OwnFillRules { get; init; }

    public static OwnRulesDocument? From(RuleSet rules) => rules.Own is not { } own ? null : new()
    {
        Place = rules.Place,
        LevelKilopascalsAbsolute = Exact.Kilopascals(own.Level),
        Source = own.Source,
        FillRules = rules.Fill.Own is null ? rules.Fill.Place : null,
        OwnFillRules = OwnFillRulesDocument.From(rules.Fill),
    };

    public RuleSet ToRules(DocumentNode node) => node.Build(() => RuleSet.FromCaller(Place, Exact.PressureOf(LevelKilopascalsAbsolute), Fill(node), Source));

    private FillRules Fill(DocumentNode node) => (FillRules, OwnFillRules) switch
    {
        (string place, null) => Cylinders.FillRules.All.FirstOrDefault(set => string.Equals(set.Place, place, StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException($"{nameof(FillRules)} is \"{place}\"; it must be one of {string.Join("; ", Cylinders.FillRules.All)}.", nameof(FillRules)),
        (null, { } own) => own.ToRules(node.Member("ownFillRules")),
        _ => throw node.Wrong(OneOf),
    };
}
