using System;
using System.IO;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Samples.Console;
using Refrigerant.Recovery.Samples.Desk;

// Reads a job from a file and writes the plan as Markdown and JSON, and its course as a chart. With the log of the job: planned beside measured, as a
// chart and as the record of the job, and the job as the log tells it, to plan the next one with.
System.Console.OutputEncoding = System.Text.Encoding.UTF8;
if (args.Length is < 1 or > 3)
{
    System.Console.Error.WriteLine("usage: dotnet run --project samples/Desk -- job.json [outfolder [log.csv]]");
    return 2;
}

string file = args[0];
try
{
    RecoveryPlan plan = RecoveryPlanner.Plan(RecoveryJobJson.Read(File.ReadAllText(args[0])));
    string folder = Directory.CreateDirectory(args.Length > 1 ? args[1] : ".").FullName;
    Write(folder, "plan.md", MarkdownReport.Of(plan));
    Write(folder, "plan.json", RecoveryPlanJson.Write(plan, course: true));
    Chart.Write(plan, folder);
    System.Console.WriteLine(plan);
    if (args.Length > 2)
    {
        file = args[2];
        LoggedReport.Write(plan, JobLogCsv.Read(File.ReadAllText(file)), folder);
    }

    return 0;
}
catch (Exception e) when (e is DocumentException or ArgumentException or ConvergenceException or IOException or UnauthorizedAccessException)
{
    // An argument error: each value is valid by itself but not together, such as a charge that does not fit the volume.
    System.Console.Error.WriteLine($"{file}: {e.Message}");
    return 1;
}

static void Write(string folder, string name, string text)
{
    string path = Path.Combine(folder, name);
    File.WriteAllText(path, text);
    System.Console.WriteLine(path);
}
