using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// For readings too far apart to be held against parity relations: a gauge that falls further from one to the next than vapor can thin out meanwhile has lost sight of the appliance. What the scale gains from there on tells
/// a shut valve from a blocked hose. Fixed memory.
/// </summary>
/// <remarks>Vapor that is drawn off a volume without liquid thins at ṁ/m a second, m the vapor: ln p falls by no more than that times the time, however little is left.</remarks>
internal sealed class FallWatch
{
    /// <summary>s of a block from which it is looked at.</summary>
    private const double Sparse = 3;

    /// <summary>ln p over ln m: vapor that thins cools as well. Our choice.</summary>
    private const double Cools = 1.2;

    /// <summary>Standard deviations of volume and displacement that are allowed for, and share of the lowest pressure that must be missing beyond what the gauge may be off.</summary>
    private const double Unsure = 2;

    private const double Below = 0.8;

    /// <summary>kg that should have come, or s that have passed, before it is said what it is.</summary>
    private const double LeastExpected = 0.08;

    private const double LongEnough = 15;

    /// <summary>Share of the pressure in the appliance at which the machine has emptied its hose, and of the flow that still comes through a shut valve, and through a blocked hose at most.</summary>
    private const double Emptied = 0.35;

    private const double Shut = 0.2;
    private const double Blocked = 0.75;

    /// <summary>Probability, before anything is known, that a valve is shut or a hose blocked in the time between two readings. Our choice.</summary>
    private const double Unseen = 0.02;

    /// <summary>Share of the pressure before at which the gauge sees the appliance again.</summary>
    private const double Rises = 0.6;

    /// <summary>Values of the charge that are dealt out.</summary>
    public const int Quantiles = 10;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ChangePointFilter _filter;
    private double _pressure;
    private double _from;
    private double _expected;
    private double _delivered = double.NaN;
    private double _location;
    private double _scale = 1;
    private double _least;
    private double _vaporOnly;
    private double _suction;
    private bool _wasWet;

    public FallWatch(ReducedModel model, EstimatorPrior prior, ChangePointFilter filter)
    {
        _model = model;
        _prior = prior;
        _filter = filter;
    }

    /// <summary>When the gauge fell, s from the start.</summary>
    public double At { get; private set; }

    /// <summary>Time before which nothing is to be taken back: all of it where liquid was left for all that was known.</summary>
    public double Since => _wasWet ? double.NegativeInfinity : At;

    /// <summary>
    /// Probability that the gauge, which fell between two readings to where a machine that has emptied its hose has it as well as vapor that has thinned out, does not see the appliance: no reading tells, so that it follows
    /// from how likely the last liquid was to go just then. Zero where there is no such question.
    /// </summary>
    public double Doubt { get; private set; }

    /// <summary>Whether a fall is not decided yet.</summary>
    public bool IsPending { get; private set; }

    /// <summary>Begins anew.</summary>
    public void Restart()
    {
        IsPending = false;
        _delivered = double.NaN;
    }

    /// <summary>Takes in a block before the filters do; while it is not known what a fall is, its gauge is taken out, and nothing is drawn where nothing comes.</summary>
    /// <param name="block">The block.</param>
    /// <param name="mean">The best estimate before it.</param>
    /// <param name="phase">What that takes for granted.</param>
    public ParityVerdict Update(ref EstimatorBlock block, in SigmaPoint mean, AssumedPhase phase)
    {
        if (!block.IsDrawing || block.IsByItself || block.LiquidMoved != 0 || block.Duration < Sparse)
        {
            Restart();
            Doubt = block.IsDrawing ? Doubt : 0;
            return ParityVerdict.Agrees;
        }

        if (!Require.IsFinite(block.Gauge))
        {
            return ParityVerdict.Agrees;
        }

        var inputs = new ReducedInputs(block.AirTemperature, true, phase);
        _model.Evaluate(in mean.State, in mean.Parameters, in inputs, out ReducedOutput output);
        double seen = Math.Max(0, block.Gauge - mean.GaugeError + _prior.Atmosphere);
        double gained = block.Delivered - _delivered;
        _delivered = block.Delivered;
        ParityVerdict verdict = IsPending ? Decide(ref block, seen, in output) : Look(ref block, seen, gained, in output);
        if (IsPending && gained < Shut * output.Flow * block.Duration)
        {
            // As nothing comes, nothing is to be drawn from an appliance that none sees.
            block.IsDrawing = false;
        }

        return verdict;
    }

