namespace Refrigerant.Recovery.Oils;

/// <summary>What a refrigerant is to an oil.</summary>
internal enum SoluteFamily
{
    /// <summary>Fluorinated, no chlorine.</summary>
    Fluorinated = 0,

    /// <summary>With chlorine.</summary>
    Chlorinated,

    /// <summary>Hydrocarbon or ether.</summary>
    Hydrocarbon,

    Ammonia,

    CarbonDioxide,
}
