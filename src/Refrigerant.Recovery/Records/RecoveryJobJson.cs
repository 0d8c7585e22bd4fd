using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Text.Json.Serialization;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>Jobs as JSON: plain numbers with the unit in the name of the member, such as "chargeKilograms".</summary>
/// <remarks>
/// The members are those of <see cref="RecoveryJob"/> and what it holds; an optional one that is missing takes the default of its property.
/// Reading is strict: an unknown, repeated or missing member, a wrong type and a value out of range are errors that name the place.
/// A job that is written and read back equals the first: numbers are written in full, in the unit in which the job holds them. Days are written as "2026-11-25". A refrigerant is one of the catalogue by designation, or a blend
/// by composition, or what a <see cref="FluidResolver"/> finds for a designation. The shape is published in the package as schema/recovery-job.schema.json.
/// </remarks>
public static class RecoveryJobJson
{
    private static readonly DocumentFormat<JobDocument, RecoveryJob> Format = new(
        DocumentWriter.TypeOf<JobDocument>(), (document, root, fluids) => document.ToJob(root, fluids), fluids => new JobParts(fluids));

    /// <summary>Reads a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no job; its errors name each place, the value and what is valid.</exception>
    public static RecoveryJob Read(string json) => Format.Read(json);

    /// <summary>Reads a job whose refrigerant may be of another property engine.</summary>
    /// <param name="json">The document.</param>
    /// <param name="fluids">Finds fluids by designation before the catalogue does; null for the catalogue alone.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no job; its errors name each place, the value and what is valid.</exception>
    public static RecoveryJob Read(string json, FluidResolver? fluids) => Format.Read(json, fluids);

    /// <summary>Reads a job from UTF-8, with or without a byte order mark.</summary>
    /// <param name="utf8Json">The document.</param>
    /// <param name="fluids">Finds fluids by designation before the catalogue does; null for the catalogue alone.</param>
    /// <exception cref="DocumentException">The document is no job; its errors name each place, the value and what is valid.</exception>
    public static RecoveryJob Read(ReadOnlyMemory<byte> utf8Json, FluidResolver? fluids) => Format.Read(utf8Json, fluids);

    /// <summary>Reads a job from a stream of UTF-8 to its end.</summary>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="fluids">Finds fluids by designation before the catalogue does; null for the catalogue alone.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no job; its errors name each place, the value and what is valid.</exception>
    /// <exception cref="OperationCanceledException">The reading was cancelled.</exception>
    public static Task<RecoveryJob> ReadAsync(Stream stream, FluidResolver? fluids = null, CancellationToken cancellation = default) =>
        Format.ReadAsync(stream, fluids, cancellation);

    /// <summary>Reads a job, or says everything that is wrong with the document.</summary>
    /// <param name="json">The document.</param>
    /// <param name="job">The job, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where there is a job.</param>
    /// <returns>Whether it was read.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public static bool TryRead(string json, [NotNullWhen(true)] out RecoveryJob? job, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(json, null, out job, out errors);

    /// <summary>Reads a job from UTF-8, or says everything that is wrong with the document.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="fluids">Finds fluids by designation before the catalogue does; null for the catalogue alone.</param>
    /// <param name="job">The job, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where there is a job.</param>
    /// <returns>Whether it was read.</returns>
    public static bool TryRead(
        ReadOnlyMemory<byte> utf8Json, FluidResolver? fluids, [NotNullWhen(true)] out RecoveryJob? job, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(utf8Json, fluids, out job, out errors);

    /// <summary>Writes a job with every value, defaults included, indented.</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The refrigerant is neither in the catalogue nor a blend of what is there.</exception>
    public static string Write(RecoveryJob job) => Write(job, null);

    /// <summary>Writes a job whose refrigerant may be of another property engine.</summary>
    /// <param name="job">The job.</param>
    /// <param name="fluids">Where it finds the refrigerant by its designation, that is written; null for the catalogue alone.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The refrigerant is neither in the catalogue nor a blend of what is there, and is not resolved.</exception>
    public static string Write(RecoveryJob job, FluidResolver? fluids) => Format.Write(JobDocument.From(Require.NotNull(job, nameof(job)), fluids));

    /// <summary>Writes a job to a stream as UTF-8 without a byte order mark.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="fluids">Where it finds the refrigerant by its designation, that is written; null for the catalogue alone.</param>
    /// <param name="cancellation">Ends the writing.</param>
    /// <exception cref="ArgumentNullException">The job or the stream is null.</exception>
    /// <exception cref="ArgumentException">The refrigerant is neither in the catalogue nor a blend of what is there, and is not resolved.</exception>
    /// <exception cref="OperationCanceledException">The writing was cancelled.</exception>
    public static Task WriteAsync(RecoveryJob job, Stream stream, FluidResolver? fluids = null, CancellationToken cancellation = default) =>
        Format.WriteAsync(JobDocument.From(Require.NotNull(job, nameof(job)), fluids), stream, cancellation);

    /// <summary>
    /// A converter for a host's <see cref="System.Text.Json.JsonSerializerOptions"/>, so that a job is bound from a request, or is a member of
    /// another type, in the same shape. What is wrong is a <see cref="System.Text.Json.JsonException"/> of all errors.
    /// </summary>
    /// <param name="fluids">Finds fluids by designation before the catalogue does; null for the catalogue alone.</param>
    public static JsonConverter<RecoveryJob> CreateConverter(FluidResolver? fluids = null) => new RecoveryJobConverter(Format, fluids);
}
