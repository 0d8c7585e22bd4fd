#region usings
using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>What wide hoses and removed cores buy, stage by stage.</summary>
internal static class HosesAndCores
{
    /// <summary>The stages that hoses can shorten.</summary>
    public static IReadOnlyList<string> Stages { get; } =
        ["vapor first", "push-pull", "boiling off", "thin vapor"];

    /// <summary>Prints the minutes of each stage for each set of hoses.</summary>
    public static void Print()
    {
        Console.WriteLine($"{"minutes in",-28}{string.Join("", Stages.Select(s => $"{s,12}"))}");
        foreach ((string name, IReadOnlyList<double> minutes) in Minutes())
        {
            Console.WriteLine($"{name,-28}{string.Join("", minutes.Select(m => $"{m,12:F1}"))}");
        }
    }

    /// <summary>The minutes of each stage for each set of hoses.</summary>
    public static IEnumerable<(string Name, IReadOnlyList<double> Minutes)> Minutes()
    {
        #region hoses
        RecoveryJob job = ExampleJob.Create();
        (string, double)[] bores = [("quarter-inch", 4.7), ("half-inch", 10.5)];
        foreach ((string bore, double millimeters) in bores)
        {
            foreach (bool core in new[] { true, false })
            {
                Hose hose = new()
                {
                    Length = Length.FromFeet(5),
                    InnerDiameter = Length.FromMillimeters(millimeters),
                    Fittings = core ? [Fitting.CoreDepressor()] : [],
                };
                HoseSet hoses = new()
                {
                    VaporSide = [hose],
                    LiquidSide = [hose],
                    Discharge = [hose],
                };
                RecoveryPlan plan = RecoveryPlanner.Plan(job with { Hoses = hoses });
                string cores = core ? "with cores" : "cores removed";
                yield return ($"{bore}, {cores}", PerStage(plan));
            }
        }
        #endregion
    }

    #region stages
    private static double[] PerStage(RecoveryPlan plan)
    {
        double Sum(StageKind kind) =>
            plan.Stages.Where(s => s.Kind == kind).Sum(s => s.Duration.Minutes);
        double vapor = Sum(StageKind.VaporRecovery);
        double boiling = plan.Stages
            .Select(s => s.Result).OfType<StageResult>()
            .Sum(r => r.LiquidGoneAfter?.Minutes ?? 0);
        return [Sum(StageKind.Equalize), Sum(StageKind.PushPull), boiling, vapor - boiling];
    }
    #endregion
}
