using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Gauge and scale that stand while the machine should draw: it does not run, or it draws nothing. For readings too far apart to be held against a prediction. Fixed memory.
/// </summary>
internal sealed class StandstillWatch
{
    /// <summary>Weights, s, and kg that the machine as told would have drawn at the pressure at its inlet, from which it is said.</summary>
    private const int LeastReadings = 3;

    private const double LeastTime = 120;
    private const double LeastExpected = 0.5;

    /// <summary>Share of that which has come at most, and share of the pressure that it has changed by.</summary>
    private const double MostGained = 0.1;

    private const double MostMoved = 0.05;

    private readonly EstimatorPrior _prior;
    private readonly ToldMachine _machine;
    private double _since = double.NaN;
    private double _from;
    private double _suction = double.NaN;
    private double _flow;
    private double _expected;
    private int _readings;

    public StandstillWatch(ToldMachine machine, EstimatorPrior prior)
    {
        _machine = machine;
        _prior = prior;
    }

    /// <summary>Begins anew.</summary>
    public void Restart() => _since = double.NaN;

    /// <summary>Takes in a block as the filters have it; whether nothing moves.</summary>
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

        _expected += _flow * block.Duration;
        _flow = _machine.Flow(seen, block.AirTemperature);
        bool hasMoved = Math.Abs(seen - _suction) > MostMoved * _suction || Math.Abs(block.Delivered - _from) > MostGained * Math.Max(LeastExpected, _expected);
        if (double.IsNaN(_since) || hasMoved)
        {
            _since = block.Time;
            _from = block.Delivered;
            _suction = seen;
            _expected = 0;
            _readings = 0;
            return false;
        }

        _readings++;
        return _readings >= LeastReadings && block.Time - _since >= LeastTime && _expected >= LeastExpected;
    }
}
