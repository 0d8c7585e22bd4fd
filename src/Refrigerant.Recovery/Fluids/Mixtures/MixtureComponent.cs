using System;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>A component of a mixture: its constants, its residual equation and its ideal-gas properties on its own reference state.</summary>
/// <remarks>
/// The mixture model writes the ideal-gas part of a component in terms of its critical temperature, τ_i = T_c,i/T (Kunz and Wagner 2012,
/// doi:10.1021/je300655b, section 2). Where the component's own equation is reduced by another temperature (R-134a: 374.18 K against 374.21 K)
/// its ideal heat capacity in a mixture is that of a temperature lower by a ten-thousandth. Both parts are made to agree at
/// <see cref="Anchor"/>, so that a component keeps its reference state in mixtures.
/// </remarks>
internal sealed class MixtureComponent
{
    /// <summary>Temperature of the usual reference state, K.</summary>
    private const double Anchor = 273.15;

    private readonly double _enthalpyOffset;
    private readonly double _entropyOffset;

    /// <param name="data">The constants.</param>
    /// <param name="residual">The residual equation.</param>
    /// <param name="enthalpyOffset">Molar enthalpy to add to reach the component's reference state, J/mol.</param>
    /// <param name="entropyOffset">Molar entropy to add, J/(mol·K).</param>
    public MixtureComponent(PureFluidData data, ResidualHelmholtz residual, double enthalpyOffset, double entropyOffset)
    {
        Data = data;
        Residual = residual;
        Evaluate(data.ReducingTemperature, Anchor, out double ownEnergy, out _, out double ownEntropy);
        Evaluate(data.CriticalTemperature, Anchor, out double energy, out _, out double entropy);
        _enthalpyOffset = enthalpyOffset + ownEnergy - energy;
        _entropyOffset = entropyOffset + ownEntropy - entropy;
    }

    public string Designation => Data.Designation;

    public PureFluidData Data { get; }

    public ResidualHelmholtz Residual { get; }

    /// <summary>Wilson's estimate of the vapor pressure, Pa (Wilson 1969), from the acentric factor ω: p_c·exp(5.373·(1 + ω)·(1 − T_c/T)).</summary>
    public double WilsonPressure(double temperature) =>
        Data.CriticalPressure * Math.Exp(5.373 * (1 + Data.AcentricFactor) * (1 - (Data.CriticalTemperature / temperature)));

    /// <summary>Ideal-gas molar internal energy, J/mol, isochoric heat capacity, J/(mol·K), and entropy at 1 mol/m³, J/(mol·K).</summary>
    public void IdealGas(double temperature, out double energy, out double heatCapacity, out double entropy)
    {
        Evaluate(Data.CriticalTemperature, temperature, out energy, out heatCapacity, out entropy);
        energy += _enthalpyOffset;
        entropy += _entropyOffset;
    }

    private void Evaluate(double reducing, double temperature, out double energy, out double heatCapacity, out double entropy)
    {
        const double r = MixtureEquation.GasConstant;
        Data.IdealGas.Evaluate(reducing / temperature, out double a, out double t, out double tt);
        energy = r * temperature * t;
        heatCapacity = -r * tt;
        entropy = r * (t - a + Math.Log(Data.ReducingMolarDensity));
    }
}
