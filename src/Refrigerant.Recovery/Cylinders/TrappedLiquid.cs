using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Liquid shut in between two valves, such as in a hose: how fast its pressure rises as it warms. Immutable.</summary>
/// <remarks>
/// The space is taken as rigid and wholly full of liquid. A hose gives way a little, so its pressure rises more slowly; the figure is the
/// upper bound, and a hose that stretches can burst as well.
/// </remarks>
public sealed class TrappedLiquid
{
    private readonly ClosedVessel _vessel;
    private readonly double _temperature;
    private readonly double _pressure;
    private readonly double _perKelvin;

    private TrappedLiquid(PropertyModel model, double temperature, in StatePoint liquid)
    {
        _temperature = temperature;
        _pressure = liquid.Pressure;
        _vessel = new ClosedVessel(model, liquid.Density, nameof(temperature));
        _perKelvin = model.DerivativesAt(temperature, liquid.Density).PressureByTemperature;
        Findings =
        [
            new Finding(
                CylinderCodes.TrappedLiquid,
                Severity.Warning,
                "common practice; pressure from " + model.Source,
                $"{model.Designation} liquid shut in at {FindingValue.Kelvins("temperature", _temperature)} rises by {FindingValue.PressurePerTemperature("rise", PressurePerKelvin)}: never close both ends of a hose that is full of liquid."),
        ];
    }

    /// <summary>The temperature at which it was shut in.</summary>
    public Temperature ClosedAt => new(_temperature, TemperatureUnit.Kelvin);

    /// <summary>The absolute pressure at which it was shut in: saturation.</summary>
    public Pressure ClosedPressure => new(_pressure, PressureUnit.Pascal);

    /// <summary>The rise of pressure for each kelvin, at the moment of closing: (∂p/∂T) at constant density.</summary>
    public Pressure PressurePerKelvin => new(_perKelvin, PressureUnit.Pascal);

    /// <summary>The caution that goes with it.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Saturated liquid shut in at a temperature.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="temperature">Temperature of the liquid, on the saturation curves.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="PropertyRangeException">The temperature is outside the saturation curves.</exception>
    public static TrappedLiquid ShutIn(Fluid fluid, Temperature temperature)
    {
        Require.NotNull(fluid, nameof(fluid));
        StatePoint liquid = fluid.Model.SaturationAtTemperature(temperature.Kelvins).Bubble;
        return new TrappedLiquid(fluid.Model, temperature.Kelvins, liquid);
    }

    /// <summary>Absolute pressure after warming (or cooling).</summary>
    /// <param name="temperature">The new temperature.</param>
    /// <exception cref="PropertyRangeException">The state is outside the range of the fluid's equation.</exception>
    public Pressure PressureAt(Temperature temperature) => new(_vessel.At(temperature.Kelvins).Bulk.Pressure, PressureUnit.Pascal);

    /// <summary>The temperature at which an absolute pressure is reached, such as the rating of the hose; null where the equation's range ends first.</summary>
    /// <param name="absolute">Absolute pressure, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Temperature? TemperatureAt(Pressure absolute) =>
        _vessel.TemperatureAt(Require.Positive(absolute.Pascals, "Pa", nameof(absolute))) is double kelvins
            ? new Temperature(kelvins, TemperatureUnit.Kelvin)
            : null;

    /// <summary>How fast the pressure rises.</summary>
    public override string ToString() => FormattableString.Invariant($"shut in at {_temperature - 273.15:G7} °C, {_pressure / 1e3:G7} kPa absolute: {_perKelvin / 1e3:G7} kPa more each kelvin");
}
