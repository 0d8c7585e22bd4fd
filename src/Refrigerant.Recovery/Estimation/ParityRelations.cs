using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// What is wrong, from structured residuals: a prediction some 15 to 30 s old, which knows nothing of the readings since, against the gauge's
/// level, the scale's rate and the scale's steps. Each fault moves its own of them. Fixed memory.
/// </summary>
/// <remarks>
/// Parity relations: Gertler, <i>Fault Detection and Diagnosis in Engineering Systems</i>, 1998. A scale that drifts and a machine that draws too
/// little move the same residual; they cannot be told apart.
/// </remarks>
internal sealed class ParityRelations
{
    /// <summary>Probability that no liquid is left from which that may be what a falling pressure says.</summary>
    public const double Dry = 0.2;

    /// <summary>s between the starts of predictions, and those over which the scale's rate is taken.</summary>
    private const double Renewal = 15;

    private const double Window = 12;

    /// <summary>s before anything is compared, and before what needs a steady course is.</summary>
    private const double WarmUp = 30;

    private const double Steady = 120;

    /// <summary>Blocks in a row that a verdict takes.</summary>
    private const int Blocks = 4;

    private const int HoseBlocks = 6;
    private const int MachineBlocks = 10;

    /// <summary>s of a block from which nothing older than it is compared: what happened meanwhile is not known.</summary>
    private const double LongBlock = 30;

    /// <summary>Blocks before the first comparison: the prediction is then older than fifteen seconds.</summary>
    private const int LeastBlocks = 20;

    /// <summary>Standard deviation of the scale's rate over twelve seconds, kg/s; over longer ones its drift is what counts.</summary>
    private const double RateNoise = 0.54e-3;

    /// <summary>Share of the flow that must be missing before a machine is called weak, and standard deviations of the scale's rate.</summary>
    private const double LeastWeakness = 0.24;

    private const double WeakSigmas = 2.9;

    /// <summary>Times the level that the pressure must be for that: near a stall every machine draws less than it should.</summary>
    private const double WellAboveLevel = 1.2;

    /// <summary>Share of the scale's largest drift that a machine is held against: most scales drift less.</summary>
    private const double Drift = 0.7;

    /// <summary>Flow goes with the suction pressure: at this share of the appliance's, the machine has emptied its hose and next to nothing comes.</summary>
    private const double Emptied = 0.22;

    /// <summary>At this share where it has stood, or stands.</summary>
    private const double AllButEmptied = 0.35;

    /// <summary>Change of that pressure in a second, as a share of it: vapor that thins out falls on.</summary>
    private const double HardlyFalls = 0.03;

    /// <summary>Where it was above this share within these seconds: vapor that thins out takes longer.</summary>
    private const double Full = 0.45;

    private const double EmptiesWithin = 12;

    /// <summary>
    /// Share of the flow that the machine would still draw at the pressure seen, less what the gauge may be off: where it stands there, as much comes through, and no valve is shut. Standing
    /// is a change in a second of less than this share of it over these seconds.
    /// </summary>
    private const double Through = 0.14;

    private const double Stands = 0.02;
    private const double StandsFor = 5;

    /// <summary>Less than this share of the charge left: near the end every pressure falls and no hose is named.</summary>
    private const double NearEnd = 0.08;

    /// <summary>Largest change of the gauge in a second, as a share of the pressure, at which a hose is named: its pressure stands once it is blocked.</summary>
    private const double HoseStands = 0.006;

    private const double HoseWindow = 10;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ChangePointFilter _filter;
    private readonly SigmaPoint[] _predicted = new SigmaPoint[2];
    private readonly AssumedPhase[] _phase = new AssumedPhase[2];
    private readonly double[] _born = [-1, -1];
    private readonly double[] _offset = new double[2];
    private readonly double[] _vaporOnly = new double[2];
    private readonly RollingLine _scale;
    private readonly RollingLine _gauge;
    private readonly GaugeStep _step;
    private ParityVerdict _pending;
    private int _streak;
    private int _compared;
    private double _drawingSince = double.NaN;
    private double _lastHigh = double.NegativeInfinity;

    /// <param name="model">The model.</param>
    /// <param name="prior">What was told.</param>
    /// <param name="filter">Where predictions start from.</param>
    public ParityRelations(ReducedModel model, EstimatorPrior prior, ChangePointFilter filter)
    {
        _scale = new RollingLine(16);
        _gauge = new RollingLine(16);
        _model = model;
        _prior = prior;
        _filter = filter;
        _step = new GaugeStep(prior);
    }

    /// <summary>Time before which the readings fit: a step of the gauge, or now.</summary>
    public double ChangedAt { get; private set; }

