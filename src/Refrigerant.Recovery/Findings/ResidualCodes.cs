using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>The codes of what is left, by estimate and by record.</summary>
internal static class ResidualCodes
{
    public static readonly FindingCode AboveSaturation = new("left-above-saturation", FindingSubject.LiquidLeftBehind, "the pressure read is above saturation: air, or a wrong reading");
    public static readonly FindingCode MoreThanCharge = new("left-more-than-charge", FindingSubject.Estimate, "the estimate of what is left is more than the charge");
    public static readonly FindingCode AtSaturation = new("left-at-saturation", FindingSubject.LiquidLeftBehind, "the pressure read is that of saturation, and no liquid was told of");
    public static readonly FindingCode NoLiquidCounted = new("left-no-liquid-counted", FindingSubject.LiquidLeftBehind, "no liquid was told of, and the pressure is below saturation");
    public static readonly FindingCode NoRise = new("left-no-rise", FindingSubject.LiquidLeftBehind, "the pressure did not rise during the hold");
    public static readonly FindingCode RiseAsLiquid = new("left-rise-as-liquid", FindingSubject.Leak, "a rise of pressure is taken as liquid that boiled off");
    public static readonly FindingCode LowerBound = new("left-lower-bound", FindingSubject.LiquidLeftBehind, "the pressure came back to saturation, so that what boiled off is a lower bound of the liquid");
    public static readonly FindingCode OilAtLeast = new("left-oil-at-least", FindingSubject.Oil, "the pressure is so near to saturation that only a lower bound of what the oil holds can be told");
    public static readonly FindingCode InOil = new("left-in-oil", FindingSubject.Estimate, "oil holds refrigerant by estimate");
    public static readonly FindingCode MeasuredAboveLevel = new("measured-above-level", FindingSubject.EvacuationLevel, "the gauge reading of a record is above the required level");

    public static readonly FindingCode LevelNotShown = new("level-not-shown", FindingSubject.EvacuationLevel, "a record has weights that do not bear out the level that was planned, and no gauge reading at rest");

    public static readonly FindingCode Falls = new("left-pressure-falls", FindingSubject.Estimate, "the second reading of a rise test is below the first by more than both are off");
    public static readonly FindingCode RecordUnexplained = new("record-unexplained", FindingSubject.Estimate, "more than a tenth of the charge is in no account of a record, or more than the charge was found");

    public static readonly IReadOnlyList<FindingCode> All =
    [
        AboveSaturation, MoreThanCharge, AtSaturation, NoLiquidCounted, NoRise, RiseAsLiquid, LowerBound, OilAtLeast, InOil, MeasuredAboveLevel, LevelNotShown, Falls, RecordUnexplained,
    ];
}
