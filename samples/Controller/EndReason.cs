namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>Why the loop ended.</summary>
internal enum EndReason
{
    /// <summary>It has not ended.</summary>
    None,

    /// <summary>The level was reached, and it held.</summary>
    TargetReached,

    /// <summary>The cylinder is as full as it may be.</summary>
    CylinderLimit,

    /// <summary>The discharge pressure reached the cut-out.</summary>
    HighPressureCutout,

    /// <summary>A sensor shows what cannot be.</summary>
    SensorFault,

    /// <summary>It took too long.</summary>
    TimeLimit,
}
