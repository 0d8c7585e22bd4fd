using System;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>One stage of a plan: when, how long, what it moves, and how the appliance stands after it. Immutable.</summary>
public sealed class PlannedStage
{
    internal PlannedStage(StageKind kind, double start, double seconds, string? cylinder, double moved, ApplianceState after, StageResult? result)
    {
        Kind = kind;
        Start = new Duration(start, DurationUnit.Second);
        Duration = new Duration(seconds, DurationUnit.Second);
        Cylinder = cylinder;
        Moved = new Mass(moved, MassUnit.Kilogram);
        After = after;
        Result = result;
    }

    /// <summary>What is done.</summary>
    public StageKind Kind { get; }

    /// <summary>When it begins, since the start of the job.</summary>
    public Duration Start { get; }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Label of the cylinder that is connected; null where none is.</summary>
    public string? Cylinder { get; }

    /// <summary>Refrigerant taken out of the appliance.</summary>
    public Mass Moved { get; }

    /// <summary>The appliance after it.</summary>
    public ApplianceState After { get; }

    /// <summary>The simulation behind it; null for handling.</summary>
    public StageResult? Result { get; }

    /// <summary>Kind, duration and mass moved, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Kind}: {Duration.Minutes:F1} min, {Moved.Kilograms:G4} kg");
}
