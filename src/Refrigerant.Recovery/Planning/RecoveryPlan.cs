using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>
/// A plan for a job: stages with times, cylinders with fills, a ledger that closes, the state at the end, and findings. A job that cannot be
/// done is a plan too: it says so and how far it gets. Planning figures: local codes and licensed practice govern. Immutable.
/// </summary>
public sealed class RecoveryPlan
{
    internal RecoveryPlan(
        RecoveryJob job,
        EvacuationRequirement requirement,
        LevelVerdict verdict,
        IReadOnlyList<PlannedStage> stages,
        IReadOnlyList<CylinderUse> cylinders,
        MassLedger ledger,
        ApplianceState end,
        FractionationResult? fractionation,
        PlanFindings findings,
        IReadOnlyList<Finding> cautions,
        CrossContamination? carriedOver)
    {
        Job = job;
        Requirement = requirement;
        Verdict = verdict;
        Stages = stages;
        Cylinders = [.. cylinders];
        Ledger = ledger;
        End = end;
        Fractionation = fractionation;
        ToDo = findings.ToDo;
        RestsOn = [.. findings.RestsOn];
        Findings = [.. ToDo.Concat(RestsOn).OrderByDescending(finding => finding.Severity)];
        Cautions = cautions;
        CarriedOver = carriedOver;
    }

    /// <summary>The job.</summary>
    public RecoveryJob Job { get; }

    /// <summary>The level to reach, with its source.</summary>
    public EvacuationRequirement Requirement { get; }

    /// <summary>What it comes to against the level, for how long it held, or what stands in the way.</summary>
    public LevelVerdict Verdict { get; }

    /// <summary>The short form of the verdict: reached, held where a hold was asked for, and no liquid left.</summary>
    public bool IsLevelReached => Verdict.IsReached;

    /// <summary>The stages in order.</summary>
    public IReadOnlyList<PlannedStage> Stages { get; }

    /// <summary>Time on site, handling included.</summary>
    public Duration TotalDuration => Stages.Count == 0
        ? Duration.Zero
        : new Duration(Stages[Stages.Count - 1].Start.Seconds + Stages[Stages.Count - 1].Duration.Seconds, DurationUnit.Second);

    /// <summary>Every cylinder on hand, in the order of use, those not used last.</summary>
    public IReadOnlyList<CylinderUse> Cylinders { get; }

    /// <summary>Where every kilogram goes.</summary>
    public MassLedger Ledger { get; }

    /// <summary>The appliance at the end.</summary>
    public ApplianceState End { get; }

    /// <summary>
    /// How the composition of a blend drifts from the first vapor recovery to the last, holds between them included; null where it is not followed (<see cref="RecoveryJob.FollowComposition"/>).
    /// </summary>
    public FractionationResult? Fractionation { get; }

    /// <summary>What to do or to decide, heaviest first; at most seven.</summary>
    public IReadOnlyList<Finding> ToDo { get; }

    /// <summary>What the plan rests on: estimates and assumptions, and what is good to know; heaviest first.</summary>
    public IReadOnlyList<Finding> RestsOn { get; }

    /// <summary>What the machine carries over from its last refrigerant into the cylinders, as an estimate; null for nothing foreign, or nothing known.</summary>
    public CrossContamination? CarriedOver { get; }

    /// <summary><see cref="ToDo"/> and <see cref="RestsOn"/> together, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>
    /// What can hurt people or property in this job, heaviest first, each with what in the job calls for it. Show them to whoever does it.
    /// The last one always holds: local codes and licensed practice govern.
    /// </summary>
    public IReadOnlyList<Finding> Cautions { get; }

    /// <summary>The course of all simulated stages in order of time, to plot or to list.</summary>
    public IEnumerable<PlanPoint> Course() =>
        Stages.Where(stage => stage.Result is not null).SelectMany(stage => stage.Result!.Trajectory.Select(point => new PlanPoint(stage, point)));

    /// <summary>What forbids to begin, where something does; what comes first; outcome, mass recovered, time, and how many warnings and cautions there are.</summary>
    /// <param name="units">The units.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">The units are not defined.</exception>
    public string ToText(DisplayUnits units) => PlanHeadline.For(this, Require.Defined(units, nameof(units)));

    /// <summary>The same in international units, culture-invariant.</summary>
    public override string ToString() => ToText(DisplayUnits.International);
}
