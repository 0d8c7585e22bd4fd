using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>How the machine was left by its last job. Pressures are absolute. Immutable.</summary>
public sealed record RefrigerantChangeOptions
{
    /// <summary>For an initializer.</summary>
    public RefrigerantChangeOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="oil">See <see cref="Oil"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="suctionPressure">See <see cref="SuctionPressure"/>.</param>
    /// <param name="dischargePressure">See <see cref="DischargePressure"/>.</param>
    /// <param name="clearingPressure">See <see cref="ClearingPressure"/>.</param>
    /// <param name="oilThatStays">See <see cref="OilThatStays"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public RefrigerantChangeOptions(
        HoseSet? hoses = null,
        ApplianceOil? oil = null,
        Temperature? temperature = null,
        Pressure? suctionPressure = null,
        Pressure? dischargePressure = null,
        Pressure? clearingPressure = null,
        Ratio? oilThatStays = null)
    {
        Hoses = hoses ?? Hoses;
        Oil = oil ?? Oil;
        Temperature = temperature ?? Temperature;
        SuctionPressure = suctionPressure ?? SuctionPressure;
        DischargePressure = dischargePressure ?? DischargePressure;
        ClearingPressure = clearingPressure ?? ClearingPressure;
        OilThatStays = oilThatStays ?? OilThatStays;
    }

    /// <summary>Hoses that go to the next job as they are; null where they are emptied or others are taken.</summary>
    public HoseSet? Hoses { get; init; }

    /// <summary>Oil in the machine's compressor, 1000 kg at most; null for a machine without oil, or where it is not to be counted, which a finding says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than 1000 kg.</exception>
    public ApplianceOil? Oil
    {
        get;
        init
        {
            if (value is not null)
            {
                Require.InRange(value.Mass.Kilograms, 0, 1000, "kg", nameof(Oil));
            }

            field = value;
        }
    }

    /// <summary>Temperature of machine and oil, greater than 0 K; 20 °C by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than 0 K, or not finite.</exception>
    public Temperature Temperature { get; init => field = Require.Positive(value, nameof(Temperature)); } = new(293.15, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure on the suction side when the last job ended, greater than zero: what hose and oil then hold; 101.325 kPa by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure SuctionPressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(SuctionPressure)); } = new(101_325, PressureUnit.Pascal);

    /// <summary>Absolute pressure in the last cylinder, greater than zero; null for saturation at <see cref="Temperature"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? DischargePressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(DischargePressure)); }

    /// <summary>Pressure that clearing pulls the machine down to, greater than zero; 50.5 kPa (15 inHg of vacuum at sea level) by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure ClearingPressure { get; init => field = Require.Positive(value, "Pa absolute", nameof(ClearingPressure)); } = new(50_500, PressureUnit.Pascal);

    /// <summary>Share of the old oil that stays in the machine after an oil change, 0 to 1; 0.1 by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio OilThatStays { get; init => field = Require.InRange(value, 0, 1, nameof(OilThatStays)); } = new(PurityFigures.OilThatStays, RatioUnit.DecimalFraction);

    /// <summary>Temperature and suction pressure.</summary>
    public override string ToString() => FormattableString.Invariant($"{Temperature.Kelvins - 273.15:G7} °C, suction {SuctionPressure.Kilopascals:G7} kPa absolute");
}
