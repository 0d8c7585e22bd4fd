using System;

namespace Refrigerant.Recovery.Rules;

/// <summary>Oils in customary use with a refrigerant (common practice).</summary>
[Flags]
public enum OilFamilies
{
    /// <summary>Not known here.</summary>
    None = 0,

    /// <summary>Mineral oil or alkylbenzene.</summary>
    Mineral = 1,

    /// <summary>Polyol ester (or polyvinyl ether).</summary>
    PolyolEster = 2,

    /// <summary>Polyalkylene glycol.</summary>
    PolyalkyleneGlycol = 4,

    /// <summary>Polyalphaolefin.</summary>
    Polyalphaolefin = 8,
}
