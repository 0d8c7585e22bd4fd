using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What a simulation that is taken step by step is made of. Immutable.</summary>
public sealed record SimulationSetup
{
    /// <summary>What the refrigerant is taken from.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required Appliance Appliance { get; init => field = Require.NotNull(value, nameof(Appliance)); }

    /// <summary>The recovery machine.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required RecoveryMachine Machine { get; init => field = Require.NotNull(value, nameof(Machine)); }

    /// <summary>The hoses.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required HoseSet Hoses { get; init => field = Require.NotNull(value, nameof(Hoses)); }

    /// <summary>The receiving cylinder.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required RecoveryCylinder Cylinder { get; init => field = Require.NotNull(value, nameof(Cylinder)); }

    /// <summary>What is connected to what; vapor recovery by default.</summary>
    public SimulationHookup Hookup { get; init; }

    /// <summary>Whether the composition of a blend is followed; fixed by default.</summary>
    public CompositionMode Composition { get; init; }

    /// <summary>State at the start, from a run or from measured values; appliance and cylinder as described where it is null.</summary>
    public SimulationState? Start { get; init; }

    /// <summary>What is connected, and by which hook-up.</summary>
    public override string ToString() => $"{Hookup}: {Appliance} into {Cylinder}";
}
