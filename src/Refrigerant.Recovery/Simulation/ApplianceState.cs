using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What is in an appliance at a moment: where one stage ends and the next begins, or what was measured. Immutable.</summary>
public sealed class ApplianceState : IEquatable<ApplianceState>
{
    private const double SameVolume = 1e-9;

    private readonly Appliance _appliance;
    private readonly SectionState[] _sections;
    private readonly int _port;

    internal ApplianceState(Appliance appliance, SectionState[] sections, int port)
    {
        _appliance = appliance;
        _sections = sections;
        _port = port;
    }

    /// <summary>Temperature of the refrigerant; of an appliance of several sections, in the one that is drawn from.</summary>
    public Temperature Temperature => new(Port.Vessel.Bulk.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure; of an appliance of several sections, in the one that is drawn from, where the gauge is.</summary>
    public Pressure Pressure => new(Port.Vessel.Bulk.Pressure, PressureUnit.Pascal);

    /// <summary>Highest absolute pressure of its sections.</summary>
    public Pressure HighestPressure => new(_sections.Max(section => section.Vessel.Bulk.Pressure), PressureUnit.Pascal);

    /// <summary>All refrigerant in it, what the oil holds included.</summary>
    public Mass Mass => new(Kilograms + DissolvedKilograms, MassUnit.Kilogram);

    /// <summary>Refrigerant as liquid.</summary>
    public Mass LiquidMass => new(_sections.Sum(section => section.LiquidKilograms), MassUnit.Kilogram);

    /// <summary>Refrigerant as vapor.</summary>
    public Mass VaporMass => new(_sections.Sum(section => section.Kilograms - section.LiquidKilograms), MassUnit.Kilogram);

    /// <summary>Refrigerant dissolved in the oil (an estimate).</summary>
    public Mass DissolvedMass => new(DissolvedKilograms, MassUnit.Kilogram);

    /// <summary>Temperature of the metal that liquid wets; of the dry metal where there is no liquid.</summary>
    public Temperature MetalTemperature => new(HasLiquid ? Port.WetKelvins : Port.DryKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of the metal that vapor touches.</summary>
    public Temperature DryMetalTemperature => new(Port.DryKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of water that stands in its tubes; that of the metal where there is none.</summary>
    public Temperature WaterTemperature => new(Port.WaterKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of its oil; that of the metal where there is none.</summary>
    public Temperature OilTemperature => new(_sections[0].OilKelvins, TemperatureUnit.Kelvin);

    /// <summary>Composition of all refrigerant that is not dissolved in the oil: as charged, unless a simulation followed it.</summary>
    public IReadOnlyList<FluidComponent> Composition => IsTracked ? Mixed() : _appliance.Fluid.Composition;

    /// <summary>Whether liquid is left in any of its sections.</summary>
    public bool HasLiquid => _sections.Any(section => section.Vessel.Bulk.VaporFraction < 1);

    /// <summary>What its sections hold, in the order of the appliance's; one where it is one vessel.</summary>
    public IReadOnlyList<SectionContent> Sections => Array.AsReadOnly(_sections.Select(section => new SectionContent(section)).ToArray());

    internal IReadOnlyList<SectionState> Parts => _sections;

    /// <summary>The section that vapor is drawn from.</summary>
    internal SectionState Port => _sections[_port];

    internal VesselPoint Vessel => Port.Vessel;

    internal bool IsTracked => _sections[0].Masses.Length > 1;

    /// <summary>Refrigerant that is not dissolved, kg.</summary>
    internal double Kilograms => _sections.Sum(section => section.Kilograms);

    internal double DissolvedKilograms => _sections.Sum(section => section.DissolvedKilograms);

    /// <summary>What is in the section that is drawn from, where its composition was followed.</summary>
    internal TrackedContent? Content => Port.Content;

    /// <summary>An appliance as it stands before the job: everything at its temperature.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <exception cref="ArgumentNullException"><paramref name="appliance"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// The charge does not fit the volume as liquid, the oil would hold more than the charge, a heel is above it, sections do not add up, or a port or a connection leads nowhere.
    /// </exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the refrigerant's equation.</exception>
    public static ApplianceState Initial(Appliance appliance)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        if (appliance.LiquidHeel.Kilograms > appliance.Charge.Kilograms)
        {
            throw new ArgumentException(
                $"LiquidHeel is {Require.Text(appliance.LiquidHeel.Kilograms)} kg; it must be from 0 to the charge, {Require.Text(appliance.Charge.Kilograms)} kg.", nameof(appliance));
        }

        double kelvins = appliance.Temperature.Kelvins;
        return AtRest(appliance, appliance.Charge.Kilograms, kelvins, kelvins, appliance.Oil?.DissolvedAtStart ?? 0, "Charge", nameof(appliance));
    }

    /// <summary>An appliance as it was measured, at any moment of a job.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <param name="mass">Refrigerant in it now, what the oil holds included, greater than zero; an appliance of several sections holds it in proportion to their charges.</param>
    /// <param name="temperature">Temperature of the refrigerant, within the range of its equation.</param>
    /// <param name="metalTemperature">Temperature of metal and oil, 50 K to 700 K; that of the refrigerant where it is null.</param>
    /// <param name="dissolved">Refrigerant in the oil, zero or more and less than the mass; as at the start, but at most half the mass, where it is null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="appliance"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="ArgumentException">The mass does not fit the volume as liquid, or there is no oil that could hold what is dissolved.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the refrigerant's equation.</exception>
    public static ApplianceState FromMeasured(
        Appliance appliance, Mass mass, Temperature temperature, Temperature? metalTemperature = null, Mass? dissolved = null)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        double kilograms = Require.Positive(mass.Kilograms, "kg", nameof(mass));
        double kelvins = Require.InRange(temperature.Kelvins, 50, 700, "K", nameof(temperature));
        double metal = metalTemperature is Temperature given ? Require.InRange(given.Kelvins, 50, 700, "K", nameof(metalTemperature)) : kelvins;
        if (dissolved is { Kilograms: > 0 } && appliance.Oil is null)
        {
            throw new ArgumentException($"dissolved is {Require.Text(dissolved.Value.Kilograms)} kg; the appliance has no oil that could hold it.", nameof(dissolved));
        }

        double inOil = dissolved is Mass told
            ? Require.InRange(told.Kilograms, 0, kilograms, "kg", nameof(dissolved))
            : Math.Min(appliance.Oil?.DissolvedAtStart ?? 0, 0.5 * kilograms);
        return AtRest(appliance, kilograms, kelvins, metal, inOil, "mass", nameof(mass));
    }

    /// <summary>Whether both are of the same appliance with the same content.</summary>
    /// <param name="other">Another.</param>
    public bool Equals(ApplianceState? other) => other is not null && _port == other._port && _appliance.Equals(other._appliance) && _sections.SequenceEqual(other._sections);

    /// <summary>Whether two states are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(ApplianceState? left, ApplianceState? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two states differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(ApplianceState? left, ApplianceState? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ApplianceState);

    /// <inheritdoc/>
    public override int GetHashCode() => Port.GetHashCode();

    /// <summary>Where every section stands, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Mass.Kilograms:G4} kg at {Temperature.DegreesCelsius:F1} °C and {Pressure.Kilopascals:F1} kPa absolute, {LiquidMass.Kilograms:G3} kg of it liquid");

    /// <summary>Throws where this is no state of an appliance: another refrigerant, other volumes.</summary>
    internal void RequireOf(Appliance appliance, string parameter)
    {
        if (_appliance.Fluid.Designation != appliance.Fluid.Designation)
        {
            throw new ArgumentException($"{parameter} is a state of {_appliance.Fluid.Designation}; the appliance holds {appliance.Fluid.Designation}.", parameter);
        }

        IReadOnlyList<ApplianceSection> parts = appliance.EffectiveSections;
        bool fits = parts.Count == _sections.Length;
        for (int i = 0; fits && i < _sections.Length; i++)
        {
            double volume = parts[i].InternalVolume.CubicMeters;
            fits = Math.Abs(_sections[i].Volume - volume) <= SameVolume * volume;
        }

        if (!fits)
        {
            throw new ArgumentException(
                $"{parameter} is a state of {Require.Text(1e3 * _sections.Sum(section => section.Volume))} L in {_sections.Length} part(s); the appliance has {Require.Text(1e3 * appliance.InternalVolume.CubicMeters)} L in {parts.Count}.", parameter);
        }
    }

    private static ApplianceState AtRest(Appliance appliance, double total, double kelvins, double metal, double dissolved, string what, string parameter)
    {
        PropertyModel model = appliance.Fluid.Model;
        double mass = total - dissolved;
        if (!(mass > 0))
        {
            throw new ArgumentException(
                $"{what} is {Require.Text(total)} kg but the oil would hold {Require.Text(dissolved)} kg; the {what.ToLowerInvariant()} must be more than the oil holds. Where the appliance has lost refrigerant, give what the oil still holds ({nameof(ApplianceOil)}.{nameof(ApplianceOil.RefrigerantFraction)}), or less oil.", parameter);
        }

        double water = appliance.Water is TubeWater tubes ? tubes.Temperature.Kelvins : metal;
        IReadOnlyList<ApplianceSection> parts = appliance.EffectiveSections;
        var sections = new SectionState[parts.Count];
        for (int i = 0; i < sections.Length; i++)
        {
            double volume = parts[i].InternalVolume.CubicMeters;
            double part = mass * parts[i].Charge.Kilograms / appliance.Charge.Kilograms;
            RequireFits(model, part, volume, kelvins, sections.Length > 1 ? what + " of " + parts[i].Name : what, parameter);
            sections[i] = SectionState.AtRest(parts[i].Name, model, volume, part, kelvins, metal, water, i == appliance.OilSection ? dissolved : 0);
        }

        return new ApplianceState(appliance, sections, appliance.VaporPortSection);
    }

    private static void RequireFits(PropertyModel model, double mass, double volume, double kelvins, string what, string parameter)
    {
        if (kelvins < model.Range.MinimumTemperature || kelvins > model.Range.MaximumSaturationTemperature)
        {
            return;
        }

        double liquid = model.SaturationAtTemperature(kelvins).Bubble.Density;
        if (mass / volume >= liquid)
        {
            throw new ArgumentException(
                $"{what} is {Require.Text(mass)} kg; {Require.Text(volume)} m³ hold at most {Require.Text(liquid * volume)} kg of {model.Designation} as liquid at {Require.Text(kelvins)} K.",
                parameter);
        }
    }

    private IReadOnlyList<FluidComponent> Mixed()
    {
        IReadOnlyList<FluidComponent> charged = _appliance.Fluid.Composition;
        var masses = new double[charged.Count];
        double mass = 0, moles = 0;
        foreach (SectionState section in _sections)
        {
            for (int i = 0; i < masses.Length; i++)
            {
                masses[i] += section.Masses[i];
                mass += section.Masses[i];
                moles += section.Masses[i] / MolarWeight(charged[i]);
            }
        }

        return Array.AsReadOnly(charged.Select((component, i) => new FluidComponent(
            component.Designation, Math.Min(1, masses[i] / mass), Math.Min(1, masses[i] / MolarWeight(component) / moles))).ToArray());
    }

    /// <summary>A component's molar mass over that of the blend as charged.</summary>
    private static double MolarWeight(FluidComponent component) => component.MassFraction / component.MoleFraction;
}
