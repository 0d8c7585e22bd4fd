using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace Refrigerant.Recovery.Records;

/// <summary>How documents are written: indented, and readable beyond ASCII.</summary>
internal static class DocumentWriter
{
    public static RecordsContext Context { get; } = new(new JsonSerializerOptions(RecordsContext.Default.Options)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    });
}
