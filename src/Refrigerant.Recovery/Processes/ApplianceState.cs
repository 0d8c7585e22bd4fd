using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What is in an appliance at a moment: where one stage ends and the next begins. Immutable.</summary>
public sealed class ApplianceState
{
    private readonly Appliance _appliance;

    internal ApplianceState(Appliance appliance, double mass, double energy, double metalTemperature, double waterTemperature, double dissolved)
        : this(
            appliance,
            appliance.Fluid.Model.VesselAtEnergy(mass / appliance.InternalVolume.CubicMeters, energy / mass),
            mass,
            energy,
            metalTemperature,
            waterTemperature,
            dissolved,
            null)
    {
    }

    private ApplianceState(
        Appliance appliance, in VesselPoint vessel, double mass, double energy, double metalTemperature, double waterTemperature, double dissolved, TrackedContent? content)
    {
        _appliance = appliance;
        Vessel = vessel;
        Kilograms = mass;
        Joules = energy;
        MetalKelvins = metalTemperature;
        WaterKelvins = waterTemperature;
        DissolvedKilograms = dissolved;
        Content = content;
    }

    /// <summary>Temperature of the refrigerant.</summary>
    public Temperature Temperature => new(Vessel.Bulk.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure.</summary>
    public Pressure Pressure => new(Vessel.Bulk.Pressure, PressureUnit.Pascal);

    /// <summary>All refrigerant in it, what the oil holds included.</summary>
    public Mass Mass => new(Kilograms + DissolvedKilograms, MassUnit.Kilogram);

    /// <summary>Refrigerant as liquid.</summary>
    public Mass LiquidMass => new(Kilograms * (1 - Vessel.Bulk.VaporFraction), MassUnit.Kilogram);

    /// <summary>Refrigerant as vapor.</summary>
    public Mass VaporMass => new(Kilograms * Vessel.Bulk.VaporFraction, MassUnit.Kilogram);

    /// <summary>Refrigerant dissolved in the oil (an estimate).</summary>
    public Mass DissolvedMass => new(DissolvedKilograms, MassUnit.Kilogram);

    /// <summary>Temperature of the metal.</summary>
    public Temperature MetalTemperature => new(MetalKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of water that stands in its tubes; that of the metal where there is none.</summary>
    public Temperature WaterTemperature => new(WaterKelvins, TemperatureUnit.Kelvin);

    /// <summary>Composition of all refrigerant that is not dissolved in the oil: as charged, unless a simulation followed it.</summary>
    public IReadOnlyList<FluidComponent> Composition => Content?.Composition() ?? _appliance.Fluid.Composition;

    /// <summary>Whether liquid is left.</summary>
    public bool HasLiquid => Vessel.Bulk.VaporFraction < 1;

    internal VesselPoint Vessel { get; }

    /// <summary>Refrigerant that is not dissolved, kg.</summary>
    internal double Kilograms { get; }

    /// <summary>Its internal energy, J.</summary>
    internal double Joules { get; }

    internal double MetalKelvins { get; }

    internal double WaterKelvins { get; }

    internal double DissolvedKilograms { get; }

    /// <summary>What is in it, where its composition was followed.</summary>
    internal TrackedContent? Content { get; }

    /// <summary>An appliance as it stands before the job: everything at its temperature.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <exception cref="ArgumentNullException"><paramref name="appliance"/> is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the volume as liquid, or the oil would hold more than the charge.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the refrigerant's equation.</exception>
    public static ApplianceState Initial(Appliance appliance)
    {
        PropertyModel model = Require.NotNull(appliance, nameof(appliance)).Fluid.Model;
        double charge = appliance.Charge.Kilograms;
        double volume = appliance.InternalVolume.CubicMeters;
        double temperature = appliance.Temperature.Kelvins;
        double dissolved = appliance.Oil?.DissolvedAtStart ?? 0;
        double mass = charge - dissolved;
        if (!(mass > 0))
        {
            throw new ArgumentException(
                $"Charge is {Require.Text(charge)} kg but the oil would hold {Require.Text(dissolved)} kg; the charge must be more than the oil holds.",
                nameof(appliance));
        }

        if (temperature >= model.Range.MinimumTemperature && temperature <= model.Range.MaximumSaturationTemperature)
        {
            double liquid = model.SaturationAtTemperature(temperature).Bubble.Density;
            if (mass / volume >= liquid)
            {
                throw new ArgumentException(
                    $"Charge is {Require.Text(charge)} kg; {Require.Text(volume)} m³ hold at most {Require.Text(liquid * volume)} kg of {model.Designation} "
                    + $"as liquid at {Require.Text(temperature)} K.",
                    nameof(appliance));
            }
        }

        VesselPoint vessel = model.VesselAtTemperature(temperature, mass / volume);
        double water = appliance.Water is TubeWater tubes ? tubes.Temperature.Kelvins : temperature;
        return new ApplianceState(appliance, vessel, mass, mass * vessel.Bulk.InternalEnergy, temperature, water, dissolved, null);
    }

    /// <summary>The state at the end of a stage.</summary>
    internal static ApplianceState After(Appliance appliance, double[] state, double metalTemperature, TrackedContent? content)
    {
        double mass = state[RecoverySystem.Mass];
        double energy = state[RecoverySystem.Energy];
        double dissolved = Math.Max(0, state[RecoverySystem.Dissolved]);
        double water = state[RecoverySystem.Water];
        return content is null
            ? new ApplianceState(appliance, mass, energy, metalTemperature, water, dissolved)
            : new ApplianceState(appliance, content.ToVesselPoint(), mass, energy, metalTemperature, water, dissolved, content);
    }

    /// <summary>The same mass at the same temperature with the composition as charged, for stages that do not follow it.</summary>
    internal ApplianceState AsCharged()
    {
        if (Content is null)
        {
            return this;
        }

        VesselPoint vessel = _appliance.Fluid.Model.VesselAtTemperature(
            Content.Temperature, Kilograms / _appliance.InternalVolume.CubicMeters);
        return new ApplianceState(
            _appliance, vessel, Kilograms, Kilograms * vessel.Bulk.InternalEnergy, MetalKelvins, WaterKelvins, DissolvedKilograms, null);
    }
}
