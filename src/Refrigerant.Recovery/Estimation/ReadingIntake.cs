using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Readings as they come become blocks of at least a second, each figure checked; what is left out is named. Fixed memory.</summary>
internal sealed class ReadingIntake
{
    /// <summary>s that a block has at least.</summary>
    private const double BlockLength = 1;

    /// <summary>K.</summary>
    private const double Coldest = 173.15;

    private const double Warmest = 403.15;

    /// <summary>A gauge's pointer goes this far beyond its scale.</summary>
    private const double BeyondScale = 1.3;

    /// <summary>kg that the scale may be behind what has moved by itself.</summary>
    private const double MostBehind = 0.1;

    /// <summary>Vapor that may come without the machine, kg/s.</summary>
    private const double ByItself = 0.01;

    /// <summary>Share of the pressure of vapor at which a machine draws liquid: common practice, no source.</summary>
    private const double LiquidSuction = 0.5;

    private readonly EstimatorPrior _prior;
    private readonly SaturationTable _table;
    private readonly ToldMachine _machine;
    private readonly ReadingClock _clock = new();
    private readonly PassingVapor _passing;
    private readonly double _gaugeLimit;
    private readonly double _saturation;
    private readonly double _highest;
    private readonly double _lowest;
    private double _blockStart;
    private double _gaugeSum;
    private double _weightSum;
    private double _pipe = double.NaN;
    private double _condensing = double.NaN;
    private double _discharge = double.NaN;
    private double _beyond = double.NaN;
    private int _gauges;
    private int _weights;
    private int _cylinder = -1;
    private bool _isDrawing;
    private double _liquidFrom;
    private double _behind;
    private UnusedReadings _unused;
    private EstimatorBlock _last;

    public ReadingIntake(RecoveryJob job, Instruments instruments, EstimatorPrior prior, SaturationTable table)
    {
        _prior = prior;
        _table = table;
        _machine = new ToldMachine(table, prior);
        double limit = instruments.SuctionGauge.ErrorLimitPascals;
        _gaugeLimit = limit;
        _saturation = table.DewPressure(prior.Mean[StateIndex.Temperature]);
        _highest = (BeyondScale * instruments.SuctionGauge.High.Pascals) + limit;
        _lowest = -prior.Atmosphere - limit;
        _last.AirTemperature = job.Appliance.SurroundingsKelvin;
        Scale = new ScaleTracker(job, instruments);
        _passing = new PassingVapor(job, table, limit);
    }

    /// <summary>The scale.</summary>
    public ScaleTracker Scale { get; }

    /// <summary>The last block.</summary>
    public ref readonly EstimatorBlock Last => ref _last;

    /// <summary>What was left out of the last block, or since.</summary>
    public UnusedReadings NotUsed { get; private set; }

    /// <summary>Whether the valves were open at the last reading.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>Vapor that is expected to flow, kg/s.</summary>
    public double ExpectedFlow { get; set; }

    /// <summary>What can still flow, kg.</summary>
    public double Left { get; set; }

    /// <summary>Absolute pressure that is expected at the machine's inlet, Pa.</summary>
    public double ExpectedSuction { get; set; } = double.NaN;

    /// <summary>Whether the gauge is not believed.</summary>
    public bool IsGaugeOut { get; set; }

    /// <summary>Whether the gauge may show what the refrigerant cannot: then it does not say what the machine can draw.</summary>
    public bool IsGaugeDoubted { get; set; }

