namespace Refrigerant.Recovery.Estimation;

/// <summary>Whether liquid is taken to be left in the appliance.</summary>
internal enum AssumedPhase
{
    /// <summary>Where the mean density is above that of saturated vapor.</summary>
    FromDensity = 0,

    /// <summary>Liquid, at the saturation pressure, whatever the mass says.</summary>
    LiquidPresent,

    /// <summary>Vapor only, at the pressure of its density.</summary>
    VaporOnly,
}
