#region usings
using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>How long will it take?</summary>
internal static class HowLong
{
    public static void Plan()
    {
        #region plan
        RecoveryPlan plan = RecoveryPlanner.Plan(ExampleJob.Create());

        foreach (PlannedStage stage in plan.Stages)
        {
            Console.WriteLine($"{stage.Kind,-16} {stage.Duration.Minutes,5:F1} min  "
                + $"{stage.Moved.Kilograms,5:F1} kg  {stage.Cylinder}");
        }

        Console.WriteLine($"on site {plan.TotalDuration.Minutes:F0} min; "
            + $"level reached: {plan.IsLevelReached}");
        foreach (CylinderUse use in plan.Cylinders)
        {
            Console.WriteLine($"{use.Cylinder.Label} gets {use.Received.Pounds:F1} lb; "
                + $"its scale then shows {use.GrossWeight.Pounds:F1} lb");
        }

        Console.WriteLine(plan.Ledger);
        #endregion
    }

    public static void Findings()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(ExampleJob.Create());

        #region findings
        foreach (Finding finding in plan.Findings)
        {
            if (finding.Severity >= Severity.Caution)
            {
                Console.WriteLine(finding);
            }
        }

        Console.WriteLine("Cautions:");
        foreach (Finding caution in plan.Cautions)
        {
            Console.WriteLine(caution);
        }
        #endregion
    }

    public static void Sure()
    {
        #region sure
        PlanUncertainty range = PlanUncertainty.Run(ExampleJob.Create());

        Console.WriteLine($"on site: {range.TotalDuration}");
        Console.WriteLine($"left in the appliance: {range.Remaining}");
        Console.WriteLine($"level reached in {range.LevelReached.Percent:F0} % of the samples");
        foreach (InputInfluence input in range.Influences)
        {
            Console.WriteLine(input);
        }
        #endregion
    }
}
