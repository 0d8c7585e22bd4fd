using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Checks a document against the generated metadata of its type, member by member, so that every error names its place; then each object is
/// made, innermost first, so that an argument error names its place too.
/// </summary>
/// <remarks>
/// All errors are told, not the first only: an object with members that are wrong is made without them, or with others in their place, until nothing
/// more is found. What then only says that something was left out is not told.
/// </remarks>
internal sealed class DocumentReader
{
    /// <summary>The most errors of one object that are told besides those of its shape.</summary>
    private const int MostOfAnObject = 16;

    private readonly List<DocumentError> _errors = [];
    private readonly DocumentParts? _parts;

    /// <param name="parts">What is known of the parts of the document, to tell everything that is wrong; null to check the shape alone.</param>
    public DocumentReader(DocumentParts? parts = null) => _parts = parts;

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
        return _errors.Count == 0 ? Try(() => use(root.Build(() => element.Deserialize(type)!), root)) : null;
    }

    private void Check(JsonElement element, JsonTypeInfo type, DocumentNode node, NumberRange? range = null)
    {
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Object when _parts is null:
                CheckObject(element, type, node);
                break;
            case JsonTypeInfoKind.Object:
                CheckPart(element, type, node, _parts);
                break;
            case JsonTypeInfoKind.Enumerable:
                CheckList(element, type, node);
                break;
            default:
                CheckValue(element, Nullable.GetUnderlyingType(type.Type) ?? type.Type, node, range);
                break;
        }
    }

    /// <summary>Checks an object and what it is made to.</summary>
    private void CheckPart(JsonElement element, JsonTypeInfo type, DocumentNode node, DocumentParts parts)
    {
        int before = _errors.Count;
        CheckObject(element, type, node);
        (DocumentNode Place, string Reason)[] contradictions = element.ValueKind == JsonValueKind.Object ? [.. parts.Contradictions(type.Type, node)] : [];
        Tell(contradictions.Where(each => each.Place.Path != node.Path));
        MakeWhatCanBe(element, type, node, before);
        Tell(contradictions.Where(each => each.Place.Path == node.Path));
    }

    /// <summary>Adds what is not told yet.</summary>
    private void Tell(IEnumerable<(DocumentNode Place, string Reason)> errors)
    {
        foreach (DocumentError error in errors.SelectMany(each => each.Place.Wrong(each.Reason).Errors).Where(error => !_errors.Contains(error)))
        {
            _errors.Add(error);
        }
    }

    /// <summary>Makes an object without what is known to be wrong in it, again and again, until nothing more is found.</summary>
    private void MakeWhatCanBe(JsonElement element, JsonTypeInfo type, DocumentNode node, int before)
    {
        for (int i = 0; i < MostOfAnObject; i++)
        {
            HashSet<string> wrong = [.. _errors.Skip(before).Select(error => MemberIn(error.Path, node.Path))];
            if (wrong.Contains(string.Empty) || MendedDocument.Of(element, type, wrong, _parts!) is not byte[] mended)
            {
                return;
            }

            int known = _errors.Count;
            Try(() => node.Build(() =>
            {
                object part = JsonSerializer.Deserialize(mended, type)!;
                _parts!.Make(part, node);
                return part;
            }));
            for (int e = _errors.Count - 1; e >= known; e--)
            {
                string member = MemberIn(_errors[e].Path, node.Path);
                if (wrong.Contains(member) || (wrong.Count > 0 && member.Length == 0))
                {
                    _errors.RemoveAt(e);
                }
            }

            if (_errors.Count == known)
            {
                return;
            }
        }
    }

    /// <summary>The member of an object that a path leads through; empty for the object itself.</summary>
    private static string MemberIn(string path, string of)
    {
        if (path.Length <= of.Length)
        {
            return string.Empty;
        }

        string rest = path.Substring(of.Length + 1);
        int end = rest.IndexOfAny(['.', '[']);
        return end < 0 ? rest : rest.Substring(0, end);
    }

    private void CheckObject(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        if (!Expect(element.ValueKind == JsonValueKind.Object, node, "it must be an object, in braces.") || Members(element, type, node) is not List<GivenMember> members)
        {
            return;
        }

        int[] given = new int[type.Properties.Count];
        HashSet<string>? unknown = null;
        foreach (GivenMember member in members)
        {
            if (member.Index >= 0)
            {
                given[member.Index]++;
            }
        }

        foreach (GivenMember member in members)
        {
            if (member.Index < 0)
            {
                if ((unknown ??= []).Add(member.Name))
                {
                    Tell(node.Member(member.Name, member.Value), $"there is no such member; known are {string.Join(", ", type.Properties.Select(p => p.Name))}.");
                }
            }
            else if (given[member.Index] == 1)
            {
                CheckMember(member.Value, type, type.Properties[member.Index], node.Member(member.Name, member.Value));
            }
            else if (given[member.Index] > 1)
            {
                Tell(node.Member(member.Name), "it is given twice.");
                given[member.Index] = -1;
            }
        }

        for (int i = 0; i < given.Length; i++)
        {
            if (given[i] == 0 && type.Properties[i].IsRequired)
            {
                Tell(node.Member(type.Properties[i].Name), "it is missing and must be given.");
            }
        }
    }

    /// <summary>What an object has. All names first: one that is no text makes even the search for another fail, and then there is nothing.</summary>
    private List<GivenMember>? Members(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        try
        {
            var members = new List<GivenMember>(type.Properties.Count);
            foreach (JsonProperty member in element.EnumerateObject())
            {
                int index = type.Properties.Count - 1;
                while (index >= 0 && !member.NameEquals(type.Properties[index].Name))
                {
                    index--;
                }

                members.Add(new GivenMember(index < 0 ? member.Name : type.Properties[index].Name, index, member.Value));
            }

            return members;
        }
        catch (InvalidOperationException e)
        {
            _errors.AddRange(node.Wrong("it is not valid Unicode.", e).Errors);
            return null;
        }
    }

    private void CheckMember(JsonElement value, JsonTypeInfo type, JsonPropertyInfo property, DocumentNode place)
    {
        if (value.ValueKind == JsonValueKind.Null)
        {
            Expect(!property.IsRequired && (!property.PropertyType.IsValueType || Nullable.GetUnderlyingType(property.PropertyType) is not null), place, "it must be given.");
            return;
        }

        int before = _errors.Count;
        NumberRange? range = JobLimits.Find(type.Type, property.Name);
        Check(value, type.Options.GetTypeInfo(property.PropertyType), place, range);
        if (_errors.Count > before)
        {
            return;
        }

        if (value.ValueKind == JsonValueKind.Number && range is NumberRange given)
        {
            if (!given.Has(value.GetDouble()))
            {
                Tell(place, $"it must be {given}.");
            }
        }
        else if (value.ValueKind == JsonValueKind.String && _parts is not null)
        {
            CheckTextOf(_parts, type.Type, property.Name, value.GetString()!, place);
        }
    }

    private void CheckTextOf(DocumentParts parts, Type owner, string member, string text, DocumentNode place) => Try<object>(() =>
    {
        parts.CheckText(owner, member, text, place);
        return place;
    });

    private void CheckList(JsonElement element, JsonTypeInfo type, DocumentNode node)
    {
        if (!Expect(element.ValueKind == JsonValueKind.Array, node, "it must be a list, in brackets."))
        {
            return;
        }

        JsonTypeInfo inner = type.Options.GetTypeInfo(type.Type.GetGenericArguments()[0]);
        foreach (DocumentNode item in node.Items())
        {
            Check(item.Value!.Value, inner, item);
        }
    }

    private void CheckValue(JsonElement element, Type type, DocumentNode node, NumberRange? range)
    {
        if (type == typeof(double))
        {
            if (element.ValueKind != JsonValueKind.Number || !element.TryGetDouble(out double number) || !Numerics.Require.IsFinite(number))
            {
                Tell(node, range is NumberRange bounds ? $"it must be a number, {bounds}." : "it must be a finite number.");
            }
        }
        else if (type == typeof(int))
        {
            if (element.ValueKind != JsonValueKind.Number || !element.TryGetInt32(out _))
            {
                Tell(node, range is NumberRange whole ? $"it must be a whole number, {whole}." : "it must be a whole number, from -2147483648 to 2147483647.");
            }
        }
        else if (type == typeof(bool))
        {
            Expect(element.ValueKind is JsonValueKind.True or JsonValueKind.False, node, "it must be true or false.");
        }
        else if (Expect(element.ValueKind == JsonValueKind.String, node, "it must be a text, in quotes.") && Text(element, node) is string text)
        {
            CheckText(text, element, type, node);
        }
    }

    private void CheckText(string text, JsonElement element, Type type, DocumentNode node)
    {
        if (type.IsEnum)
        {
            string[] names = Enum.GetNames(type);
            if (Array.IndexOf(names, text) < 0)
            {
                Tell(node, $"it must be one of {string.Join(", ", names)}.");
            }
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
            Tell(node, reason);
        }

        return condition;
    }

    private void Tell(DocumentNode node, string reason) => _errors.AddRange(node.Wrong(reason).Errors);

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
    private string? Text(JsonElement element, DocumentNode node)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException e)
        {
            _errors.AddRange(node.Wrong("it is not valid Unicode.", e).Errors);
            return null;
        }
    }

    /// <summary>A member of an object as it stands there, and which of its type's it is; -1 for none.</summary>
    private readonly record struct GivenMember(string Name, int Index, JsonElement Value);
}
