using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// A scale that shows the same while refrigerant must flow is believed for a minute before it counts as stuck. Then the filters go back to where it moved last, and on from there without readings, unless the gauge says
/// that it is the machine that does not draw. Fixed memory.
/// </summary>
internal sealed class UnmovedScale
{
    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ChangePointFilter _filter;
    private readonly FilterMark _mark = new();
    private SigmaPoint _mean;
    private AssumedPhase _phase;
    private bool _isKept;
    private double _drawn;

    public UnmovedScale(ReducedModel model, EstimatorPrior prior, ChangePointFilter filter)
    {
        _model = model;
        _prior = prior;
        _filter = filter;
    }

    /// <summary>s from the start to where the scale moved last.</summary>
    public double Since => _mark.Time;

    /// <summary>Something else was found meanwhile that must not be taken back.</summary>
    public void Forget() => _isKept = false;

    /// <summary>Takes in a block before the filters do; whether they were put back.</summary>
    public bool Update(in EstimatorBlock block, ScaleGuard scale)
    {
        bool isBack = false;
        if (scale.HasMoved)
        {
            _drawn = _filter.Keep(_mark);
            _mean = _filter.Best.Mean();
            _phase = _filter.IsBestWet ? AssumedPhase.LiquidPresent : AssumedPhase.VaporOnly;
            _isKept = true;
        }
        else if (scale.IsStuck && _isKept)
        {
            _isKept = false;
            isBack = IsScale(in block);
            if (isBack)
            {
                _filter.GoBack(_mark, _drawn, block.AirTemperature);
            }
        }

        _drawn += block.IsDrawing ? block.Duration : 0;
        return isBack;
    }

    /// <summary>Whether the gauge is nearer to what it shows where the machine has drawn since than to what it shows where it has not.</summary>
    private bool IsScale(in EstimatorBlock block)
    {
        if (!Require.IsFinite(block.Gauge))
        {
            return true;
        }

        return Math.Abs(block.Gauge - Foreseen(in block, true)) < Math.Abs(block.Gauge - Foreseen(in block, false));
    }

    private double Foreseen(in EstimatorBlock block, bool isDrawing)
    {
        SigmaPoint point = _mean;
        var inputs = new ReducedInputs(block.AirTemperature, isDrawing, _phase);
        _model.Advance(ref point.State, in point.Parameters, in inputs, _drawn + block.Duration, Math.Max(1, _drawn / 30));
        _model.Evaluate(in point.State, in point.Parameters, in inputs, out ReducedOutput output);
        return output.SuctionPressure - _prior.Atmosphere + point.GaugeError;
    }
}
