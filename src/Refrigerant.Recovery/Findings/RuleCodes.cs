using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>What findings on levels, refrigerants and oil service are called.</summary>
internal static class RuleCodes
{
    public static readonly FindingCode ClassSet = new(
        "level-class-set", FindingSubject.EvacuationLevel, "the caller set another pressure class than that by the letter");

    public static readonly FindingCode ClassByCustom = new(
        "level-class-by-custom", FindingSubject.EvacuationLevel, "the pressure class by the letter is not the one that the trade uses");

    public static readonly FindingCode ClassUncertain = new(
        "level-class-uncertain", FindingSubject.EvacuationLevel, "the pressure is so near to the border of a pressure class that the model cannot tell on which side it is");

    public static readonly FindingCode LevelAboveAir = new(
        "level-above-air", FindingSubject.VacuumAndAltitude, "the required level is above the air at the place");

    public static readonly FindingCode LevelOnGauge = new(
        "level-on-this-gauge", FindingSubject.VacuumAndAltitude, "a vacuum gauge at the place shows another vacuum at the level than the regulation words");

    public static readonly FindingCode LeakingParts = new(
        "level-of-leaking-parts", FindingSubject.Leak, "a lowest attainable level was given for parts that leak");

    public static readonly FindingCode LeakAboveAir = new(
        "level-leak-above-air", FindingSubject.Leak, "the lowest attainable level given is above 0 psig");

    public static readonly FindingCode Pressurize = new(
        "level-pressurize-first", FindingSubject.Compliance, "a low-pressure appliance is opened for a repair that is not major");

    public static readonly FindingCode DisposalRecord = new(
        "disposal-record", FindingSubject.Compliance, "an appliance with a charge between 5 and 50 lb is disposed of");

    public static readonly FindingCode SystemDependent = new(
        "machine-system-dependent", FindingSubject.Machine, "system-dependent equipment would be used on a charge above 15 lb");

    public static readonly FindingCode MaybeSmall = new(
        "level-maybe-small-appliance", FindingSubject.Compliance, "the charge is that of a small appliance, but the appliance was not called one");

    public static readonly FindingCode VentingExempt = new(
        "venting-exempt", FindingSubject.Compliance, "the refrigerant is exempt from the venting prohibition in some or all uses");

    public static readonly FindingCode NoLevelFigure = new(
        "level-no-figure", FindingSubject.EvacuationLevel, "the rules of the place state no pressure");

    public static readonly FindingCode NormalTemperature = new(
        "level-normal-temperature", FindingSubject.EvacuationLevel, "the level depends on a normal temperature that the ordinance does not state");

    public static readonly FindingCode VolumeUnknown = new(
        "level-volume-unknown", FindingSubject.EvacuationLevel, "the level depends on the internal volume, which was not given");

    public static readonly FindingCode LevelCondition = new(
        "level-condition", FindingSubject.EvacuationLevel, "the place says at which temperature the level holds, for how long it must stand, or when it does not apply");

    public static readonly FindingCode GroupUnknown = new(
        "refrigerant-group-unknown", FindingSubject.Safety, "no safety group was found for the refrigerant");

    public static readonly FindingCode Burns = new(
        "refrigerant-burns", FindingSubject.Flammability, "the safety group says that the refrigerant burns");

    public static readonly FindingCode Toxic = new(
        "refrigerant-toxic", FindingSubject.Toxicity, "the safety group says that the refrigerant is of higher toxicity");

    public static readonly FindingCode AttacksCopper = new(
        "refrigerant-attacks-copper", FindingSubject.Machine, "the refrigerant is ammonia, or a blend with it");

    public static readonly FindingCode WouldMix = new("refrigerants-would-mix", FindingSubject.Mixing, "two refrigerants would meet");

    public static readonly FindingCode PurgeBeforeFlame = new(
        "purge-before-flame", FindingSubject.Flammability, "nitrogen must thin what is left of a refrigerant that burns before a flame is lit");

    public static readonly FindingCode FlammabilityUnknown = new(
        "flammability-unknown", FindingSubject.Flammability, "no lower flammability limit was found, so that nothing is computed from it");

    public static readonly FindingCode RemainderBurns = new(
        "remainder-may-burn", FindingSubject.Flammability, "what is left of a blend holds components that burn, and is not proved not to burn");

