using System;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>A component of a mixture: its constants, its residual equation and its ideal-gas properties on its own reference state.</summary>
internal sealed class MixtureComponent
{
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
        _enthalpyOffset = enthalpyOffset;
        _entropyOffset = entropyOffset;
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
        const double r = MixtureEquation.GasConstant;
        Data.IdealGas.Evaluate(Data.ReducingTemperature / temperature, out double a, out double t, out double tt);
        energy = (r * temperature * t) + _enthalpyOffset;
        heatCapacity = -r * tt;
        entropy = (r * (t - a + Math.Log(Data.ReducingMolarDensity))) + _entropyOffset;
    }
}
