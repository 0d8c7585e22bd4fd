namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The pairs of inputs that this package uses, in the order in which CoolProp takes the two values.</summary>
internal enum InputPair
{
    /// <summary>Molar vapor fraction, mol/mol, and temperature, K.</summary>
    QualityTemperature,

    /// <summary>Pressure, Pa, and molar vapor fraction, mol/mol.</summary>
    PressureQuality,

    /// <summary>Pressure, Pa, and temperature, K.</summary>
    PressureTemperature,

    /// <summary>Density, kg/m³, and temperature, K.</summary>
    DensityTemperature,

    /// <summary>Density, kg/m³, and internal energy, J/kg.</summary>
    DensityEnergy,

    /// <summary>Enthalpy, J/kg, and pressure, Pa.</summary>
    EnthalpyPressure,

    /// <summary>Pressure, Pa, and entropy, J/(kg·K).</summary>
    PressureEntropy,
}
