using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A blend that the catalogue does not have, by its composition.</summary>
internal sealed record BlendDocument
{
    public const string OneOf = "give one of refrigerant and blend.";

    /// <summary>What to call the blend; the components and their shares where it is left out.</summary>
    public string? Designation { get; init; }

    /// <summary>The components; their mass fractions add up to 1 within 1e-6.</summary>
    public required IReadOnlyList<ComponentDocument> Components { get; init; }

    /// <summary>
    /// Null for a fluid that reading finds under its designation, the resolver's first; a blend of the caller's that is only called like one is written by its composition.
    /// One of another engine that is only called like a fluid of the catalogue is neither.
    /// </summary>
    public static BlendDocument? From(Fluid fluid, FluidResolver? fluids)
    {
        Fluid? found = fluids?.Invoke(fluid.Designation) ?? (Fluid.TryGet(fluid.Designation, out Fluid? known) ? known : null);
        if (found == fluid)
        {
            return null;
        }

        return fluid.Model is MixtureModel && fluid.Composition.All(component => Fluid.TryGet(component.Designation, out _))
            ? new BlendDocument
            {
                Designation = fluid.Designation,
                Components = [.. fluid.Composition.Select(c => new ComponentDocument { Refrigerant = c.Designation, MassFraction = Exact.Number(c.MassFraction) })],
            }
            : throw new ArgumentException(
                found is null
                    ? $"{fluid.Designation} cannot be written: the catalogue has neither it nor all components of it, and no resolver finds it."
                    : $"{fluid.Designation} cannot be written: what is found under that designation is another fluid (of {CheckedModel.EngineOf(found.Model).GetType().Name}, not of {CheckedModel.EngineOf(fluid.Model).GetType().Name}); give a resolver that finds it.",
                nameof(fluid));
    }

    /// <summary>The fluid that one of a designation and a blend, members of a node, stands for.</summary>
    public static Fluid ToFluid(string? refrigerant, BlendDocument? blend, DocumentNode node, FluidResolver? fluids) => (refrigerant, blend) switch
    {
        (string designation, null) => node.Member("refrigerant").Build(() => fluids?.Invoke(designation) ?? Fluid.Get(designation)),
        (null, not null) => blend.ToFluid(node.Member("blend")),
        _ => throw node.Wrong(OneOf),
    };

    public Fluid ToFluid(DocumentNode node) => node.Build(() => Fluid.Blend(
        Components.Select(component => new KeyValuePair<string, double>(component.Refrigerant, component.MassFraction)), Designation));
}
