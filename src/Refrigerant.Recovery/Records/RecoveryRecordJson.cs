using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>Records as JSON, in the shape of the published schema (docs/schema/recovery-record.schema.json).</summary>
public static class RecoveryRecordJson
{
    /// <summary>Reads a record. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no record; the message names the place, the value and what is valid.</exception>
    public static RecoveryRecord Read(string json) => DocumentReader.Read(json, DocumentWriter.Context.RecoveryRecord, (document, _) => document);

    /// <summary>Writes a record, indented.</summary>
    /// <param name="record">The record.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    public static string Write(RecoveryRecord record) =>
        DocumentWriter.Write(Require.NotNull(record, nameof(record)), DocumentWriter.Context.RecoveryRecord);
}
