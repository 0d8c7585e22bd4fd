using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>Jobs as JSON: plain numbers with the unit in the name of the member, such as "chargeKilograms".</summary>
/// <remarks>
/// The members are those of <see cref="RecoveryJob"/> and what it holds; an optional one that is missing takes the default of its property.
/// Reading is strict: an unknown, repeated or missing member, a wrong type and a value out of range are errors that name the place.
/// Numbers are written with 12 significant digits, days as "2026-11-25". A refrigerant is one of the catalogue by designation, or a blend
/// by composition; one of another property engine is read back as the catalogue's fluid of that designation. The barometer of
/// <see cref="RecoveryJob.Evacuation"/> is not written, since the planner takes the job's.
/// </remarks>
public static class RecoveryJobJson
{
    /// <summary>Reads a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no job; the message names the place, the value and what is valid.</exception>
    public static RecoveryJob Read(string json) =>
        DocumentReader.Read(json, DocumentWriter.Context.JobDocument, (document, root) => document.ToJob(root));

    /// <summary>Writes a job with every value, defaults included, indented.</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The refrigerant is neither in the catalogue nor a blend of what is there.</exception>
    public static string Write(RecoveryJob job) =>
        DocumentWriter.Write(JobDocument.From(Require.NotNull(job, nameof(job))), DocumentWriter.Context.JobDocument);
}
