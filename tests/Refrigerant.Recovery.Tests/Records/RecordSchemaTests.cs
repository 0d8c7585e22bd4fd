using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>The published schema says what is written and read, no more and no less.</summary>
public class RecordSchemaTests
{
    private static readonly JsonElement Schema =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "recovery-record.schema.json"))).RootElement;

    [Fact]
    public void A_written_record_fits_the_schema() => Assert.Empty(Breaches(RecoveryRecordJson.Write(RecoveryRecordTests.Measured())));

    [Theory]
    [InlineData("\"company\": \"Example Cooling\",", "", "$.company is missing")]
    [InlineData("\"company\": \"Example Cooling\",", "\"company\": 3,", "$.company is no string")]
    [InlineData("\"recoveredKilograms\": 18.6", "\"recoveredKilograms\": -1", "$.recoveredKilograms is below 0")]
    [InlineData("\"Reclamation\"", "\"Burning\"", "$.shipments[0].purpose is not in the list")]
    [InlineData("\"isDisposal\"", "\"disposal\"", "$.disposal is unknown")]
    [InlineData("2026-11-25\"", "25 November\"", "$.date is no date")]
    [InlineData("recovery-record/1", "recovery-record/2", "$.format is not refrigerant-recovery-record/1")]
    public void The_check_itself_finds_what_does_not_fit(string good, string bad, string breach) =>
        Assert.Contains(breach, Breaches(RecoveryRecordJson.Write(RecoveryRecordTests.Measured()).Replace(good, bad, StringComparison.Ordinal)));

    [Fact]
    public void The_schema_has_every_member_that_is_read_and_requires_the_same()
    {
        Dictionary<string, JsonTypeInfo> types = new()
        {
            [string.Empty] = DocumentWriter.Context.RecoveryRecord,
            ["cylinderEntry"] = DocumentWriter.Context.CylinderEntry,
            ["findingEntry"] = DocumentWriter.Context.FindingEntry,
            ["ledgerEntry"] = DocumentWriter.Context.LedgerEntry,
            ["levelEntry"] = DocumentWriter.Context.LevelEntry,
            ["ruleEntry"] = DocumentWriter.Context.RuleEntry,
            ["shipmentEntry"] = DocumentWriter.Context.ShipmentEntry,
        };
        Assert.Equal(types.Keys.Where(key => key.Length > 0), Schema.GetProperty("$defs").EnumerateObject().Select(member => member.Name));
        foreach ((string name, JsonTypeInfo type) in types)
        {
            JsonElement schema = name.Length == 0 ? Schema : Schema.GetProperty("$defs").GetProperty(name);
            Assert.Equal(type.Properties.Select(p => p.Name), schema.GetProperty("properties").EnumerateObject().Select(member => member.Name));
            Assert.Equal(type.Properties.Where(p => p.IsRequired).Select(p => p.Name), schema.GetProperty("required").EnumerateArray().Select(item => item.GetString()!));
            Assert.False(schema.GetProperty("additionalProperties").GetBoolean());
            Assert.All(schema.GetProperty("properties").EnumerateObject(), member => Assert.NotEqual(string.Empty, member.Value.GetProperty("description").GetString()));
            foreach (JsonPropertyInfo property in type.Properties.Where(p => p.PropertyType.IsEnum))
            {
                Assert.Equal(
                    Enum.GetNames(property.PropertyType),
                    schema.GetProperty("properties").GetProperty(property.Name).GetProperty("enum").EnumerateArray().Select(item => item.GetString()!));
            }
        }
    }

    /// <summary>What 40 CFR 82.156(a)(3) asks records to hold is there, required, and marked with the section.</summary>
    [Fact]
    public void What_the_regulation_asks_for_is_marked()
    {
        string[] marked = [.. Members(string.Empty, Schema).Concat(Members("shipments.", Schema.GetProperty("$defs").GetProperty("shipmentEntry")))];
        Assert.Equal(
            ["company", "location", "date", "refrigerant", "isDisposal", "recoveredKilograms", "shipments", "shipments.refrigerant", "shipments.kilograms", "shipments.purpose", "shipments.recipient", "shipments.date"],
            marked);

        static IEnumerable<string> Members(string prefix, JsonElement schema)
        {
            HashSet<string?> required = [.. schema.GetProperty("required").EnumerateArray().Select(item => item.GetString())];
            return schema.GetProperty("properties").EnumerateObject()
                .Where(member => required.Contains(member.Name) && member.Value.GetProperty("description").GetString()!.Contains("82.156(a)(3)", StringComparison.Ordinal))
                .Select(member => prefix + member.Name);
        }
    }

    private static string[] Breaches(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Check(document.RootElement, Schema, "$")];
    }

    /// <summary>The part of JSON Schema that the schema uses: $ref, type, const, enum, format, minimum, items, properties, required, additionalProperties.</summary>
    private static IEnumerable<string> Check(JsonElement value, JsonElement schema, string path)
    {
        foreach (JsonProperty rule in schema.EnumerateObject())
        {
            string? breach = rule.Name switch
            {
                "$schema" or "$defs" or "title" or "description" or "items" or "properties" or "required" or "additionalProperties" or "$ref" => null,
                "type" => Is(value, rule.Value.GetString()!) ? null : $"{path} is no {rule.Value.GetString()}",
                "const" => value.GetString() == rule.Value.GetString() ? null : $"{path} is not {rule.Value.GetString()}",
                "enum" => rule.Value.EnumerateArray().Any(item => item.GetString() == value.GetString()) ? null : $"{path} is not in the list",
                "minimum" => value.GetDouble() >= rule.Value.GetDouble() ? null : $"{path} is below {rule.Value.GetDouble()}",
                "format" when rule.Value.GetString() == "date" => DateOnly.TryParseExact(value.GetString(), "yyyy-MM-dd", out _) ? null : $"{path} is no date",
                "format" when rule.Value.GetString() == "date-time" => value.TryGetDateTimeOffset(out _) ? null : $"{path} is no date-time",
                _ => $"the schema has {rule.Name}, which this check does not know",
            };
            if (breach is not null)
            {
                yield return breach;
                yield break;
            }
        }

        IEnumerable<string> inner = [];
        if (schema.TryGetProperty("$ref", out JsonElement reference))
        {
            inner = Check(value, Schema.GetProperty("$defs").GetProperty(reference.GetString()!.Split('/')[^1]), path);
        }
        else if (schema.TryGetProperty("items", out JsonElement items))
        {
            inner = value.EnumerateArray().SelectMany((item, i) => Check(item, items, $"{path}[{i}]"));
        }
        else if (schema.TryGetProperty("properties", out JsonElement properties))
        {
            inner = schema.GetProperty("required").EnumerateArray().Where(name => !value.TryGetProperty(name.GetString()!, out _)).Select(name => $"{path}.{name.GetString()} is missing")
                .Concat(value.EnumerateObject().SelectMany(member => properties.TryGetProperty(member.Name, out JsonElement rule)
                    ? Check(member.Value, rule, $"{path}.{member.Name}")
                    : [$"{path}.{member.Name} is unknown"]));
        }

        foreach (string breach in inner)
        {
            yield return breach;
        }
    }

    private static bool Is(JsonElement value, string type) => (type, value.ValueKind) switch
    {
        ("object", JsonValueKind.Object) or ("array", JsonValueKind.Array) or ("string", JsonValueKind.String) or ("number", JsonValueKind.Number) => true,
        ("boolean", JsonValueKind.True or JsonValueKind.False) => true,
        _ => false,
    };
}
