using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Reads a document, or a part of one, within any System.Text.Json serializer as strictly as <see cref="RecoveryPlanJson"/> and <see cref="RecoveryRecordJson"/> do.
/// The types of documents carry it; there is nothing to register.
/// </summary>
/// <typeparam name="T">A type of this namespace that carries this converter.</typeparam>
public sealed class DocumentJsonConverter<T> : JsonConverter<T>
    where T : class
{
    private static readonly DocumentFormat<T, T> Format = new(DocumentWriter.TypeOf<T>(), (document, _, _) => document);

    /// <summary>Reads a document.</summary>
    /// <param name="reader">Where it begins.</param>
    /// <param name="typeToConvert">Its type.</param>
    /// <param name="options">The serializer's options, of which none matters.</param>
    /// <exception cref="JsonException">
    /// What is read is no such document: the path of the first error within it, the text of all, and a <see cref="DocumentException"/> with them as the inner exception.
    /// </exception>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using JsonDocument document = JsonDocument.ParseValue(ref reader);
        return Format.TryRead(document.RootElement, null, out T? result, out IReadOnlyList<DocumentError> errors) ? result! : throw Wrong(errors);
    }

    /// <summary>Writes a document.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="value">The document.</param>
    /// <param name="options">The serializer's options, of which none matters.</param>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => Format.Write(writer, value);

    /// <summary>All errors as the one that a serializer tells.</summary>
    internal static JsonException Wrong(IReadOnlyList<DocumentError> errors) =>
        new(string.Join(" ", errors.Select(error => error.Message)), errors[0].Path, null, null, new DocumentException(errors));
}
