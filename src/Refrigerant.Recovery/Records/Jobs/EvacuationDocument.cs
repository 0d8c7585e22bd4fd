using System;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What decides the required level.</summary>
internal sealed record EvacuationDocument
{
    public const string OneOf = "give rules or ownRules, not both.";

    /// <summary>The place whose rules hold, such as "Japan"; the United States where it is left out. Give this or ownRules.</summary>
    public string? Rules { get; init; }

    /// <summary>Rules of one's own. Give this or rules.</summary>
    public OwnRulesDocument? OwnRules { get; init; }

    /// <summary>The kind of appliance.</summary>
    public ApplianceKind? Appliance { get; init; }

    /// <summary>Why it is opened.</summary>
    public OpeningPurpose? Purpose { get; init; }

    /// <summary>The day on which the recovery machine was made or imported; the machine's manufactureDate comes first; left out is taken as on or after 15 November 1993, the stricter case.</summary>
    public DateTime? MachineManufactured { get; init; }

    /// <summary>Whether the recovery machine needs the appliance's own compressor or pressure to work (system-dependent).</summary>
    public bool? IsMachineSystemDependent { get; init; }

    /// <summary>Whether the compressor of a small appliance runs during recovery. True by default, the stricter case.</summary>
    public bool? CompressorRuns { get; init; }

    /// <summary>For a leaking part: the lowest absolute pressure that is attainable without substantial contamination of the refrigerant; left out where nothing leaks.</summary>
    public double? LowestAttainableKilopascalsAbsolute { get; init; }

    /// <summary>Internal volume of the appliance, on which the European level depends.</summary>
    public double? InternalVolumeLiters { get; init; }

    /// <summary>The normal temperature of Japan's ordinance.</summary>
    public double? NormalTemperatureCelsius { get; init; }

    /// <summary>A class that overrides the computed one; left out for none.</summary>
    public PressureClass? Class { get; init; }

    /// <summary>An absolute pressure that another jurisdiction, a contract or the caller asks for, instead of the regulation's; left out for none.</summary>
    public double? OwnLevelKilopascalsAbsolute { get; init; }

    /// <summary>Where the own level comes from, for the record.</summary>
    public string? SourceOfOwnLevel { get; init; }

    /// <summary>The air that the level is told against where it is asked for by itself; a plan takes the job's. The standard atmosphere by default.</summary>
    public BarometerDocument? Barometer { get; init; }

    public static EvacuationDocument? From(EvacuationOptions? options) => options is null ? null : new()
    {
        Rules = options.Rules.Own is null && options.Rules != RuleSet.UnitedStates ? options.Rules.Place : null,
        OwnRules = OwnRulesDocument.From(options.Rules),
        Appliance = options.Appliance,
        Purpose = options.Purpose,
        MachineManufactured = options.MachineManufactured,
        IsMachineSystemDependent = options.IsMachineSystemDependent,
        CompressorRuns = options.CompressorRuns,
        LowestAttainableKilopascalsAbsolute = options.LowestAttainable is Pressure lowest ? Exact.Kilopascals(lowest) : null,
        InternalVolumeLiters = options.InternalVolume is Volume volume ? Exact.Liters(volume) : null,
        NormalTemperatureCelsius = options.NormalTemperature is Temperature normal ? Exact.Celsius(normal) : null,
        Class = options.Class,
        OwnLevelKilopascalsAbsolute = options.OwnLevel is Pressure own ? Exact.Kilopascals(own) : null,
        SourceOfOwnLevel = options.OwnLevelSource,
        Barometer = BarometerDocument.From(options.Barometer),
    };

    public EvacuationOptions ToOptions(DocumentNode node)
    {
        EvacuationOptions options = new();
        return node.Build(() => options with
        {
            Rules = Find(node) ?? options.Rules,
            Appliance = Appliance ?? options.Appliance,
            Purpose = Purpose ?? options.Purpose,
            MachineManufactured = MachineManufactured,
            IsMachineSystemDependent = IsMachineSystemDependent ?? options.IsMachineSystemDependent,
            CompressorRuns = CompressorRuns ?? options.CompressorRuns,
            LowestAttainable = LowestAttainableKilopascalsAbsolute is double lowest ? Exact.PressureOf(lowest) : null,
            InternalVolume = InternalVolumeLiters is double liters ? Exact.VolumeOf(liters) : null,
            NormalTemperature = NormalTemperatureCelsius is double celsius ? Exact.TemperatureOf(celsius) : null,
            Class = Class,
            OwnLevel = OwnLevelKilopascalsAbsolute is double own ? Exact.PressureOf(own) : null,
            OwnLevelSource = SourceOfOwnLevel ?? options.OwnLevelSource,
            Barometer = Barometer?.ToBarometer(node.Member("barometer")) ?? options.Barometer,
        });
    }

    private RuleSet? Find(DocumentNode node)
    {
        if (OwnRules is not null)
        {
            return Rules is null ? OwnRules.ToRules(node.Member("ownRules")) : throw node.Wrong(OneOf);
        }

        return Rules is null ? null : RuleSet.Find(Rules) ?? throw new ArgumentException(
            $"{nameof(Rules)} is \"{Rules}\"; it must be one of {string.Join("; ", RuleSet.All)}.", nameof(Rules));
    }
}