    /// <summary>Whether the gauge has fallen further than it can while the machine draws what is thought, or what the scale has gained if that is more.</summary>
    private ParityVerdict Look(ref EstimatorBlock block, double seen, double gained, in ReducedOutput output)
    {
        SquareRootFilter best = _filter.Best;
        double wider = Math.Exp(Unsure * Math.Sqrt(best.Variance(StateIndex.Volume) + best.Variance(StateIndex.Displacement)));
        double flow = gained > output.Flow * block.Duration ? gained / block.Duration : output.Flow;
        double thinning = flow / Math.Max(1e-9, output.Mass - output.LiquidMass);
        double lowest = output.SuctionPressure * Math.Exp(-Cools * wider * thinning * block.Duration);
        double off = Math.Sqrt(_prior.GaugeNoise + best.Variance(StateIndex.GaugeBias) + _prior.ModelNoise);
        Question(seen, flow * block.Duration, in output);
        if (!(seen < (Below * lowest) - off))
        {
            return ParityVerdict.Agrees;
        }

        At = block.Time;
        _wasWet = _filter.VaporOnly < ParityRelations.Dry;
        _pressure = output.Pressure;
        _from = block.Delivered;
        _expected = 0;
        IsPending = true;
        block.Gauge = double.NaN;
        return ParityVerdict.Agrees;
    }

    /// <summary>Whether the gauge still sees the appliance; what was known of the charge before it fell is kept meanwhile.</summary>
    private void Question(double seen, double comes, in ReducedOutput output)
    {
        if (Doubt > 0)
        {
            Doubt = seen > Rises * _suction ? 0 : Doubt;
        }
        else if (seen < Emptied * Math.Max(_suction, output.SuctionPressure))
        {
            double least = Math.Exp(_least);
            double gone = StudentT.Below((_least - _location) / _scale);
            double now = StudentT.Below((Math.Log(least + (2 * comes)) - _location) / _scale);
            double dry = _vaporOnly + ((1 - _vaporOnly) * (now - gone) / Math.Max(1e-9, 1 - gone));
            Doubt = Unseen / (Unseen + dry);
            _suction = Math.Max(_suction, output.SuctionPressure);
        }

        if (Doubt == 0)
        {
            _filter.ChargeOf(out _location, out _scale, out _least);
            _vaporOnly = _filter.VaporOnly;
            _suction = output.SuctionPressure;
        }
    }

    /// <summary>What is left and what the charge was, where the gauge does not see the appliance: as it was thought of before it fell.</summary>
    public void Charge(double weight, WeightedValues left, WeightedValues charge)
    {
        double below = StudentT.Below((_least - _location) / _scale);
        double delivered = _filter.Best.X[StateIndex.Delivered];
        for (int i = 0; i < Quantiles; i++)
        {
            double mass = Math.Exp(FilterDraws.Quantile(_location, _scale, below, (i + 0.5) / Quantiles));
            left.Add(Math.Max(0, mass - delivered), weight / Quantiles);
            charge.Add(Math.Max(mass, delivered), weight / Quantiles);
        }
    }

    private ParityVerdict Decide(ref EstimatorBlock block, double seen, in ReducedOutput output)
    {
        _expected += output.Flow * block.Duration;
        _from = Require.IsFinite(_from) ? _from : block.Delivered;
        if (seen > Below * output.SuctionPressure)
        {
            // One reading that was off.
            Restart();
            Doubt = 0;
            return ParityVerdict.Agrees;
        }

        block.Gauge = double.NaN;
        if ((_expected < LeastExpected && block.Time - At < LongEnough) || !Require.IsFinite(block.Delivered))
        {
            return ParityVerdict.Agrees;
        }

        double share = (block.Delivered - _from) / Math.Max(LeastExpected, _expected);
        Restart();
        return seen < Emptied * _pressure && share < Shut ? ParityVerdict.ValveClosed
            : share < Blocked ? ParityVerdict.HoseBlocked
            : ParityVerdict.Agrees;
    }
}
