using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Checks a document against the generated metadata of its type, member by member, so that every error names its place; then each object is
/// made, innermost first, so that an argument error names its place too. All errors are told, not the first only.
/// </summary>
internal sealed class DocumentReader
{
    private readonly List<DocumentError> _errors = [];

    /// <summary>What was found wrong so far.</summary>
    public IReadOnlyList<DocumentError> Errors => _errors;

    /// <summary>Checks a document and hands it over with its root, for further checks by path.</summary>
    /// <returns>What was made of it, or null where there are errors.</returns>
    public TResult? Read<TDocument, TResult>(JsonElement element, JsonTypeInfo<TDocument> type, Func<TDocument, DocumentNode, TResult> use)
        where TDocument : class
        where TResult : class
    {
        var root = new DocumentNode(element, "$");
        Check(element, type, root);
        return _errors.Count == 0 ? Try(() => use(element.Deserialize(type)!, root)) : null;
    }

    /// <summary>Checks a part by making it, unless something in it is known to be wrong.</summary>
    public void CheckPart<TDocument>(DocumentNode node, JsonTypeInfo<TDocument> type, Action<TDocument, DocumentNode> make)
        where TDocument : class
    {
        bool known = _errors.Any(error => IsWithin(error.Path, node.Path) || IsWithin(node.Path, error.Path));
        if (!known && node.Value is { ValueKind: JsonValueKind.Object } element)
        {
            Try<object>(() =>
            {
                make(element.Deserialize(type)!, node);
                return node;
            });
        }
    }

    private static bool IsWithin(string path, string other) =>
        path.StartsWith(other, StringComparison.Ordinal) && (path.Length == other.Length || path[other.Length] is '.' or '[');

    private void Check(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Object:
                int before = _errors.Count;
                CheckObject(element, type, node);
                if (_errors.Count == before)
                {
                    Try(() => node.Build(() => element.Deserialize(type)!));
                }

                break;
            case JsonTypeInfoKind.Enumerable:
                CheckList(element, type, node);
                break;
            default:
                CheckValue(element, Nullable.GetUnderlyingType(type.Type) ?? type.Type, node);
                break;
        }
    }

    private void CheckObject(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        if (!Expect(element.ValueKind == JsonValueKind.Object, node, "it must be an object, in braces."))
        {
            return;
        }

        // All names first: one that is no text makes even the search for another fail.
        (string Name, JsonElement Value)[]? members = Try<(string, JsonElement)[]>(
            () => [.. element.EnumerateObject().Select(member => (Text(() => member.Name, node), member.Value))]);
        if (members is null)
        {
            return;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string name, JsonElement value) in members)
        {
            DocumentNode place = node.Member(name);
            JsonPropertyInfo? property = type.Properties.FirstOrDefault(p => p.Name == name);
            bool isTwice = members.Count(other => other.Name == name) > 1;
            if (seen.Add(name)
                && Expect(!isTwice, place, "it is given twice.")
                && Expect(property is not null, place, $"there is no such member; known are {string.Join(", ", type.Properties.Select(p => p.Name))}."))
            {
                CheckMember(value, type, property!, place);
            }
        }

        foreach (JsonPropertyInfo missing in type.Properties.Where(p => p.IsRequired && !seen.Contains(p.Name)))
        {
            Expect(false, node.Member(missing.Name), "it is missing and must be given.");
        }
    }

    private void CheckMember(JsonElement value, JsonTypeInfo type, JsonPropertyInfo property, DocumentNode place)
    {
        if (value.ValueKind == JsonValueKind.Null)
        {
            Expect(!property.IsRequired, place, "it must be given.");
            return;
        }

        int before = _errors.Count;
        Check(value, type.Options.GetTypeInfo(property.PropertyType), place);
        if (_errors.Count == before && value.ValueKind == JsonValueKind.Number && JobLimits.Find(type.Type, property.Name) is NumberRange range)
        {
            Expect(range.Has(value.GetDouble()), place, $"it must be {range}.");
        }
    }

    private void CheckList(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        if (!Expect(element.ValueKind == JsonValueKind.Array, node, "it must be a list, in brackets."))
        {
            return;
        }

        JsonTypeInfo inner = type.Options.GetTypeInfo(type.Type.GetGenericArguments()[0]);
        int index = 0;
        foreach (JsonElement item in element.EnumerateArray())
        {
            Check(item, inner, node.Item(index++));
        }
    }

    private void CheckValue(JsonElement element, Type type, DocumentNode node)
    {
        if (type == typeof(double))
        {
            Expect(
                element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double number) && Numerics.Require.IsFinite(number),
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
        else if (Expect(element.ValueKind == JsonValueKind.String, node, "it must be a text, in quotes.")
            && Try(() => Text(() => element.GetString()!, node)) is string text)
        {
            CheckText(text, element, type, node);
        }
    }

    private void CheckText(string text, JsonElement element, Type type, DocumentNode node)
    {
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

    private bool Expect(bool condition, DocumentNode node, string reason)
    {
        if (!condition)
        {
            _errors.AddRange(node.Wrong(reason).Errors);
        }

        return condition;
    }

    private T? Try<T>(Func<T> make)
        where T : class
    {
        try
        {
            return make();
        }
        catch (DocumentException e)
        {
            _errors.AddRange(e.Errors);
            return null;
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
