using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What is in a receiving cylinder at a moment: where one stage ends and the next begins. Immutable.</summary>
public sealed class CylinderState
{
    internal CylinderState(RecoveryCylinder cylinder, PropertyModel model, double mass, double energy, double wallTemperature, double gasMoles)
    {
        Cylinder = cylinder;
        Kilograms = mass;
        Joules = energy;
        WallKelvins = wallTemperature;
        GasMoles = gasMoles;
        Vessel = model.VesselAtEnergy(mass / cylinder.InternalVolume.CubicMeters, energy / mass);
        double gasVolume = cylinder.InternalVolume.CubicMeters * Math.Max(1e-3, 1 - Vessel.LiquidVolumeFraction);
        GasPascals = gasMoles * CylinderProcess.GasConstant * Vessel.Bulk.Temperature / gasVolume;
    }

    /// <summary>The cylinder, with its content before the job.</summary>
    public RecoveryCylinder Cylinder { get; }

    /// <summary>Refrigerant in it.</summary>
    public Mass Mass => new(Kilograms, MassUnit.Kilogram);

    /// <summary>Temperature of the refrigerant.</summary>
    public Temperature Temperature => new(Vessel.Bulk.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure, air and other gases included.</summary>
    public Pressure Pressure => new(Vessel.Bulk.Pressure + GasPascals, PressureUnit.Pascal);

    /// <summary>Partial pressure of air and other non-condensable gases.</summary>
    public Pressure NonCondensablePressure => new(GasPascals, PressureUnit.Pascal);

    /// <summary>Air and other non-condensable gases in it.</summary>
    public AmountOfSubstance NonCondensables => new(GasMoles, AmountOfSubstanceUnit.Mole);

    /// <summary>Share of its volume that liquid fills.</summary>
    public Ratio LiquidVolumeFraction => new(Vessel.LiquidVolumeFraction, RatioUnit.DecimalFraction);

    internal VesselPoint Vessel { get; }

    internal double Kilograms { get; }

    internal double Joules { get; }

    internal double WallKelvins { get; }

    internal double GasMoles { get; }

    internal double GasPascals { get; }

    /// <summary>A cylinder as it stands before the job: content and wall at one temperature.</summary>
    /// <param name="cylinder">The cylinder, with its content.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="temperature">Temperature of content and wall, within the range of the refrigerant's equation.</param>
    /// <param name="nonCondensables">Air and other non-condensable gases in it, 0 or more.</param>
    /// <remarks>An empty cylinder is taken to hold vapor at 1 kPa, so that the equations stay regular; the ledger does not count it.</remarks>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentException">The content does not fit the cylinder.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the refrigerant's equation.</exception>
    public static CylinderState Initial(
        RecoveryCylinder cylinder, Fluid fluid, Temperature temperature, AmountOfSubstance nonCondensables = default)
    {
        double volume = Require.NotNull(cylinder, nameof(cylinder)).InternalVolume.CubicMeters;
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double moles = Require.NotNegative(nonCondensables.Moles, "mol", nameof(nonCondensables));
        double mass = Math.Max(cylinder.Content.Kilograms, CylinderProcess.ResidualMass(model, volume, kelvins));
        if (kelvins >= model.Range.MinimumTemperature && kelvins <= model.Range.MaximumSaturationTemperature)
        {
            double liquid = model.SaturationAtTemperature(kelvins).Bubble.Density;
            if (mass / volume >= liquid)
            {
                throw new ArgumentException(
                    $"{cylinder.Label} holds {Require.Text(mass)} kg; at {Require.Text(kelvins)} K it is liquid-full with "
                    + $"{Require.Text(liquid * volume)} kg of {fluid.Designation}.",
                    nameof(cylinder));
            }
        }

        double energy = mass * model.VesselAtTemperature(kelvins, mass / volume).Bulk.InternalEnergy;
        return new CylinderState(cylinder, model, mass, energy, kelvins, moles);
    }
}
