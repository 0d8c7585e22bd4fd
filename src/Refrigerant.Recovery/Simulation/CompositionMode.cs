namespace Refrigerant.Recovery.Simulation;

/// <summary>What the composition of a blend does in a simulation.</summary>
public enum CompositionMode
{
    /// <summary>It stays as charged.</summary>
    Fixed = 0,

    /// <summary>
    /// It is followed: vapor leaves with the composition of the vapor, so that liquid, pressure, flow and what stays behind drift with what is drawn.
    /// </summary>
    Tracked,
}
