using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Where a job stands while a plan is made, and a simulation to look ahead with. A snapshot; its previews change nothing.</summary>
public sealed class PlanSituation
{
    private readonly PlanRun _run;

    internal PlanSituation(PlanRun run)
    {
        _run = run;
        State = run.State;
        Elapsed = new Duration(run.Clock, DurationUnit.Second);
        Stages = [.. run.Stages];
        Cylinders = [.. run.Cylinders];
        Connected = run.Connected;
    }

    /// <summary>The job.</summary>
    public RecoveryJob Job => _run.Job;

    /// <summary>The level to reach.</summary>
    public EvacuationRequirement Requirement => _run.Requirement;

    /// <summary>
    /// The absolute pressure to go for: the level, and where the appliance is opened to the air never above the air at the place. A level that is a gauge pressure, such
    /// as an oil change's, or the caller's own, stays as it is.
    /// </summary>
    public Pressure Goal => _run.Goal;

    /// <summary>Appliance, connected cylinder and machine.</summary>
    public SimulationState State { get; }

    /// <summary>Time since the start of the job.</summary>
    public Duration Elapsed { get; }

    /// <summary>What was done so far.</summary>
    public IReadOnlyList<PlannedStage> Stages { get; }

    /// <summary>The cylinders on hand, as the job lists them.</summary>
    public IReadOnlyList<CylinderStanding> Cylinders { get; }

    /// <summary>The cylinder that is connected; null for none.</summary>
    public CylinderStanding? Connected { get; }

    /// <summary>The usable cylinder, not the connected one, with the most room; null for none.</summary>
    public CylinderStanding? NextCylinder => Cylinders
        .Where(cylinder => cylinder.IsUsable && cylinder.Cylinder.Label != Connected?.Cylinder.Label)
        .OrderByDescending(cylinder => WouldFreezeIn && (cylinder.Cylinder.Content.Kilograms > 0 || cylinder.Kilograms > 0))
        .ThenBy(cylinder => cylinder.Findings.Count(finding => finding.Code == Findings.CylinderCodes.UnnamedContent.Id))
        .ThenByDescending(cylinder => cylinder.Room.Kilograms).FirstOrDefault();

    /// <summary>Whether what flows into an evacuated cylinder may freeze to a solid in it, as carbon dioxide does: its coldest liquid stands above the air.</summary>
    private bool WouldFreezeIn
    {
        get
        {
            Fluids.PropertyModel model = Job.Appliance.Fluid.Model;
            return model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Pressure > Job.Barometer.Pressure.Pascals;
        }
    }

    /// <summary>Whether the connected cylinder is at its limit, so that the machine is not cleared into it.</summary>
    internal bool IsAtLimit => _run.IsAtLimit;

    /// <summary>Whether the gauge shows the goal, or the share that the rule asks for instead is recovered.</summary>
    public bool IsAtGoal => _run.ShowsGoal(State.Appliance);

    /// <summary>The usual pace of the machine at the start, kg/s: its displacement of the vapor that it found.</summary>
    internal double Pace => _run.Pace;

    /// <summary>What a step would come to, from where things stand.</summary>
    /// <param name="step">The step.</param>
    /// <returns>The simulation; null for a step of handling that moves nothing.</returns>
    /// <exception cref="System.ArgumentNullException"><paramref name="step"/> is null.</exception>
    public StageResult? Preview(PlanStep step) => Preview(step, State);

    /// <summary>What a step would come to, from any state.</summary>
    /// <param name="step">The step.</param>
    /// <param name="from">The state.</param>
    /// <exception cref="System.ArgumentNullException">An argument is null.</exception>
    public StageResult? Preview(PlanStep step, SimulationState from) =>
        _run.Preview(Require.NotNull(step, nameof(step)), Require.NotNull(from, nameof(from)));

    /// <summary>Notes what a step from here comes to, where it was simulated in parts.</summary>
    internal void Remember(PlanStep step, StageResult result) => Remember(step, State, result);

    /// <summary>Notes what a step from a state comes to.</summary>
    internal void Remember(PlanStep step, SimulationState from, StageResult result) => _run.Remember(step, from, result);

    /// <summary>Whether one job, planned to its end in the usual way, ends no later than another; one that reaches its level is before one that does not.</summary>
    internal bool EndsSooner(RecoveryJob one, RecoveryJob other) => _run.EndsSooner(one, other);

    /// <summary>The state with another cylinder connected.</summary>
    internal SimulationState WithCylinder(CylinderStanding cylinder) => State with { Cylinder = _run.StateOf(cylinder) };

    /// <summary>What the machine's past asks for.</summary>
    internal MachineChange Machine => _run.Machine;

    /// <summary>By how much the pressure of vapor at a temperature, K, counts for more, because the place has the level hold at a higher one; 1 where it does not.</summary>
    internal double ToReference(double kelvins) => _run.ToReference(kelvins);

    /// <summary>What may be left where the share that a rule asks for is recovered, kg.</summary>
    internal double LeftByShare => _run.LeftByShare;

    /// <summary>Whether a part behind others, from which refrigerant comes to the port, stands above the level.</summary>
    internal bool StandsBehind(ApplianceState state) => Verdicts.IsAbove(_run, state, i => _run.LeadsToPort[i]);

    /// <summary>Whether there is liquid, but in no part from which refrigerant comes to the port.</summary>
    internal bool IsLiquidCutOff(ApplianceState state) =>
        state.HasLiquid && state.Parts.Count > 1 && !state.Sections.Where((section, i) => _run.LeadsToPort[i] && section.LiquidMass.Kilograms > 0).Any();

    /// <summary>Whether the share that a rule asks for instead of a pressure is recovered.</summary>
    internal bool IsShare(ApplianceState state) => _run.IsShareRecovered(state);

    internal bool ShowsGoal(ApplianceState state) => _run.ShowsGoal(state);

    /// <summary>Time, stages so far and state.</summary>
    public override string ToString() => FormattableString.Invariant($"{Elapsed.Minutes:F1} min, {Stages.Count} stages; {State}");
}
