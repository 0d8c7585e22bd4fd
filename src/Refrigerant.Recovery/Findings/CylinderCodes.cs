using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>What findings on cylinders are called.</summary>
internal static class CylinderCodes
{
    public static readonly FindingCode OverLimit = new(
        "cylinder-over-limit", FindingSubject.CylinderOverfill, "a cylinder holds more than the rule that governs allows");

    public static readonly FindingCode WaterCapacityRule = new(
        "cylinder-water-capacity-rule", FindingSubject.CylinderOverfill, "80 % of the water capacity, without specific gravity, would be more than the limit");

    public static readonly FindingCode NoRoom = new(
        "cylinder-no-room", FindingSubject.CylinderCapacity, "cylinders are counted of which each is at its limit already");

    public static readonly FindingCode NoFillFigure = new(
        "cylinder-no-fill-figure", FindingSubject.Compliance, "no filling figure of the place is known here, so that a bound of the library's own is used");

    public static readonly FindingCode RuleOutsideEquation = new(
        "cylinder-rule-not-computed", FindingSubject.Estimate, "a filling rule gives no mass because its temperature or pressure is outside the range of the refrigerant's equation");

    public static readonly FindingCode LiquidFullWhenWarm = new(
        "cylinder-liquid-full-when-warm", FindingSubject.CylinderOverfill, "filled to the limit of the place, the cylinder is full of liquid below 55 °C");

    public static readonly FindingCode FigureFromMemory = new(
        "cylinder-figure-from-memory", FindingSubject.Estimate, "the figure that governs was not read in the text it is from");

    public static readonly FindingCode EstimatedProperties = new(
        "cylinder-estimated-properties", FindingSubject.Estimate, "the blend's properties, and with them the limit, rest on estimated mixing parameters");

    public static readonly FindingCode Weigh = new("cylinder-weigh", FindingSubject.Safety, "always, with a filling limit");

    public static readonly FindingCode NoMark = new(
        "cylinder-no-mark", FindingSubject.CylinderFitness, "the specification of the cylinder is not given");

    public static readonly FindingCode MarksOdd = new(
        "cylinder-marks-odd", FindingSubject.CylinderFitness, "tare weight and water capacity do not go together, as where one is in pounds and the other in kilograms");

    public static readonly FindingCode HotAtStart = new("cylinder-hot-at-start", FindingSubject.CylinderFitness, "a cylinder is told to be warmer than 52 °C before it is connected");

    public static readonly FindingCode NonRefillable = new(
        "cylinder-non-refillable", FindingSubject.CylinderFitness, "the mark is that of a non-refillable cylinder");

    public static readonly FindingCode MarkContradicts = new(
        "cylinder-mark-contradicts", FindingSubject.CylinderFitness, "the service pressure given is not the one marked");

    public static readonly FindingCode NotListedType = new(
        "cylinder-type-not-listed", FindingSubject.CylinderFitness, "the specification is not among those listed for the refrigerant");

    public static readonly FindingCode BelowListedPressure = new(
        "cylinder-below-listed-pressure", FindingSubject.CylinderPressure, "the service pressure is below the lowest one listed for the refrigerant");

    public static readonly FindingCode RequalificationUnknown = new(
        "cylinder-requalification-unknown", FindingSubject.CylinderFitness, "the requalification date, or today's, is not given");

    public static readonly FindingCode RequalificationOverdue = new(
        "cylinder-requalification-overdue", FindingSubject.CylinderFitness, "the requalification date is past");

    public static readonly FindingCode OtherRefrigerant = new(
        "cylinder-other-refrigerant", FindingSubject.Mixing, "the cylinder holds or last held another refrigerant");

    public static readonly FindingCode UnnamedContent = new(
        "cylinder-unnamed-content", FindingSubject.Mixing, "the cylinder holds a refrigerant that is not named");

    public static readonly FindingCode TooWeak = new(
        "cylinder-too-weak", FindingSubject.CylinderPressure, "liquid of the refrigerant has more pressure, when warm, than the rule of the place allows the cylinder");

    public static readonly FindingCode WithinAllowance = new(
        "cylinder-within-allowance", FindingSubject.CylinderPressure, "the pressure at 65 °C is above the test pressure, by less than the 1 bar that P200 allows and 49 CFR does not");

    public static readonly FindingCode NoTestOfAir = new(
        "air-test-below-saturation", FindingSubject.NonCondensables, "the pressure is below saturation, so that the test for air tells nothing");

    public static readonly FindingCode AirNotTold = new(
        "air-not-told", FindingSubject.NonCondensables, "the readings are not accurate enough to tell whether there is too much air");

    public static readonly FindingCode Air = new(
        "air-above-limit", FindingSubject.NonCondensables, "there is more air, or other gas, in the vapor than the purity standard allows");

    public static readonly FindingCode AirWithoutLimit = new(
        "air-without-limit", FindingSubject.NonCondensables, "the purity standard has no limit on air for the refrigerant");

    public static readonly FindingCode TrappedLiquid = new(
        "trapped-liquid", FindingSubject.TrappedLiquid, "liquid is shut in between two valves");

    public static IReadOnlyList<FindingCode> All { get; } =
    [
        OverLimit, WaterCapacityRule, NoRoom, NoFillFigure, RuleOutsideEquation, LiquidFullWhenWarm, FigureFromMemory, EstimatedProperties, Weigh,
        NoMark, MarksOdd, HotAtStart, NonRefillable, MarkContradicts, NotListedType, BelowListedPressure, RequalificationUnknown, RequalificationOverdue,
        OtherRefrigerant, UnnamedContent, TooWeak, WithinAllowance, NoTestOfAir, AirNotTold, Air, AirWithoutLimit, TrappedLiquid,
    ];
}
