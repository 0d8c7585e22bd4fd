using System.Linq;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>The hookup of each kind of stage: common practice, no source.</summary>
internal static class Hookups
{
    /// <param name="step">The step.</param>
    /// <param name="run">The plan so far, before this stage.</param>
    /// <param name="result">What was simulated; null for nothing.</param>
    /// <param name="after">What it comes to.</param>
    public static Hookup For(PlanStep step, PlanRun run, StageResult? result, SimulationState after)
    {
        RecoveryJob job = run.Job;
        CylinderStanding? cylinder = run.Connected;
        StageKind? moved = run.Stages.LastOrDefault(stage => StepSimulation.MovesRefrigerant(stage.Kind))?.Kind;
        var hoses = new HosesNow(moved, run.Hooked, run.MachineHoldsLiquid);
        return new Hookup(
            HookupLines.For(step.Kind == StageKind.CylinderChange ? run.Hooked ?? step.Kind : step.Kind, job, cylinder is null),
            [.. step.Kind == StageKind.MachineClearing && cylinder is null ? HookupSettings.ClearingFirst(job) : HookupSettings.For(step, job, hoses), .. HookupSettings.Heat(step, job)],
            [.. HookupWatches.For(step, run, result, after)],
            CylinderReadings.For(step.Kind, result, cylinder));
    }
}
