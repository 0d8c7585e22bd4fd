using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A kind of document as text, UTF-8 and stream, and back.</summary>
/// <typeparam name="TDocument">The type whose members are those of the document.</typeparam>
/// <typeparam name="TResult">What it is read to.</typeparam>
internal sealed class DocumentFormat<TDocument, TResult>
    where TDocument : class
    where TResult : class
{
    /// <summary>Deeper than any document of ours.</summary>
    private const int DeepestNesting = 32;

    /// <summary>A member that any document may have: where its schema is.</summary>
    private const string SchemaMember = "$schema";

    /// <summary>Longer than the plan of the longest job with its course.</summary>
    private const int LongestText = 64 * 1024 * 1024;

    private readonly JsonTypeInfo<TDocument> _type;
    private readonly Func<TDocument, DocumentNode, FluidResolver?, TResult> _use;
    private readonly Func<FluidResolver?, DocumentParts> _parts;

    /// <param name="type">The generated metadata.</param>
    /// <param name="use">Makes the result, with the root for errors by path.</param>
    /// <param name="parts">What is known of the parts, so that everything that is wrong is told; nothing where it is null.</param>
    public DocumentFormat(
        JsonTypeInfo<TDocument> type,
        Func<TDocument, DocumentNode, FluidResolver?, TResult> use,
        Func<FluidResolver?, DocumentParts>? parts = null)
    {
        _type = type;
        _use = use;
        _parts = parts ?? (_ => new DocumentParts());
    }

    public bool TryRead(string json, FluidResolver? fluids, out TResult? result, out IReadOnlyList<DocumentError> errors)
    {
        Require.NotNull(json, nameof(json));
        return TryRead(() => JsonDocument.Parse(json.AsMemory(json.StartsWith("\uFEFF", StringComparison.Ordinal) ? 1 : 0), Options), json.Length, fluids, out result, out errors);
    }

    public bool TryRead(ReadOnlyMemory<byte> utf8Json, FluidResolver? fluids, out TResult? result, out IReadOnlyList<DocumentError> errors) =>
        TryRead(() => JsonDocument.Parse(WithoutMark(utf8Json), Options), utf8Json.Length, fluids, out result, out errors);

    public bool TryRead(JsonElement element, FluidResolver? fluids, out TResult? result, out IReadOnlyList<DocumentError> errors)
    {
        var reader = new DocumentReader();
        result = reader.Read(element, _type, (document, root) => _use(document, root, fluids));
        if (result is null)
        {
            var all = new DocumentReader(_parts(fluids));
            all.Read<TDocument, TResult>(element, _type, (_, _) => null!);
            reader = all.Errors.Count > 0 ? all : reader;
        }

        errors = new ValueList<DocumentError>([.. reader.Errors]);
        return result is not null;
    }

    public TResult Read(string json, FluidResolver? fluids = null) =>
        TryRead(json, fluids, out TResult? result, out IReadOnlyList<DocumentError> errors) ? result! : throw new DocumentException(errors);

    public TResult Read(ReadOnlyMemory<byte> utf8Json, FluidResolver? fluids = null) =>
        TryRead(utf8Json, fluids, out TResult? result, out IReadOnlyList<DocumentError> errors) ? result! : throw new DocumentException(errors);

    public async Task<TResult> ReadAsync(Stream stream, FluidResolver? fluids, CancellationToken cancellation)
    {
        Require.NotNull(stream, nameof(stream));
        using var buffer = new MemoryStream();
        byte[] block = new byte[81920];
        int read;
        while ((read = await stream.ReadAsync(block, 0, block.Length, cancellation).ConfigureAwait(false)) > 0)
        {
            buffer.Write(block, 0, read);
            if (buffer.Length > LongestText)
            {
                throw TooLong(buffer.Length);
            }
        }

        return Read(new ReadOnlyMemory<byte>(buffer.GetBuffer(), 0, (int)buffer.Length), fluids);
    }

    public string Write(TDocument document) => JsonSerializer.Serialize(document, _type).Replace("\r\n", "\n") + "\n";

    public void Write(Utf8JsonWriter writer, TDocument document) => JsonSerializer.Serialize(writer, document, _type);

    public byte[] WriteUtf8(TDocument document) => new UTF8Encoding(false).GetBytes(Write(document));

    public async Task WriteAsync(TDocument document, Stream stream, CancellationToken cancellation)
    {
        byte[] bytes = WriteUtf8(document);
        await Require.NotNull(stream, nameof(stream)).WriteAsync(bytes, 0, bytes.Length, cancellation).ConfigureAwait(false);
    }

    private static JsonDocumentOptions Options => new() { MaxDepth = DeepestNesting };

    private static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> utf8Json) =>
        utf8Json.Span.StartsWith(new byte[] { 0xEF, 0xBB, 0xBF }) ? utf8Json.Slice(3) : utf8Json;

    private bool TryRead(Func<JsonDocument> parse, int length, FluidResolver? fluids, out TResult? result, out IReadOnlyList<DocumentError> errors)
    {
        try
        {
            using JsonDocument document = Parse(parse, length);
            if (new DocumentNode(document.RootElement, "$").Member(SchemaMember).Value is { ValueKind: JsonValueKind.String })
            {
                using JsonDocument bare = WithoutSchema(document.RootElement);
                return TryRead(bare.RootElement, fluids, out result, out errors);
            }

            return TryRead(document.RootElement, fluids, out result, out errors);
        }
        catch (DocumentException e)
        {
            result = null;
            errors = e.Errors;
            return false;
        }
    }

    /// <summary>The document without the member by which an editor finds its schema.</summary>
    private static JsonDocument WithoutSchema(JsonElement root)
    {
        using var text = new MemoryStream();
        using var writer = new Utf8JsonWriter(text);
        writer.WriteStartObject();
        try
        {
            foreach (JsonProperty member in root.EnumerateObject().Where(member => !member.NameEquals(SchemaMember)))
            {
                member.WriteTo(writer);
            }
        }
        catch (InvalidOperationException e)
        {
            throw new DocumentException("$", "$: it is not valid Unicode.", e);
        }

        writer.WriteEndObject();
        writer.Flush();
        return JsonDocument.Parse(text.ToArray(), Options);
    }

    private static JsonDocument Parse(Func<JsonDocument> parse, int length)
    {
        if (length > LongestText)
        {
            throw TooLong(length);
        }

        try
        {
            return parse();
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            string place = e is JsonException { LineNumber: long line } ? FormattableString.Invariant($", line {line + 1}") : string.Empty;
            string reason = e.Message.Split([" LineNumber:"], StringSplitOptions.None)[0];
            throw new DocumentException("$", $"The document is no JSON of at most {DeepestNesting} levels{place}: {reason}", e);
        }
    }

    private static DocumentException TooLong(long length) =>
        new("$", FormattableString.Invariant($"The document has {length} characters or more; at most {LongestText} are read."));
}
