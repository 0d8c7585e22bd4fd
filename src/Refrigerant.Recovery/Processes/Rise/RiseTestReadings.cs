using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Two readings of a closed appliance, and how well they are known (standard uncertainties). Immutable.</summary>
public sealed record RiseTestReadings
{
    /// <summary>For an initializer.</summary>
    public RiseTestReadings()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="fluid">See <see cref="Fluid"/>.</param>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>.</param>
    /// <param name="firstPressure">See <see cref="FirstPressure"/>.</param>
    /// <param name="firstTemperature">See <see cref="FirstTemperature"/>.</param>
    /// <param name="secondPressure">See <see cref="SecondPressure"/>.</param>
    /// <param name="secondTemperature">See <see cref="SecondTemperature"/>.</param>
    /// <param name="pressureUncertainty">See <see cref="PressureUncertainty"/>.</param>
    /// <param name="temperatureUncertainty">See <see cref="TemperatureUncertainty"/>.</param>
    /// <param name="volumeUncertainty">See <see cref="VolumeUncertainty"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public RiseTestReadings(
        Fluid fluid,
        Volume internalVolume,
        Pressure firstPressure,
        Temperature firstTemperature,
        Pressure secondPressure,
        Temperature secondTemperature,
        Pressure? pressureUncertainty = null,
        TemperatureDelta? temperatureUncertainty = null,
        Ratio? volumeUncertainty = null)
    {
        Fluid = fluid;
        InternalVolume = internalVolume;
        FirstPressure = firstPressure;
        FirstTemperature = firstTemperature;
        SecondPressure = secondPressure;
        SecondTemperature = secondTemperature;
        PressureUncertainty = pressureUncertainty ?? PressureUncertainty;
        TemperatureUncertainty = temperatureUncertainty ?? TemperatureUncertainty;
        VolumeUncertainty = volumeUncertainty ?? VolumeUncertainty;
    }

    /// <summary>The refrigerant.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required Fluid Fluid
    {
        get;
        init => field = Require.NotNull(value, nameof(Fluid));
    }

    /// <summary>Internal volume of the appliance, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Volume InternalVolume
    {
        get;
        init
        {
            Require.Positive(value.CubicMeters, "m³", nameof(InternalVolume));
            field = value;
        }
    }

    /// <summary>Absolute pressure of the first reading, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure FirstPressure { get; init => field = Require.Positive(value, "Pa", nameof(FirstPressure)); }

    /// <summary>Temperature of the appliance at the first reading.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Temperature FirstTemperature { get; init => field = Require.Positive(value, nameof(FirstTemperature)); }

    /// <summary>Absolute pressure of the second reading, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure SecondPressure { get; init => field = Require.Positive(value, "Pa", nameof(SecondPressure)); }

    /// <summary>Temperature of the appliance at the second reading.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Temperature SecondTemperature { get; init => field = Require.Positive(value, nameof(SecondTemperature)); }

    /// <summary>Uncertainty of a pressure reading, 0 or more; 1 kPa by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Pressure PressureUncertainty { get; init => field = Require.NotNegative(value, "Pa", nameof(PressureUncertainty)); } = new(1000, PressureUnit.Pascal);

    /// <summary>Uncertainty of a temperature reading, 0 K to 50 K; 1 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public TemperatureDelta TemperatureUncertainty { get; init => field = Require.InRange(value, 0, 50, nameof(TemperatureUncertainty)); } = new(1, TemperatureDeltaUnit.Kelvin);

    /// <summary>Relative uncertainty of the volume, 0 to 0.9; 0.15 by default (half of a tolerance of ±30 %).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio VolumeUncertainty { get; init => field = Require.InRange(value, 0, 0.9, nameof(VolumeUncertainty)); } = new(0.15, RatioUnit.DecimalFraction);

    /// <summary>Refrigerant and both readings, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Fluid.Designation}, {InternalVolume.Liters:G5} L: {FirstPressure.Kilopascals:G5} kPa absolute at {FirstTemperature.DegreesCelsius:F1} °C, then {SecondPressure.Kilopascals:G5} kPa absolute at {SecondTemperature.DegreesCelsius:F1} °C");
}
