namespace Refrigerant.Recovery.Simulation;

/// <summary>Why a stage ended.</summary>
public enum StageEnd
{
    /// <summary>The target pressure was reached.</summary>
    TargetReached = 0,

    /// <summary>The liquid that can be reached is gone.</summary>
    LiquidGone,

    /// <summary>The cylinder reached its limit.</summary>
    CylinderFull,

    /// <summary>The low-pressure switch stopped the machine.</summary>
    LowPressureSwitch,

    /// <summary>The high-pressure cut-out stopped the machine.</summary>
    HighPressureCutout,

    /// <summary>The machine moves next to nothing any more: its deepest vacuum is reached, or nothing drives the liquid.</summary>
    Stalled,

    /// <summary>A surface with water behind it reached 0 °C.</summary>
    Freezing,

    /// <summary>The time allowed ran out.</summary>
    TimeLimit,

    /// <summary>The refrigerant left the range in which its equation of state is valid.</summary>
    PropertyRange,

    /// <summary>The integration reached its bound on steps; the result holds up to there.</summary>
    StepLimit,

    /// <summary>The cylinder's pressure reached what it is built to see at work.</summary>
    CylinderPressure,

    /// <summary>The appliance's pressure reached what it is built for, or what its relief device opens at.</summary>
    DesignPressure,

    /// <summary>The gas that leaves the compressor became too hot; the thermal cut-out stopped the machine.</summary>
    ThermalCutout,

    /// <summary>The time asked for is over, as it should be.</summary>
    TimeOver,

    /// <summary>There was nothing to do.</summary>
    NothingToDo,
}
