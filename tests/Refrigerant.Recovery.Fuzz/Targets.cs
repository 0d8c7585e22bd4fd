using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Fuzz;

/// <summary>What reads text, and what must hold for every text. Whatever is thrown from here is a finding.</summary>
internal static class Targets
{
    private static readonly Dictionary<string, Action<string>> All = new(StringComparer.Ordinal)
    {
        ["designation"] = Designation,
        ["mark"] = Mark,
        ["job"] = text => Document(text, RecoveryJobJson.Read, RecoveryJobJson.Write, RecoveryJobJson.TryRead),
        ["plan"] = text => Document(text, RecoveryPlanJson.Read, RecoveryPlanJson.Write, RecoveryPlanJson.TryRead),
        ["record"] = text => Document(text, RecoveryRecordJson.Read, RecoveryRecordJson.Write, RecoveryRecordJson.TryRead),
        ["log"] = text => Document(text, JobLogJson.Read, JobLogJson.Write, JobLogJson.TryRead),
        ["csv"] = Csv,
    };

    private delegate bool Reader<T>(string text, out T? read, out IReadOnlyList<DocumentError> errors);

    public static IEnumerable<string> Names => All.Keys;

    public static Action<string>? Of(string name) => All.GetValueOrDefault(name);

    private static void Designation(string text)
    {
        bool known = Fluid.TryGet(text, out Fluid? tried);
        try
        {
            Fluid got = Fluid.Get(text);
            Require(known && ReferenceEquals(got, tried), "Get gives what TryGet does not");
        }
        catch (UnknownFluidException)
        {
            Require(!known, "TryGet gives what Get does not");
        }
    }

    private static void Mark(string text)
    {
        try
        {
            Require(CylinderSpecification.FromMark(text).ServicePressure is null or { Pascals: > 0 and < 1e9 }, "a service pressure that cannot be");
        }
        catch (ArgumentException)
        {
            // Documented.
        }
    }

    private static void Document<T>(string text, Func<string, T> read, Func<T, string> write, Reader<T> tryRead)
    {
        bool isRead = tryRead(text, out _, out IReadOnlyList<DocumentError> errors);
        Require(isRead != errors.Any(), "errors of a document that was read, or none of one that was not");
        try
        {
            string written = write(read(text));
            Require(isRead, "Read gives what TryRead does not");
            Require(write(read(written)) == written, "written, read and written again differs");
        }
        catch (DocumentException)
        {
            Require(!isRead, "TryRead gives what Read does not");
        }
    }

    private static void Csv(string text)
    {
        try
        {
            JobLog log = JobLogCsv.Read(text);
            string written = JobLogCsv.Write(log);
            Require(JobLogCsv.Write(JobLogCsv.Read(written)) == written, "written, read and written again differs");
        }
        catch (DocumentException)
        {
            // Documented.
        }
    }

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidOperationException(otherwise);
        }
    }
}
