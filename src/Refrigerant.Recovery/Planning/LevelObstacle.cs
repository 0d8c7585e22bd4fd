namespace Refrigerant.Recovery.Planning;

/// <summary>Why a level is not reached, or does not hold.</summary>
public enum LevelObstacle
{
    /// <summary>Nothing stands in the way.</summary>
    None = 0,

    /// <summary>There is no cylinder on hand.</summary>
    NoCylinder,

    /// <summary>None of the cylinders on hand may be filled.</summary>
    NoFitCylinder,

    /// <summary>The cylinders on hand are full.</summary>
    CylindersFull,

    /// <summary>The cylinder is too hot: the high-pressure cut-out stops the machine.</summary>
    HighPressureCutout,

    /// <summary>The cylinder is too hot: its pressure comes to what it is built for.</summary>
    CylinderPressure,

    /// <summary>The machine is too hot: its thermal cut-out stops it.</summary>
    ThermalCutout,

    /// <summary>The machine gets no deeper against the cylinder's pressure.</summary>
    DeepestVacuum,

    /// <summary>The low-pressure switch stops the machine before the level.</summary>
    LowPressureSwitch,

    /// <summary>Liquid boils only as fast as heat comes in.</summary>
    Heat,

    /// <summary>The inlet is throttled so that no water in tubes freezes, and nothing flows any more.</summary>
    Freezing,

    /// <summary>The oil gives off what it holds too slowly.</summary>
    Oil,

    /// <summary>It takes more pulls or steps than are allowed.</summary>
    TooManyPulls,

    /// <summary>The refrigerant leaves the range of its equation: dry ice, or colder than is computed.</summary>
    PropertyRange,

    /// <summary>The integration came to its bound on steps: what comes after is not computed.</summary>
    NotComputed,

    /// <summary>The appliance stands above the machine's high-pressure cut-out: the machine must not be connected.</summary>
    ApplianceAboveCutout,

    /// <summary>The content of the cylinder leaves the range of the refrigerant's equation.</summary>
    CylinderPropertyRange,

    /// <summary>The strategy asked for no further step.</summary>
    StoppedByStrategy,
}
