using System;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Refrigerant.Recovery.Records;

/// <summary>A day as "2026-11-25", whatever its time of day.</summary>
internal sealed class DateJsonConverter : JsonConverter<DateTime>
{
    private const string Format = "yyyy-MM-dd";

    public static bool TryParse(string? text, out DateTime date) =>
        DateTime.TryParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out date);

    public override DateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        TryParse(reader.GetString(), out DateTime date) ? date : throw new JsonException("it must be a date such as \"2026-11-25\".");

    public override void Write(Utf8JsonWriter writer, DateTime value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.ToString(Format, CultureInfo.InvariantCulture));
}
