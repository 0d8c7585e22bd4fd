namespace Refrigerant.Recovery.Findings;

/// <summary>What a <see cref="Finding"/> is about, for programs that act on it; people read its message.</summary>
public enum FindingSubject
{
    /// <summary>A cylinder would be filled past its limit.</summary>
    CylinderOverfill = 0,

    /// <summary>The pressure in a cylinder.</summary>
    CylinderPressure,

    /// <summary>Whether a cylinder may be used at all: its marks, its requalification date, its content so far.</summary>
    CylinderFitness,

    /// <summary>The cylinders on hand do not hold the charge.</summary>
    CylinderCapacity,

    /// <summary>Water in tubes or a surface below freezing.</summary>
    Freezing,

    /// <summary>Liquid that flashes in a hose.</summary>
    Flashing,

    /// <summary>Hoses or valves, not the machine, set the pace.</summary>
    HoseLimited,

    /// <summary>Liquid that stays behind under a vacuum.</summary>
    LiquidLeftBehind,

    /// <summary>The required level and whether it was or can be reached.</summary>
    EvacuationLevel,

    /// <summary>A vacuum read at an altitude where the barometer is below the standard atmosphere.</summary>
    VacuumAndAltitude,

    /// <summary>A refrigerant that burns.</summary>
    Flammability,

    /// <summary>A refrigerant that is toxic.</summary>
    Toxicity,

    /// <summary>Liquid shut in between two valves.</summary>
    TrappedLiquid,

    /// <summary>A figure that rests on an estimate.</summary>
    Estimate,

    /// <summary>The recovery machine: its limits, switches and temperatures.</summary>
    Machine,

    /// <summary>Whether push-pull is possible and worth it.</summary>
    PushPull,

    /// <summary>Air and other non-condensable gases.</summary>
    NonCondensables,

    /// <summary>Composition shift of a blend.</summary>
    Fractionation,

    /// <summary>Two refrigerants that would meet.</summary>
    Mixing,

    /// <summary>Oil: refrigerant dissolved in it, its service.</summary>
    Oil,

    /// <summary>A leak into or out of the appliance.</summary>
    Leak,

    /// <summary>Law, standards and records.</summary>
    Compliance,

    /// <summary>General caution for people.</summary>
    Safety,

    /// <summary>Vapor that takes the place of air.</summary>
    Asphyxiation,

    /// <summary>Liquid that freezes skin and eyes.</summary>
    Frostbite,

    /// <summary>Metal that burns skin.</summary>
    HotSurface,

    /// <summary>What instruments showed: units, gaps, jumps.</summary>
    Readings,
}
