using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>What places want written down.</summary>
internal static class RecordFigures
{
    public static readonly IReadOnlyList<RecordRule> UnitedStates =
    [
        Rule(
            "each service or disposal of an appliance of 50 lb and more", 3, "40 CFR 82.157(l)(2)", Editions.Cfr40, Evidence.Read,
            "identity and location of the appliance", "date", "parts", "type of work on each part", "person", "amount and type added, or on disposal removed", "full charge", "leak rate and method"),
        Rule(
            "disposal of an appliance above 5 and below 50 lb", 3, "40 CFR 82.156(a)(3)", Editions.Cfr40, Evidence.Read,
            "company", "location", "date", "refrigerant", "total of each refrigerant recovered, by month", "quantity sent on, recipient and date"),
    ];

    public static readonly IReadOnlyList<RecordRule> EuropeanUnion =
    [
        Rule(
            "operator, for each equipment that needs leak checks", 5, "Regulation (EU) 2024/573, art. 7(1) and (2)", "German text", Evidence.Read,
            "type and quantity of gas", "quantity added and date", "quantity recovered", "recycled or reclaimed: origin, name, address, certificate", "company and natural person, certificate number", "dates and results of checks and repairs", "on decommissioning: measures to recover and dispose"),
    ];

    public static readonly IReadOnlyList<RecordRule> Spain =
    [
        .. EuropeanUnion,
        Rule(
            "company, entered within 24 hours", null, "Spain, RD 552/2019, IF-17, 1.2", "2026", Evidence.Read,
            "date", "type of operation", "refrigerant and quantity", "responsible person", "counterpart", "invoice or contract number"),
    ];

    public static readonly IReadOnlyList<RecordRule> Japan =
    [
        Rule(
            "recovery operator, for each job; yearly report within 45 days", 5, "Ordinance 7 of 2014 (Japan), art. 51 and 52", "in force 2020-12-28", Evidence.Read,
            "service or disposal", "date", "names and addresses of owner and contractor", "kind and number of products", "quantity of each refrigerant, without what went back into the same unit", "hand-over: date, name, quantity of each refrigerant"),
        Rule(
            "certificate to the owner", null, "Ordinance 7 of 2014 (Japan), art. 41", "in force 2020-12-28", Evidence.Read,
            "owner", "kind and number", "place", "operator and registration number", "date of issue", "date of completion", "quantity of each refrigerant"),
    ];

    public static readonly IReadOnlyList<RecordRule> Canada =
    [
        Rule(
            "activity log on site", 5, "SOR/2022-110 (Canada), s. 23, 26, Schedule 2 Part 5", "2026-07", Evidence.Read,
            "equipment type", "owner", "responsible person", "location", "serial number", "halocarbon", "capacity in kg", "date, type and description of the activity", "person, employer and certificate number", "kg recovered", "type and kg charged"),
        Rule(
            "notice fixed to a unit withdrawn from use", null, "SOR/2022-110 (Canada), Schedule 2 Part 2", "2026-07", Evidence.Read,
            "type", "owner", "responsible person", "former location", "identity", "type and kg recovered", "capacity", "person, employer and certificate"),
    ];

    public static IReadOnlyList<RuleFigure> All { get; } =
        [.. UnitedStates.Concat(Spain).Concat(Japan).Concat(Canada).Select(rule => rule.Figure)];

    private static RecordRule Rule(string trigger, int? years, string source, string edition, Evidence evidence, params string[] fields) => new(
        trigger, years, new RuleFigure("record: " + trigger, string.Join("; ", fields), source, edition, evidence), fields);
}