    /// <summary>Takes in a reading; true where that closed a block.</summary>
    public bool Add(in RawReading reading, out EstimatorBlock block)
    {
        block = default;
        double weight = ScaleTracker.IsPossible(reading.GrossWeight) ? reading.GrossWeight : double.NaN;
        bool isTaken = _clock.Take(reading.Time, weight, reading.SuctionGaugePressure + _prior.Atmosphere, _isDrawing ? ExpectedFlow : 0, Left, out double time);
        if (!isTaken)
        {
            // Said at once; and with its block where one is being made, for those who look only then.
            NotUsed |= _clock.Unused;
            _unused |= _gauges + _weights > 0 ? _clock.Unused : UnusedReadings.None;
            return false;
        }

        _unused |= _clock.Unused;

        if (_clock.Unused != UnusedReadings.None)
        {
            // The block began by another clock.
            _gaugeSum = _weightSum = 0;
            _gauges = _weights = 0;
        }

        // Nobody draws while cylinders are changed.
        bool isLabelled = reading.Cylinder >= 0 && reading.Cylinder != Scale.Cylinder;
        bool isChange = time - _blockStart > (isLabelled ? 1 : 3) * ReadingClock.LongGap && (isLabelled || weight < Scale.Gross - ScaleTracker.OtherCylinder);
        Gauge(in reading);
        Weight(in reading);
        Temperatures(in reading);
        _isDrawing = reading.IsMachineRunning && reading.IsValveOpen;
        IsOpen = reading.IsValveOpen;
        if (time > 0 && time - _blockStart < BlockLength - 1e-6)
        {
            return false;
        }

        Close(time, isChange, out block);
        return true;
    }

    private void Gauge(in RawReading reading)
    {
        double gauge = reading.SuctionGaugePressure;
        _beyond = double.NaN;
        if (!Require.IsFinite(gauge))
        {
            _unused |= reading.IsGaugeGiven ? UnusedReadings.GaugeNotANumber : UnusedReadings.None;
        }
        else if (gauge < _lowest || gauge > _highest)
        {
            _beyond = gauge;
            _unused |= UnusedReadings.GaugeOutOfRange;
        }
        else if (!reading.IsValveOpen)
        {
            _unused |= UnusedReadings.GaugeShutOff;
        }
        else
        {
            _gaugeSum += gauge;
            _gauges++;
        }

        double discharge = reading.DischargeGaugePressure;
        _discharge = Require.IsFinite(discharge) ? discharge : double.NaN;
        if (Require.IsFinite(discharge) && discharge > 0 && discharge < 1e7)
        {
            _condensing = _table.BubbleTemperature(discharge + _prior.Atmosphere);
        }
        else if (!double.IsNaN(discharge) && !(discharge <= 0 && discharge > _lowest))
        {
            // A cylinder below the atmosphere has no condensing temperature to tell.
            _unused |= UnusedReadings.DischargeOutOfRange;
        }
    }

    private void Weight(in RawReading reading)
    {
        double weight = reading.GrossWeight;
        int on = _cylinder >= 0 ? _cylinder : Scale.Cylinder;
        if (reading.Cylinder >= 0 && reading.Cylinder != on)
        {
            // The weights so far are those of the cylinder before.
            _weightSum = 0;
            _weights = 0;
        }

        _cylinder = reading.Cylinder >= 0 ? reading.Cylinder : _cylinder;
        if (!Require.IsFinite(weight))
        {
            _unused |= reading.IsWeightGiven ? UnusedReadings.WeightNotANumber : UnusedReadings.None;
        }
        else if (!ScaleTracker.IsPossible(weight))
        {
            _unused |= UnusedReadings.WeightOutOfRange;
        }
        else
        {
            _weightSum += weight;
            _weights++;
        }
    }

    private void Temperatures(in RawReading reading)
    {
        if (reading.AirTemperature is >= Coldest and <= Warmest)
        {
            _last.AirTemperature = reading.AirTemperature;
        }
        else if (!double.IsNaN(reading.AirTemperature))
        {
            _unused |= UnusedReadings.TemperatureOutOfRange;
        }

        if (reading.PipeTemperature is >= Coldest and <= Warmest)
        {
            _pipe = reading.PipeTemperature;
        }
        else if (!double.IsNaN(reading.PipeTemperature))
        {
            _unused |= UnusedReadings.TemperatureOutOfRange;
        }
    }

