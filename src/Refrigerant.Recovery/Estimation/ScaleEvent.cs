namespace Refrigerant.Recovery.Estimation;

/// <summary>What a jump of the scale was taken for.</summary>
internal enum ScaleEvent
{
    None = 0,

    /// <summary>A hose pulls, something leans on it.</summary>
    Disturbed,

    /// <summary>The zero was set.</summary>
    TareChanged,

    /// <summary>Another cylinder.</summary>
    CylinderChanged,
}
