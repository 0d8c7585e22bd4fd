namespace Refrigerant.Recovery.Estimation;

/// <summary>How much an estimate may cost.</summary>
public enum EstimationProfile
{
    /// <summary>The change-point filter and weighted samples of the whole log beside it: the honest ranges.</summary>
    Full = 0,

    /// <summary>The filter alone, for small controllers: a tenth of the time and a thirtieth of the memory; its ranges hold less often.</summary>
    Controller,
}
