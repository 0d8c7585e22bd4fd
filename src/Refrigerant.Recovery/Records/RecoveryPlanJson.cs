using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// Plans as JSON: plain numbers with 12 significant digits and the unit in the name of the member. <see cref="PlanDocument"/> has the same
/// shape in any System.Text.Json serializer. It is published in the package as schema/recovery-plan.schema.json.
/// </summary>
public static class RecoveryPlanJson
{
    private static readonly DocumentFormat<PlanDocument, PlanDocument> Format = new(DocumentWriter.TypeOf<PlanDocument>(), (document, _, _) => document);

    /// <summary>Reads a plan. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no plan; its errors name each place, the value and what is valid.</exception>
    public static PlanDocument Read(string json) => Format.Read(json);

    /// <summary>Reads a plan from UTF-8, with or without a byte order mark.</summary>
    /// <param name="utf8Json">The document.</param>
    /// <exception cref="DocumentException">The document is no plan; its errors name each place, the value and what is valid.</exception>
    public static PlanDocument Read(ReadOnlyMemory<byte> utf8Json) => Format.Read(utf8Json);

    /// <summary>Reads a plan from a stream of UTF-8 to its end.</summary>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no plan; its errors name each place, the value and what is valid.</exception>
    /// <exception cref="OperationCanceledException">The reading was cancelled.</exception>
    public static Task<PlanDocument> ReadAsync(Stream stream, CancellationToken cancellation = default) => Format.ReadAsync(stream, null, cancellation);

    /// <summary>Reads a plan, or says everything that is wrong with the document.</summary>
    /// <param name="json">The document.</param>
    /// <param name="plan">The plan, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public static bool TryRead(string json, [NotNullWhen(true)] out PlanDocument? plan, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(json, null, out plan, out errors);

    /// <summary>Reads a plan from UTF-8, or says everything that is wrong with the document.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="plan">The plan, or null.</param>
    /// <param name="errors">Each error with its path, in the order in which they were found; none where it was read.</param>
    /// <returns>Whether it was read.</returns>
    public static bool TryRead(ReadOnlyMemory<byte> utf8Json, [NotNullWhen(true)] out PlanDocument? plan, out IReadOnlyList<DocumentError> errors) =>
        Format.TryRead(utf8Json, null, out plan, out errors);

    /// <summary>Writes a plan, indented.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="course">Whether to include the course of its stages, up to a few hundred points each.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static string Write(RecoveryPlan plan, bool course = false) => Write(PlanDocument.From(plan, course));

    /// <summary>Writes a plan's document, indented.</summary>
    /// <param name="plan">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static string Write(PlanDocument plan) => Format.Write(Require.NotNull(plan, nameof(plan)));

    /// <summary>Writes a plan's document to a stream as UTF-8 without a byte order mark.</summary>
    /// <param name="plan">The document.</param>
    /// <param name="stream">The stream, which stays open.</param>
    /// <param name="cancellation">Ends the writing.</param>
    /// <exception cref="ArgumentNullException">The document or the stream is null.</exception>
    /// <exception cref="OperationCanceledException">The writing was cancelled.</exception>
    public static Task WriteAsync(PlanDocument plan, Stream stream, CancellationToken cancellation = default) =>
        Format.WriteAsync(Require.NotNull(plan, nameof(plan)), stream, cancellation);
}
