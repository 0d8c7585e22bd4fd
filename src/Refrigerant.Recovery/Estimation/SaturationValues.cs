namespace Refrigerant.Recovery.Estimation;

/// <summary>What <see cref="SaturationTable"/> gives at a temperature. SI.</summary>
internal struct SaturationValues
{
    /// <summary>d ln p/dT of the dew curve, 1/K.</summary>
    public double DewSlope;

    /// <summary>Pa.</summary>
    public double DewPressure;

    /// <summary>Pa.</summary>
    public double BubblePressure;

    /// <summary>Of saturated vapor, kg/m³.</summary>
    public double VaporDensity;

    /// <summary>Specific volume of saturated liquid v′, m³/kg.</summary>
    public double LiquidVolume;

    /// <summary>c = du′/dT − a·dv′/dT, J/(kg·K).</summary>
    public double LiquidHeatCapacity;

    /// <summary>da/dT, J/(m³·K).</summary>
    public double VolumeHeatCapacity;

    /// <summary>Energy that a kilogram of vapor drawn off takes, h″ − u′ + v′·a, J/kg.</summary>
    public double VaporTakes;

    /// <summary>p/(ρ·R·T) of saturated vapor.</summary>
    public double Compressibility;

    /// <summary>Isochoric heat capacity of vapor at half its saturated density, J/(kg·K).</summary>
    public double GasHeatCapacity;
}
