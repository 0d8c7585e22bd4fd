using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What a simulation that is taken step by step is made of. Immutable.</summary>
public sealed record SimulationSetup
{
    /// <summary>For an initializer.</summary>
    public SimulationSetup()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="appliance">See <see cref="Appliance"/>.</param>
    /// <param name="machine">See <see cref="Machine"/>.</param>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="cylinder">See <see cref="Cylinder"/>.</param>
    /// <param name="hookup">See <see cref="Hookup"/>.</param>
    /// <param name="composition">See <see cref="Composition"/>.</param>
    /// <param name="start">See <see cref="Start"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public SimulationSetup(
        Appliance appliance,
        RecoveryMachine machine,
        HoseSet hoses,
        RecoveryCylinder cylinder,
        SimulationHookup? hookup = null,
        CompositionMode? composition = null,
        SimulationState? start = null)
    {
        Appliance = appliance;
        Machine = machine;
        Hoses = hoses;
        Cylinder = cylinder;
        Hookup = hookup ?? Hookup;
        Composition = composition ?? Composition;
        Start = start ?? Start;
    }

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
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public SimulationHookup Hookup { get; init => field = Require.Defined(value, nameof(Hookup)); }

    /// <summary>Whether the composition of a blend is followed; fixed by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public CompositionMode Composition { get; init => field = Require.Defined(value, nameof(Composition)); }

    /// <summary>State at the start, from a run or from measured values; appliance and cylinder as described where it is null.</summary>
    public SimulationState? Start { get; init; }

    /// <summary>What is connected, and by which hook-up.</summary>
    public override string ToString() => $"{Hookup}: {Appliance} into {Cylinder}";
}