    /// <summary>Whether it was all but sure that liquid was left when the prediction began that the readings were held against.</summary>
    public bool WasWet { get; private set; }

    /// <summary>Begins anew: after a verdict, a rest, a new zero of the scale.</summary>
    public void Restart()
    {
        _born[0] = _born[1] = -1;
        _scale.Clear();
        _gauge.Clear();
        _step.Restart();
        _pending = ParityVerdict.Agrees;
        _streak = _compared = 0;
        _drawingSince = double.NaN;
    }

    /// <summary>Takes in a block that the filter has had; a verdict where enough blocks in a row say the same.</summary>
    public ParityVerdict Update(in EstimatorBlock block)
    {
        if (!block.IsDrawing || block.LiquidMoved != 0 || block.IsByItself || block.Duration > LongBlock)
        {
            Restart();
            return ParityVerdict.Agrees;
        }

        _drawingSince = double.IsNaN(_drawingSince) ? block.Time : _drawingSince;
        if (block.Time < WarmUp)
        {
            return ParityVerdict.Agrees;
        }

        int old = Renew(in block);
        if (_born[old] < 0 || !Require.IsFinite(block.Gauge) || !Require.IsFinite(block.Delivered))
        {
            return ParityVerdict.Agrees;
        }

        WasWet = _vaporOnly[old] < Dry;
        if (Stepped(_step, old, in block) is ParityVerdict stepped and not ParityVerdict.Agrees)
        {
            ChangedAt = _step.At;
            return stepped;
        }

        ChangedAt = block.Time;
        _scale.Add(block.Time, block.Delivered);
        _gauge.Add(block.Time, block.Gauge);
        _compared++;
        ParityVerdict now = _compared > LeastBlocks ? Compare(old, in block) : ParityVerdict.Agrees;
        _streak = now == ParityVerdict.Agrees ? 0 : now == _pending ? _streak + 1 : 1;
        _pending = now;
        int needed = now == ParityVerdict.MachineWeak ? MachineBlocks : now is ParityVerdict.HoseBlocked or ParityVerdict.GaugeOff ? HoseBlocks : Blocks;
        return _streak >= needed ? now : ParityVerdict.Agrees;
    }

    /// <summary>Moves both predictions on, starts one anew where the other is old enough; the older one.</summary>
    private int Renew(in EstimatorBlock block)
    {
        for (int k = 0; k < 2; k++)
        {
            if (_born[k] >= 0 && block.Duration > 0)
            {
                var inputs = new ReducedInputs(block.AirTemperature, true, _phase[k]);
                _model.Advance(ref _predicted[k].State, in _predicted[k].Parameters, in inputs, block.Duration, Math.Max(1, block.Duration / 10));
            }
        }

        int old = _born[0] < _born[1] ? 0 : 1;
        if (_born[old] < 0 || block.Time - _born[1 - old] >= Renewal)
        {
            SquareRootFilter best = _filter.Best;
            _predicted[old] = best.Mean();
            _offset[old] = best.X[StateIndex.ScaleOffset];
            _phase[old] = _filter.IsBestWet ? AssumedPhase.LiquidPresent : AssumedPhase.VaporOnly;
            _vaporOnly[old] = _filter.VaporOnly;
            _born[old] = block.Time;
            old = 1 - old;
        }

        return old;
    }

    /// <summary>A step of the gauge after which it stands: the hose, or the gauge itself where the scale goes on as before.</summary>
    private ParityVerdict Stepped(GaugeStep step, int old, in EstimatorBlock block)
    {
        var inputs = new ReducedInputs(block.AirTemperature, true, _phase[old]);
        ref SigmaPoint predicted = ref _predicted[old];
        _model.Evaluate(in predicted.State, in predicted.Parameters, in inputs, out ReducedOutput output);
        double thinning = output.Flow / Math.Max(1e-9, output.Mass - output.LiquidMass);
        if (!step.Update(in block, thinning) || !_scale.Fit(block.Time, GaugeStep.Standing, out double rate, out _))
        {
            return ParityVerdict.Agrees;
        }

        double seen = block.Gauge + _prior.Atmosphere;
        if (seen < AllButEmptied * output.Pressure && !ComesThrough(seen, in predicted.Parameters, in output))
        {
            return ParityVerdict.ValveClosed;
        }

        double ratio = output.Flow > 1e-5 ? rate / output.Flow : 0;
        double sigma = RateNoise * Math.Pow(Window / GaugeStep.Standing, 1.5) / Math.Max(1e-5, output.Flow);
        bool flowsOn = ratio > 1 - (0.3 * step.Share) && sigma < 0.35 * step.Share;
        return flowsOn ? ParityVerdict.GaugeOff : ParityVerdict.HoseBlocked;
    }

