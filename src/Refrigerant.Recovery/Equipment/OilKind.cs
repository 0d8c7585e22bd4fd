namespace Refrigerant.Recovery.Equipment;

/// <summary>The family of an oil.</summary>
public enum OilKind
{
    /// <summary>Mineral oil.</summary>
    Mineral = 0,

    /// <summary>Alkylbenzene.</summary>
    Alkylbenzene,

    /// <summary>Polyol ester (POE).</summary>
    PolyolEster,

    /// <summary>Polyvinyl ether (PVE).</summary>
    PolyvinylEther,

    /// <summary>Polyalkylene glycol (PAG).</summary>
    PolyalkyleneGlycol,
}
