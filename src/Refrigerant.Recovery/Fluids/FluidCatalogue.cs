using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Fluids.Data;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>The fluids that the package carries, found by designation. Each is created when it is first asked for, and once.</summary>
internal static class FluidCatalogue
{
    private static readonly KeyValuePair<string, Lazy<Fluid>>[] Entries = PureFluids.Factories
        .Select(pure => Entry(pure.Key, () => new HelmholtzModel(pure.Value())))
        .Concat(BlendTable.Rows.Split('\n').Select(BlendFactory.Parse).Select(blend => Entry(
            blend.Designation,
            () => BlendFactory.Create(blend.Designation, blend.MassFractions, byMass: true, Get))))
        .ToArray();

    private static readonly Dictionary<string, Lazy<Fluid>> ByKey =
        Entries.ToDictionary(entry => FluidDesignation.Key(entry.Key), entry => entry.Value, StringComparer.Ordinal);

    private static readonly Lazy<IReadOnlyList<Fluid>> AllFluids =
        new(() => Array.AsReadOnly(Entries.Select(entry => entry.Value.Value).ToArray()));

    public static IReadOnlyList<Fluid> All => AllFluids.Value;

    public static Fluid Get(string designation) => TryGet(Require.NotNull(designation, nameof(designation)), out Fluid? fluid)
        ? fluid
        : throw new UnknownFluidException(
            designation,
            FluidDesignation.Nearest(designation, Entries.Select(entry => entry.Key)),
            nameof(designation));

    public static bool TryGet(string? designation, [NotNullWhen(true)] out Fluid? fluid)
    {
        fluid = designation is not null && ByKey.TryGetValue(FluidDesignation.Key(designation), out Lazy<Fluid>? entry)
            ? entry.Value
            : null;
        return fluid is not null;
    }

    private static KeyValuePair<string, Lazy<Fluid>> Entry(string designation, Func<PropertyModel> model) =>
        new(designation, new Lazy<Fluid>(() => Fluid.FromModel(model()), LazyThreadSafetyMode.ExecutionAndPublication));
}
