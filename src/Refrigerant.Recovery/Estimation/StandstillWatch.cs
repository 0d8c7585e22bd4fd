using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// A scale that stands while the machine should draw, under a gauge that stands or rises: it does not run, or it draws nothing. For readings too far apart to be held against a prediction. Fixed memory.
/// </summary>
internal sealed class StandstillWatch
{
    /// <summary>Weights, s, and kg that the machine as told would have drawn at the pressure at its inlet, from which it is said.</summary>
    private const int LeastReadings = 3;

    private const double LeastTime = 120;
    private const double LeastExpected = 0.5;

    /// <summary>Share of that which has come at most, and share of the pressure that it has fallen by.</summary>
    private const double MostGained = 0.1;

    private const double MostFallen = 0.05;

    /// <summary>Times the pressure one reading before at which it comes up.</summary>
    private const double Comes = 1.02;

    private readonly EstimatorPrior _prior;
    private readonly ToldMachine _machine;
    private double _since = double.NaN;
    private double _from;
    private double _suction = double.NaN;
    private double _flow;
    private double _expected;
    private int _readings;
    private double _before = double.NaN;
    private bool _hasRisen;

    public StandstillWatch(ToldMachine machine, EstimatorPrior prior)
    {
        _machine = machine;
        _prior = prior;
    }

    /// <summary>Whether the machine stands.</summary>
    public bool IsStill { get; private set; }

    /// <summary>Whether something has moved in the last block, and the pressure has not come up in it as it does over a machine that stops: what the filters have made of the readings up to it counts.</summary>
    public bool HasMoved => _readings == 0 && !_hasRisen;

    /// <summary>Begins anew.</summary>
    public void Restart()
    {
        _since = double.NaN;
        IsStill = false;
    }

    /// <summary>Takes in a block as the filters have it; true where it has just shown that nothing moves.</summary>
    /// <param name="block">The block.</param>
    /// <param name="least">Absolute pressure below which every machine draws little, Pa.</param>
    public bool Update(in EstimatorBlock block, double least)
    {
        double seen = block.Gauge + _prior.Atmosphere;
        if (!block.IsDrawing || block.LiquidMoved != 0 || block.IsByItself || seen < least)
        {
            Restart();
            return false;
        }

        if (!Require.IsFinite(block.Delivered) || !Require.IsFinite(seen))
        {
            return false;
        }

        _hasRisen = seen > Comes * _before;
        _before = seen;
        _expected += _flow * block.Duration;
        _flow = _machine.Flow(seen, block.AirTemperature);
        bool hasMoved = !(seen > (1 - MostFallen) * _suction) || Math.Abs(block.Delivered - _from) > MostGained * Math.Max(LeastExpected, _expected);
        if (double.IsNaN(_since) || hasMoved)
        {
            _since = block.Time;
            _from = block.Delivered;
            _suction = seen;
            _expected = 0;
            _readings = 0;
            return false;
        }

        _suction = Math.Max(_suction, seen);
        _readings++;
        IsStill = _readings >= LeastReadings && block.Time - _since >= LeastTime && _expected >= LeastExpected;
        return IsStill;
    }
}
