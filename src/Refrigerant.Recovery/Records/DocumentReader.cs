using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Reads a document strictly: its structure is checked against the generated metadata of its type, member by member, so that every error
/// names its place; then each object is made, innermost first, so that an argument error names its place too.
/// </summary>
internal static class DocumentReader
{
    /// <summary>Deeper than any document of ours.</summary>
    private const int DeepestNesting = 32;

    /// <summary>Longer than the plan of the longest job with its course.</summary>
    private const int LongestText = 64 * 1024 * 1024;

    /// <summary>Parses a document, checks it and hands it over with its root, for further checks by path.</summary>
    public static TResult Read<TDocument, TResult>(string json, JsonTypeInfo<TDocument> type, Func<TDocument, DocumentNode, TResult> use)
        where TDocument : class
    {
        using JsonDocument document = Parse(Require.NotNull(json, nameof(json)));
        var root = new DocumentNode(document.RootElement, "$");
        Check(document.RootElement, type, root);
        return use(document.RootElement.Deserialize(type)!, root);
    }

    private static JsonDocument Parse(string json)
    {
        if (json.Length > LongestText)
        {
            throw new DocumentException("$", FormattableString.Invariant($"The document has {json.Length} characters; at most {LongestText} are read."));
        }

        try
        {
            return JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = DeepestNesting });
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            string place = e is JsonException { LineNumber: long line } ? FormattableString.Invariant($", line {line + 1}") : string.Empty;
            string reason = e.Message.Split([" LineNumber:"], StringSplitOptions.None)[0];
            throw new DocumentException("$", $"The document is no JSON of at most {DeepestNesting} levels{place}: {reason}", e);
        }
    }

    private static void Check(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Object:
                CheckObject(element, type, node);
                node.Build(() => element.Deserialize(type));
                break;
            case JsonTypeInfoKind.Enumerable:
                CheckList(element, type, node);
                break;
            default:
                CheckValue(element, Nullable.GetUnderlyingType(type.Type) ?? type.Type, node);
                break;
        }
    }

    private static void CheckObject(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        Expect(element.ValueKind == JsonValueKind.Object, node, "it must be an object, in braces.");

        // All names first: one that is no text makes even the search for another fail.
        (string Name, JsonElement Value)[] members = [.. element.EnumerateObject().Select(member => (Text(() => member.Name, node), member.Value))];
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string name, JsonElement value) in members)
        {
            DocumentNode place = node.Member(name);
            Expect(seen.Add(name), place, "it is given twice.");
            JsonPropertyInfo? property = type.Properties.FirstOrDefault(p => p.Name == name);
            Expect(property is not null, place, $"there is no such member; known are {string.Join(", ", type.Properties.Select(p => p.Name))}.");
            if (value.ValueKind != JsonValueKind.Null)
            {
                Check(value, type.Options.GetTypeInfo(property!.PropertyType), place);
            }
            else
            {
                Expect(!property!.IsRequired, place, "it must be given.");
            }
        }

        foreach (JsonPropertyInfo missing in type.Properties.Where(p => p.IsRequired && !seen.Contains(p.Name)))
        {
            throw node.Member(missing.Name).Wrong("it is missing and must be given.");
        }
    }

    private static void CheckList(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        Expect(element.ValueKind == JsonValueKind.Array, node, "it must be a list, in brackets.");
        JsonTypeInfo inner = type.Options.GetTypeInfo(type.Type.GetGenericArguments()[0]);
        int index = 0;
        foreach (JsonElement item in element.EnumerateArray())
        {
            Check(item, inner, node.Item(index++));
        }
    }

    private static void CheckValue(JsonElement element, Type type, DocumentNode node)
    {
        if (type == typeof(double))
        {
            Expect(
                element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double number) && Require.IsFinite(number),
                node,
                "it must be a number, from -1.7e308 to 1.7e308.");
        }
        else if (type == typeof(int))
        {
            Expect(element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out _), node, "it must be a whole number.");
        }
        else if (type == typeof(bool))
        {
            Expect(element.ValueKind is JsonValueKind.True or JsonValueKind.False, node, "it must be true or false.");
        }
        else
        {
            Expect(element.ValueKind == JsonValueKind.String, node, "it must be a text, in quotes.");
            string text = Text(() => element.GetString()!, node);
            if (type.IsEnum)
            {
                Expect(Enum.GetNames(type).Contains(text), node, $"it must be one of {string.Join(", ", Enum.GetNames(type))}.");
            }
            else if (type == typeof(DateTime))
            {
                Expect(DateJsonConverter.TryParse(text, out _), node, "it must be a date such as \"2026-11-25\".");
            }
            else if (type == typeof(DateTimeOffset))
            {
                Expect(element.TryGetDateTimeOffset(out _), node, "it must be a date and time such as \"2026-11-25T14:30:00-07:00\".");
            }
        }
    }

    private static void Expect(bool condition, DocumentNode node, string reason)
    {
        if (!condition)
        {
            throw node.Wrong(reason);
        }
    }

    /// <summary>A text of the document; half of a surrogate pair, which JSON can escape, is none.</summary>
    private static string Text(Func<string> read, DocumentNode node)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException e)
        {
            throw node.Wrong("it is not valid Unicode.", e);
        }
    }
}
