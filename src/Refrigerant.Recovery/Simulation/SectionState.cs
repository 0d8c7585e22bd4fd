using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Simulation;

/// <summary>One vessel's content at a moment, in plain SI doubles. Immutable.</summary>
internal sealed class SectionState : IEquatable<SectionState>
{
    public SectionState(string name, double volume, double[] masses, double energy, in VesselPoint vessel)
    {
        Name = name;
        Volume = volume;
        Masses = masses;
        Joules = energy;
        Vessel = vessel;
        double sum = 0;
        foreach (double mass in masses)
        {
            sum += mass;
        }

        Kilograms = sum;
    }

    public string Name { get; }

    /// <summary>m³.</summary>
    public double Volume { get; }

    /// <summary>One mass, or one a component, kg. Not to be written to.</summary>
    public double[] Masses { get; }

    /// <summary>Refrigerant without what oil holds, kg.</summary>
    public double Kilograms { get; }

    /// <summary>Its internal energy, J.</summary>
    public double Joules { get; }

    public VesselPoint Vessel { get; }

    /// <summary>Temperature of wetted and of dry metal, K.</summary>
    public double WetKelvins { get; init; }

    public double DryKelvins { get; init; }

    /// <summary>Wetted share of the metal.</summary>
    public double WettedShare { get; init; }

    public double WaterKelvins { get; init; }

    /// <summary>In its oil, kg, and the oil's temperature, K.</summary>
    public double DissolvedKilograms { get; init; }

    public double OilKelvins { get; init; }

    /// <summary>Where the composition is followed: what to start the next simulation from.</summary>
    public TrackedContent? Content { get; init; }

    public double LiquidKilograms => Kilograms * (1 - Vessel.Bulk.VaporFraction);

    /// <summary>A section at rest: everything at one temperature.</summary>
    public static SectionState AtRest(string name, PropertyModel model, double volume, double mass, double temperature, double metal, double water, double dissolved)
    {
        VesselPoint vessel = model.VesselAtTemperature(temperature, mass / volume);
        return new SectionState(name, volume, [mass], mass * vessel.Bulk.InternalEnergy, vessel)
        {
            WetKelvins = metal,
            DryKelvins = metal,
            WettedShare = vessel.LiquidVolumeFraction,
            WaterKelvins = water,
            DissolvedKilograms = dissolved,
            OilKelvins = metal,
        };
    }

    public bool Equals(SectionState? other) =>
        other is not null && Name == other.Name && Volume.Equals(other.Volume) && Joules.Equals(other.Joules) && Masses.AsSpan().SequenceEqual(other.Masses)
        && WetKelvins.Equals(other.WetKelvins) && DryKelvins.Equals(other.DryKelvins) && WettedShare.Equals(other.WettedShare)
        && WaterKelvins.Equals(other.WaterKelvins) && DissolvedKilograms.Equals(other.DissolvedKilograms) && OilKelvins.Equals(other.OilKelvins);

    public override bool Equals(object? obj) => Equals(obj as SectionState);

    public override int GetHashCode() => Name.GetHashCode() ^ Joules.GetHashCode();

    /// <summary>The same with a mass for each component.</summary>
    public SectionState ByComponent(PropertyModel model) => Masses.Length == model.Composition.Count ? this
        : new SectionState(Name, Volume, ComponentMasses(model), Joules, Vessel)
        {
            WetKelvins = WetKelvins,
            DryKelvins = DryKelvins,
            WettedShare = WettedShare,
            WaterKelvins = WaterKelvins,
            DissolvedKilograms = DissolvedKilograms,
            OilKelvins = OilKelvins,
            Content = Content,
        };

    /// <summary>The masses of its components: its own where they are followed, else as charged.</summary>
    public double[] ComponentMasses(PropertyModel model)
    {
        if (Masses.Length == model.Composition.Count)
        {
            return Masses;
        }

        var parts = new double[model.Composition.Count];
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = Kilograms * model.Composition[i].MassFraction;
        }

        return parts;
    }
}
