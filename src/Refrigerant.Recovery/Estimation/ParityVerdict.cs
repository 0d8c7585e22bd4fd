namespace Refrigerant.Recovery.Estimation;

/// <summary>What readings and a prediction disagree in.</summary>
internal enum ParityVerdict
{
    /// <summary>Nothing.</summary>
    Agrees = 0,

    ValveClosed,
    HoseBlocked,
    MachineWeak,
    ScalePulled,
    GaugeOff,
}
