namespace Refrigerant.Recovery.Rules;

/// <summary>What kind of substance a refrigerant is.</summary>
public enum SubstanceFamily
{
    /// <summary>Chlorofluorocarbon, or another fully halogenated one with chlorine.</summary>
    Cfc = 0,

    /// <summary>Hydrochlorofluorocarbon, or hydrochlorocarbon.</summary>
    Hcfc,

    /// <summary>Hydrofluorocarbon or perfluorocarbon.</summary>
    Hfc,

    /// <summary>Unsaturated: hydrofluoroolefin, hydrochlorofluoroolefin or hydrochloroolefin.</summary>
    Hfo,

    /// <summary>Hydrocarbon or dimethyl ether.</summary>
    Hydrocarbon,

    /// <summary>Ammonia.</summary>
    Ammonia,

    /// <summary>Carbon dioxide.</summary>
    CarbonDioxide,

    /// <summary>Fluoroiodocarbon.</summary>
    Fluoroiodocarbon,

    /// <summary>A blend of more than one family.</summary>
    Mixed,
}
