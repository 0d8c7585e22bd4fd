namespace Refrigerant.Recovery.Estimation;

/// <summary>What <see cref="SaturationTable"/> gives at a temperature. SI.</summary>
internal struct SaturationValues
{
    /// <summary>Pa: of saturated vapor.</summary>
    public double Pressure;

    /// <summary>d ln p/dT, 1/K.</summary>
    public double PressureSlope;

    /// <summary>Of saturated vapor, kg/m³.</summary>
    public double VaporDensity;

    /// <summary>Specific volume of saturated liquid v′, m³/kg.</summary>
    public double LiquidVolume;

    /// <summary>du′/dT − a·dv′/dT, J/(kg·K).</summary>
    public double LiquidHeatCapacity;

    /// <summary>du″/dT − a·dv″/dT, J/(kg·K).</summary>
    public double VaporHeatCapacity;

    /// <summary>Energy that a kilogram of vapor drawn off takes, h″ − u′ + v′·a, J/kg.</summary>
    public double VaporTakes;

    /// <summary>p/(ρ·R·T) of saturated vapor, R of the fluid as charged.</summary>
    public double Compressibility;

    /// <summary>The same of thin vapor of its composition: 1 of a pure fluid.</summary>
    public double ThinCompressibility;

    /// <summary>Isochoric heat capacity of vapor at half its saturated density, J/(kg·K).</summary>
    public double GasHeatCapacity;
}
