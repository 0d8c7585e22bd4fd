using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>
/// How far each input of a job may be off, either way, all values in between equally likely (rectangular distribution, JCGM 100:2008, 4.3.7).
/// The defaults are common practice, no source. Immutable.
/// </summary>
public sealed record InputTolerances
{
    private const double MostRelative = 0.9;

    /// <summary>For an initializer.</summary>
    public InputTolerances()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>.</param>
    /// <param name="heatExchange">See <see cref="HeatExchange"/>.</param>
    /// <param name="charge">See <see cref="Charge"/>.</param>
    /// <param name="displacement">See <see cref="Displacement"/>.</param>
    /// <param name="oil">See <see cref="Oil"/>.</param>
    /// <param name="metal">See <see cref="Metal"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="gauge">See <see cref="Gauge"/>.</param>
    /// <param name="scale">See <see cref="Scale"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public InputTolerances(
        Ratio? internalVolume = null,
        Ratio? heatExchange = null,
        Ratio? charge = null,
        Ratio? displacement = null,
        Ratio? oil = null,
        Ratio? metal = null,
        TemperatureDelta? temperature = null,
        Pressure? gauge = null,
        Mass? scale = null)
    {
        InternalVolume = internalVolume ?? InternalVolume;
        HeatExchange = heatExchange ?? HeatExchange;
        Charge = charge ?? Charge;
        Displacement = displacement ?? Displacement;
        Oil = oil ?? Oil;
        Metal = metal ?? Metal;
        Temperature = temperature ?? Temperature;
        Gauge = gauge ?? Gauge;
        Scale = scale ?? Scale;
    }

    /// <summary>Of the appliance's internal volume, 0 to 90 %; 30 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio InternalVolume { get; init => field = Require.InRange(value, 0, MostRelative, nameof(InternalVolume)); } = new(30, RatioUnit.Percent);

    /// <summary>Of the heat exchange with the surroundings, 0 to 90 %; 50 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio HeatExchange { get; init => field = Require.InRange(value, 0, MostRelative, nameof(HeatExchange)); } = new(50, RatioUnit.Percent);

    /// <summary>Of the charge, 0 to 90 %; 5 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio Charge { get; init => field = Require.InRange(value, 0, MostRelative, nameof(Charge)); } = new(5, RatioUnit.Percent);

    /// <summary>Of the machine's displacement, 0 to 90 %; 10 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio Displacement { get; init => field = Require.InRange(value, 0, MostRelative, nameof(Displacement)); } = new(10, RatioUnit.Percent);

    /// <summary>Of the mass of oil in the appliance, 0 to 90 %; 30 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio Oil { get; init => field = Require.InRange(value, 0, MostRelative, nameof(Oil)); } = new(30, RatioUnit.Percent);

    /// <summary>Of the mass of the metal that cools with the refrigerant, 0 to 90 %; 30 % by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio Metal { get; init => field = Require.InRange(value, 0, MostRelative, nameof(Metal)); } = new(30, RatioUnit.Percent);

    /// <summary>Of the temperature of appliance and surroundings, 0 to 20 K; 2 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public TemperatureDelta Temperature { get; init => field = Require.InRange(value, 0, 20, nameof(Temperature)); } = new(2, TemperatureDeltaUnit.Kelvin);

    /// <summary>Of the gauge on which the pull is ended, 0 to 20 kPa; 1.6 kPa (class 1.6 on a span of 100 kPa) by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Pressure Gauge { get; init => field = Require.InRange(value, 0, 20_000, nameof(Gauge)); } = new(1600, PressureUnit.Pascal);

    /// <summary>Of the scale on which a cylinder is filled, 0 to 5 kg; 0.1 kg by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Mass Scale { get; init => field = Require.InRange(value, 0, 5, nameof(Scale)); } = new(0.1, MassUnit.Kilogram);

    /// <summary>All tolerances.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"volume {InternalVolume.Percent:G4} %, heat {HeatExchange.Percent:G4} %, charge {Charge.Percent:G4} %, displacement {Displacement.Percent:G4} %, oil {Oil.Percent:G4} %, metal {Metal.Percent:G4} %, ")
        + FormattableString.Invariant($"temperature {Temperature.Kelvins:G4} K, gauge {Gauge.Kilopascals:G4} kPa, scale {Scale.Kilograms:G4} kg");
}
