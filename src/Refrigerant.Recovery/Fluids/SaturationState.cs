using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Fluids;

/// <summary>
/// Saturated liquid and vapor of a fluid. Asked by temperature both share the temperature; asked by pressure both share the pressure;
/// for a pure fluid both share both.
/// </summary>
public readonly record struct SaturationState
{
    internal SaturationState(PropertyModel model, in SaturationPoint point)
    {
        Bubble = new FluidState(model, point.Bubble);
        Dew = new FluidState(model, point.Dew);
    }

    /// <summary>Saturated liquid.</summary>
    public FluidState Bubble { get; }

    /// <summary>Saturated vapor.</summary>
    public FluidState Dew { get; }

    /// <summary>Specific enthalpy of dew less that of bubble: for a pure fluid the latent heat of vaporization.</summary>
    public SpecificEnergy LatentHeat => new(Dew.Point.Enthalpy - Bubble.Point.Enthalpy, SpecificEnergyUnit.JoulePerKilogram);

    /// <summary>Dew temperature less bubble temperature: zero for a pure fluid and for a state asked by temperature.</summary>
    public TemperatureDelta Glide => new(Dew.Point.Temperature - Bubble.Point.Temperature, TemperatureDeltaUnit.Kelvin);

    /// <summary>Both temperatures and pressures with units, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"bubble {Bubble.Point.Temperature - 273.15:F2} °C at {Bubble.Point.Pressure / 1000:F2} kPa absolute, dew {Dew.Point.Temperature - 273.15:F2} °C at {Dew.Point.Pressure / 1000:F2} kPa absolute");
}
