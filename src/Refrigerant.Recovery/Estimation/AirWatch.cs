using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Air that leaks in below the atmosphere. At rest it comes at a steady rate, where refrigerant that boils off, warms up or leaves oil comes ever
/// more slowly. While the machine draws, the pressure stands, and the scale with it: what refrigerant there is at that pressure the scale would show. Where the pressure stands and the scale
/// does not say so plainly, air, oil that gives off gas and a machine at its limit look alike, and a rest tells them apart. Fixed memory.
/// </summary>
internal sealed class AirWatch
{
    /// <summary>s of each of three windows of rest that follow one another.</summary>
    private const double Window = 600;

    /// <summary>Pa: a window's rise below this is none.</summary>
    private const double LeastRise = 300;

    /// <summary>The last rise over the first, at least: oil with a time constant of half an hour reaches 0.51.</summary>
    private const double StillRising = 0.65;

    /// <summary>Pa below the atmosphere.</summary>
    private const double Below = 3000;

    /// <summary>s at the beginning of a rest that are the gauge's and the hose's.</summary>
    private const double Settling = 60;

    /// <summary>s of drawing that are compared at least and at most, kg that should flow meanwhile, and the share of it that does where it is refrigerant.</summary>
    private const double Shortest = 300;

    private const double Longest = 1500;
    private const double LeastExpected = 0.1;
    private const double LeastShare = 0.35;

    /// <summary>Share of the pressure that it loses meanwhile where it stands: a machine that pulls a vessel of vapor down takes that in seconds.</summary>
    private const double MostFall = 0.03;

    /// <summary>s over which the gauge is averaged.</summary>
    private const double Smoothing = 30;

    private readonly EstimatorPrior _prior;
    private readonly double[] _marks = new double[4];
    private int _reached;
    private double _began = double.NaN;
    private double _mean;
    private double _drawnSince = double.NaN;
    private double _delivered;
    private double _expected;
    private double _smooth;
    private double _smoothFrom;
    private double _smoothAt = double.NaN;

    public AirWatch(EstimatorPrior prior) => _prior = prior;

    /// <summary>Whether air comes in.</summary>
    public bool IsAir { get; private set; }

    /// <summary>Whether the pressure stands below the atmosphere while the machine draws.</summary>
    public bool IsStalled { get; private set; }

    /// <summary>Takes in a block.</summary>
    /// <param name="block">The block.</param>
    /// <param name="isResting">Whether the machine stands and the valves are open.</param>
    /// <param name="expectedFlow">What a machine as told would draw at this pressure, kg/s.</param>
    /// <param name="isVaporOnly">Whether no liquid is thought to be left.</param>
    public void Update(in EstimatorBlock block, bool isResting, double expectedFlow, bool isVaporOnly)
    {
        Rest(in block, isResting && block.Gauge < -Below);
        Draw(in block, expectedFlow, isVaporOnly);
    }

    private void Rest(in EstimatorBlock block, bool counts)
    {
        if (!counts)
        {
            // A reading that is missing breaks no rest.
            _began = Require.IsFinite(block.Gauge) ? double.NaN : _began;
            return;
        }

        if (double.IsNaN(_began))
        {
            _began = block.Time + Settling;
            _reached = 0;
            _mean = block.Gauge;
        }

        _mean += 0.1 * (block.Gauge - _mean);
        while (_reached < _marks.Length && block.Time >= _began + (_reached * Window))
        {
            _marks[_reached] = _mean;
            _reached++;
        }

        if (_reached == _marks.Length)
        {
            double first = _marks[1] - _marks[0];
            double second = _marks[2] - _marks[1];
            double third = _marks[3] - _marks[2];
            IsAir |= first > LeastRise && second > LeastRise && third > LeastRise && third > StillRising * first;
            _marks[0] = _marks[1];
            _marks[1] = _marks[2];
            _marks[2] = _marks[3];
            _began += Window;
            _reached = 3;
        }
    }

    private void Draw(in EstimatorBlock block, double expectedFlow, bool isVaporOnly)
    {
        if (!block.IsDrawing || !isVaporOnly)
        {
            _smoothAt = _drawnSince = double.NaN;
            IsStalled = false;
            return;
        }

        if (!Require.IsFinite(block.Gauge))
        {
            return;
        }

        _smooth = double.IsNaN(_smoothAt) ? block.Gauge : _smooth + (Math.Min(1, (block.Time - _smoothAt) / Smoothing) * (block.Gauge - _smooth));
        _expected += double.IsNaN(_smoothAt) ? 0 : expectedFlow * (block.Time - _smoothAt);
        _smoothAt = block.Time;

        // The gauge may be off by its own error: what it shows just above the atmosphere may lie below.
        double most = _prior.Sigma[StateIndex.GaugeBias];
        bool falls = _smoothFrom - _smooth > MostFall * (_smoothFrom + _prior.Atmosphere);
        if (double.IsNaN(_drawnSince) || falls || _smooth > most || block.Time - _drawnSince > Longest)
        {
            IsStalled &= !falls && _smooth <= most;
            _drawnSince = Require.IsFinite(block.Delivered) ? block.Time : double.NaN;
            _smoothFrom = _smooth;
            _delivered = block.Delivered;
            _expected = 0;
            return;
        }

        if (block.Time - _drawnSince >= Shortest)
        {
            IsStalled = true;
            IsAir |= _expected > LeastExpected && block.Delivered - _delivered < LeastShare * _expected;
        }
    }
}
