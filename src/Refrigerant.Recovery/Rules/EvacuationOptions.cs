using System;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>What decides the required level besides refrigerant and charge. Immutable.</summary>
public sealed record EvacuationOptions
{
    /// <summary>A general appliance, a machine made from 15 November 1993 on, a major repair, no leak, at the standard atmosphere.</summary>
    internal static readonly EvacuationOptions Default = new();

    /// <summary>For an initializer.</summary>
    public EvacuationOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="appliance">See <see cref="Appliance"/>.</param>
    /// <param name="purpose">See <see cref="Purpose"/>.</param>
    /// <param name="machineManufactured">See <see cref="MachineManufactured"/>.</param>
    /// <param name="isMachineSystemDependent">See <see cref="IsMachineSystemDependent"/>.</param>
    /// <param name="compressorRuns">See <see cref="CompressorRuns"/>.</param>
    /// <param name="lowestAttainable">See <see cref="LowestAttainable"/>.</param>
    /// <param name="pressureClass">See <see cref="Class"/>.</param>
    /// <param name="ownLevel">See <see cref="OwnLevel"/>.</param>
    /// <param name="ownLevelSource">See <see cref="OwnLevelSource"/>.</param>
    /// <param name="barometer">See <see cref="Barometer"/>.</param>
    /// <param name="rules">See <see cref="Rules"/>.</param>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>.</param>
    /// <param name="normalTemperature">See <see cref="NormalTemperature"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public EvacuationOptions(
        ApplianceKind? appliance = null,
        OpeningPurpose? purpose = null,
        DateTime? machineManufactured = null,
        bool? isMachineSystemDependent = null,
        bool? compressorRuns = null,
        Pressure? lowestAttainable = null,
        PressureClass? pressureClass = null,
        Pressure? ownLevel = null,
        string? ownLevelSource = null,
        Barometer? barometer = null,
        RuleSet? rules = null,
        Volume? internalVolume = null,
        Temperature? normalTemperature = null)
    {
        Appliance = appliance ?? Appliance;
        Purpose = purpose ?? Purpose;
        MachineManufactured = machineManufactured ?? MachineManufactured;
        IsMachineSystemDependent = isMachineSystemDependent ?? IsMachineSystemDependent;
        CompressorRuns = compressorRuns ?? CompressorRuns;
        LowestAttainable = lowestAttainable ?? LowestAttainable;
        Class = pressureClass ?? Class;
        OwnLevel = ownLevel ?? OwnLevel;
        OwnLevelSource = ownLevelSource ?? OwnLevelSource;
        Barometer = barometer ?? Barometer;
        Rules = rules ?? Rules;
        InternalVolume = internalVolume ?? InternalVolume;
        NormalTemperature = normalTemperature ?? NormalTemperature;
    }

    /// <summary>The rules of the place; those of the United States by default.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public RuleSet Rules { get; init => field = Require.NotNull(value, nameof(Rules)); } = RuleSet.UnitedStates;

    /// <summary>The kind of appliance, as the United States tell them apart.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such value.</exception>
    public ApplianceKind Appliance { get; init => field = Require.Defined(value, nameof(Appliance)); }

    /// <summary>Why it is opened.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such value.</exception>
    public OpeningPurpose Purpose { get; init => field = Require.Defined(value, nameof(Purpose)); }

    /// <summary>The day on which the recovery machine was made or imported; null is taken as on or after 15 November 1993, the stricter case.</summary>
    public DateTime? MachineManufactured { get; init => field = Held.Day(value); }

    /// <summary>Whether the recovery machine needs the appliance's own compressor or pressure to work (system-dependent).</summary>
    public bool IsMachineSystemDependent { get; init; }

    /// <summary>Whether the compressor of a small appliance runs during recovery. True by default, the stricter case.</summary>
    public bool CompressorRuns { get; init; } = true;

    /// <summary>
    /// For a leaking part: the lowest absolute pressure that is attainable without substantial contamination of the refrigerant; null where
    /// nothing leaks.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? LowestAttainable { get; init => field = Held.Kilopascals(Require.Positive(value, "Pa absolute", nameof(LowestAttainable))); }

    /// <summary>Internal volume of the appliance, on which the European level depends; null, taken as the stricter case, where not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero.</exception>
    public Volume? InternalVolume
    {
        get;
        init
        {
            if (value is Volume volume)
            {
                Require.Positive(volume.CubicMeters, "m³", nameof(InternalVolume));
            }

            field = Held.Liters(value);
        }
    }

    /// <summary>
    /// The "normal temperature" of Japan's ordinance, which does not state it, 0 °C to 60 °C; null for the stricter of 25 °C and 35 °C.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public Temperature? NormalTemperature
    {
        get;
        init
        {
            if (value is Temperature temperature)
            {
                Require.InRange(temperature.Kelvins, 273.15, 333.15, "K", nameof(NormalTemperature));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>A class that overrides the computed one; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such class.</exception>
    public PressureClass? Class { get; init => field = value is PressureClass given ? Require.Defined(given, nameof(Class)) : null; }

    /// <summary>An absolute pressure that another jurisdiction, a contract or the caller asks for, instead of the regulation's; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? OwnLevel { get; init => field = value is Pressure given ? Held.Kilopascals(CallersLevels.Checked(given, nameof(OwnLevel))) : null; }

    /// <summary>Where <see cref="OwnLevel"/> comes from, for the record.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    public string OwnLevelSource { get; init => field = Require.NotEmpty(value, nameof(OwnLevelSource)); } = "level given by the caller";

    /// <summary>The air at the place: levels in psig are relative to it, and readings are told on its gauges.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public Barometer Barometer { get; init => field = Require.NotNull(value, nameof(Barometer)); } = Barometer.Standard;

    /// <summary>Appliance and purpose.</summary>
    public override string ToString() => $"{Appliance} appliance, {Purpose}";
}
