using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>The codes of what a whole plan finds.</summary>
internal static class PlanCodes
{
    public static readonly FindingCode LevelReached = new("level-reached", FindingSubject.EvacuationLevel, "the plan comes to the required level, and holds it where a hold is asked for");
    public static readonly FindingCode ShareRecovered = new("share-recovered", FindingSubject.EvacuationLevel, "the share of the charge that the rule asks for instead of a level is recovered, and the level is not reached");
    public static readonly FindingCode NothingToRecover = new("nothing-to-recover", FindingSubject.EvacuationLevel, "before an oil change the appliance stands at the level already");
    public static readonly FindingCode LevelNotReached = new("level-not-reached", FindingSubject.EvacuationLevel, "the plan does not come to the required level");
    public static readonly FindingCode LevelNotHeld = new("level-not-held", FindingSubject.EvacuationLevel, "the plan comes to the required level, but the pressure comes back above it");
    public static readonly FindingCode LevelOverLiquid = new("level-over-liquid", FindingSubject.LiquidLeftBehind, "the gauge shows the required level, but liquid is left");
    public static readonly FindingCode PullPastLevel = new("pull-past-level", FindingSubject.EvacuationLevel, "the pull goes on past the level, so that one hold passes");
    public static readonly FindingCode LevelMetAtStart = new("level-met-at-start", FindingSubject.EvacuationLevel, "the appliance stands at the level or below it when the job begins");
    public static readonly FindingCode ComesBackWarm = new("comes-back-warm", FindingSubject.EvacuationLevel, "shut for three hours after the hold, the appliance would stand 10 kPa (3 inHg) or more above the level");
    public static readonly FindingCode StillAboveAir = new("still-above-air", FindingSubject.EvacuationLevel, "at the end the gauge still shows more than the air, and the appliance is to be opened");
    public static readonly FindingCode GaugeAtAltitude = new("gauge-at-altitude", FindingSubject.VacuumAndAltitude, "the air at the place differs by more than 2 % from the standard atmosphere");
    public static readonly FindingCode HiddenSection = new("hidden-section", FindingSubject.LiquidLeftBehind, "a part of the appliance that the gauge does not see holds liquid, or stands above the level");

    public static readonly FindingCode NoCylinder = new("no-cylinder", FindingSubject.CylinderCapacity, "no cylinder is on hand");
    public static readonly FindingCode CylinderRoomMissing = new("cylinder-room-missing", FindingSubject.CylinderCapacity, "the cylinders on hand do not hold what is to be recovered");
    public static readonly FindingCode CoolCylinder = new("cool-cylinder", FindingSubject.CylinderPressure, "the cylinder comes to a limit of pressure and is cooled, rested or changed");
    public static readonly FindingCode ThrottleInlet = new("throttle-inlet", FindingSubject.CylinderPressure, "the inlet is throttled so that the discharge pressure stays below the cut-out");
    public static readonly FindingCode CylinderAboveService = new("cylinder-above-service", FindingSubject.CylinderPressure, "a cylinder ends above its marked service pressure");
    public static readonly FindingCode CylinderHot = new("cylinder-hot", FindingSubject.CylinderPressure, "the content of a cylinder comes above 52 °C (125 °F)");
    public static readonly FindingCode CylinderFullOfLiquid = new("cylinder-full-of-liquid", FindingSubject.CylinderOverfill, "what a cylinder holds fills it with liquid at the temperature of the air");
    public static readonly FindingCode CylinderMarksUnchecked = new("cylinder-marks-unchecked", FindingSubject.CylinderFitness, "specification or requalification date of a cylinder is not given");

    public static readonly FindingCode PushPullSiphons = new("push-pull-siphons", FindingSubject.PushPull, "push-pull is used");
    public static readonly FindingCode PushPullNotUsed = new("push-pull-not-used", FindingSubject.PushPull, "push-pull is allowed but not used, with ports and hoses that match");
    public static readonly FindingCode PushPullThrottled = new("push-pull-throttled", FindingSubject.PushPull, "push-pull comes near the appliance's design pressure and is throttled to stay below it");
    public static readonly FindingCode DesignPressureUnknown = new("design-pressure-unknown", FindingSubject.PushPull, "push-pull raises the pressure of an appliance whose design pressure is not given");
    public static readonly FindingCode HosesSlow = new("hoses-slow", FindingSubject.HoseLimited, "hoses and valve cores let less than 80 % of what the machine could draw through");
    public static readonly FindingCode HoseLeadsNowhere = new("hose-leads-nowhere", FindingSubject.HoseLimited, "a run of hoses is given that has no port, or a port has no hose");
    public static readonly FindingCode KeepLiquid = new("keep-liquid", FindingSubject.Freezing, "the inlet is throttled so that what is liquid in the appliance does not freeze to a solid");
    public static readonly FindingCode TubesFreeze = new("tubes-freeze", FindingSubject.Freezing, "a surface with water behind it comes to 0 °C");
    public static readonly FindingCode HeatSetsPace = new("heat-sets-pace", FindingSubject.EvacuationLevel, "for more than half an hour liquid boils only as fast as heat comes in");
    public static readonly FindingCode WaterSetsPace = new("water-sets-pace", FindingSubject.Freezing, "for more than an hour the pull is throttled so that water in the tubes does not freeze");
    public static readonly FindingCode LongerThanShift = new("longer-than-shift", FindingSubject.EvacuationLevel, "the job takes more than eight hours on site");
    public static readonly FindingCode WarmAppliance = new("warm-appliance", FindingSubject.EvacuationLevel, "heat on the appliance makes the job shorter");

