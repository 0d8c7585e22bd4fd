namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>What a vessel holds of one phase, in plain SI doubles.</summary>
/// <param name="Amount">mol; 0 where the phase is absent.</param>
/// <param name="Mass">kg.</param>
/// <param name="Volume">m³.</param>
/// <param name="Enthalpy">Specific enthalpy, J/kg.</param>
/// <param name="Entropy">Specific entropy, J/(kg·K).</param>
internal readonly record struct PhaseContent(double Amount, double Mass, double Volume, double Enthalpy, double Entropy)
{
    /// <summary>kg/m³; NaN where the phase is absent.</summary>
    public double Density => Mass / Volume;
}
