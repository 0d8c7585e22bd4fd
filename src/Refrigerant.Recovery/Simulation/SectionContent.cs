using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What one section of an appliance holds at a moment. Immutable.</summary>
public sealed record SectionContent
{
    private readonly SectionState _state;

    internal SectionContent(SectionState state) => _state = state;

    /// <summary>Name of the section.</summary>
    public string Name => _state.Name;

    /// <summary>Refrigerant in it, what its oil holds included.</summary>
    public Mass Mass => new(_state.Kilograms + _state.DissolvedKilograms, MassUnit.Kilogram);

    /// <summary>Refrigerant in it as liquid.</summary>
    public Mass LiquidMass => new(_state.LiquidKilograms, MassUnit.Kilogram);

    /// <summary>Temperature of its refrigerant.</summary>
    public Temperature Temperature => new(_state.Vessel.Bulk.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Its absolute pressure.</summary>
    public Pressure Pressure => new(_state.Vessel.Bulk.Pressure, PressureUnit.Pascal);

    /// <summary>Name, mass, temperature and pressure, culture-invariant.</summary>
    public override string ToString() => System.FormattableString.Invariant(
        $"{Name}: {Mass.Kilograms:G4} kg at {Temperature.DegreesCelsius:F1} °C and {Pressure.Kilopascals:F1} kPa absolute");
}
