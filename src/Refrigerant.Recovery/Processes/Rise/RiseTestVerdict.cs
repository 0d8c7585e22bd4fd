namespace Refrigerant.Recovery.Processes;

/// <summary>What a rise test shows.</summary>
public enum RiseTestVerdict
{
    /// <summary>Vapor only: the mass follows from the last reading.</summary>
    VaporOnly = 0,

    /// <summary>The pressure is that of saturation: liquid is left.</summary>
    LiquidLeft,

    /// <summary>The pressure is above saturation: air or another gas is inside.</summary>
    ForeignGas,
}
