using System;
using System.Linq;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Planning;

/// <summary>A plan in a line: what forbids it, what comes first, what it comes to, how much in how long, and how much there is to mind.</summary>
internal static class PlanHeadline
{
    /// <summary>The line, in the reader's units.</summary>
    public static string For(RecoveryPlan plan, DisplayUnits units)
    {
        Finding[] all = [.. PlanFindings.OnePerMatter(plan.Findings.Concat(plan.Cautions))];
        string does = QuantityText.Mass(plan.Ledger.InCylinders, units) + " of " + QuantityText.Mass(plan.Ledger.Charge, units)
            + " in " + QuantityText.Duration(plan.TotalDuration) + (all.Any(finding => finding.Code == PlanCodes.LongerThanShift.Id) ? ", longer than a shift" : string.Empty);
        return FormattableString.Invariant(
            $"{Forbids(plan, units)}{First(plan)}{plan.Job.Appliance.Fluid.Designation}: {plan.Verdict}{ComesBack(plan, units)}; {does}{Harms(plan, units)}; {Count(all, Severity.Warning)}, {Count(all, Severity.Caution)}");
    }

    /// <summary>
    /// What forbids to begin at all, where something does. That a level is not reached is the verdict's to say, and a cylinder that must not be filled is not used where there is another; one that is overfilled is a danger, used or not.
    /// </summary>
    private static string Forbids(RecoveryPlan plan, DisplayUnits units)
    {
        Finding? stop = plan.ToDo
            .Where(finding => finding.Severity == Severity.Stop
                && finding.Subject is not (FindingSubject.EvacuationLevel or FindingSubject.LiquidLeftBehind)
                && (plan.Stages.Count == 0 || finding.Code == CylinderCodes.OverLimit.Id || CylinderCodes.All.All(code => code.Id != finding.Code)))
            .OrderBy(finding => finding.Code == PlanCodes.CylinderRoomMissing.Id)
            .FirstOrDefault();
        return stop is null ? string.Empty : "do not start: " + stop.ToText(units).TrimEnd('.') + "; ";
    }

    /// <summary>What is in the machine and burns or is toxic goes out with nitrogen before anything else.</summary>
    private static string First(RecoveryPlan plan) =>
        plan.Stages.Count > 0 && plan.ToDo.FirstOrDefault(finding => finding.Code == PlanCodes.MachineHeldFlammable.Id || finding.Code == PlanCodes.MachineHeldToxic.Id) is Finding held
            ? $"first dry nitrogen through the machine, which held {held.Value("last refrigerant")!.ToText(DisplayUnits.International)}; "
            : string.Empty;

    /// <summary>What a verdict of reached and held leaves out: the pressure comes back as the appliance warms.</summary>
    private static string ComesBack(RecoveryPlan plan, DisplayUnits units) => plan.ToDo.FirstOrDefault(finding => finding.Code == PlanCodes.ComesBackWarm.Id) is Finding back
        ? $", but comes back to {back.Value("later")!.ToText(units)} in {back.Value("shut")!.ToText(units)}: let it warm and pull again"
        : string.Empty;

    /// <summary>What the plan does to appliance and machine on its way to the level, where that is a warning: water in the tubes freezes, the machine gets hotter than its oil stands.</summary>
    private static string Harms(RecoveryPlan plan, DisplayUnits units)
    {
        string Told(FindingCode code, string value, string what) =>
            plan.Findings.FirstOrDefault(finding => finding.Code == code.Id && finding.Severity == Severity.Warning)?.Value(value) is FindingValue at ? $"; {what} {at.ToText(units)}" : string.Empty;
        return Told(PlanCodes.TubesFreeze, "coldest", "water in the tubes can freeze, at") + Told(PlanCodes.MachineHot, "discharge", "the machine's discharge comes to");
    }

    private static string Count(Finding[] findings, Severity severity)
    {
        int count = findings.Count(finding => finding.Severity == severity);
        string what = severity == Severity.Warning ? "warning" : "caution";
        return FormattableString.Invariant($"{count} {what}{(count == 1 ? string.Empty : "s")}");
    }
}
