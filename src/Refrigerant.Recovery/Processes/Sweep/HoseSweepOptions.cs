using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a hose sweep starts from and goes for. Immutable.</summary>
public sealed record HoseSweepOptions
{
    /// <summary>For an initializer.</summary>
    public HoseSweepOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="targetPressure">See <see cref="TargetPressure"/>.</param>
    /// <param name="startPressure">See <see cref="StartPressure"/>.</param>
    /// <param name="dischargePressure">See <see cref="DischargePressure"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public HoseSweepOptions(
        Pressure targetPressure,
        Pressure? startPressure = null,
        Pressure? dischargePressure = null,
        Temperature? temperature = null)
    {
        TargetPressure = targetPressure;
        StartPressure = startPressure ?? StartPressure;
        DischargePressure = dischargePressure ?? DischargePressure;
        Temperature = temperature ?? Temperature;
    }

    /// <summary>Absolute pressure to sweep the hoses to.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure TargetPressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa", nameof(TargetPressure));
            field = value;
        }
    }

    /// <summary>Absolute pressure in the hoses at the start: that of the air around; one standard atmosphere by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure StartPressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa", nameof(StartPressure));
            field = value;
        }
    }

    = new(101_325, PressureUnit.Pascal);

    /// <summary>Absolute pressure that the machine blows the air out against; that at the start where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? DischargePressure { get; init => field = Require.Positive(value, "Pa", nameof(DischargePressure)); }

    /// <summary>Temperature of the air, 150 K to 400 K; 20 °C by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Temperature Temperature
    {
        get;
        init
        {
            Require.InRange(value.Kelvins, 150, 400, "K", nameof(Temperature));
            field = value;
        }
    }

    = new(293.15, TemperatureUnit.Kelvin);

    /// <summary>From where to where, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"from {StartPressure.Kilopascals:G5} to {TargetPressure.Kilopascals:G5} kPa absolute at {Temperature.DegreesCelsius:F1} °C");
}
