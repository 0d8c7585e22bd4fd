namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The outputs that this package reads, in SI units and mass-based but for the reducing density: CoolProp refuses "rhomass_reducing" of every fluid.</summary>
internal enum Property
{
    Temperature,
    Pressure,
    Density,
    Enthalpy,
    Entropy,
    Phase,
    MolarMass,
    CriticalTemperature,
    CriticalPressure,
    CriticalDensity,
    ReducingTemperature,
    ReducingMolarDensity,
    MinimumTemperature,
    MaximumTemperature,
    MaximumPressure,
    TripleTemperature,
    IsochoricHeatCapacity,
    IsobaricHeatCapacity,
    SpeedOfSound,
    Viscosity,
}
