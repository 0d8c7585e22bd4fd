using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>An appliance as its log tells it. Immutable.</summary>
public sealed record FittedAppliance
{
    internal FittedAppliance(FittedValue<Mass> charge, FittedValue<Volume> volume, FittedValue<ThermalResistance> heatResistance, FittedValue<Mass> metalMass)
    {
        Charge = charge;
        InternalVolume = volume;
        HeatResistance = heatResistance;
        MetalMass = metalMass;
    }

    /// <summary>Refrigerant at the start, what the oil holds included.</summary>
    public FittedValue<Mass> Charge { get; }

    /// <summary>Volume that the refrigerant may fill.</summary>
    public FittedValue<Volume> InternalVolume { get; }

    /// <summary>Resistance from the surroundings to the metal, over the appliance's <see cref="Equipment.Appliance.HeatArea"/>.</summary>
    public FittedValue<ThermalResistance> HeatResistance { get; }

    /// <summary>Mass of the metal that cools with the liquid, at the appliance's <see cref="Equipment.Appliance.MetalHeatCapacity"/>; told none: a typical one for the charge.</summary>
    public FittedValue<Mass> MetalMass { get; }

    /// <summary>Charge and volume, culture-invariant.</summary>
    public override string ToString() => $"{Charge}; {InternalVolume}";
}
