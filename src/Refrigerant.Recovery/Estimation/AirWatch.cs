using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Air that leaks in below the atmosphere. At rest it comes at a steady rate, where refrigerant that boils off, warms up or leaves oil comes ever
/// more slowly. While the machine draws, the pressure stands and the scale with it. Fixed memory.
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

    /// <summary>s of drawing that are compared, kg that should flow meanwhile, and the share of it that does where it is refrigerant.</summary>
    private const double DrawingWindow = 300;

    private const double LeastExpected = 0.1;
    private const double LeastShare = 0.35;

    private readonly double[] _marks = new double[4];
    private int _reached;
    private double _began = double.NaN;
    private double _mean;
    private double _drawnSince = double.NaN;
    private double _delivered;
    private double _expected;

    /// <summary>Whether air comes in.</summary>
    public bool IsAir { get; private set; }

    /// <summary>Takes in a block.</summary>
    /// <param name="block">The block.</param>
    /// <param name="isResting">Whether the machine stands and the valves are open.</param>
    /// <param name="expectedFlow">What a machine as told would draw at this pressure, kg/s.</param>
    /// <param name="isVaporOnly">Whether no liquid is thought to be left.</param>
    public void Update(in EstimatorBlock block, bool isResting, double expectedFlow, bool isVaporOnly)
    {
        bool isBelow = block.Gauge < -Below;
        Rest(in block, isResting && isBelow);
        Draw(in block, block.IsDrawing && isBelow && isVaporOnly, expectedFlow);
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

    private void Draw(in EstimatorBlock block, bool counts, double expectedFlow)
    {
        if (!counts || !Require.IsFinite(block.Delivered))
        {
            _drawnSince = counts || !Require.IsFinite(block.Gauge) ? _drawnSince : double.NaN;
            _expected += counts ? expectedFlow * block.Duration : 0;
            return;
        }

        if (double.IsNaN(_drawnSince))
        {
            _drawnSince = block.Time;
            _delivered = block.Delivered;
            _expected = 0;
            return;
        }

        _expected += expectedFlow * block.Duration;
        if (block.Time - _drawnSince >= DrawingWindow)
        {
            IsAir |= _expected > LeastExpected && block.Delivered - _delivered < LeastShare * _expected;
            _drawnSince = double.NaN;
        }
    }
}
