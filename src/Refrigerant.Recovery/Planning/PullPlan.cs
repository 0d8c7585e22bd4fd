using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a pull comes to, seen ahead.</summary>
internal enum PullFate
{
    /// <summary>A hold after it would pass.</summary>
    Passes,

    /// <summary>The cylinder is full before; it goes on with the next one.</summary>
    CylinderFull,

    /// <summary>A limit of pressure or temperature stops it before.</summary>
    Limited,

    /// <summary>It gets no further: deepest vacuum, a switch, the range of an equation.</summary>
    Stuck,

    /// <summary>It crawls for longer than a person would wait.</summary>
    Crawls,
}

/// <summary>A pull, seen ahead: the step, what it comes to, how long it takes, what is there after it.</summary>
internal sealed record PullPlan(PlanStep Step, PullFate Fate, double Seconds, SimulationState After, StageEnd End)
{
    /// <summary>Whether it ends with the level reached and held, or goes on with the next cylinder.</summary>
    public bool IsGood => Fate is PullFate.Passes or PullFate.CylinderFull;
}
