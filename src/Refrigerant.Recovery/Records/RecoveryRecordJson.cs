using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Records as JSON. <see cref="RecoveryRecord"/> has the same shape in any System.Text.Json serializer. It is published in the package as
/// schema/recovery-record.schema.json.
/// </summary>
public static class RecoveryRecordJson
{
    private static readonly DocumentFormat<RecoveryRecord, RecoveryRecord> Format = new(DocumentWriter.TypeOf<RecoveryRecord>(), (document, _, _) => document);

    /// <summary>Reads a record. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no record; its errors name each place, the value and what is valid.</exception>
    public static RecoveryRecord Read(string json) => Format.Read(json);

    /// <summary>Reads a record from UTF-8, with or without a byte order mark.</summary>
    /// <param name="utf8Json">The document.</param>
    /// <exception cref="DocumentException">The document is no record; its errors name each place, the value and what is valid.</exception>
    public static RecoveryRecord Read(ReadOnlyMemory<byte> utf8Json) => Format.Read(utf8Json);

    /// <summary>Reads a record from a stream of UTF-8 to its end.</summary>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no record; its errors name each place, the value and what is valid.</exception>
    /// <exception cref="OperationCanceledException">The reading was cancelled.</exception>
    public static Task<RecoveryRecord> ReadAsync(Stream stream, CancellationToken cancellation = default) => Format.ReadAsync(stream, null, cancellation);

    /// <summary>Reads a record, or says everything that is wrong with the document.</summary>
    /// <param name="json">The document.</param>
    /// <param name="record">The record, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public static bool TryRead(string json, [NotNullWhen(true)] out RecoveryRecord? record, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(json, null, out record, out errors);

    /// <summary>Reads a record from UTF-8, or says everything that is wrong with the document.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="record">The record, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    public static bool TryRead(ReadOnlyMemory<byte> utf8Json, [NotNullWhen(true)] out RecoveryRecord? record, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(utf8Json, null, out record, out errors);

    /// <summary>Writes a record's document, indented.</summary>
    /// <param name="record">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    public static string Write(RecoveryRecord record) => Format.Write(Require.NotNull(record, nameof(record)));

    /// <summary>Writes a record's document to a stream as UTF-8 without a byte order mark.</summary>
    /// <param name="record">The document.</param>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the writing.</param>
    /// <exception cref="ArgumentNullException">The document or the stream is null.</exception>
    /// <exception cref="OperationCanceledException">The writing was cancelled.</exception>
    public static Task WriteAsync(RecoveryRecord record, Stream stream, CancellationToken cancellation = default) =>
        Format.WriteAsync(Require.NotNull(record, nameof(record)), stream, cancellation);
}
