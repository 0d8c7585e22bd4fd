namespace Refrigerant.Recovery.Simulation;

/// <summary>What is connected to what in a <see cref="RecoverySimulation"/>.</summary>
public enum SimulationHookup
{
    /// <summary>The machine draws vapor off the appliance, condenses it and delivers it to the cylinder.</summary>
    VaporRecovery = 0,

    /// <summary>Nothing is connected: appliance and cylinder stand by themselves.</summary>
    Isolated,

    /// <summary>Vapor flows from the appliance into the cylinder by itself, the machine off.</summary>
    Equalization,
}
