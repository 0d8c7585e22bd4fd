using System;
using System.Collections.Generic;
using System.Text.Json;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>Jobs within the documents of a host.</summary>
internal sealed class RecoveryJobConverter(DocumentFormat<JobDocument, RecoveryJob> format, FluidResolver? fluids) : JsonConverter<RecoveryJob>
{
    public override RecoveryJob Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using JsonDocument document = JsonDocument.ParseValue(ref reader);
        if (format.TryRead(document.RootElement, fluids, out RecoveryJob? job, out IReadOnlyList<DocumentError> errors))
        {
            return job!;
        }

        throw DocumentJsonConverter<JobDocument>.Wrong(errors);
    }

    public override void Write(Utf8JsonWriter writer, RecoveryJob value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, JobDocument.From(value, fluids), RecordsContext.Default.JobDocument);
}
