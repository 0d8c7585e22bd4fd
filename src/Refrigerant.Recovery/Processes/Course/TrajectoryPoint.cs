using System;
using Refrigerant.Recovery.Fluids.Mixtures;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>One moment of a stage. Pressures are absolute.</summary>
public readonly record struct TrajectoryPoint
{
    /// <summary>Time since the stage began.</summary>
    public Duration Time => new(Seconds, DurationUnit.Second);

    /// <summary>Absolute pressure in the appliance.</summary>
    public Pressure AppliancePressure => new(AppliancePascals, PressureUnit.Pascal);

    /// <summary>Absolute pressure at the machine's inlet; where no machine takes part, that of the appliance.</summary>
    public Pressure SuctionPressure => new(SuctionPascals, PressureUnit.Pascal);

    /// <summary>Absolute pressure at the machine's outlet; where no machine takes part, that of the appliance.</summary>
    public Pressure DischargePressure => new(DischargePascals, PressureUnit.Pascal);

    /// <summary>Temperature of the refrigerant in the appliance.</summary>
    public Temperature ApplianceTemperature => new(ApplianceKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of the metal of the appliance: the surface that water touches.</summary>
    public Temperature MetalTemperature => new(MetalKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of the refrigerant in the cylinder; where no cylinder takes part, of that in the appliance.</summary>
    public Temperature CylinderTemperature => new(CylinderKelvins, TemperatureUnit.Kelvin);

    /// <summary>Temperature of the gas that leaves the compressor; absolute zero where no machine takes part.</summary>
    public Temperature DischargeTemperature => new(MachineKelvins, TemperatureUnit.Kelvin);

    /// <summary>Refrigerant in the appliance, what its oil holds included.</summary>
    public Mass ApplianceMass => new(ApplianceKilograms, MassUnit.Kilogram);

    /// <summary>Liquid in the appliance.</summary>
    public Mass LiquidMass => new(LiquidKilograms, MassUnit.Kilogram);

    /// <summary>Refrigerant in the cylinder; zero where no cylinder takes part.</summary>
    public Mass CylinderMass => new(CylinderKilograms, MassUnit.Kilogram);

    /// <summary>Flow out of the appliance.</summary>
    public MassFlow Flow => new(KilogramsPerSecond, MassFlowUnit.KilogramPerSecond);

    internal double Seconds { get; init; }

    internal double AppliancePascals { get; init; }

    internal double SuctionPascals { get; init; }

    internal double DischargePascals { get; init; }

    internal double ApplianceKelvins { get; init; }

    internal double MetalKelvins { get; init; }

    internal double CylinderKelvins { get; init; }

    internal double MachineKelvins { get; init; }

    internal double ApplianceKilograms { get; init; }

    internal double LiquidKilograms { get; init; }

    internal double CylinderKilograms { get; init; }

    internal double KilogramsPerSecond { get; init; }

    /// <summary>What the appliance holds, where its composition is followed.</summary>
    internal TrackedContent? Content { get; init; }

    /// <summary>Time, what the appliance holds and what flows, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Seconds:G7} s: {AppliancePascals / 1e3:G5} kPa absolute, {ApplianceKelvins - 273.15:F2} °C, {ApplianceKilograms:G5} kg, {KilogramsPerSecond:G4} kg/s");
}
