#region usings
using System;
using System.IO;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>How do I log a job so that the next plan is better?</summary>
internal static class LogAJob
{
    private static readonly string Folder = Path.Combine(Repository.Root, "samples", "Desk");

    public static void Fit()
    {
        #region fit
        string json = File.ReadAllText(Path.Combine(Folder, "logged-job.json"));
        RecoveryJob told = RecoveryJobJson.Read(json);
        JobLog log = JobLogCsv.Read(File.ReadAllText(Path.Combine(Folder, "log.csv")));

        JobCalibration fit = JobCalibration.Fit(told, log);
        FittedValue<VolumeFlow> drawn = fit.Displacement;
        Console.WriteLine($"displacement {drawn.Best.LitersPerSecond:F2} L/s "
            + $"({drawn.Low.LitersPerSecond:F2} to {drawn.High.LitersPerSecond:F2}), "
            + $"told {drawn.Told.LitersPerSecond:F2} L/s");
        Console.WriteLine($"hoses resist {fit.HoseResistance.Best:F1} times what they should");
        Console.WriteLine($"charge {fit.Appliances[0].Charge.Best.Kilograms:F1} kg");
        foreach (Finding finding in fit.Findings)
        {
            Console.WriteLine(finding);
        }

        // What was told stands where the log did not tell.
        RecoveryPlan next = RecoveryPlanner.Plan(fit.Jobs[0]);
        Console.WriteLine($"planned with it: {next.TotalDuration.Minutes:F0} min");
        #endregion
    }

    public static void Read()
    {
        #region read
        string csv = """
            time [min],suction gauge [psi],gross weight [lb],ambient [°F],machine
            0,68.2,30.6,70,on
            0.5,61.0,30.9,70,on
            0.4,59.5,31.1,70,on
            """;
        try
        {
            JobLogCsv.Read(csv);
        }
        catch (DocumentException e)
        {
            Console.WriteLine(e.Message);
        }
        #endregion
    }
}