    public static readonly FindingCode MachineNotListed = new("machine-not-listed", FindingSubject.Flammability, "the refrigerant burns, or is a blend with components that burn and no safety group, and the machine is not listed for flammable refrigerants");
    public static readonly FindingCode ApplianceAboveCutout = new("appliance-above-cutout", FindingSubject.Machine, "the appliance stands above the high-pressure cut-out of the machine");
    public static readonly FindingCode MachineHot = new("machine-hot", FindingSubject.Machine, "the discharge gas comes above 121 °C (250 °F), or a thermal cut-out stops the machine");
    public static readonly FindingCode MachineNotCleared = new("machine-not-cleared", FindingSubject.Machine, "the last cylinder is at its limit, and the machine is not cleared into it");
    public static readonly FindingCode ClearMachineFirst = new("clear-machine-first", FindingSubject.Mixing, "the machine still holds its last refrigerant");
    public static readonly FindingCode MachineHeldFlammable = new("machine-held-flammable", FindingSubject.Flammability, "the machine's last refrigerant burns");
    public static readonly FindingCode MachineHeldToxic = new("machine-held-toxic", FindingSubject.Safety, "the machine's last refrigerant is of higher toxicity");
    public static readonly FindingCode ChangeMachineOil = new("change-machine-oil", FindingSubject.Oil, "the machine's oil is due, does not go with the refrigerant, or holds too much of the last one");
    public static readonly FindingCode MachineCarriesOver = new("machine-carries-over", FindingSubject.Mixing, "the machine carries more of its last refrigerant over than the purity standard allows");

    public static readonly FindingCode HeatAssumed = new("heat-assumed", FindingSubject.Estimate, "no heat resistance or no metal is given");
    public static readonly FindingCode OilHolds = new("oil-holds", FindingSubject.Oil, "the appliance's oil holds refrigerant at the end");
    public static readonly FindingCode BlendEstimated = new("blend-estimated", FindingSubject.Estimate, "a pair of a blend's components has no published mixing parameters");

    public static readonly FindingCode HighPressure = new("high-pressure", FindingSubject.CylinderPressure, "a very high-pressure refrigerant, or one near or above its critical point");
    public static readonly FindingCode NearLimit = new("near-limit", FindingSubject.CylinderOverfill, "a cylinder is filled to 80 % of its limit or more");
    public static readonly FindingCode WaterInTubes = new("water-in-tubes", FindingSubject.Freezing, "the appliance has water in its tubes");
    public static readonly FindingCode DisplacesAir = new("displaces-air", FindingSubject.Asphyxiation, "the charge makes 1 m³ of vapor or more");
    public static readonly FindingCode FreezesSkin = new("freezes-skin", FindingSubject.Frostbite, "the refrigerant boils below 0 °C in the air at the place");
    public static readonly FindingCode HotSurface = new("hot-surface", FindingSubject.HotSurface, "the machine's discharge comes above 60 °C");
    public static readonly FindingCode CarbonDioxideHarms = new("carbon-dioxide-harms", FindingSubject.Toxicity, "the refrigerant is R-744");
    public static readonly FindingCode SectionFullOfLiquid = new("section-full-of-liquid", FindingSubject.TrappedLiquid, "a part of the appliance that the gauge does not see is left so full that liquid fills it at 55 °C or below");
    public static readonly FindingCode CylinderTakenEvacuated = new("cylinder-taken-evacuated", FindingSubject.NonCondensables, "an empty cylinder is filled");
    public static readonly FindingCode CylinderDueUnchecked = new("cylinder-due-unchecked", FindingSubject.CylinderFitness, "a cylinder has a date of requalification and the job no day to hold against it");
    public static readonly FindingCode AirDrawnIn = new("air-drawn-in", FindingSubject.NonCondensables, "the appliance comes below the pressure of the air");
    public static readonly FindingCode OilUnderPressure = new("appliance-holds-oil", FindingSubject.Oil, "the appliance holds oil");
    public static readonly FindingCode PlanningFigures = new("planning-figures", FindingSubject.Safety, "always");

    public static readonly IReadOnlyList<FindingCode> All =
    [
        LevelReached, ShareRecovered, NothingToRecover, LevelNotReached, LevelNotHeld, LevelOverLiquid, PullPastLevel, LevelMetAtStart,
        ComesBackWarm, StillAboveAir, GaugeAtAltitude, HiddenSection, NoCylinder, CylinderRoomMissing, CoolCylinder, ThrottleInlet, CylinderAboveService,
        CylinderHot, CylinderFullOfLiquid, CylinderMarksUnchecked, PushPullSiphons, PushPullNotUsed, PushPullThrottled, DesignPressureUnknown,
        HosesSlow, HoseLeadsNowhere, KeepLiquid, TubesFreeze, HeatSetsPace, WaterSetsPace, LongerThanShift, WarmAppliance, MachineNotListed, ApplianceAboveCutout, MachineHot,
        MachineNotCleared, ClearMachineFirst, MachineHeldFlammable, MachineHeldToxic, ChangeMachineOil, MachineCarriesOver,
        HeatAssumed, OilHolds, BlendEstimated,
        HighPressure, NearLimit, WaterInTubes, DisplacesAir, CarbonDioxideHarms, CylinderDueUnchecked, SectionFullOfLiquid, CylinderTakenEvacuated, FreezesSkin, HotSurface, AirDrawnIn, OilUnderPressure, PlanningFigures,
    ];
}