    /// <summary>Whether something comes to a machine that pulls to this pressure.</summary>
    private bool ComesThrough(double seen, in ReducedParameters parameters, in ReducedOutput output) =>
        ReducedModel.Drawn(seen - _prior.Sigma[StateIndex.GaugeBias], in parameters, in output) > Through;

    private ParityVerdict Compare(int old, in EstimatorBlock block)
    {
        var inputs = new ReducedInputs(block.AirTemperature, true, _phase[old]);
        ref SigmaPoint predicted = ref _predicted[old];
        _model.Evaluate(in predicted.State, in predicted.Parameters, in inputs, out ReducedOutput output);
        double seen = block.Gauge + _prior.Atmosphere;
        _lastHigh = seen > Full * output.Pressure ? block.Time : _lastHigh;
        bool comesThrough = ComesThrough(seen, in predicted.Parameters, in output);
        if (seen < Emptied * output.Pressure && block.Time - _lastHigh < EmptiesWithin)
        {
            return !comesThrough ? ParityVerdict.ValveClosed
                : _gauge.Fit(block.Time, StandsFor, out double falls, out _) && Math.Abs(falls) < Stands * seen ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees;
        }

        if (_phase[old] != AssumedPhase.LiquidPresent
            || !_scale.Fit(block.Time, Window, out double rate, out double weight)
            || !_scale.Fit(block.Time, 6, out double fastRate, out _)
            || !_gauge.Fit(block.Time, 6, out double pressureRate, out double gauge)
            || !_gauge.Fit(block.Time, HoseWindow, out double slowRate, out _))
        {
            return ParityVerdict.Agrees;
        }

        double pressure = output.Pressure;
        double expected = output.Flow;
        double ratio = expected > 1e-5 ? rate / expected : 1;
        double fastRatio = expected > 1e-5 ? fastRate / expected : 1;
        double shown = output.SuctionPressure - _prior.Atmosphere + predicted.GaugeError;
        double level = (gauge - shown) / pressure;
        double levelSigma = (2.5 * Math.Sqrt(_prior.GaugeNoise + _prior.ModelNoise) / pressure) + 0.02;
        double drift = Drift * _prior.ScaleDrift * Math.Sqrt(2 / (_prior.ScaleTime * Window));
        double rateSigma = RateNoise / Math.Max(1e-5, expected);
        double weakSigma = Math.Sqrt((RateNoise * RateNoise) + (drift * drift)) / Math.Max(1e-5, expected);
        double step = weight - predicted.State.Delivered - _offset[old];
        double age = block.Time - _born[old];
        bool isSteady = Math.Abs(pressureRate) < 0.012 * pressure;

        // The last liquid's going looks like a blocked hose, but the pressure goes on falling: none is named where it was near or falls.
        bool canBeHose = _vaporOnly[old] < Dry && output.LiquidMass > NearEnd * predicted.Parameters.Charge && Math.Abs(slowRate) < HoseStands * pressure;
        bool isHose = canBeHose && ratio < 1 - Math.Max(0.22, 1.6 * rateSigma) && level < -Math.Max(0.08, 2 * levelSigma);
        bool isSettled = block.Time - _drawingSince > Steady && _filter.VaporOnly < 0.2;
        bool canBeWeak = isSettled && output.Pressure > WellAboveLevel * _prior.Level && ratio < 1 - Math.Max(LeastWeakness, WeakSigmas * weakSigma);
        double absolute = gauge + _prior.Atmosphere;
        if (absolute < AllButEmptied * pressure)
        {
            // The machine has emptied the hose; while the scale still slows down it is too early to say of what.
            bool stands = Math.Abs(pressureRate) < HardlyFalls * Math.Max(absolute, 0.5 * _prior.Atmosphere);
            return stands && fastRatio < 0.35 && !comesThrough ? ParityVerdict.ValveClosed
                : fastRatio < ratio - 0.15 ? ParityVerdict.Agrees
                : isHose ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees;
        }

        if (isHose)
        {
            return ParityVerdict.HoseBlocked;
        }

        if (canBeWeak && level > -levelSigma && step < 0)
        {
            return ParityVerdict.MachineWeak;
        }

        if (Math.Abs(step) > 0.07 && ratio is > 0.6 and < 1.4 && Math.Abs(level) < 2 * levelSigma && Math.Abs(step - (expected * (ratio - 1) * age)) > 0.06)
        {
            return ParityVerdict.ScalePulled;
        }

        bool gaugeAlone = Math.Abs(level) > Math.Max(0.12, 3 * levelSigma) && Math.Abs(ratio - 1) < 0.15 && rateSigma < 0.15;
        return isSettled && gaugeAlone && isSteady ? ParityVerdict.GaugeOff : ParityVerdict.Agrees;
    }
}
