namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Saturated liquid and vapor of a pure fluid in plain SI doubles.</summary>
internal readonly struct SaturationValues
{
    public SaturationValues(
        double temperature,
        double pressure,
        double liquidDensity,
        double vaporDensity,
        double liquidEnthalpy,
        double vaporEnthalpy,
        double liquidEntropy,
        double vaporEntropy)
    {
        Temperature = temperature;
        Pressure = pressure;
        LiquidDensity = liquidDensity;
        VaporDensity = vaporDensity;
        LiquidEnthalpy = liquidEnthalpy;
        VaporEnthalpy = vaporEnthalpy;
        LiquidEntropy = liquidEntropy;
        VaporEntropy = vaporEntropy;
    }

    /// <summary>K.</summary>
    public double Temperature { get; }

    /// <summary>Pa.</summary>
    public double Pressure { get; }

    /// <summary>kg/m³.</summary>
    public double LiquidDensity { get; }

    /// <summary>kg/m³.</summary>
    public double VaporDensity { get; }

    /// <summary>J/kg.</summary>
    public double LiquidEnthalpy { get; }

    /// <summary>J/kg.</summary>
    public double VaporEnthalpy { get; }

    /// <summary>J/(kg·K).</summary>
    public double LiquidEntropy { get; }

    /// <summary>J/(kg·K).</summary>
    public double VaporEntropy { get; }

    /// <summary>dp/dT along saturation, Pa/K, after Clausius and Clapeyron.</summary>
    public double PressureSlope =>
        (VaporEnthalpy - LiquidEnthalpy) * LiquidDensity * VaporDensity / (Temperature * (LiquidDensity - VaporDensity));

    /// <summary>The saturated liquid.</summary>
    public StatePoint Liquid => new(Phase.Liquid, Temperature, Pressure, LiquidDensity, LiquidEnthalpy, LiquidEntropy, 0);

    /// <summary>The saturated vapor.</summary>
    public StatePoint Vapor => new(Phase.Vapor, Temperature, Pressure, VaporDensity, VaporEnthalpy, VaporEntropy, 1);
}
