using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>An object of a document without the members that are wrong or unknown, and with others in the place of those that must be there.</summary>
internal static class MendedDocument
{
    /// <summary>The object as UTF-8; null where nothing can stand in for a member that must be there.</summary>
    public static byte[]? Of(JsonElement element, JsonTypeInfo type, HashSet<string> wrong, DocumentParts parts)
    {
        var standIns = new Dictionary<string, string>();
        if (wrong.Count > 0)
        {
            parts.Mend(type.Type, wrong, standIns);
        }

        foreach (JsonPropertyInfo property in type.Properties.Where(p => p.IsRequired && wrong.Contains(p.Name) && !standIns.ContainsKey(p.Name)))
        {
            if (StandIn(type.Type, property) is not string json)
            {
                return null;
            }

            standIns.Add(property.Name, json);
        }

        using var text = new MemoryStream();
        using (var writer = new Utf8JsonWriter(text))
        {
            writer.WriteStartObject();
            foreach (JsonProperty member in element.EnumerateObject().Where(member => !wrong.Contains(member.Name) && type.Properties.Any(known => known.Name == member.Name)))
            {
                member.WriteTo(writer);
            }

            foreach (KeyValuePair<string, string> member in standIns)
            {
                writer.WritePropertyName(member.Key);
                writer.WriteRawValue(member.Value);
            }

            writer.WriteEndObject();
        }

        return text.ToArray();
    }

    private static string? StandIn(Type owner, JsonPropertyInfo property)
    {
        Type type = property.PropertyType;
        return type == typeof(double) || type == typeof(int) ? Number(JobLimits.Find(owner, property.Name))
            : type == typeof(bool) ? "false"
            : type == typeof(DateTime) ? "\"2000-01-01\""
            : type == typeof(string) ? "\"-\""
            : type.IsEnum ? $"\"{Enum.GetNames(type)[0]}\""
            : property.Options.GetTypeInfo(type) switch
            {
                { Kind: JsonTypeInfoKind.Enumerable } => "[]",
                { Kind: JsonTypeInfoKind.Object } part => Whole(part),
                _ => null,
            };
    }

    /// <summary>An object of the members that must be there; null where nothing can stand in for one of them.</summary>
    private static string? Whole(JsonTypeInfo type)
    {
        var members = new List<string>();
        foreach (JsonPropertyInfo property in type.Properties.Where(p => p.IsRequired))
        {
            if (StandIn(type.Type, property) is not string json)
            {
                return null;
            }

            members.Add($"\"{property.Name}\":{json}");
        }

        return "{" + string.Join(",", members) + "}";
    }

    private static string Number(NumberRange? range) =>
        Plain.Text(range is NumberRange given ? Math.Max(Math.Min(1, given.Maximum), given.Minimum) : 1);
}
