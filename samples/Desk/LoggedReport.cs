using System;
using System.IO;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Samples.Desk;

/// <summary>What comes out of a job's log: the chart of planned and measured, the record, and the job to plan the next one with.</summary>
internal static class LoggedReport
{
    public static void Write(RecoveryPlan plan, JobLog log, string folder)
    {
        LogChart.Write(plan, log, folder);
        RecoveryRecord record = RecoveryRecord.From(plan, new RecordFacts
        {
            Company = "Example Cooling",
            Location = "12 Sample Street",
            Date = new DateTime(2026, 11, 25),
            Appliance = "display cabinet 3",
            Log = log,
        });
        Save(folder, "record.json", RecoveryRecordJson.Write(record));
        JobCalibration fit = JobCalibration.Fit(plan.Job, log);
        Save(folder, "next-job.json", RecoveryJobJson.Write(fit.Jobs[0]));
        System.Console.WriteLine(log);
        System.Console.WriteLine(fit);
        foreach (var finding in fit.Findings)
        {
            System.Console.WriteLine(finding);
        }
    }

    private static void Save(string folder, string name, string text)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        System.Console.WriteLine(path);
    }
}
