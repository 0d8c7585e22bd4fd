#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>What would make it faster?</summary>
internal static class Faster
{
    public static void Compare()
    {
        #region compare
        SetupComparison comparison = SetupComparison.Run(ExampleJob.Create());

        double now = comparison.AsItIs.TotalDuration.Minutes;
        Console.WriteLine($"{now,6:F1} min  as it is");
        foreach (SetupOutcome outcome in comparison.Outcomes)
        {
            Console.WriteLine($"{outcome.Plan.TotalDuration.Minutes,6:F1} min  {outcome.Name}");
        }
        #endregion
    }

    public static void Own()
    {
        #region own
        RecoveryJob job = ExampleJob.Create();
        RecoveryCylinder large = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(123), Mass.FromPounds(55));
        Setup oneCylinder = new("one large cylinder instead of two", job with
        {
            Cylinders = [large],
        });
        Setup warmer = new("in the sun, at 35 °C", job with
        {
            Appliance = job.Appliance with { Temperature = Temperature.FromDegreesCelsius(35) },
        });

        SetupComparison own = SetupComparison.Run(job, [oneCylinder, warmer]);
        foreach (SetupOutcome outcome in own.Outcomes)
        {
            Console.WriteLine(outcome);
        }
        #endregion
    }
}
