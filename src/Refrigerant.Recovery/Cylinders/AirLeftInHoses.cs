using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>The air that a sweep leaves in hoses and machine, and what it makes of the cylinder it ends up in. Immutable.</summary>
/// <remarks>Ideal gas, which air at these pressures is within 0.1 %; air hardly dissolves in the liquid (40 CFR 82 Subpart F App. A 5.10.1).</remarks>
public sealed record AirLeftInHoses
{
    private readonly double _moles;

    private AirLeftInHoses(double moles) => _moles = moles;

    /// <summary>Amount of air.</summary>
    public AmountOfSubstance Amount => new(_moles, AmountOfSubstanceUnit.Mole);

    /// <summary>Mass of air.</summary>
    public Mass Mass => new(_moles * NonCondensableFigures.MolarMassOfAir, MassUnit.Kilogram);

    /// <summary>The air in a volume that was swept to a vacuum.</summary>
    /// <param name="volume">Internal volume of hoses and machine, zero or more.</param>
    /// <param name="pressure">Absolute pressure reached, zero or more.</param>
    /// <param name="temperature">Temperature of the hoses, above absolute zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static AirLeftInHoses After(Volume volume, Pressure pressure, Temperature temperature)
    {
        double v = Require.NotNegative(volume.CubicMeters, "m³", nameof(volume));
        double p = Require.NotNegative(pressure.Pascals, "Pa absolute", nameof(pressure));
        double t = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        return new AirLeftInHoses(Require.Finite(p * v / (NonCondensableFigures.GasConstant * t), "mol", nameof(volume)));
    }

    /// <summary>Partial pressure of that air in the vapor space of a cylinder.</summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">Mass of refrigerant in it, greater than zero.</param>
    /// <param name="temperature">Temperature of the cylinder.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not greater than zero, or leaves no vapor space at that temperature.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the fluid's equation.</exception>
    public Pressure PartialPressureIn(RecoveryCylinder cylinder, Fluid fluid, Mass mass, Temperature temperature) =>
        new(Partial(cylinder, fluid, mass, temperature, out _), PressureUnit.Pascal);

    /// <summary>Mole fraction of that air in the vapor of a cylinder.</summary>
    /// <param name="cylinder">The cylinder; its content is not used.</param>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="mass">Mass of refrigerant in it, greater than zero.</param>
    /// <param name="temperature">Temperature of the cylinder.</param>
    /// <exception cref="ArgumentNullException">The cylinder or the fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not greater than zero, or leaves no vapor space at that temperature.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the fluid's equation.</exception>
    public Ratio MoleFractionIn(RecoveryCylinder cylinder, Fluid fluid, Mass mass, Temperature temperature)
    {
        double partial = Partial(cylinder, fluid, mass, temperature, out double refrigerant);
        return new Ratio(partial / (partial + refrigerant), RatioUnit.DecimalFraction);
    }

    private double Partial(RecoveryCylinder cylinder, Fluid fluid, Mass mass, Temperature temperature, out double refrigerant)
    {
        Require.NotNull(cylinder, nameof(cylinder));
        Require.NotNull(fluid, nameof(fluid));
        double volume = cylinder.InternalVolume.CubicMeters;
        double density = Require.Positive(mass.Kilograms, "kg", nameof(mass)) / volume;
        VesselPoint state = fluid.Model.VesselAtTemperature(temperature.Kelvins, density);
        double space = volume * (1 - state.LiquidVolumeFraction);
        refrigerant = state.Bulk.Pressure;
        return space > 0
            ? _moles * NonCondensableFigures.GasConstant * temperature.Kelvins / space
            : throw new ArgumentOutOfRangeException(
                nameof(mass), $"{nameof(mass)} is {Require.Text(mass.Kilograms)} kg; {cylinder.Label} is full of liquid with it at {Require.Text(temperature.Kelvins)} K.");
    }

    /// <summary>Mass of the air.</summary>
    public override string ToString() => FormattableString.Invariant($"{_moles * NonCondensableFigures.MolarMassOfAir * 1e3:G7} g of air");
}