    public static readonly FindingCode OilUnknown = new(
        "oil-unknown", FindingSubject.Oil, "which oils are customary with the refrigerant is not known here");

    public static readonly FindingCode OilNotCustomary = new(
        "oil-not-customary", FindingSubject.Oil, "the oil is not one in customary use with the refrigerant");

    public static readonly FindingCode OilUnderPressure = new(
        "oil-under-pressure", FindingSubject.Oil, "more than 5 psig stands over oil that is to be drained");

    public static readonly FindingCode OilNearSaturation = new(
        "oil-near-saturation", FindingSubject.Oil, "the oil is so near saturation that it may hold more than estimated");

    public static readonly FindingCode OilTakesRefrigerant = new(
        "oil-takes-refrigerant", FindingSubject.Oil, "oil that is drained takes dissolved refrigerant with it");

    public static readonly FindingCode SameRefrigerant = new(
        "change-same-refrigerant", FindingSubject.Mixing, "the next refrigerant is the one of the last job");

    public static readonly FindingCode CarriesOver = new(
        "change-carries-over", FindingSubject.Mixing, "the machine carries more of the last refrigerant over than the purity standard allows");

    public static readonly FindingCode MachineOilNotGiven = new(
        "change-oil-not-given", FindingSubject.Oil, "the oil of the machine was not given");

    public static readonly FindingCode NoCommonOil = new(
        "change-no-common-oil", FindingSubject.Oil, "the two refrigerants have no oil in common by customary use");

    public static readonly FindingCode ChangeEstimate = new(
        "change-estimate", FindingSubject.Estimate, "always, with a change of refrigerant: what the estimate takes for granted");

    public static readonly FindingCode PushAbovePart = new(
        "oil-push-above-part", FindingSubject.Oil, "the pressure that pushes oil is above what the weakest part stands");

    public static readonly FindingCode PushDoesNotRun = new(
        "oil-push-does-not-run", FindingSubject.Oil, "the oil does not run out at the pressure given");

    public static readonly FindingCode PushAboveOilChange = new(
        "oil-push-above-5-psig", FindingSubject.Oil, "the pressure that pushes oil is above that of an oil change with refrigerant in the appliance");

    public static readonly FindingCode PushWithNitrogen = new(
        "oil-push-nitrogen", FindingSubject.Oil, "oil is pushed by gas");

    public static readonly FindingCode PushPartUnknown = new(
        "oil-push-part-unknown", FindingSubject.Oil, "what the weakest part stands was not given");

    public static readonly FindingCode PushFlow = new(
        "oil-push-flow", FindingSubject.Estimate, "the oil does not flow laminar");

    public static readonly FindingCode IdentifierDecides = new(
        "identify-no-promise", FindingSubject.Estimate, "always, when refrigerants are held against a pressure and a temperature");

    public static readonly FindingCode NoneFits = new(
        "identify-none-fits", FindingSubject.NonCondensables, "no refrigerant held against the readings fits them");

    public static readonly FindingCode SeveralFit = new(
        "identify-several-fit", FindingSubject.Mixing, "more than one refrigerant fits the readings");

    public static readonly FindingCode CandidateDangerous = new(
        "identify-dangerous-candidate", FindingSubject.Safety, "a refrigerant that fits burns, is toxic, or has no safety group that was found");

    public static IReadOnlyList<FindingCode> All { get; } =
    [
        ClassSet, ClassByCustom, ClassUncertain, LevelAboveAir, LevelOnGauge, LeakingParts, LeakAboveAir, Pressurize, DisposalRecord,
        SystemDependent, MaybeSmall, VentingExempt, NoLevelFigure, NormalTemperature, VolumeUnknown, LevelCondition, GroupUnknown, Burns, Toxic, AttacksCopper,
        WouldMix, PurgeBeforeFlame, FlammabilityUnknown, RemainderBurns, OilUnknown, OilNotCustomary, OilUnderPressure, OilNearSaturation,
        OilTakesRefrigerant, SameRefrigerant, CarriesOver, MachineOilNotGiven, NoCommonOil, ChangeEstimate, PushAbovePart, PushDoesNotRun,
        PushAboveOilChange, PushWithNitrogen, PushPartUnknown, PushFlow, IdentifierDecides, NoneFits, SeveralFit, CandidateDangerous,
    ];
}
