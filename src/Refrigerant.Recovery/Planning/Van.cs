using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Planning;

/// <summary>What is in the van besides what the job already names: each of it may be used or left. Immutable.</summary>
public sealed record Van
{
    /// <summary>For an initializer.</summary>
    public Van()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="machines">See <see cref="Machines"/>.</param>
    /// <param name="cylinders">See <see cref="Cylinders"/>.</param>
    /// <param name="aids">See <see cref="Aids"/>.</param>
    /// <param name="hasCoreTool">See <see cref="HasCoreTool"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public Van(
        IReadOnlyList<HoseSet>? hoses = null,
        IReadOnlyList<RecoveryMachine>? machines = null,
        IReadOnlyList<RecoveryCylinder>? cylinders = null,
        SiteAids? aids = null,
        bool? hasCoreTool = null)
    {
        Hoses = hoses ?? Hoses;
        Machines = machines ?? Machines;
        Cylinders = cylinders ?? Cylinders;
        Aids = aids ?? Aids;
        HasCoreTool = hasCoreTool ?? HasCoreTool;
    }

    /// <summary>Other sets of hoses; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<HoseSet> Hoses { get; init => field = Require.Copy(value, nameof(Hoses)); } = Array.Empty<HoseSet>();

    /// <summary>Other recovery machines, each instead of the job's; one that equals the job's also beside it, with a run of hoses of its own. None by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<RecoveryMachine> Machines { get; init => field = Require.Copy(value, nameof(Machines)); } = Array.Empty<RecoveryMachine>();

    /// <summary>More cylinders, with labels of their own; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<RecoveryCylinder> Cylinders { get; init => field = Require.Copy(value, nameof(Cylinders)); } = Array.Empty<RecoveryCylinder>();

    /// <summary>Ice, baths, fans, heaters; nothing by default.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public SiteAids Aids { get; init => field = Require.NotNull(value, nameof(Aids)); } = SiteAids.None;

    /// <summary>Whether there is a tool that takes valve cores out under pressure.</summary>
    public bool HasCoreTool { get; init; }

    /// <summary>How much of each.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Hoses.Count} sets of hoses, {Machines.Count} machines, {Cylinders.Count} cylinders, {Aids}{(HasCoreTool ? ", core tool" : string.Empty)}");
}
