namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>
/// Decides at every tick whether the machine runs. Limits come first, the level last. The machine pulls a little deeper than the level, then
/// stands still while the pressure is watched: liquid that boils, or oil that gives off refrigerant, brings it back up. It does not start again at once.
/// A sample: a real machine has its cut-outs and its relief devices in hardware.
/// </summary>
internal sealed class RecoveryController(double levelPascals, double limitKilograms, double cutoutPascals)
{
    private const double Depth = 0.9;
    private const double HoldSeconds = 60;
    private const double LeastRest = 30;
    private const double LongestSeconds = 4 * 3600;
    private const double LongestSilence = 5;

    /// <summary>An empty scale may show a little less than nothing.</summary>
    private const double LeastKilograms = -0.1;

    private double _heldSince = double.NaN;
    private double _silentSince = double.NaN;

    /// <summary>Why it ended; none while it goes on.</summary>
    public EndReason End { get; private set; }

    /// <summary>Whether the machine runs until the next tick.</summary>
    public bool Decide(in Readings now)
    {
        if (End != EndReason.None)
        {
            return false;
        }

        bool silent = !(now.SuctionPascals > 0 && now.DischargePascals > 0 && now.CylinderKilograms >= LeastKilograms);
        _silentSince = !silent ? double.NaN : double.IsNaN(_silentSince) ? now.Seconds : _silentSince;
        End = now switch
        {
            _ when now.DischargePascals >= cutoutPascals => EndReason.HighPressureCutout,
            _ when now.CylinderKilograms >= limitKilograms => EndReason.CylinderLimit,
            _ when now.Seconds - _silentSince >= LongestSilence => EndReason.SensorFault,
            _ when now.Seconds >= LongestSeconds => EndReason.TimeLimit,
            _ when now.Seconds - _heldSince >= HoldSeconds && now.SuctionPascals <= levelPascals => EndReason.TargetReached,
            _ => EndReason.None,
        };
        if (double.IsNaN(_heldSince) && now.SuctionPascals <= Depth * levelPascals)
        {
            _heldSince = now.Seconds;
        }
        else if (now.SuctionPascals > levelPascals && now.Seconds - _heldSince >= LeastRest)
        {
            _heldSince = double.NaN;
        }

        return End == EndReason.None && double.IsNaN(_heldSince);
    }
}
