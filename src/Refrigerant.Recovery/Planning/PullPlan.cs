using System.Collections.Generic;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a pull comes to, seen ahead; the better ones first.</summary>
internal enum PullFate
{
    /// <summary>A hold after it would pass.</summary>
    Passes,

    /// <summary>It comes to the goal; what a hold would show is not seen yet.</summary>
    AtGoal,

    /// <summary>The cylinder is full before; it goes on with the next one.</summary>
    CylinderFull,

    /// <summary>A limit of pressure or temperature stops it before.</summary>
    Limited,

    /// <summary>It gets no further: deepest vacuum, a switch, the range of an equation.</summary>
    Stuck,

    /// <summary>It crawls for longer than a person would wait.</summary>
    Crawls,
}

/// <summary>A pull, seen ahead.</summary>
/// <param name="How">Inputs, throttling and reason, without what ends it.</param>
/// <param name="Step">The step to take.</param>
/// <param name="Fate">What it comes to.</param>
/// <param name="Seconds">How long it takes.</param>
/// <param name="Parts">The simulations that it is made of, one after the other.</param>
internal sealed record PullPlan(PlanStep How, PlanStep Step, PullFate Fate, double Seconds, IReadOnlyList<StageResult> Parts)
{
    /// <summary>Whether it ends with the level reached and held, or goes on with the next cylinder.</summary>
    public bool IsGood => Fate is PullFate.Passes or PullFate.CylinderFull;

    public StageResult Last => Parts[Parts.Count - 1];

    public SimulationState After => Last.After;

    public StageEnd End => Last.End;
}
