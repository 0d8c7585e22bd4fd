using System;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What decides the required level. The barometer is the job's own, as the planner takes it.</summary>
internal sealed record EvacuationDocument
{
    public string? Rules { get; init; }

    public ApplianceKind? Appliance { get; init; }

    public OpeningPurpose? Purpose { get; init; }

    public DateTime? MachineManufactured { get; init; }

    public bool? IsMachineSystemDependent { get; init; }

    public bool? CompressorRuns { get; init; }

    public double? LowestAttainableKilopascalsAbsolute { get; init; }

    public double? InternalVolumeLiters { get; init; }

    public double? NormalTemperatureCelsius { get; init; }

    public PressureClass? Class { get; init; }

    public double? OwnLevelKilopascalsAbsolute { get; init; }

    public string? SourceOfOwnLevel { get; init; }

    public static EvacuationDocument? From(EvacuationOptions? options) => options is null ? null : new()
    {
        Rules = options.Rules == RuleSet.UnitedStates ? null : options.Rules.Place,
        Appliance = options.Appliance,
        Purpose = options.Purpose,
        MachineManufactured = options.MachineManufactured,
        IsMachineSystemDependent = options.IsMachineSystemDependent,
        CompressorRuns = options.CompressorRuns,
        LowestAttainableKilopascalsAbsolute = options.LowestAttainable is Pressure lowest ? Plain.Kilopascals(lowest) : null,
        InternalVolumeLiters = options.InternalVolume is Volume volume ? Plain.Liters(volume) : null,
        NormalTemperatureCelsius = options.NormalTemperature is Temperature normal ? Plain.Celsius(normal) : null,
        Class = options.Class,
        OwnLevelKilopascalsAbsolute = options.OwnLevel is Pressure own ? Plain.Kilopascals(own) : null,
        SourceOfOwnLevel = options.OwnLevelSource,
    };

    public EvacuationOptions ToOptions(DocumentNode node)
    {
        EvacuationOptions options = new();
        return node.Build(() => options with
        {
            Rules = Rules is string place ? Set(place) : options.Rules,
            Appliance = Appliance ?? options.Appliance,
            Purpose = Purpose ?? options.Purpose,
            MachineManufactured = MachineManufactured,
            IsMachineSystemDependent = IsMachineSystemDependent ?? options.IsMachineSystemDependent,
            CompressorRuns = CompressorRuns ?? options.CompressorRuns,
            LowestAttainable = LowestAttainableKilopascalsAbsolute is double lowest ? Plain.PressureOf(lowest) : null,
            InternalVolume = InternalVolumeLiters is double liters ? Plain.VolumeOf(liters) : null,
            NormalTemperature = NormalTemperatureCelsius is double celsius ? Plain.TemperatureOf(celsius) : null,
            Class = Class,
            OwnLevel = OwnLevelKilopascalsAbsolute is double own ? Plain.PressureOf(own) : null,
            OwnLevelSource = SourceOfOwnLevel ?? options.OwnLevelSource,
        });
    }

    private static RuleSet Set(string place) => RuleSet.Find(place) ?? throw new ArgumentException(
        $"{nameof(Rules)} is \"{place}\"; it must be one of {string.Join("; ", RuleSet.All)}.", nameof(Rules));
}
