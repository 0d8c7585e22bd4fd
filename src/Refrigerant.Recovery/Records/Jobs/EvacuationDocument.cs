using System;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What decides the required level. The barometer is the job's own, as the planner takes it.</summary>
internal sealed record EvacuationDocument
{
    public ApplianceKind? Appliance { get; init; }

    public OpeningPurpose? Purpose { get; init; }

    public DateTime? MachineManufactured { get; init; }

    public bool? IsMachineSystemDependent { get; init; }

    public bool? CompressorRuns { get; init; }

    public double? LowestAttainableKilopascalsAbsolute { get; init; }

    public PressureClass? Class { get; init; }

    public double? OwnLevelKilopascalsAbsolute { get; init; }

    public string? SourceOfOwnLevel { get; init; }

    public static EvacuationDocument? From(EvacuationOptions? options) => options is null ? null : new()
    {
        Appliance = options.Appliance,
        Purpose = options.Purpose,
        MachineManufactured = options.MachineManufactured,
        IsMachineSystemDependent = options.IsMachineSystemDependent,
        CompressorRuns = options.CompressorRuns,
        LowestAttainableKilopascalsAbsolute = options.LowestAttainable is Pressure lowest ? Plain.Kilopascals(lowest) : null,
        Class = options.Class,
        OwnLevelKilopascalsAbsolute = options.OwnLevel is Pressure own ? Plain.Kilopascals(own) : null,
        SourceOfOwnLevel = options.OwnLevelSource,
    };

    public EvacuationOptions ToOptions(DocumentNode node)
    {
        EvacuationOptions options = new();
        return node.Build(() => options with
        {
            Appliance = Appliance ?? options.Appliance,
            Purpose = Purpose ?? options.Purpose,
            MachineManufactured = MachineManufactured,
            IsMachineSystemDependent = IsMachineSystemDependent ?? options.IsMachineSystemDependent,
            CompressorRuns = CompressorRuns ?? options.CompressorRuns,
            LowestAttainable = LowestAttainableKilopascalsAbsolute is double lowest ? Plain.PressureOf(lowest) : null,
            Class = Class,
            OwnLevel = OwnLevelKilopascalsAbsolute is double own ? Plain.PressureOf(own) : null,
            OwnLevelSource = SourceOfOwnLevel ?? options.OwnLevelSource,
        });
    }
}
