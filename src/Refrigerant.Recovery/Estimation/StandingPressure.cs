using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// The pressure at which the appliance stands before anything is drawn, against saturation at the temperature told: another refrigerant, air, or an appliance that is warmer or colder. Fixed memory.
/// </summary>
internal sealed class StandingPressure
{
    /// <summary>Readings, and s of rest, from which it is said.</summary>
    private const int LeastReadings = 2;

    private const double LeastTime = 3;

    /// <summary>K beyond twice what the temperature is known to, that an appliance may stand off what was told: our choice.</summary>
    private const double Kelvins = 6;

    private readonly SaturationTable _table;
    private readonly EstimatorPrior _prior;
    private bool _isOver;
    private double _since = double.NaN;
    private double _sum;
    private int _readings;

    public StandingPressure(SaturationTable table, EstimatorPrior prior)
    {
        _table = table;
        _prior = prior;
    }

    /// <summary>K by which the appliance must be warmer than told, or where less than zero colder, for that pressure; zero where it is what was told.</summary>
    public double Off { get; private set; }

    /// <summary>Takes in a block as it was read.</summary>
    public void Update(in EstimatorBlock block)
    {
        _isOver |= block.IsDrawing || block.LiquidMoved != 0;
        if (_isOver || !Require.IsFinite(block.Gauge))
        {
            return;
        }

        _since = double.IsNaN(_since) ? block.Time : _since;
        _sum += block.Gauge + _prior.Atmosphere;
        _readings++;
        if (_readings < LeastReadings || block.Time - _since < LeastTime)
        {
            return;
        }

        double unsure = 2 * _prior.Sigma[StateIndex.GaugeBias];
        double pressure = _sum / _readings;
        double told = _prior.Mean[StateIndex.Temperature];
        double warmer = _table.BubbleTemperature(Math.Max(1, pressure - unsure)) - told;
        double colder = _table.DewTemperature(pressure + unsure) - told;
        double allowed = Kelvins + (2 * _prior.Sigma[StateIndex.Temperature]);
        Off = warmer > allowed ? warmer : colder < -allowed ? colder : 0;
    }
}
