using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A fall of the gauge that is faster than vapor can thin out, and after which it stands. Fixed memory.</summary>
/// <remarks>
/// Vapor that is drawn off a volume without liquid thins at ṁ/m a second, m the vapor, and goes on thinning. A hose that kinks takes its drop within a second or two, and from then on the pressure behind it follows the appliance's again.
/// </remarks>
internal sealed class GaugeStep
{
    /// <summary>s after a fall in which the gauge must stand.</summary>
    public const double Standing = 8;

    /// <summary>Readings kept: a fall is looked for between the last two and two some three seconds before, which must stand against two before them.</summary>
    private const int Kept = 9;

    private const double Interval = 3;

    /// <summary>Times the rate at which vapor thins that is still no step,</summary>
    private const double Thinning = 1.2;

    /// <summary>least share of the pressure, and standard deviations of the gauge's noise, that are.</summary>
    private const double LeastShare = 0.06;

    private const double LeastSigmas = 5;

    /// <summary>Share of the fall that must be left, and largest change from the middle to the end of the time in which it stands.</summary>
    private const double Left = 0.7;

    private const double Moves = 0.2;

    /// <summary>How much of the fall may have come before it began: what has been falling for a while is no step.</summary>
    private const double FellBefore = 0.25;

    private readonly EstimatorPrior _prior;
    private readonly double[] _last = new double[Kept];
    private int _count;
    private double _time;
    private double _before;
    private double _after;
    private double _middle;

    public GaugeStep(EstimatorPrior prior) => _prior = prior;

    /// <summary>When the gauge fell, s; not a number where it did not.</summary>
    public double At { get; private set; } = double.NaN;

    /// <summary>Fall as a share of the pressure before it.</summary>
    public double Share => 1 - (_after / _before);

    /// <summary>Forgets all.</summary>
    public void Restart()
    {
        _count = 0;
        At = double.NaN;
    }

    /// <summary>Takes in a block with a reading of the gauge; true where a fall has just stood for long enough.</summary>
    /// <param name="block">The block.</param>
    /// <param name="thinning">Rate at which vapor thins out, 1/s.</param>
    public bool Update(in EstimatorBlock block, double thinning)
    {
        if (block.Time - _time > Interval)
        {
            Restart();
        }

        _time = block.Time;
        double pressure = block.Gauge + _prior.Atmosphere;
        Array.Copy(_last, 0, _last, 1, Kept - 1);
        _last[0] = pressure;
        _count++;
        if (_count < Kept)
        {
            return false;
        }

        double now = 0.5 * (_last[0] + _last[1]);
        double before = 0.5 * (_last[3] + _last[4]);
        if (double.IsNaN(At))
        {
            double least = Math.Max(Math.Max(LeastShare, Thinning * thinning * Interval) * before, LeastSigmas * Math.Sqrt(_prior.GaugeNoise));
            double earlier = 0.5 * (_last[7] + _last[8]);
            if (before - now > least && earlier - before < FellBefore * (before - now))
            {
                At = block.Time - Interval;
                _before = before;
                _middle = double.NaN;
            }

            return false;
        }

        if (double.IsNaN(_middle))
        {
            _middle = block.Time - At >= Interval + (0.5 * Standing) ? now : double.NaN;
            return false;
        }

        if (block.Time - At < Interval + Standing)
        {
            return false;
        }

        _after = now;
        double fall = _before - now;
        bool stands = _before - _middle > 0 && fall > Left * (_before - _middle) && _middle - now < Moves * (_before - _middle);
        if (!stands)
        {
            At = double.NaN;
        }

        return stands;
    }
}
