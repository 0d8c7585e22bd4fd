using System;
using System.IO;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Samples.Console;
using Refrigerant.Recovery.Samples.Desk;

// Reads a job from a file and writes the plan as Markdown and JSON, and its course as a chart.
System.Console.OutputEncoding = System.Text.Encoding.UTF8;
if (args.Length is < 1 or > 2)
{
    System.Console.Error.WriteLine("usage: dotnet run --project samples/Desk -- job.json [outfolder]");
    return 2;
}

try
{
    RecoveryPlan plan = RecoveryPlanner.Plan(RecoveryJobJson.Read(File.ReadAllText(args[0])));
    string folder = Directory.CreateDirectory(args.Length > 1 ? args[1] : ".").FullName;
    Write(folder, "plan.md", MarkdownReport.Of(plan));
    Write(folder, "plan.json", RecoveryPlanJson.Write(plan, course: true));
    Chart.Write(plan, folder);
    HookupDrawing.Write(plan, folder);
    System.Console.WriteLine(plan);
    return 0;
}
catch (Exception e) when (e is DocumentException or ArgumentException or ConvergenceException or IOException or UnauthorizedAccessException)
{
    // An argument error: each value is valid by itself but not together, such as a charge that does not fit the volume.
    System.Console.Error.WriteLine($"{args[0]}: {e.Message}");
    return 1;
}

static void Write(string folder, string name, string text)
{
    string path = Path.Combine(folder, name);
    File.WriteAllText(path, text);
    System.Console.WriteLine(path);
}
