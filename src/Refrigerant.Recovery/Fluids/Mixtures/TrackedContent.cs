using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The content of a <see cref="TrackedVessel"/> at a moment: amounts, phases and the composition of each. Immutable.</summary>
internal sealed class TrackedContent : IEquatable<TrackedContent>
{
    private readonly MixtureModel _model;
    private readonly double[] _amounts;
    private readonly double[] _liquid;
    private readonly double[] _vapor;

    public TrackedContent(
        MixtureModel model, ReadOnlySpan<double> amounts, ReadOnlySpan<double> liquid, ReadOnlySpan<double> vapor, double temperature, double pressure, in PhaseContent liquidContent, in PhaseContent vaporContent)
    {
        _model = model;
        _amounts = amounts.ToArray();
        _liquid = liquid.ToArray();
        _vapor = vapor.ToArray();
        Temperature = temperature;
        Pressure = pressure;
        Liquid = liquidContent;
        Vapor = vaporContent;
    }

    /// <summary>mol of each component.</summary>
    public ReadOnlySpan<double> Amounts => _amounts;

    /// <summary>Mole fractions of the liquid; those that a liquid would have where there is none.</summary>
    public ReadOnlySpan<double> LiquidFractions => _liquid;

    /// <summary>Mole fractions of the vapor; those that a vapor would have where there is none.</summary>
    public ReadOnlySpan<double> VaporFractions => _vapor;

    /// <summary>K.</summary>
    public double Temperature { get; }

    /// <summary>Pa.</summary>
    public double Pressure { get; }

    public PhaseContent Liquid { get; }

    public PhaseContent Vapor { get; }

    /// <summary>Composition of the whole.</summary>
    public IReadOnlyList<FluidComponent> Composition() => Composition(_amounts);

    /// <summary>Composition of the liquid; null where there is none.</summary>
    public IReadOnlyList<FluidComponent>? LiquidComposition() => Liquid.Amount > 0 ? Composition(_liquid) : null;

    /// <summary>Composition of the vapor, or of the liquid where that is all there is: of what a vapor port draws.</summary>
    public IReadOnlyList<FluidComponent> DrawnComposition() => Composition(Vapor.Amount > 0 ? _vapor : _liquid);

    /// <summary>Pressure at the same temperature and density with the composition of the model, Pa.</summary>
    public double FixedCompositionPressure() =>
        _model.VesselAtTemperature(Temperature, (Liquid.Mass + Vapor.Mass) / (Liquid.Volume + Vapor.Volume)).Bulk.Pressure;

    /// <summary>The bulk and its phases.</summary>
    public VesselPoint ToVesselPoint()
    {
        StatePoint liquid = Point(Liquid, Phase.Liquid, 0);
        StatePoint vapor = Point(Vapor, Temperature > _model.CriticalTemperature ? Phase.Supercritical : Phase.Vapor, 1);
        if (Liquid.Amount == 0)
        {
            return new VesselPoint(vapor, default, vapor);
        }

        if (Vapor.Amount == 0)
        {
            return new VesselPoint(liquid, liquid, default);
        }

        double mass = Liquid.Mass + Vapor.Mass;
        double quality = Vapor.Mass / mass;
        var bulk = new StatePoint(
            Phase.TwoPhase,
            Temperature,
            Pressure,
            mass / (Liquid.Volume + Vapor.Volume),
            Liquid.Enthalpy + (quality * (Vapor.Enthalpy - Liquid.Enthalpy)),
            Liquid.Entropy + (quality * (Vapor.Entropy - Liquid.Entropy)),
            quality);
        return new VesselPoint(bulk, liquid, vapor);
    }

    private StatePoint Point(in PhaseContent content, Phase phase, double quality) =>
        new(phase, Temperature, Pressure, content.Density, content.Enthalpy, content.Entropy, quality);

    /// <summary>Whether two contents are of the same amounts in the same state; what the phases are follows from that.</summary>
    public bool Equals(TrackedContent? other) => other is not null && Temperature.Equals(other.Temperature) && Pressure.Equals(other.Pressure)
        && Amounts.SequenceEqual(other.Amounts) && LiquidFractions.SequenceEqual(other.LiquidFractions) && VaporFractions.SequenceEqual(other.VaporFractions);

    public override bool Equals(object? obj) => Equals(obj as TrackedContent);

    public override int GetHashCode() => Temperature.GetHashCode() ^ (Pressure.GetHashCode() * 31);

    private IReadOnlyList<FluidComponent> Composition(double[] amounts)
    {
        double moles = 0, mass = 0;
        for (int i = 0; i < amounts.Length; i++)
        {
            moles += amounts[i];
            mass += amounts[i] * MolarMass(i);
        }

        var parts = new FluidComponent[amounts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = new FluidComponent(
                _model.Composition[i].Designation, Math.Min(1, amounts[i] * MolarMass(i) / mass), Math.Min(1, amounts[i] / moles));
        }

        return Array.AsReadOnly(parts);
    }

    private double MolarMass(int component) => _model.Engine.Equation.Components[component].Data.MolarMass;
}
