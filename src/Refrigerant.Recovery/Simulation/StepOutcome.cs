namespace Refrigerant.Recovery.Simulation;

/// <summary>How a step of a <see cref="RecoverySimulation"/> ended.</summary>
public enum StepOutcome
{
    /// <summary>The whole step was made.</summary>
    Done = 0,

    /// <summary>The state came to the edge of the equation of state: the simulation stands where that happened and goes no further with these inputs.</summary>
    OutOfRange,

    /// <summary>The integration reached its bound on steps; it stands where that happened.</summary>
    StepLimit,
}
