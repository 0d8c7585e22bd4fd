using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;

namespace Refrigerant.Recovery.Records;

/// <summary>How documents are written: indented, and readable beyond ASCII.</summary>
internal static class DocumentWriter
{
    private static readonly JsonSerializerOptions Options = new(RecordsContext.Default.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        TypeInfoResolver = new DocumentShapes(),
    };

    /// <summary>What describes a document, or a part of one.</summary>
    public static JsonTypeInfo<T> TypeOf<T>() => (JsonTypeInfo<T>)Options.GetTypeInfo(typeof(T));
}
