using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>Job logs as JSON, in the shape that is published in the package as schema/recovery-log.schema.json. Numbers are written in full, in the units in which the log holds them.</summary>
public static class JobLogJson
{
    private static readonly DocumentFormat<LogDocument, JobLog> Format = new(DocumentWriter.TypeOf<LogDocument>(), (document, root, _) => document.ToLog(root), _ => new LogParts());

    /// <summary>Reads a log. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no log; its errors name each place, the value and what is valid.</exception>
    public static JobLog Read(string json) => Format.Read(json);

    /// <summary>Reads a log from UTF-8, with or without a byte order mark.</summary>
    /// <param name="utf8Json">The document.</param>
    /// <exception cref="DocumentException">The document is no log; its errors name each place, the value and what is valid.</exception>
    public static JobLog Read(ReadOnlyMemory<byte> utf8Json) => Format.Read(utf8Json);

    /// <summary>Reads a log from a stream of UTF-8 to its end.</summary>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no log; its errors name each place, the value and what is valid.</exception>
    /// <exception cref="OperationCanceledException">The reading was cancelled.</exception>
    public static Task<JobLog> ReadAsync(Stream stream, CancellationToken cancellation = default) => Format.ReadAsync(stream, null, cancellation);

    /// <summary>Reads a log, or says everything that is wrong with the document.</summary>
    /// <param name="json">The document.</param>
    /// <param name="log">The log, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public static bool TryRead(string json, [NotNullWhen(true)] out JobLog? log, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(json, null, out log, out errors);

    /// <summary>Reads a log from UTF-8, or says everything that is wrong with the document.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="log">The log, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    public static bool TryRead(ReadOnlyMemory<byte> utf8Json, [NotNullWhen(true)] out JobLog? log, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(utf8Json, null, out log, out errors);

    /// <summary>Writes a log, indented.</summary>
    /// <param name="log">The log.</param>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    public static string Write(JobLog log) => Format.Write(LogDocument.From(Require.NotNull(log, nameof(log))));

    /// <summary>Writes a log to a stream as UTF-8 without a byte order mark.</summary>
    /// <param name="log">The log.</param>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the writing.</param>
    /// <exception cref="ArgumentNullException">The log or the stream is null.</exception>
    /// <exception cref="OperationCanceledException">The writing was cancelled.</exception>
    public static Task WriteAsync(JobLog log, Stream stream, CancellationToken cancellation = default) =>
        Format.WriteAsync(LogDocument.From(Require.NotNull(log, nameof(log))), stream, cancellation);
}
