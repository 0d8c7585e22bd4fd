using System.Collections.Generic;

namespace Refrigerant.Recovery.Findings;

/// <summary>The codes of what a single stage finds: sweep, push-pull, liquid and vapor recovery, hold, rise test, rating test, drift of a blend.</summary>
internal static class StageCodes
{
    public static readonly FindingCode CylinderFull = new("stage-cylinder-full", FindingSubject.CylinderCapacity, "the cylinder comes to its limit before a stage is done");
    public static readonly FindingCode SiphonsAtLimit = new("stage-siphons-at-limit", FindingSubject.CylinderOverfill, "the cylinder comes to its limit while liquid is pushed into it");
    public static readonly FindingCode HighPressureCutout = new("stage-high-pressure-cutout", FindingSubject.CylinderPressure, "the high-pressure cut-out ends a stage");
    public static readonly FindingCode CylinderPressure = new("stage-cylinder-pressure", FindingSubject.CylinderPressure, "the cylinder comes to the pressure that it is built to see at work");
    public static readonly FindingCode DesignPressure = new("stage-design-pressure", FindingSubject.PushPull, "the appliance comes to the pressure that it is built for, or its relief device opens at");
    public static readonly FindingCode ThermalCutout = new("stage-thermal-cutout", FindingSubject.Machine, "the thermal cut-out ends a stage");
    public static readonly FindingCode DeepestVacuum = new("stage-deepest-vacuum", FindingSubject.EvacuationLevel, "the machine moves next to nothing any more before the level");
    public static readonly FindingCode LowPressureSwitch = new("stage-low-pressure-switch", FindingSubject.Machine, "the low-pressure switch ends a stage");
    public static readonly FindingCode TimeOver = new("stage-time-over", FindingSubject.EvacuationLevel, "the time allowed is over before a stage is done");
    public static readonly FindingCode DryIce = new("dry-ice", FindingSubject.Freezing, "carbon dioxide comes, or can come, to its triple point");
    public static readonly FindingCode OutOfRange = new("stage-out-of-range", FindingSubject.EvacuationLevel, "a stage ends where the refrigerant leaves the range of its equation of state");
    public static readonly FindingCode CylinderOutOfRange = new("cylinder-out-of-range", FindingSubject.CylinderCapacity, "a stage ends where the content of the cylinder leaves the range of the refrigerant's equation");
    public static readonly FindingCode StepLimit = new("stage-step-limit", FindingSubject.Estimate, "the integration of a stage comes to its bound on steps");
    public static readonly FindingCode OverColdLiquid = new("stage-over-cold-liquid", FindingSubject.LiquidLeftBehind, "a pull ends at its pressure over cold liquid");
    public static readonly FindingCode LiquidEndsEarly = new("liquid-ends-early", FindingSubject.Machine, "liquid through the machine ends before the liquid in reach is gone");
    public static readonly FindingCode PushEndsEarly = new("push-pull-ends-early", FindingSubject.PushPull, "push-pull ends before the liquid in reach is gone");
    public static readonly FindingCode FlashesInCylinder = new("flashes-in-cylinder", FindingSubject.PushPull, "liquid flashes in an evacuated cylinder to below the range of the refrigerant's equation");
    public static readonly FindingCode PushHardlyPays = new("push-pull-hardly-pays", FindingSubject.PushPull, "push-pull is asked for with less than 15 lb of liquid");
    public static readonly FindingCode LiquidFlashes = new("liquid-flashes", FindingSubject.Flashing, "the cylinder is more than 2 % below the saturation pressure of the liquid that flows to it");
    public static readonly FindingCode ViscosityEstimated = new("viscosity-estimated", FindingSubject.Estimate, "the refrigerant's viscosity has no published correlation here");
    public static readonly FindingCode SweepStalls = new("sweep-stalls", FindingSubject.NonCondensables, "the machine cannot sweep the hoses to the pressure asked for");
    public static readonly FindingCode AirFromHoses = new("air-from-hoses", FindingSubject.NonCondensables, "always, with a sweep of hoses");
    public static readonly FindingCode HoldLiquid = new("hold-over-liquid", FindingSubject.LiquidLeftBehind, "liquid is left at the end of a hold");
    public static readonly FindingCode HoldRise = new("hold-rise", FindingSubject.EvacuationLevel, "always, with a hold that ends without liquid");
    public static readonly FindingCode HoldLiquidFull = new("hold-liquid-full", FindingSubject.TrappedLiquid, "the appliance or the cylinder is full of liquid, or nearly, in a hold");
    public static readonly FindingCode RiseForeignGas = new("rise-foreign-gas", FindingSubject.NonCondensables, "a rise test reads more than saturation");
    public static readonly FindingCode RiseLiquid = new("rise-liquid", FindingSubject.LiquidLeftBehind, "a rise test reads saturation");
    public static readonly FindingCode RiseVapor = new("rise-vapor-only", FindingSubject.EvacuationLevel, "a rise test reads less than saturation");
    public static readonly FindingCode RiseFalls = new("rise-falls", FindingSubject.Leak, "a pressure fell below what the gas has by its temperature alone");
    public static readonly FindingCode RiseUnexplained = new("rise-unexplained", FindingSubject.Leak, "a pressure rose more than the warming of the gas explains");
    public static readonly FindingCode RatingContradicts = new("rating-contradicts", FindingSubject.Machine, "no machine gives back the published ratings");
    public static readonly FindingCode RatingDeviates = new("rating-deviates", FindingSubject.Machine, "always, with a published rating that was not fitted");
    public static readonly FindingCode BlendDrifts = new("blend-drifts", FindingSubject.Fractionation, "vapor is drawn off a blend whose composition is followed");
    public static readonly FindingCode BlendMayBurn = new("blend-may-burn", FindingSubject.Flammability, "components that burn become more of a blend than as charged");

    public static readonly IReadOnlyList<FindingCode> All =
    [
        CylinderFull, SiphonsAtLimit, HighPressureCutout, CylinderPressure, DesignPressure, ThermalCutout, DeepestVacuum, LowPressureSwitch, TimeOver, DryIce, OutOfRange, CylinderOutOfRange, StepLimit, OverColdLiquid,
        LiquidEndsEarly, PushEndsEarly, FlashesInCylinder, PushHardlyPays, LiquidFlashes, ViscosityEstimated, SweepStalls, AirFromHoses, HoldLiquid, HoldRise, HoldLiquidFull,
        RiseForeignGas, RiseLiquid, RiseVapor, RiseFalls, RiseUnexplained, RatingContradicts, RatingDeviates, BlendDrifts, BlendMayBurn,
    ];
}
