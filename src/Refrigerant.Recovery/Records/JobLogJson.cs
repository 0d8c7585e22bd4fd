using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>Job logs as JSON, in the shape of the published schema (docs/schema/recovery-log.schema.json).</summary>
public static class JobLogJson
{
    /// <summary>Reads a log. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no log; the message names the place, the value and what is valid.</exception>
    public static JobLog Read(string json) => DocumentReader.Read(json, DocumentWriter.Context.LogDocument, (document, root) => document.ToLog(root));

    /// <summary>Writes a log, indented. Numbers have 12 significant digits.</summary>
    /// <param name="log">The log.</param>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    public static string Write(JobLog log) => DocumentWriter.Write(LogDocument.From(Require.NotNull(log, nameof(log))), DocumentWriter.Context.LogDocument);
}
