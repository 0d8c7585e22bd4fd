using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>
/// Makes a schema of a document's types: members, order, what is required and the numbers allowed from the types, descriptions from their XML
/// documentation.
/// </summary>
internal sealed class SchemaGenerator
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Dictionary<string, XElement> Documentation = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "Refrigerant.Recovery.all.xml"))
        .Descendants("member").ToDictionary(member => (string)member.Attribute("name")!);

    private readonly SortedDictionary<string, JsonObject> _definitions = new(StringComparer.Ordinal);

    private SchemaGenerator()
    {
    }

    public static string Generate(JsonTypeInfo root, string title, string description)
    {
        var generator = new SchemaGenerator();
        JsonObject body = generator.Object(root, null);
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = title, ["description"] = description };
        foreach ((string name, JsonNode? node) in body.ToArray())
        {
            body.Remove(name);
            schema[name] = node;
        }

        ((JsonObject)schema["properties"]!).Insert(0, "$schema", new JsonObject { ["description"] = "Where this schema is, for an editor; reading does not look at it.", ["type"] = "string" });
        var definitions = new JsonObject();
        foreach ((string name, JsonObject definition) in generator._definitions)
        {
            definitions[name] = definition;
        }

        schema["$defs"] = definitions;
        return schema.ToJsonString(Readable).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n";
    }

    private static string Summary(string id)
    {
        string text = string.Concat(Documentation[id].Element("summary")!.Nodes().Select(node => node switch
        {
            XElement { Name.LocalName: "see" or "paramref" } element => Named((string?)element.Attribute("cref") ?? (string)element.Attribute("name")!),
            XElement element => element.Value,
            _ => node.ToString(),
        }));
        return Regex.Replace(text.Replace("&lt;", "<", StringComparison.Ordinal).Replace("&gt;", ">", StringComparison.Ordinal).Replace("&amp;", "&", StringComparison.Ordinal), @"\s+", " ").Trim();
    }

    /// <summary>A member as the document names it.</summary>
    private static string Named(string cref)
    {
        string name = cref[(cref.LastIndexOf('.') + 1)..];
        return cref.StartsWith("P:", StringComparison.Ordinal) ? JsonNamingPolicy.CamelCase.ConvertName(name) : name;
    }

    private static string DefinitionName(Type type) =>
        JsonNamingPolicy.CamelCase.ConvertName(type.Name.EndsWith("Document", StringComparison.Ordinal) ? type.Name[..^"Document".Length] : type.Name);

    private JsonObject Object(JsonTypeInfo type, string? description)
    {
        var schema = new JsonObject();
        if (description is not null)
        {
            schema["description"] = description;
        }

        schema["type"] = "object";
        schema["additionalProperties"] = false;
        schema["required"] = new JsonArray([.. type.Properties.Where(p => p.IsRequired).Select(p => (JsonNode)p.Name)]);
        var properties = new JsonObject();
        foreach (JsonPropertyInfo property in type.Properties)
        {
            properties[property.Name] = Property(type, property);
        }

        schema["properties"] = properties;
        return schema;
    }

    private JsonObject Property(JsonTypeInfo owner, JsonPropertyInfo property)
    {
        PropertyInfo member = owner.Type.GetProperties().Single(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name) == property.Name);
        var schema = new JsonObject { ["description"] = Summary($"P:{owner.Type.FullName}.{member.Name}") };
        if (property.Name == "format")
        {
            string format = (string)owner.Type.GetField("CurrentFormat")!.GetRawConstantValue()!;
            schema[property.IsRequired ? "const" : "enum"] = property.IsRequired ? format : new JsonArray(format, null);
            return schema;
        }

        Describe(schema, Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType, owner.Options);
        if (schema["type"]?.GetValue<string>() is "number" or "integer")
        {
            Limit(schema, JobLimits.Find(owner.Type, property.Name) ?? (RefusesNegative(member) ? new NumberRange(0, double.PositiveInfinity) : null));
        }

        if (!property.IsRequired && TakesNull(member))
        {
            AllowNull(schema);
        }

        return schema;
    }

    private void Describe(JsonObject schema, Type type, JsonSerializerOptions options)
    {
        JsonTypeInfo information = options.GetTypeInfo(type);
        if (information.Kind == JsonTypeInfoKind.Object)
        {
            string name = DefinitionName(type);
            if (!_definitions.ContainsKey(name))
            {
                _definitions[name] = [];
                _definitions[name] = Object(information, Summary($"T:{type.FullName}"));
            }

            schema["$ref"] = "#/$defs/" + name;
        }
        else if (information.Kind == JsonTypeInfoKind.Enumerable)
        {
            schema["type"] = "array";
            var items = new JsonObject();
            Describe(items, type.GetGenericArguments()[0], options);
            schema["items"] = items;
        }
        else if (type.IsEnum)
        {
            schema["enum"] = new JsonArray([.. Enum.GetNames(type).Select(name => (JsonNode)name)]);
        }
        else
        {
            schema["type"] = type == typeof(double) ? "number" : type == typeof(int) ? "integer" : type == typeof(bool) ? "boolean" : "string";
            if (type == typeof(DateTime) || type == typeof(DateTimeOffset))
            {
                schema["format"] = type == typeof(DateTime) ? "date" : "date-time";
            }
        }
    }

    private static void Limit(JsonObject schema, NumberRange? limits)
    {
        if (limits is NumberRange range)
        {
            schema[range.IsAbove ? "exclusiveMinimum" : "minimum"] = range.Minimum;
            if (!double.IsInfinity(range.Maximum))
            {
                schema["maximum"] = range.Maximum;
            }
        }
    }

    /// <summary>An optional member may be null, which is the same as leaving it out.</summary>
    private static void AllowNull(JsonObject schema)
    {
        if (schema["$ref"] is JsonNode reference)
        {
            schema.Remove("$ref");
            schema["anyOf"] = new JsonArray(new JsonObject { ["$ref"] = reference.DeepClone() }, new JsonObject { ["type"] = "null" });
        }
        else if (schema["enum"] is JsonArray names)
        {
            names.Add((JsonNode?)null);
        }
        else
        {
            schema["type"] = new JsonArray(schema["type"]!.DeepClone(), "null");
        }
    }

    /// <summary>Whether the member can be null and its own check lets it.</summary>
    private static bool TakesNull(PropertyInfo member)
    {
        if (member.PropertyType.IsValueType && Nullable.GetUnderlyingType(member.PropertyType) is null)
        {
            return false;
        }

        try
        {
            member.SetValue(RuntimeHelpers.GetUninitializedObject(member.DeclaringType!), null);
            return true;
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentNullException)
        {
            return false;
        }
    }

    /// <summary>Whether the member's own check refuses a negative number.</summary>
    private static bool RefusesNegative(PropertyInfo member)
    {
        try
        {
            member.SetValue(RuntimeHelpers.GetUninitializedObject(member.DeclaringType!), Convert.ChangeType(-1, Nullable.GetUnderlyingType(member.PropertyType) ?? member.PropertyType, null));
            return false;
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentOutOfRangeException)
        {
            return true;
        }
    }
}
