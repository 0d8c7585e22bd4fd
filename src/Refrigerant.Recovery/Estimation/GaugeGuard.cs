using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Whether the gauge can be believed at all: at the start against the saturation pressure at the temperature told, later against what should have
/// changed while it shows the same. Fixed memory.
/// </summary>
internal sealed class GaugeGuard
{
    /// <summary>Blocks at the start that are compared, and how many of them decide.</summary>
    private const int FirstBlocks = 5;

    private const int Deciding = 3;

    /// <summary>K that the refrigerant may be colder or warmer than told, at the start.</summary>
    private const double Colder = 8;

    private const double Warmer = 15;

    /// <summary>What the hose may leave of the pressure beyond what it is told to.</summary>
    private const double LeastOfPressure = 0.6;

    private const double MostOfPressure = 1.15;

    /// <summary>Agreement with the estimate, as a share of the pressure, for this many blocks, restores belief.</summary>
    private const double Agreement = 0.15;

    private const int Restoring = 30;

    /// <summary>Blocks with the same reading, s, and share of the charge that leaves meanwhile, from which a gauge counts as stuck.</summary>
    private const int SameBlocks = 30;

    private const double SameTime = 120;
    private const double SameShare = 0.1;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private int _seen;
    private int _off;
    private int _agrees;
    private double _value = double.NaN;
    private double _since;
    private double _deliveredThen;
    private int _same;

    public GaugeGuard(ReducedModel model, EstimatorPrior prior)
    {
        _model = model;
        _prior = prior;
    }

    /// <summary>Whether the gauge shows what the refrigerant cannot.</summary>
    public bool IsInconsistent { get; private set; }

    /// <summary>Whether the gauge shows the same while the pressure must fall.</summary>
    public bool IsStuck { get; private set; }

    /// <summary>Looks at a block; what must not be believed is taken out of it.</summary>
    /// <param name="block">The block.</param>
    /// <param name="mean">The best estimate.</param>
    /// <param name="phase">What that takes for granted.</param>
    public void Check(ref EstimatorBlock block, in SigmaPoint mean, AssumedPhase phase)
    {
        if (!Require.IsFinite(block.Gauge))
        {
            return;
        }

        Stuck(in block, in mean);
        Consistency(in block, in mean, phase);
        if (IsInconsistent || IsStuck)
        {
            block.Gauge = double.NaN;
        }
    }

    private void Consistency(in EstimatorBlock block, in SigmaPoint mean, AssumedPhase phase)
    {
        double absolute = block.Gauge + _prior.Atmosphere;
        var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing, phase);
        _model.Evaluate(in mean.State, in mean.Parameters, in inputs, out ReducedOutput output);
        if (_seen < FirstBlocks)
        {
            double told = _prior.Mean[StateIndex.Temperature];
            double share = output.SuctionPressure / output.Pressure;
            double spread = 3 * _prior.Sigma[StateIndex.GaugeBias];
            double least = (LeastOfPressure * share * _model.Table.DewPressure(told - Colder)) - spread;
            double most = (MostOfPressure * _model.Table.DewPressure(told + Warmer)) + spread;
            _off += absolute < least || absolute > most ? 1 : 0;
            _seen++;
            IsInconsistent = _off >= Deciding;
        }
        else if (IsInconsistent)
        {
            bool agrees = Math.Abs(absolute - output.SuctionPressure) < Agreement * output.SuctionPressure;
            _agrees = agrees ? _agrees + 1 : 0;
            IsInconsistent = _agrees < Restoring;
        }
    }

    private void Stuck(in EstimatorBlock block, in SigmaPoint mean)
    {
        if (block.Gauge != _value || !block.IsDrawing)
        {
            _value = block.Gauge;
            _since = block.Time;
            _deliveredThen = mean.State.Delivered;
            _same = 0;
            IsStuck = false;
            return;
        }

        _same++;
        double gone = (mean.State.Delivered - _deliveredThen) / mean.Parameters.Charge;
        IsStuck |= _same >= SameBlocks && block.Time - _since >= SameTime && gone > SameShare;
    }
}
