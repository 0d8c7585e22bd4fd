namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The outputs that this package reads, mass-based and in SI units.</summary>
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
    ReducingDensity,
    MinimumTemperature,
    MaximumTemperature,
    MaximumPressure,
    TripleTemperature,
    IsochoricHeatCapacity,
    IsobaricHeatCapacity,
    SpeedOfSound,
    Viscosity,
}
