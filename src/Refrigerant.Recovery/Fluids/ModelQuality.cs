namespace Refrigerant.Recovery.Fluids;

/// <summary>How well founded the equations behind a property model are.</summary>
public enum ModelQuality
{
    /// <summary>Every equation and every binary pair has published parameters.</summary>
    Published = 0,

    /// <summary>At least one binary pair of the blend has no published parameters and is estimated (Lorentz–Berthelot).</summary>
    Estimated,
}
