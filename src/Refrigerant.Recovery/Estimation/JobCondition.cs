namespace Refrigerant.Recovery.Estimation;

/// <summary>What an estimate takes to be going on.</summary>
public enum JobCondition
{
    /// <summary>Liquid is left and far colder than the air: the gauge may reach the level over a pool.</summary>
    ColdPool = 0,

    /// <summary>The machine draws less than it should; a scale that drifts looks the same.</summary>
    MachineUnderperforming,

    /// <summary>The suction hose lets little through: kinked, or a core in the way.</summary>
    HoseBlocked,

    /// <summary>A valve between appliance and machine is shut.</summary>
    ValveClosed,

    /// <summary>Something other than refrigerant moved the scale: a hose pulls on it, it drifts or is stuck.</summary>
    ScaleDisturbed,

    /// <summary>The gauge does not agree with everything else.</summary>
    GaugeInconsistent,

    /// <summary>More than refrigerant is in the appliance: air has come in.</summary>
    ForeignGas,

    /// <summary>The level is not reached as things are.</summary>
    LevelOutOfReach,

    /// <summary>A rest would tell what the gauge cannot while the machine runs: of ten seconds to a minute whether liquid is left, of half an hour whether air comes in.</summary>
    RestSuggested,

    /// <summary>Another cylinder stands on the scale.</summary>
    CylinderChanged,

    /// <summary>The scale was set to another zero.</summary>
    TareChanged,

    /// <summary>Liquid is being moved, faster than the machine draws vapor.</summary>
    LiquidTransfer,

    /// <summary>The readings do not agree with the charge that was told.</summary>
    ChargeInconsistent,

    /// <summary>The gauge seems to show absolute pressure; it is not used.</summary>
    GaugeAbsolute,

    /// <summary>The scale shows the content of the cylinder alone: net for gross.</summary>
    WeightNet,

    /// <summary>The cylinder on the scale did not weigh at first what was told: another cylinder, another content or another unit.</summary>
    CylinderInconsistent,

    /// <summary>The cylinder on the scale is not one of the job's: its limit is not known and not watched.</summary>
    CylinderUnknown,

    /// <summary>The cylinder loses weight: refrigerant runs back to the appliance, or leaks.</summary>
    CylinderLosesWeight,

    /// <summary>Before anything was drawn the appliance stood at a pressure that the refrigerant has not at the temperature told: another refrigerant, air, or one that is warmer or colder.</summary>
    StandingPressureInconsistent,
}
