using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>
/// A hold with closed valves: pressure and temperature at its end. The pressure rise tells how much liquid boiled off meanwhile. Immutable.
/// </summary>
public sealed record RiseReading
{
    /// <summary>For an initializer.</summary>
    public RiseReading()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="pressure">See <see cref="Pressure"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="pressureAccuracy">See <see cref="PressureAccuracy"/>.</param>
    /// <param name="temperatureAccuracy">See <see cref="TemperatureAccuracy"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public RiseReading(
        Pressure pressure,
        Temperature temperature,
        Pressure? pressureAccuracy = null,
        TemperatureDelta? temperatureAccuracy = null)
    {
        Pressure = pressure;
        Temperature = temperature;
        PressureAccuracy = pressureAccuracy ?? PressureAccuracy;
        TemperatureAccuracy = temperatureAccuracy ?? TemperatureAccuracy;
    }

    /// <summary>Absolute pressure at the end of the hold, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure Pressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(Pressure)); }

    /// <summary>Temperature at the end of the hold.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above absolute zero, or not finite.</exception>
    public required Temperature Temperature { get; init => field = Require.Positive(value, nameof(Temperature)); }

    /// <summary>Accuracy of the pressure readings, plus or minus; 1 kPa by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Pressure PressureAccuracy { get; init => field = Require.NotNegative(value, "Pa", nameof(PressureAccuracy)); } = new(1000, PressureUnit.Pascal);

    /// <summary>Accuracy of the temperature readings, plus or minus; 1 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public TemperatureDelta TemperatureAccuracy { get; init => field = Require.NotNegative(value, nameof(TemperatureAccuracy)); } = new(1, TemperatureDeltaUnit.Kelvin);

    /// <summary>Pressure and temperature.</summary>
    public override string ToString() => FormattableString.Invariant($"{Pressure.Kilopascals:G7} kPa absolute at {Temperature.Kelvins - 273.15:G7} °C");
}
