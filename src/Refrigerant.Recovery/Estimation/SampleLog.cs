using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// The whole job as the weighted samples look at it: blocks of ten seconds, longer the longer the job has run, with the gains of the small
/// filters for the instruments' errors, which all samples share. Fixed memory.
/// </summary>
internal sealed class SampleLog
{
    /// <summary>Blocks that are kept: ten hours; what comes after is left to the change-point filter.</summary>
    public const int Capacity = 1200;

    private const double FirstBlock = 10;

    /// <summary>Each time the job is this many times its block long, the blocks double.</summary>
    private const double BlocksBeforeDoubling = 360;

    /// <summary>A block's readings are the mean of its second half.</summary>
    private const double ReadShare = 0.5;

    /// <summary>Standard deviation of the white error of a block's gauge reading, Pa, and of its scale reading, kg.</summary>
    private const double BlockGauge = 1500;

    private const double BlockScale = 0.01;

    /// <summary>Slow error of the gauge and of the model: Pa, and share of the pressure.</summary>
    private const double SlowGauge = 4000;

    private const double SlowGaugeShare = 0.015;

    /// <summary>Error of the flow that the model makes, as a share of what has flowed; it goes with the scale's slow error.</summary>
    private const double FlowError = 0.015;

    private const double LeastPressure = 5e4;

    private readonly EstimatorPrior _prior;
    private readonly SampleBlock[] _blocks = new SampleBlock[Capacity];
    private double _length;
    private double _gaugeSum;
    private double _scaleSum;
    private int _gauges;
    private int _scales;
    private double _bias;
    private double _biasSlow;
    private double _slow;
    private double _offset;

    public SampleLog(EstimatorPrior prior)
    {
        _prior = prior;
        double relative = SlowGaugeShare * 6e5;
        _bias = prior.Sigma[StateIndex.GaugeBias] * prior.Sigma[StateIndex.GaugeBias];
        _slow = (SlowGauge * SlowGauge) + (relative * relative);
        _offset = prior.Sigma[StateIndex.ScaleOffset] * prior.Sigma[StateIndex.ScaleOffset];
    }

    /// <summary>Number of blocks.</summary>
    public int Count { get; private set; }

    /// <summary>Whether there is room for another.</summary>
    public bool IsFull => Count >= Capacity;

    /// <summary>Seconds since the end of the last block.</summary>
    public double Open => _length;

    /// <summary>Variance of the scale's slow error alone, kg².</summary>
    public double ScaleVariance => 1.44 * _prior.ScaleDrift * _prior.ScaleDrift;

    /// <summary>A block.</summary>
    public ref readonly SampleBlock this[int index] => ref _blocks[index];

    /// <summary>Variance of the flow's error after this much has flowed, kg².</summary>
    public static double FlowVariance(double delivered) => FlowError * delivered * FlowError * delivered;

    /// <summary>Takes in a block of the filter's; true where that closed one.</summary>
    public bool Add(in EstimatorBlock block)
    {
        if (IsFull)
        {
            return false;
        }

        // What acts must not change within a block: the seconds before a switch are one of their own.
        bool closed = false;
        if (_length > 0 && block.IsDrawing != _blocks[Count].IsDrawing)
        {
            Close();
            closed = true;
            if (IsFull)
            {
                return true;
            }
        }

        ref SampleBlock open = ref _blocks[Count];
        double wanted = FirstBlock * Math.Pow(2, Math.Max(0, Math.Ceiling(Math.Log(Math.Max(1, block.Time) / (FirstBlock * BlocksBeforeDoubling), 2))));
        open.IsDrawing = block.IsDrawing;
        open.AirTemperature = block.AirTemperature;
        open.LiquidMoved += block.LiquidMoved;
        open.Passed += block.Passed;
        _length += block.Duration;
        if (_length > ReadShare * wanted)
        {
            Read(block.Gauge, ref _gaugeSum, ref _gauges);
            Read(block.Delivered, ref _scaleSum, ref _scales);
        }

        if (_length >= wanted - 1e-6)
        {
            Close();
            closed = true;
        }

        return closed;
    }

    private static void Read(double value, ref double sum, ref int count)
    {
        if (Require.IsFinite(value))
        {
            sum += value;
            count++;
        }
    }

    private void Close()
    {
        ref SampleBlock block = ref _blocks[Count];
        block.Duration = _length;
        block.Gauge = _gauges > 0 ? _gaugeSum / _gauges : double.NaN;
        block.Delivered = _scales > 0 ? _scaleSum / _scales : double.NaN;
        Gains(ref block);
        Count++;
        _length = _gaugeSum = _scaleSum = 0;
        _gauges = _scales = 0;
    }

    /// <summary>Kalman filters for bias, slow error and offset: their variances do not depend on the sample, so neither do their gains.</summary>
    private void Gains(ref SampleBlock block)
    {
        double keeps = Math.Exp(-block.Duration / _prior.SlowGaugeTime);
        double pressure = Require.IsFinite(block.Gauge) ? Math.Max(LeastPressure, block.Gauge + _prior.Atmosphere) : LeastPressure;
        double relative = SlowGaugeShare * pressure;
        double stationary = (SlowGauge * SlowGauge) + (relative * relative);
        block.SlowKeeps = keeps;
        _biasSlow *= keeps;
        _slow = (_slow * keeps * keeps) + (stationary * (1 - (keeps * keeps)));
        if (Require.IsFinite(block.Gauge))
        {
            double variance = _bias + (2 * _biasSlow) + _slow + (BlockGauge * BlockGauge);
            double toBias = _bias + _biasSlow;
            double toSlow = _biasSlow + _slow;
            block.GaugePrecision = 1 / variance;
            block.BiasGain = toBias / variance;
            block.SlowGain = toSlow / variance;
            _bias -= block.BiasGain * toBias;
            _biasSlow -= block.BiasGain * toSlow;
            _slow -= block.SlowGain * toSlow;
        }

        double scaleKeeps = Math.Exp(-block.Duration / _prior.ScaleTime);
        double seen = Require.IsFinite(block.Delivered) ? Math.Max(0, block.Delivered) : 0;
        block.OffsetKeeps = scaleKeeps;
        _offset = (_offset * scaleKeeps * scaleKeeps) + ((ScaleVariance + FlowVariance(seen)) * (1 - (scaleKeeps * scaleKeeps)));
        if (Require.IsFinite(block.Delivered))
        {
            double variance = _offset + (BlockScale * BlockScale);
            block.ScalePrecision = 1 / variance;
            block.OffsetGain = _offset / variance;
            _offset *= 1 - block.OffsetGain;
        }
    }
}
