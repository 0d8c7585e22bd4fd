using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>
/// A hold with closed valves: pressure and temperature at its end. The pressure rise tells how much liquid boiled off meanwhile. Immutable.
/// </summary>
public sealed record RiseReading
{
    /// <summary>Absolute pressure at the end of the hold, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure Pressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa absolute", nameof(Pressure));
            field = value;
        }
    }

    /// <summary>Temperature at the end of the hold.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above absolute zero, or not finite.</exception>
    public required Temperature Temperature
    {
        get;
        init
        {
            Require.Positive(value.Kelvins, "K", nameof(Temperature));
            field = value;
        }
    }

    /// <summary>Accuracy of the pressure readings, plus or minus; 1 kPa by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Pressure PressureAccuracy
    {
        get;
        init
        {
            Require.NotNegative(value.Pascals, "Pa", nameof(PressureAccuracy));
            field = value;
        }
    }

    = new(1000, PressureUnit.Pascal);

    /// <summary>Accuracy of the temperature readings, plus or minus; 1 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public TemperatureDelta TemperatureAccuracy
    {
        get;
        init
        {
            Require.NotNegative(value.Kelvins, "K", nameof(TemperatureAccuracy));
            field = value;
        }
    }

    = new(1, TemperatureDeltaUnit.Kelvin);
}
