using System;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>One stage of a plan: when, how long, what it moves, what is connected to what, and how the appliance stands after it. Immutable.</summary>
public sealed class PlannedStage
{
    internal PlannedStage(
        PlanStep step, double start, double seconds, string? cylinder, string? before, double moved, SimulationState after, StageResult? result, Hookup hookup)
    {
        Step = step;
        Start = new Duration(start, DurationUnit.Second);
        Duration = new Duration(seconds, DurationUnit.Second);
        Cylinder = cylinder;
        CylinderBefore = before;
        Moved = new Mass(moved, MassUnit.Kilogram);
        State = after;
        Result = result;
        Hookup = hookup;
    }

    /// <summary>What is done.</summary>
    public StageKind Kind => Step.Kind;

    /// <summary>What the strategy asked for, and why.</summary>
    public PlanStep Step { get; }

    /// <summary>When it begins, since the start of the job.</summary>
    public Duration Start { get; }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Label of the cylinder that is connected; null where none is.</summary>
    public string? Cylinder { get; }

    /// <summary>Label of the cylinder that a change takes off; null otherwise.</summary>
    public string? CylinderBefore { get; }

    /// <summary>Refrigerant taken out of the appliance.</summary>
    public Mass Moved { get; }

    /// <summary>The appliance after it.</summary>
    public ApplianceState After => State.Appliance;

    /// <summary>Appliance, connected cylinder and machine after it.</summary>
    public SimulationState State { get; }

    /// <summary>The simulation behind it; null for handling that moves nothing.</summary>
    public StageResult? Result { get; }

    /// <summary>The work on site: lines, valves and settings, what to watch.</summary>
    public Hookup Hookup { get; }

    /// <summary>Kind, duration and mass moved, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Kind}: {Duration.Minutes:F1} min, {Moved.Kilograms:G4} kg");
}
