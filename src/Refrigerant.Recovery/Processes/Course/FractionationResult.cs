using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>How a blend's composition drifts while its vapor is recovered. Immutable.</summary>
public sealed class FractionationResult
{
    internal FractionationResult(MixtureModel model, IReadOnlyList<FractionationPoint> points)
    {
        Model = model;
        Points = new ReadOnlyCollection<FractionationPoint>([.. points]);
        LastLiquid = points.LastOrDefault(point => point.Liquid is not null);
        Findings = FractionationFindings.For(model, this);
    }

    internal MixtureModel Model { get; }

    /// <summary>The course, one point for each of the simulation's.</summary>
    public IReadOnlyList<FractionationPoint> Points { get; }

    /// <summary>The last point with liquid; null where there was none at all.</summary>
    public FractionationPoint? LastLiquid { get; }

    /// <summary>What to think of, gravest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How much a component's mass fraction in the liquid changes from the start to the last liquid; 0 where there is no liquid.</summary>
    /// <param name="designation">The component, as the fluid's composition names it; case, blanks, hyphens and a missing "R" do not matter, as for <see cref="Fluid.Get"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="designation"/> is null.</exception>
    /// <exception cref="ArgumentException">The blend has no such component.</exception>
    public double LiquidDrift(string designation)
    {
        string key = FluidDesignation.Key(Require.NotNull(designation, nameof(designation)));
        string component = Model.Composition.FirstOrDefault(part => FluidDesignation.Key(part.Designation) == key)?.Designation
            ?? throw new ArgumentException(
                $"designation is \"{designation}\"; it must be a component of {Model.Designation}: {string.Join(", ", Model.Composition.Select(part => part.Designation))}.", nameof(designation));
        return LastLiquid is null ? 0 : Share(LastLiquid.Liquid!, component) - Share(First, component);
    }

    private IReadOnlyList<FluidComponent> First => Points.First(point => point.Liquid is not null).Liquid!;

    private static double Share(IReadOnlyList<FluidComponent> composition, string designation) =>
        composition.Where(component => component.Designation == designation).Sum(component => component.MassFraction);

    /// <summary>Points and the last one with liquid, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Points.Count} points; last liquid {LastLiquid?.ToString() ?? "none"}");
}
