using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;

namespace Refrigerant.Recovery.Records;

/// <summary>Writes documents indented, readable beyond ASCII, and with the same line ends on every system.</summary>
internal static class DocumentWriter
{
    public static RecordsContext Context { get; } = new(new JsonSerializerOptions(RecordsContext.Default.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    });

    public static string Write<T>(T document, JsonTypeInfo<T> type) =>
        JsonSerializer.Serialize(document, type).Replace("\r\n", "\n") + "\n";
}
