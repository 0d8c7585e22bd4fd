using System;
using System.Collections.Generic;
using System.Text.Json;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A place in a document: what stands there, and the path to it. Errors are told by it.</summary>
internal readonly struct DocumentNode
{
    private const int LongestValueShown = 60;

    private readonly JsonElement? _element;
    private readonly DocumentPath _path;

    public DocumentNode(JsonElement? element, string path)
        : this(element, new DocumentPath(path))
    {
    }

    private DocumentNode(JsonElement? element, DocumentPath path)
    {
        _element = element;
        _path = path;
    }

    public string Path => _path.ToString();

    /// <summary>What stands here; null where nothing does.</summary>
    public JsonElement? Value => _element;

    public DocumentNode Member(string name) => Member(name, Find(name));

    /// <summary>A member whose value is known.</summary>
    public DocumentNode Member(string name, JsonElement? value) => new(value, _path.Member(name));

    /// <summary>The members of a list; none where there is no list.</summary>
    public IEnumerable<DocumentNode> Items()
    {
        if (_element is not { ValueKind: JsonValueKind.Array } list)
        {
            yield break;
        }

        int index = 0;
        foreach (JsonElement item in list.EnumerateArray())
        {
            yield return new DocumentNode(item, _path.Item(index++));
        }
    }

    /// <summary>Makes what stands here; an argument error becomes one that names the member of the document.</summary>
    public T Build<T>(Func<T> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException e)
        {
            throw MemberOf(e.ParamName).Wrong(Reason(e), e);
        }
        catch (ConvergenceException e)
        {
            throw Wrong(e.Message, e);
        }
    }

    public DocumentException Wrong(string reason, Exception? inner = null)
    {
        string value = string.Empty;
        if (_element is { ValueKind: not (JsonValueKind.Object or JsonValueKind.Array) } element)
        {
            string text = element.GetRawText();
            value = " is " + (text.Length <= LongestValueShown ? text : text.Substring(0, LongestValueShown) + "…");
        }

        return new DocumentException(Path, $"{Path}{value}: {reason}", inner);
    }

    /// <summary>The member that a parameter was read from: it is named after it, followed by its unit.</summary>
    private DocumentNode MemberOf(string? parameter)
    {
        string? found = null;
        if (_element is { ValueKind: JsonValueKind.Object } element && !string.IsNullOrEmpty(parameter))
        {
            string start = char.ToLowerInvariant(parameter![0]) + parameter.Substring(1);
            foreach (JsonProperty property in element.EnumerateObject())
            {
                if (property.Name.StartsWith(start, StringComparison.Ordinal) && (found is null || property.Name.Length < found.Length))
                {
                    found = property.Name;
                }
            }
        }

        return found is null ? this : Member(found);
    }

    /// <summary>The message without what the runtime adds about the parameter, which says the same in different words on each.</summary>
    private static string Reason(ArgumentException e)
    {
        string message = e.Message;
        foreach (string added in new[] { " (Parameter '", "\r\nParameter name", "\nParameter name" })
        {
            int at = message.LastIndexOf(added, StringComparison.Ordinal);
            if (e.ParamName is not null && at > 0)
            {
                message = message.Substring(0, at);
            }
        }

        return message;
    }

    /// <summary>Null where no such member stands here; also where another member's name is no valid text, at which even a search fails.</summary>
    private JsonElement? Find(string name)
    {
        try
        {
            return _element is { ValueKind: JsonValueKind.Object } parent && parent.TryGetProperty(name, out JsonElement child) ? child : null;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
