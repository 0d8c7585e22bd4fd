using System;
using Refrigerant.Recovery.CoolProp.Native;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>What is added to CoolProp's enthalpy and entropy so that they count from the reference states of <see cref="Fluids.StatePoint"/>.</summary>
/// <remarks>
/// Computed from the engine itself, so that it holds whatever reference state was set in CoolProp: 200 kJ/kg and 1 kJ/(kg·K) for saturated
/// liquid at 0 °C (IIR); where the saturation curve does not reach 0 °C, zero for saturated liquid at 101 325 Pa; where it does not reach that
/// either, zero for saturated liquid at its cold end.
/// </remarks>
internal readonly struct ReferenceOffset
{
    private const double IcePoint = 273.15;
    private const double IceEnthalpy = 200e3;
    private const double IceEntropy = 1e3;
    private const double StandardAtmosphere = 101325;

    /// <summary>
    /// How far above 0 °C, K, a saturation curve may begin and still have its reference there: a lowest temperature that was converted from
    /// 0 °C is 273.15000000000003 K. The liquid's enthalpy changes by some mJ/kg over it.
    /// </summary>
    private const double Rounding = 2e-6;

    public ReferenceOffset(double enthalpy, double entropy)
    {
        Enthalpy = enthalpy;
        Entropy = entropy;
    }

    /// <summary>J/kg.</summary>
    public double Enthalpy { get; }

    /// <summary>J/(kg·K).</summary>
    public double Entropy { get; }

    /// <summary>The offset of a fluid of one component. The caller holds the gate.</summary>
    /// <param name="state">The fluid.</param>
    /// <param name="minimumTemperature">Cold end of the saturation curve, K.</param>
    /// <param name="maximumTemperature">Warm end of the saturation curve, K.</param>
    public static ReferenceOffset Of(NativeState state, double minimumTemperature, double maximumTemperature)
    {
        if (minimumTemperature <= IcePoint + Rounding && IcePoint <= maximumTemperature)
        {
            state.Update(InputPair.QualityTemperature, 0, Math.Max(IcePoint, minimumTemperature));
            return Here(state, IceEnthalpy, IceEntropy);
        }

        if (state.TryUpdate(InputPair.PressureQuality, StandardAtmosphere, 0) is not null)
        {
            state.Update(InputPair.QualityTemperature, 0, minimumTemperature);
        }

        return Here(state, 0, 0);
    }

    private static ReferenceOffset Here(NativeState state, double enthalpy, double entropy) =>
        new(enthalpy - state.Output(Property.Enthalpy), entropy - state.Output(Property.Entropy));
}
