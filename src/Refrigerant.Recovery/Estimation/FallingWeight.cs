using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A cylinder on the scale that loses weight little by little: refrigerant runs back, or leaks. Fixed memory.</summary>
internal sealed class FallingWeight
{
    /// <summary>
    /// A cylinder loses weight where this many kg are gone in so many seconds and more, at a rate between these, kg/s, and no single reading brought more than this share of it; it loses no more
    /// where the weight rises by so many kg, or stands for so many seconds.
    /// </summary>
    private const double LeastLost = 0.3;

    private const double LosesFor = 30;
    private const double SlowestLoss = 0.002;
    private const double FastestLoss = 0.2;
    private const double LargestLoss = 0.7;
    private const double Regained = 0.03;

    private double _highest = double.NaN;
    private double _highestAt;
    private double _lowest;
    private double _lowestAt;
    private double _largestLoss;

    /// <summary>Whether the cylinder loses weight.</summary>
    public bool IsFalling { get; private set; }

    /// <summary>Another cylinder stands on the scale.</summary>
    public void Restart() => _highest = double.NaN;

    /// <summary>Weight that goes little by little: what takes it off at once is a hand, a hose or another cylinder.</summary>
    public void Update(double gross, double time)
    {
        bool isLower = gross < _lowest;
        if (double.IsNaN(_highest) || gross > _lowest + Regained || (!isLower && time - _lowestAt > LosesFor))
        {
            _highest = _lowest = gross;
            _highestAt = _lowestAt = time;
            _largestLoss = 0;
            IsFalling = false;
            return;
        }

        if (isLower)
        {
            _largestLoss = Math.Max(_largestLoss, _lowest - gross);
            _lowest = gross;
            _lowestAt = time;
            double lost = _highest - _lowest;
            double seconds = _lowestAt - _highestAt;
            IsFalling |= lost > LeastLost && seconds >= LosesFor && _largestLoss < LargestLoss * lost && lost > SlowestLoss * seconds && lost < FastestLoss * seconds;
        }
    }
}
