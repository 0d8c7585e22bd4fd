using System;
using System.Linq;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>The technician's real question, as one call and one table.</summary>
internal static class WhatIsFaster
{
    public static void Show(RecoveryJob job)
    {
        Screen.Heading("What would make it faster?");
        SetupComparison comparison = SetupComparison.Run(job);
        Screen.Table(
            ["setup", "time on site", "saved", "left in the appliance", "level"],
            comparison.Outcomes.Select(outcome => Row(outcome.Name, outcome.Plan, outcome.Saved.Minutes)).Prepend(Row("as it is", comparison.AsItIs, 0)));
    }

    private static string[] Row(string name, RecoveryPlan plan, double saved) =>
    [
        name,
        FormattableString.Invariant($"{plan.TotalDuration.Minutes:F1} min"),
        FormattableString.Invariant($"{saved:+0.0;-0.0;0.0} min"),
        FormattableString.Invariant($"{plan.Ledger.InAppliance.Kilograms:F3} kg"),
        plan.IsLevelReached ? "reached" : "not reached",
    ];
}
