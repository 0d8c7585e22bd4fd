namespace Refrigerant.Recovery.Fluids;

/// <summary>The phase of a <see cref="FluidState"/>.</summary>
public enum Phase
{
    /// <summary>No state: the value of an uninitialised <see cref="FluidState"/>.</summary>
    Undefined = 0,

    /// <summary>Liquid: saturated (bubble point) or subcooled.</summary>
    Liquid,

    /// <summary>Vapor: saturated (dew point) or superheated.</summary>
    Vapor,

    /// <summary>Fluid above the critical temperature.</summary>
    Supercritical,

    /// <summary>Liquid and vapor in equilibrium.</summary>
    TwoPhase,
}
