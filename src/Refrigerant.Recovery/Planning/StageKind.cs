namespace Refrigerant.Recovery.Planning;

/// <summary>What is done in a stage of a plan.</summary>
public enum StageKind
{
    /// <summary>Air is pulled out of hoses and machine.</summary>
    HoseSweep = 0,

    /// <summary>Vapor first: it flows into the cylinder until its pressure is that of the appliance.</summary>
    Equalize,

    /// <summary>Liquid is pushed into the cylinder by vapor that the machine draws off it.</summary>
    PushPull,

    /// <summary>Hoses are changed over from liquid to vapor recovery.</summary>
    HoseChange,

    /// <summary>Vapor is drawn off the appliance, condensed and delivered to the cylinder.</summary>
    VaporRecovery,

    /// <summary>A full cylinder is closed and the next one connected.</summary>
    CylinderChange,

    /// <summary>The appliance stands shut while heat goes back into it and its pressure is watched.</summary>
    Hold,

    /// <summary>The machine empties itself into the cylinder.</summary>
    MachineClearing,

    /// <summary>Valves are closed, the cylinder is weighed and labelled: the last stage of a plan, after which no strategy is asked any more.</summary>
    Close,

    /// <summary>Lock-out, hoses on, cores out, scale and machine set up, first weight.</summary>
    SetUp,

    /// <summary>Liquid is drawn through the machine, throttled at its inlet.</summary>
    LiquidRecovery,

    /// <summary>The machine stands still while the cylinder cools.</summary>
    Rest,

    /// <summary>The machine stands still while the appliance warms.</summary>
    Warm,

    /// <summary>Old oil is drained from the machine, under dry nitrogen.</summary>
    OilDrain,

    /// <summary>New oil is drawn into the machine by measured volume.</summary>
    OilFill,
}
