namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>A liquid that boils and the vapor over it, at one temperature. SI.</summary>
internal struct GlidePoint
{
    /// <summary>Pa.</summary>
    public double Pressure;

    /// <summary>m³/kg.</summary>
    public double LiquidVolume;

    /// <summary>m³/kg.</summary>
    public double VaporVolume;

    /// <summary>Internal energy, J/kg.</summary>
    public double LiquidEnergy;

    /// <summary>Internal energy, J/kg.</summary>
    public double VaporEnergy;

    /// <summary>Enthalpy of the vapor, J/kg.</summary>
    public readonly double VaporEnthalpy => VaporEnergy + (Pressure * VaporVolume);
}
