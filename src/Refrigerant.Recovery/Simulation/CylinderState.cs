using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What is in a receiving cylinder at a moment: where one stage ends and the next begins. Immutable.</summary>
public sealed class CylinderState : IEquatable<CylinderState>
{
    /// <summary>A cylinder is never quite empty: the vapor it starts with has at least this pressure, Pa: it keeps the equations regular.</summary>
    private const double EmptyPressure = 1000;

    /// <summary>Smallest share of the volume that gas is taken to fill.</summary>
    private const double SmallestGasShare = 1e-3;

    /// <summary>More than the largest cylinder holds at its test pressure, mol.</summary>
    private const double MostGas = 1e9;

    private readonly SectionState _content;

    internal CylinderState(RecoveryCylinder cylinder, SectionState content, double gasMoles)
    {
        Cylinder = cylinder;
        _content = content;
        GasMoles = gasMoles;
        double gasVolume = content.Volume * Math.Max(SmallestGasShare, 1 - content.Vessel.LiquidVolumeFraction);
        GasPascals = gasMoles * EquilibriumVessel.GasConstant * content.Vessel.Bulk.Temperature / gasVolume;
    }

    /// <summary>The cylinder, with its content before the job.</summary>
    public RecoveryCylinder Cylinder { get; }

    /// <summary>Refrigerant in it.</summary>
    public Mass Mass => new(Kilograms, MassUnit.Kilogram);

    /// <summary>What the scale shows: tare weight and content.</summary>
    public Mass GrossWeight => new(Cylinder.TareWeight.Kilograms + Kilograms, MassUnit.Kilogram);

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

    internal SectionState Content => _content;

    internal VesselPoint Vessel => _content.Vessel;

    internal double Kilograms => _content.Kilograms;

    internal double WallKelvins => _content.WetKelvins;

    internal double GasMoles { get; }

    internal double GasPascals { get; }

    /// <summary>A cylinder as it stands before the job: content and wall at one temperature.</summary>
    /// <param name="cylinder">The cylinder, with its content.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="temperature">Temperature of content and wall, within the range of the refrigerant's equation.</param>
    /// <param name="nonCondensables">Air and other non-condensable gases in it, 0 to 1e9 mol.</param>
    /// <remarks>An empty cylinder is taken to hold vapor at 1 kPa, so that the equations stay regular; the ledger does not count it.</remarks>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The gases are outside their range.</exception>
    /// <exception cref="ArgumentException">The content does not fit the cylinder.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the refrigerant's equation.</exception>
    public static CylinderState Initial(
        RecoveryCylinder cylinder, Fluid fluid, Temperature temperature, AmountOfSubstance nonCondensables = default) =>
        Initial(cylinder, fluid, temperature, nameof(temperature), nonCondensables);

    /// <summary>The same at the temperature told of it, or in the air around an appliance; each is told by its name where it is out of range.</summary>
    internal static CylinderState Around(Appliance appliance, RecoveryCylinder cylinder, AmountOfSubstance nonCondensables = default) => Initial(
        cylinder,
        appliance.Fluid,
        cylinder.Temperature ?? new Temperature(appliance.SurroundingsKelvin, TemperatureUnit.Kelvin),
        cylinder.Temperature is not null ? nameof(RecoveryCylinder) + "." + nameof(RecoveryCylinder.Temperature) : appliance.Surroundings is null ? nameof(Appliance.Temperature) : nameof(Appliance.Surroundings),
        nonCondensables);

    private static CylinderState Initial(RecoveryCylinder cylinder, Fluid fluid, Temperature temperature, string parameter, AmountOfSubstance nonCondensables)
    {
        double volume = Require.NotNull(cylinder, nameof(cylinder)).InternalVolume.CubicMeters;
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        double kelvins = Require.Positive(temperature.Kelvins, "K", parameter);
        if (kelvins < model.Range.MinimumTemperature || kelvins > model.Range.MaximumTemperature)
        {
            throw new PropertyRangeException(
                model.Designation, parameter, kelvins, model.Range.MinimumTemperature, model.Range.MaximumTemperature, "K", model.Source);
        }

        double moles = Require.InRange(nonCondensables.Moles, 0, MostGas, "mol", nameof(nonCondensables));
        double mass = Math.Max(cylinder.Content.Kilograms, ResidualMass(model, volume, kelvins));
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

        return new CylinderState(cylinder, SectionState.AtRest(cylinder.Label, model, volume, mass, kelvins, kelvins, kelvins, 0), moles);
    }

    /// <summary>The same with other gas in it besides: what a sweep left comes along with the first refrigerant.</summary>
    internal CylinderState WithGas(double moles) => new(Cylinder, _content, moles);

    /// <summary>Whether both are of the same cylinder with the same content.</summary>
    /// <param name="other">Another.</param>
    public bool Equals(CylinderState? other) => other is not null && GasMoles.Equals(other.GasMoles) && Cylinder.Equals(other.Cylinder) && _content.Equals(other._content);

    /// <summary>Whether two states are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(CylinderState? left, CylinderState? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two states differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(CylinderState? left, CylinderState? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as CylinderState);

    /// <inheritdoc/>
    public override int GetHashCode() => _content.GetHashCode();

    /// <summary>Label, weight and pressure, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Cylinder.Label}: {Kilograms:G4} kg, {GrossWeight.Kilograms:F2} kg gross, {Temperature.DegreesCelsius:F1} °C, {Pressure.Kilopascals:F0} kPa absolute");

    /// <summary>Mass of vapor that an "empty" cylinder starts with, kg.</summary>
    internal static double ResidualMass(PropertyModel model, double volume, double temperature)
    {
        double pressure = EmptyPressure;
        if (temperature < model.Range.MaximumSaturationTemperature && temperature >= model.Range.MinimumTemperature)
        {
            pressure = Math.Min(pressure, 0.5 * model.SaturationAtTemperature(temperature).Dew.Pressure);
        }

        return model.StateAt(temperature, pressure).Density * volume;
    }
}
