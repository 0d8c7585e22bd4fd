using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A blend that the catalogue does not have, by its composition.</summary>
internal sealed record BlendDocument
{
    public string? Designation { get; init; }

    public required IReadOnlyList<ComponentDocument> Components { get; init; }

    /// <summary>Null for a fluid that the catalogue has under its designation.</summary>
    public static BlendDocument? From(Fluid fluid)
    {
        if (Fluid.TryGet(fluid.Designation, out _))
        {
            return null;
        }

        return fluid.IsBlend && fluid.Composition.All(component => Fluid.TryGet(component.Designation, out _))
            ? new BlendDocument
            {
                Designation = fluid.Designation,
                Components = [.. fluid.Composition.Select(c => new ComponentDocument { Refrigerant = c.Designation, MassFraction = Plain.Number(c.MassFraction) })],
            }
            : throw new ArgumentException(
                $"{fluid.Designation} cannot be written: the catalogue has neither it nor all components of it.", nameof(fluid));
    }

    public Fluid ToFluid(DocumentNode node) => node.Build(() => Fluid.Blend(
        Components.Select(component => new KeyValuePair<string, double>(component.Refrigerant, component.MassFraction)), Designation));
}
