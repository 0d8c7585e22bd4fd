using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The content of an appliance at a moment of a recovery, with its composition followed. Immutable.</summary>
public sealed class FractionationPoint
{
    internal FractionationPoint(
        double seconds,
        double kilograms,
        double kelvins,
        double pascals,
        double fixedPascals,
        IReadOnlyList<FluidComponent>? liquid,
        IReadOnlyList<FluidComponent> vapor)
    {
        Time = new Duration(seconds, DurationUnit.Second);
        Mass = new Mass(kilograms, MassUnit.Kilogram);
        Temperature = new Temperature(kelvins, TemperatureUnit.Kelvin);
        Pressure = new Pressure(pascals, PressureUnit.Pascal);
        FixedCompositionPressure = new Pressure(fixedPascals, PressureUnit.Pascal);
        Liquid = liquid;
        Vapor = vapor;
    }

    /// <summary>Since the start of the recovery.</summary>
    public Duration Time { get; }

    /// <summary>Refrigerant left.</summary>
    public Mass Mass { get; }

    /// <summary>Its temperature, as simulated.</summary>
    public Temperature Temperature { get; }

    /// <summary>Absolute pressure of what is left, with the composition it has by then.</summary>
    public Pressure Pressure { get; }

    /// <summary>Absolute pressure by the simulation, with the composition as charged.</summary>
    public Pressure FixedCompositionPressure { get; }

    /// <summary>Composition of the liquid; null where there is none.</summary>
    public IReadOnlyList<FluidComponent>? Liquid { get; }

    /// <summary>Composition of the vapor: of what the machine draws.</summary>
    public IReadOnlyList<FluidComponent> Vapor { get; }
}