    /// <summary>
    /// What the machine as told can draw at the pressure at its inlet, be the gauge off by its limit; where that pressure is not read or not believed, or it is the cylinder's, what is expected and what may come by itself.
    /// </summary>
    private double MostVapor(double gauge) => !_isDrawing ? ByItself
        : Require.IsFinite(gauge) && !IsGaugeOut && !(gauge > _discharge - _gaugeLimit) ? _machine.Flow(Math.Max(gauge + _gaugeLimit + _prior.Atmosphere, IsGaugeDoubted ? LiquidSuction * _saturation : 0), _last.AirTemperature)
        : ExpectedFlow + ByItself;

    private void Close(double time, bool isChange, out EstimatorBlock block)
    {
        block = default;
        block.Time = time;
        block.Duration = time - _blockStart;
        block.AirTemperature = _last.AirTemperature;
        block.IsDrawing = _isDrawing && !isChange;
        block.Gauge = _gauges > 0 ? _gaugeSum / _gauges : double.NaN;
        block.PipeTemperature = _pipe;
        block.CondensingTemperature = _condensing;
        block.Delivered = double.NaN;
        if (_weights > 0)
        {
            if (Scale.Add(_weightSum / _weights, time, block.IsDrawing ? ExpectedFlow : 0, MostVapor(block.Gauge), _cylinder, out double delivered))
            {
                // The first weight only sets the zero.
                block.Delivered = time > 0 ? delivered : double.NaN;
            }
            else
            {
                _unused |= Scale.IsOtherUnit ? UnusedReadings.WeightInconsistent : UnusedReadings.WeightJumped;
            }
        }

        Liquid(ref block);
        _blockStart = time;
        _gaugeSum = _weightSum = 0;
        _gauges = _weights = 0;
        _pipe = _condensing = double.NaN;
        NotUsed = _unused;
        _unused = UnusedReadings.None;
        _last = block;
    }

    /// <summary>
    /// While liquid moves, the scale alone says how much; the gauge shows what the machine does to it. Where the gauge shows the cylinder, vapor flows through the machine by itself into
    /// a cylinder of lower pressure, and what comes beyond what the machine draws is taken from the scale. A gauge beyond its range that shows what the discharge does tells as much.
    /// </summary>
    private void Liquid(ref EstimatorBlock block)
    {
        if (Scale.IsLiquid)
        {
            if (Require.IsFinite(block.Delivered))
            {
                block.LiquidMoved = Beyond(block.Delivered - _liquidFrom);
                _liquidFrom = block.Delivered;
            }

            block.IsDrawing = false;
            block.Gauge = double.NaN;
        }
        else if (Scale.IsDoubtful)
        {
            // Neither is believed before it is known whether it is liquid; what comes meanwhile counts from where it began.
            _liquidFrom += block.IsDrawing ? ExpectedFlow * block.Duration : 0;
            block.Gauge = double.NaN;
            block.Delivered = double.NaN;
        }
        else if (Scale.IsFalling)
        {
            if (Require.IsFinite(block.Delivered))
            {
                block.LiquidMoved = block.Delivered - _liquidFrom - (block.IsDrawing ? ExpectedFlow * block.Duration : 0);
                _liquidFrom = block.Delivered;
            }
        }
        else
        {
            bool byItself = _passing.Check(block.IsDrawing, block.Gauge, _discharge, Scale.Cylinder, Scale.Content, block.AirTemperature, ExpectedSuction)
                || (block.IsDrawing && Math.Abs(_beyond - _discharge) < _gaugeLimit);
            block.Gauge = byItself ? double.NaN : block.Gauge;
            block.IsByItself = byItself;
            _behind = byItself ? _behind : 0;
            if (Require.IsFinite(block.Delivered))
            {
                block.Passed = byItself ? Beyond(block.Delivered - _liquidFrom - (ExpectedFlow * block.Duration)) : 0;
                _liquidFrom = block.Delivered;
            }
        }
    }

    /// <summary>What has moved beyond what was expected, never less than none: what a reading is behind is taken off the next, or the scale's noise would add up.</summary>
    private double Beyond(double more)
    {
        double sum = more + _behind;
        _behind = Math.Max(-MostBehind, Math.Min(0, sum));
        return Math.Max(0, sum);
    }
}
