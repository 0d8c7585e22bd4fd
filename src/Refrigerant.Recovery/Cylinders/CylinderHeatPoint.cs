using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>A closed cylinder at one temperature. Immutable.</summary>
public readonly record struct CylinderHeatPoint
{
    private readonly double _temperature;
    private readonly double _pressure;
    private readonly double? _liquidFill;

    internal CylinderHeatPoint(double temperature, double pressure, double? liquidFill)
    {
        _temperature = temperature;
        _pressure = pressure;
        _liquidFill = liquidFill;
    }

    /// <summary>Temperature of the content.</summary>
    public Temperature Temperature => new(_temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure.</summary>
    public Pressure Pressure => new(_pressure, PressureUnit.Pascal);

    /// <summary>Share of the volume that liquid fills; null above the critical temperature, where liquid and vapor are one.</summary>
    public Ratio? LiquidFill => _liquidFill is double fill ? new Ratio(fill, RatioUnit.DecimalFraction) : null;

    /// <summary>Temperature, pressure and fill with units, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{_temperature - 273.15:F2} °C, {_pressure / 1000:F1} kPa absolute, {(_liquidFill is double fill ? FormattableString.Invariant($"{fill * 100:F2} % liquid") : "supercritical")}");
}
