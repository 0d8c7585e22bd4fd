using System;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Fuzz;

/// <summary>Small documents to begin with, made from those of the desk sample.</summary>
internal static class Seeds
{
    private const int LogLines = 6;

    /// <summary>Writes one document for each kind.</summary>
    /// <param name="folder">Holds the desk sample's job.json and log.csv; the corpus goes beside them.</param>
    public static void Write(string folder)
    {
        string job = File.ReadAllText(Path.Combine(folder, "job.json"));
        string csv = string.Join('\n', File.ReadLines(Path.Combine(folder, "log.csv")).Take(LogLines)) + "\n";
        RecoveryPlan plan = RecoveryPlanner.Plan(RecoveryJobJson.Read(job));
        Save("job", job);
        Save("plan", RecoveryPlanJson.Write(plan));
        Save("csv", csv);
        Save("log", JobLogJson.Write(JobLogCsv.Read(csv)));
        Save("record", RecoveryRecordJson.Write(RecoveryRecord.From(plan, new RecordFacts { Company = "Example Cooling", Location = "12 Sample Street", Date = new DateTime(2026, 1, 15) })));

        void Save(string kind, string text)
        {
            string path = Path.Combine(folder, kind);
            Directory.CreateDirectory(path);
            File.WriteAllText(Path.Combine(path, "seed.txt"), text);
        }
    }
}
