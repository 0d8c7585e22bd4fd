using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>
/// A published schema, and the part of JSON Schema that ours use: $ref, anyOf of one and null, type, const, enum, format, minimum, items, properties, required,
/// additionalProperties, maximum, exclusiveMinimum.
/// </summary>
internal sealed class PublishedSchema(string file)
{
    public JsonElement Root { get; } = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file))).RootElement;

    public string[] Breaches(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Check(document.RootElement, Root, "$")];
    }

    /// <summary>The schema has every member that the types have, in their order, requires the same, and describes each.</summary>
    public void AssertMatches(JsonTypeInfo root, Dictionary<string, JsonTypeInfo> definitions)
    {
        Assert.Equal(definitions.Keys, Root.GetProperty("$defs").EnumerateObject().Select(member => member.Name));
        AssertMatches(root, Root);
        foreach ((string name, JsonTypeInfo type) in definitions)
        {
            AssertMatches(type, Root.GetProperty("$defs").GetProperty(name));
        }
    }

    private static void AssertMatches(JsonTypeInfo type, JsonElement schema)
    {
        JsonElement properties = schema.GetProperty("properties");
        Assert.Equal(type.Properties.Select(p => p.Name), properties.EnumerateObject().Select(member => member.Name).Where(name => name != "$schema"));
        Assert.Equal(type.Properties.Where(p => p.IsRequired).Select(p => p.Name), schema.GetProperty("required").EnumerateArray().Select(item => item.GetString()!));
        Assert.False(schema.GetProperty("additionalProperties").GetBoolean());
        foreach (JsonPropertyInfo property in type.Properties)
        {
            JsonElement described = properties.GetProperty(property.Name);
            Assert.NotEqual(string.Empty, described.GetProperty("description").GetString());
            Type plain = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            if (plain.IsEnum)
            {
                Assert.Equal(Enum.GetNames(plain), described.GetProperty("enum").EnumerateArray().Where(item => item.ValueKind != JsonValueKind.Null).Select(item => item.GetString()!));
            }
        }
    }

    private IEnumerable<string> Check(JsonElement value, JsonElement schema, string path)
    {
        if (value.ValueKind == JsonValueKind.Null && MayBeNull(schema))
        {
            yield break;
        }

        schema = schema.TryGetProperty("anyOf", out JsonElement ways) ? ways[0] : schema;
        foreach (JsonProperty rule in schema.EnumerateObject())
        {
            string? breach = rule.Name switch
            {
                "$schema" or "$defs" or "title" or "description" or "items" or "properties" or "required" or "additionalProperties" or "$ref" => null,
                "type" => Is(value, TypeOf(rule.Value)) ? null : $"{path} is no {TypeOf(rule.Value)}",
                "const" => value.GetString() == rule.Value.GetString() ? null : $"{path} is not {rule.Value.GetString()}",
                "enum" => rule.Value.EnumerateArray().Any(item => item.GetString() == value.GetString()) ? null : $"{path} is not in the list",
                "minimum" => value.GetDouble() >= rule.Value.GetDouble() ? null : $"{path} is below {rule.Value.GetDouble()}",
                "maximum" => value.GetDouble() <= rule.Value.GetDouble() ? null : $"{path} is above {rule.Value.GetDouble()}",
                "exclusiveMinimum" => value.GetDouble() > rule.Value.GetDouble() ? null : $"{path} is not above {rule.Value.GetDouble()}",
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
            inner = Check(value, Root.GetProperty("$defs").GetProperty(reference.GetString()!.Split('/')[^1]), path);
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

    private static bool MayBeNull(JsonElement schema) =>
        (schema.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.Array)
        || (schema.TryGetProperty("enum", out JsonElement names) && names.EnumerateArray().Any(name => name.ValueKind == JsonValueKind.Null))
        || schema.TryGetProperty("anyOf", out _);

    /// <summary>The type, or that of a type and null.</summary>
    private static string TypeOf(JsonElement type) => (type.ValueKind == JsonValueKind.Array ? type[0] : type).GetString()!;

    private static bool Is(JsonElement value, string type) => (type, value.ValueKind) switch
    {
        ("object", JsonValueKind.Object) or ("array", JsonValueKind.Array) or ("string", JsonValueKind.String) or ("number" or "integer", JsonValueKind.Number) => true,
        ("boolean", JsonValueKind.True or JsonValueKind.False) => true,
        _ => false,
    };
}
