using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a whole plan should make people think of: one matter, one finding; what to do apart from what it rests on.</summary>
internal sealed class PlanFindings
{
    /// <summary>More than seven things to do nobody keeps in mind; what is lighter is still good to know.</summary>
    private const int MostToDo = 7;

    private PlanFindings(IReadOnlyList<Finding> toDo, IReadOnlyList<Finding> restsOn)
    {
        ToDo = toDo;
        RestsOn = restsOn;
    }

    public IReadOnlyList<Finding> ToDo { get; }

    public IReadOnlyList<Finding> RestsOn { get; }

    public static PlanFindings For(PlanRun run, LevelVerdict verdict, MassLedger ledger, FractionationResult? drift)
    {
        Finding[] rules = [.. run.Requirement.Findings.Where(finding => finding.Subject != FindingSubject.VacuumAndAltitude)];
        Finding[] blends = [.. (drift?.Findings ?? []).Where(finding => finding.Subject != FindingSubject.Estimate)];
        Finding[] toDo =
        [
            .. OnePerMatter(
                LevelFindings.ToDo(run, verdict, ledger)
                    .Concat(StartFindings.ToDo(run))
                    .Concat(run.NeedsNothing ? [] : CylinderFindings.ToDo(run).Concat(MachineFindings.ToDo(run)))
                    .Concat(SetupFindings.ToDo(run))
                    .Concat(Flame(run, verdict) is Finding flame ? [flame] : [])
                    .Concat(rules.Where(finding => finding.Severity >= Severity.Warning).Concat(blends.Where(finding => finding.Severity >= Severity.Caution)))),
        ];
        Finding[] kept = [.. toDo.Take(MostToDo)];
        Finding[] rest =
        [
            .. OnePerMatter(
                LevelFindings.Known(run, verdict)
                    .Concat(CylinderFindings.Known(run))
                    .Concat(SetupFindings.Known(run))
                    .Concat(rules.Where(finding => finding.Severity < Severity.Warning).Concat(blends.Where(finding => finding.Severity < Severity.Caution)))
                    .Concat(toDo.Skip(MostToDo)))
                .Where(finding => kept.All(said => said.Code != finding.Code)),
        ];
        return new PlanFindings([.. kept], rest);
    }

    /// <summary>What to do before a flame: only of what a finished recovery leaves, since nitrogen through what still holds liquid, or is not at the level, blows refrigerant out.</summary>
    private static Finding? Flame(PlanRun run, LevelVerdict verdict)
    {
        ApplianceState end = run.State.Appliance;
        if (!verdict.IsReached || verdict.Outcome == LevelOutcome.NothingToRecover || end.HasLiquid)
        {
            return null;
        }

        return FlamePurge.Left(run.Job.Appliance.Fluid, run.Job.Appliance.InternalVolume, end.Mass, end.DissolvedMass, end.Pressure.Pascals > run.Job.Barometer.Pressure.Pascals * (1 + PlanRun.LevelTolerance));
    }

    /// <summary>The heaviest of each code speaks for all.</summary>
    public static IEnumerable<Finding> OnePerMatter(IEnumerable<Finding> findings) => findings
        .OrderByDescending(finding => finding.Severity)
        .GroupBy(finding => finding.Code)
        .Select(group => group.First());
}
