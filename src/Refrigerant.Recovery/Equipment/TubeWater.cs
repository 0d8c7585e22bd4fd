using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>Water in tubes of the appliance, standing or moving. It brings heat, and it can freeze and burst the tubes. Immutable.</summary>
public sealed record TubeWater
{
    private TubeWater()
    {
    }

    /// <summary>Whether the water moves.</summary>
    public bool IsMoving { get; private init; }

    /// <summary>Temperature at the start, or of the water that enters.</summary>
    public Temperature Temperature { get; private init; }

    /// <summary>Mass of the standing water; zero where it moves.</summary>
    public Mass Mass { get; private init; }

    /// <summary>Flow of the moving water; zero where it stands.</summary>
    public MassFlow Flow { get; private init; }

    /// <summary>Resistance between water and metal, as for <see cref="Appliance.HeatResistance"/> over <see cref="Appliance.HeatArea"/>.</summary>
    public ThermalResistance Resistance { get; private init; }

    /// <summary>Water that stands in the tubes.</summary>
    /// <param name="mass">Its mass, 1 g to 1000 t.</param>
    /// <param name="temperature">Its temperature at the start, 0 °C to 100 °C.</param>
    /// <param name="resistance">Resistance between water and metal for 1 m², greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static TubeWater Standing(Mass mass, Temperature temperature, ThermalResistance resistance) => new()
    {
        Mass = new Mass(Require.InRange(mass.Kilograms, 1e-3, 1e6, "kg", nameof(mass)), MassUnit.Kilogram),
        Temperature = Valid(temperature),
        Resistance = Valid(resistance),
    };

    /// <summary>Water that is kept moving through the tubes.</summary>
    /// <param name="flow">Its flow, 0.001 to 1e5 kg/s.</param>
    /// <param name="temperature">Its temperature where it enters, 0 °C to 100 °C.</param>
    /// <param name="resistance">Resistance between water and metal for 1 m², greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static TubeWater Moving(MassFlow flow, Temperature temperature, ThermalResistance resistance) => new()
    {
        IsMoving = true,
        Flow = new MassFlow(Require.InRange(flow.KilogramsPerSecond, 1e-3, 1e5, "kg/s", nameof(flow)), MassFlowUnit.KilogramPerSecond),
        Temperature = Valid(temperature),
        Resistance = Valid(resistance),
    };

    private static Temperature Valid(Temperature temperature)
    {
        Require.InRange(temperature.Kelvins, 273.15, 373.15, "K", nameof(temperature));
        return Held.Celsius(temperature);
    }

    private static ThermalResistance Valid(ThermalResistance resistance)
    {
        Require.InRange(resistance.SquareMeterKelvinsPerWatt, 1e-8, 1e3, "m²·K/W", nameof(resistance));
        return Held.SquareMeterKelvinsPerWatt(resistance);
    }

    /// <summary>How much, whether it moves, and its temperature.</summary>
    public override string ToString() => (IsMoving ? $"{Require.Text(Flow.KilogramsPerSecond)} kg/s of water, moving," : $"{Require.Text(Mass.Kilograms)} kg of water, standing,") + $" at {Require.Text(Temperature.Kelvins - 273.15)} °C";
}
