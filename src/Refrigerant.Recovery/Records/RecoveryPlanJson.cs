using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records;

/// <summary>Plans as JSON: plain numbers with 12 significant digits and the unit in the name of the member.</summary>
public static class RecoveryPlanJson
{
    /// <summary>Reads a plan's document back. The shape is checked as strictly as that of a job.</summary>
    /// <param name="json">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="DocumentException">The document is no plan; the message names the place, the value and what is valid.</exception>
    public static PlanDocument Read(string json) => DocumentReader.Read(json, DocumentWriter.Context.PlanDocument, (document, _) => document);

    /// <summary>Writes a plan, indented.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="course">Whether to include the course of its stages, up to a few hundred points each.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static string Write(RecoveryPlan plan, bool course = false) => Write(PlanDocument.From(plan, course));

    /// <summary>Writes a plan's document, indented.</summary>
    /// <param name="plan">The document.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static string Write(PlanDocument plan) =>
        DocumentWriter.Write(Require.NotNull(plan, nameof(plan)), DocumentWriter.Context.PlanDocument);
}
