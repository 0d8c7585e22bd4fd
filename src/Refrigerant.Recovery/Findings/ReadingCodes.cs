using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>The codes of what is found during the job, in a log of it, and in a fit to the log.</summary>
internal static class ReadingCodes
{
    public static readonly FindingCode CylinderFillsFirst = new("job-cylinder-fills-first", FindingSubject.CylinderOverfill, "the cylinder is at its limit, or fills before the level with a probability of 30 % or more");
    public static readonly FindingCode TimeUnused = new("job-time-unused", FindingSubject.Readings, "a reading was left out because its time is no number, not later than the one before, or far ahead of what the scale gained");
    public static readonly FindingCode GaugeUnused = new("job-gauge-unused", FindingSubject.Readings, "the gauge was left out: no number, out of range, stuck, shut off, or against everything else");
    public static readonly FindingCode WeightUnused = new("job-weight-unused", FindingSubject.Readings, "the scale was left out: no number, out of range, stuck, or jumped");
    public static readonly FindingCode OtherUnused = new("job-sensor-unused", FindingSubject.Readings, "a temperature or the discharge pressure was left out: no number, or out of range");
    public static readonly FindingCode OilNotTold = new("job-oil-not-told", FindingSubject.Oil, "no oil of the appliance is told of");
    public static readonly FindingCode ColdPool = new("job-cold-pool", FindingSubject.LiquidLeftBehind, "liquid is left and far colder than the air");
    public static readonly FindingCode MachineWeak = new("job-machine-weak", FindingSubject.Machine, "the scale gains less than the machine should deliver");
    public static readonly FindingCode HoseBlocked = new("job-hose-blocked", FindingSubject.HoseLimited, "gauge and scale both fall behind");
    public static readonly FindingCode ValveClosed = new("job-valve-closed", FindingSubject.HoseLimited, "the machine has emptied its hose and nothing comes");
    public static readonly FindingCode ScaleDisturbed = new("job-scale-disturbed", FindingSubject.Readings, "something other than refrigerant moves the scale, or it is stuck");
    public static readonly FindingCode GaugeDisagrees = new("job-gauge-disagrees", FindingSubject.Readings, "the gauge does not agree with the refrigerant at its temperature, or with everything else");
    public static readonly FindingCode AirComesIn = new("job-air-comes-in", FindingSubject.NonCondensables, "air seems to come in below the atmosphere");
    public static readonly FindingCode LevelOutOfReach = new("job-level-out-of-reach", FindingSubject.EvacuationLevel, "as things are, the level is not reached within four hours");
    public static readonly FindingCode RestTells = new("job-rest-tells", FindingSubject.Readings, "a rest would tell whether liquid is left");
    public static readonly FindingCode CylinderChanged = new("job-cylinder-changed", FindingSubject.CylinderCapacity, "another cylinder stands on the scale");
    public static readonly FindingCode TareChanged = new("job-tare-changed", FindingSubject.Readings, "the scale was set to another zero");
    public static readonly FindingCode LiquidMoves = new("job-liquid-moves", FindingSubject.PushPull, "liquid is being moved");
    public static readonly FindingCode ChargeDisagrees = new("job-charge-disagrees", FindingSubject.Readings, "the readings do not agree with the charge that was told");

    public static readonly FindingCode GaugeAbsolute = new("job-gauge-absolute", FindingSubject.Readings, "the gauge seems to show absolute pressure");
    public static readonly FindingCode WeightNet = new("job-weight-net", FindingSubject.Readings, "the scale shows the content of the cylinder alone");
    public static readonly FindingCode CylinderUnlikeTold = new("job-cylinder-unlike-told", FindingSubject.CylinderCapacity, "the cylinder on the scale did not weigh at first what was told");
    public static readonly FindingCode CylinderUnknown = new("job-cylinder-unknown", FindingSubject.CylinderOverfill, "the cylinder on the scale is not one of the job's, and its limit is not watched");
    public static readonly FindingCode CylinderLosesWeight = new("job-cylinder-loses-weight", FindingSubject.CylinderCapacity, "the cylinder on the scale loses weight");
    public static readonly FindingCode StandingPressureDisagrees = new("job-standing-pressure-disagrees", FindingSubject.Readings, "the appliance stood at a pressure that its refrigerant has not at the temperature told");

    public static readonly FindingCode LogPressureUnit = new("log-pressure-unit", FindingSubject.Readings, "the pressures of a log fit in another unit, or as absolute ones");
    public static readonly FindingCode LogPressureUnfit = new("log-pressure-unfit", FindingSubject.Readings, "the pressures of a log do not fit the refrigerant at its temperature");
    public static readonly FindingCode LogWeightUnit = new("log-weight-unit", FindingSubject.Readings, "the weights of a log fit as net ones, or gain more than the charge");
    public static readonly FindingCode LogWeightUnfit = new("log-weight-unfit", FindingSubject.Readings, "the first weight of a log is not that of the cylinder with its content");
    public static readonly FindingCode LogCylinderSwapped = new("log-cylinder-swapped", FindingSubject.Readings, "another cylinder comes onto the scale in a log");
    public static readonly FindingCode LogWeightJumps = new("log-weight-jumps", FindingSubject.Readings, "the weight of a log jumps by more than flows");
    public static readonly FindingCode LogGap = new("log-gap", FindingSubject.Readings, "a log has no reading for some minutes");

    public static readonly FindingCode FitUnsettled = new("fit-unsettled", FindingSubject.Readings, "a fit to a log did not come to rest");
    public static readonly FindingCode FitMisses = new("fit-misses", FindingSubject.Readings, "a fitted model misses the readings by more than they are trusted to");
    public static readonly FindingCode FitUntold = new("fit-untold", FindingSubject.Estimate, "a log could not tell a value");
    public static readonly FindingCode FitBeginsLater = new("fit-begins-later", FindingSubject.Readings, "liquid was pushed at the beginning of a log, and the fit begins after it");
    public static readonly FindingCode FitGaugeOff = new("fit-gauge-off", FindingSubject.Readings, "the gauge of a log reads wrong by more than its class allows");

    public static readonly IReadOnlyList<FindingCode> All =
    [
        CylinderFillsFirst, TimeUnused, GaugeUnused, WeightUnused, OtherUnused, OilNotTold, ColdPool, MachineWeak, HoseBlocked, ValveClosed, ScaleDisturbed, GaugeDisagrees, AirComesIn, LevelOutOfReach, RestTells,
        CylinderChanged, TareChanged, LiquidMoves, ChargeDisagrees, GaugeAbsolute, WeightNet, CylinderUnlikeTold, CylinderUnknown, CylinderLosesWeight, StandingPressureDisagrees,
        LogPressureUnit, LogPressureUnfit, LogWeightUnit, LogWeightUnfit, LogCylinderSwapped, LogWeightJumps, LogGap,
        FitUnsettled, FitMisses, FitUntold, FitBeginsLater, FitGaugeOff,
    ];
}
