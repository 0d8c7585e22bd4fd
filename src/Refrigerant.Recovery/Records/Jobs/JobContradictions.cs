using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Members of a job document that exclude each other, and names that are given twice, told by what stands there whatever else is wrong.</summary>
internal static class JobContradictions
{
    public static IEnumerable<(DocumentNode Place, string Reason)> In(Type owner, DocumentNode node) =>
        owner == typeof(JobDocument) ? Twice(node.Member("cylinders"), "label", CylinderDocument.DefaultLabel)
        : owner == typeof(ApplianceDocument) ? Twice(node.Member("sections"), "name", null).Concat(Unless(Count(node, "refrigerant", "blend") == 1, node, BlendDocument.OneOf))
        : Unless(IsOne(owner, node), node, OneOf(owner));

    private static bool IsOne(Type owner, DocumentNode node) =>
        owner == typeof(MachinePastDocument) ? Count(node, "refrigerant", "blend") < 2
        : owner == typeof(BarometerDocument) ? Count(node, "elevationMeters", "pressureKilopascalsAbsolute") == 1
        : owner == typeof(WaterDocument) ? Count(node, "massKilograms", "flowKilogramsPerSecond") == 1
        : owner == typeof(FittingDocument) ? Count(node, "coreDepressor", "flowCoefficient", "lossCoefficient") == 1 && Has(node, "lossCoefficient") == Has(node, "diameterMillimeters")
        : owner == typeof(CylinderDocument) ? Count(node, "mark", "testPressureKilopascalsGauge") is int kinds && (kinds == 1 || (kinds == 0 && Has(node, "servicePressureKilopascalsGauge")))
        : owner == typeof(EvacuationDocument) ? Count(node, "rules", "ownRules") < 2
        : owner != typeof(OwnRulesDocument) || Count(node, "fillRules", "ownFillRules") == 1;

    private static string OneOf(Type owner) =>
        owner == typeof(MachinePastDocument) ? BlendDocument.OneOf
        : owner == typeof(BarometerDocument) ? BarometerDocument.OneOf
        : owner == typeof(WaterDocument) ? WaterDocument.OneOf
        : owner == typeof(FittingDocument) ? FittingDocument.OneOf
        : owner == typeof(CylinderDocument) ? CylinderDocument.OneOf
        : owner == typeof(EvacuationDocument) ? EvacuationDocument.OneOf
        : OwnRulesDocument.OneOf;

    /// <summary>Each member of a list whose name another before it has.</summary>
    private static IEnumerable<(DocumentNode Place, string Reason)> Twice(DocumentNode list, string member, string? otherwise)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (DocumentNode item in list.Items())
        {
            DocumentNode name = item.Member(member);
            string? text = name.Value is { ValueKind: JsonValueKind.String } given ? TextOf(given) : Has(item, member) ? null : otherwise;
            if (text is not null && item.Value is { ValueKind: JsonValueKind.Object } && !seen.Add(text))
            {
                yield return (name, $"another before it has the {member} \"{text}\" too; give each one of its own.");
            }
        }
    }

    /// <summary>Null where it is not valid Unicode, which is told elsewhere.</summary>
    private static string? TextOf(JsonElement element)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static IEnumerable<(DocumentNode Place, string Reason)> Unless(bool isRight, DocumentNode node, string reason) => isRight ? [] : [(node, reason)];

    private static int Count(DocumentNode node, params string[] members) => members.Count(member => Has(node, member));

    /// <summary>What is null, or false, is not given.</summary>
    private static bool Has(DocumentNode node, string member) => node.Member(member).Value is { ValueKind: not (JsonValueKind.Null or JsonValueKind.False) };
}
