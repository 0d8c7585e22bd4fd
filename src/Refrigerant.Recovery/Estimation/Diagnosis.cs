using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What is wrong, since when, and what follows for the filters. Fixed memory.</summary>
internal sealed class Diagnosis
{
    /// <summary>s that a passing disturbance stands.</summary>
    private const double Passing = 120;

    /// <summary>s for which no dry filter is born after a hose was found blocked or a machine weak.</summary>
    private const double Suspension = 60;

    /// <summary>The gauge is back where it shows this share of the pressure that the appliance should have.</summary>
    private const double Recovered = 0.6;

    /// <summary>Share of what the machine as told draws at the pressure at its inlet, and kg beyond it, by which the scale gains again behind a valve that was shut, or a machine that stood.</summary>
    private const double ComesShare = 0.3;

    private const double ComesBeyond = 0.05;

    /// <summary>Share of the pressure by which the gauge still rises from one block to the next when a valve was opened, and s for which that is waited for.</summary>
    private const double Settled = 0.01;

    private const double LongestSettling = 20;

    /// <summary>Variance of ln of the resistance of a hose that has changed.</summary>
    private const double HoseVariance = 4;

    /// <summary>Standard deviations of a machine's weakness that confirm one, that name it without anything else, and where the pressure at its inlet has risen.</summary>
    private const double Confirms = 2;

    private const double Plain = 2.7;
    private const double Risen = 1.8;

    /// <summary>Times the level that the pressure at the inlet must be for that: near a stall every machine draws less than it should.</summary>
    private const double WellAboveLevel = 1.2;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ChangePointFilter _filter;
    private readonly ParityRelations _parity;
    private readonly ToldMachine _told;
    private readonly StandingPressure _standing;
    private readonly AirWatch _air;
    private readonly GaugeGuard _gauge;
    private readonly FallWatch _fall;
    private readonly BlockedHose _hose = new();
    private readonly AbsoluteGauge _absolute;
    private readonly MachineWatch _machine;
    private readonly StandstillWatch _still;
    private readonly FilterMark _moved = new(isWhole: false);
    private readonly ScaleGuard _scale;
    private readonly UnmovedScale _unmoved;
    private readonly double[] _until = new double[JobConditions.Count];
    private bool _isLiquid;
    private double _weakAt = double.NegativeInfinity;
    private double _suspendedUntil = double.NegativeInfinity;
    private double _eventTime = double.NegativeInfinity;
    private double _openedAt = double.NegativeInfinity;
    private double _lastGauge = double.NaN;
    private double _delivered = double.NaN;
    private double _now;

    public Diagnosis(ReducedModel model, EstimatorPrior prior, ChangePointFilter filter, Instruments instruments)
    {
        _model = model;
        _prior = prior;
        _filter = filter;
        _parity = new ParityRelations(model, prior, filter);
        _gauge = new GaugeGuard(model, prior);
        _fall = new FallWatch(model, prior, filter);
        _air = new AirWatch(prior);
        _told = new ToldMachine(model.Table, prior);
        _standing = new StandingPressure(model.Table, prior);
        _absolute = new AbsoluteGauge(model, prior, _told, instruments);
        _machine = new MachineWatch(_told, prior);
        _still = new StandstillWatch(_told, prior);
        _scale = new ScaleGuard(instruments);
        _unmoved = new UnmovedScale(model, prior, filter);
        for (int i = 0; i < _until.Length; i++)
        {
            _until[i] = double.NegativeInfinity;
        }
    }

    /// <summary>Vapor that should flow, kg/s.</summary>
    public double ExpectedFlow { get; private set; }

    /// <summary>Refrigerant that can still flow, kg.</summary>
    public double Left { get; private set; }

    /// <summary>Temperature of the refrigerant, K, and pressure in the appliance, Pa, of the best estimate; not a number before the first block.</summary>
    public double Temperature { get; private set; } = double.NaN;

    public double Pressure { get; private set; } = double.NaN;

    /// <summary>Pressure at the machine's inlet, Pa, of the best estimate.</summary>
    public double Suction { get; private set; }

    /// <summary>Whether machine or hose are not what was told, so that samples of constant parameters have no say any more.</summary>
    public bool IsChanged { get; private set; }

    /// <summary>Whether the pressure stands below the atmosphere while the machine draws, and nothing says why.</summary>
    public bool IsStalled => _air.IsStalled && !_air.IsAir;

    /// <summary>K by which the appliance must be warmer than told, or colder, for the pressure at which it stood at first; zero where it is what was told.</summary>
    public double StandsOff => _standing.Off;

    /// <summary>A gauge that fell between two readings.</summary>
    public FallWatch Fall => _fall;

    /// <summary>What should have come into the cylinder since the scale was believed last, kg.</summary>
    public double Unseen => _scale.Unseen;

    /// <summary>Whether the gauge is not believed.</summary>
    public bool IsGaugeOut => _gauge.IsInconsistent || _gauge.IsStuck || _absolute.IsAbsolute;

    /// <summary>Whether it is not decided yet if the gauge can be believed.</summary>
    public bool IsGaugeDoubted => _gauge.IsDoubted;

    /// <summary>What was left out of the last block.</summary>
    public UnusedReadings NotUsed { get; private set; }

    /// <summary>Whether a condition stands.</summary>
    public bool Stands(JobCondition condition) => _now <= _until[(int)condition];

    /// <summary>Before the filters take a block: what must not be believed is taken out of it.</summary>
    /// <param name="block">The block.</param>
    /// <param name="unused">What was left out of it already.</param>
    /// <param name="scale">The scale.</param>
    public void Before(ref EstimatorBlock block, UnusedReadings unused, ScaleTracker scale)
    {
        _now = block.Time;
        NotUsed = UnusedReadings.None;
        double gauge = block.Gauge;
        _standing.Update(in block);
        Note(JobCondition.StandingPressureInconsistent, _standing.Off != 0, 0);
        double gained = block.Delivered - _delivered;
        _delivered = Require.IsFinite(block.Delivered) ? block.Delivered : _delivered;
        SigmaPoint mean = _filter.Best.Mean();
        AssumedPhase phase = _filter.IsBestWet ? AssumedPhase.LiquidPresent : AssumedPhase.VaporOnly;
        if (Stands(JobCondition.ValveClosed))
        {
            var shut = new ReducedInputs(block.AirTemperature, false, phase);
            _model.Evaluate(in mean.State, in mean.Parameters, in shut, out ReducedOutput inside);
            if (block.Gauge + _prior.Atmosphere > Recovered * inside.Pressure || Comes(in block, gained) || !block.IsDrawing)
            {
                _until[(int)JobCondition.ValveClosed] = double.NegativeInfinity;
                _openedAt = block.Time;
                Restart();
            }
            else
            {
                block.IsDrawing = false;
                block.Gauge = double.NaN;
                NotUsed |= UnusedReadings.GaugeShutOff;
            }
        }

        Settle(ref block);
        _lastGauge = gauge;
        Absolute(ref block);
        _gauge.Check(ref block, (unused & UnusedReadings.GaugeOutOfRange) != 0, in mean, phase);
        Stood(ref block, gained);
        Fell(ref block, in mean, phase);
        _scale.Check(ref block, ExpectedFlow);
        if (_unmoved.Update(in block, _scale))
        {
            Unname();
        }

        NotUsed |= _gauge.IsInconsistent ? UnusedReadings.GaugeInconsistent : UnusedReadings.None;
        NotUsed |= _gauge.IsStuck ? UnusedReadings.GaugeStuck : UnusedReadings.None;
        NotUsed |= _scale.IsStuck ? UnusedReadings.WeightStuck : UnusedReadings.None;
        Note(JobCondition.GaugeInconsistent, _gauge.IsInconsistent || _gauge.IsStuck, 0);
        Note(JobCondition.ScaleDisturbed, _scale.IsStuck, 0);
        Events(scale);
        _filter.IsSuspended = _now <= _suspendedUntil || _fall.IsPending || Stands(JobCondition.ValveClosed);
    }

    /// <summary>A machine that was found to stand draws nothing until the scale gains again; then it is the one that was told.</summary>
    private void Stood(ref EstimatorBlock block, double gained)
    {
        if (!_still.IsStill)
        {
            return;
        }

        if (!block.IsDrawing || Comes(in block, gained))
        {
            _still.Restart();
            _until[(int)JobCondition.MachineUnderperforming] = double.NegativeInfinity;
            Restart();
        }
        else
        {
            block.IsDrawing = false;
        }
    }

    /// <summary>Whether the scale gains what a machine does that draws.</summary>
    private bool Comes(in EstimatorBlock block, double gained)
    {
        double told = Require.IsFinite(block.Gauge) ? _told.Flow(block.Gauge + _prior.Atmosphere, block.AirTemperature) : 0;
        return gained > ComesBeyond + (ComesShare * told * block.Duration);
    }

    /// <summary>A gauge that fell between two readings further than vapor thins out.</summary>
    private void Fell(ref EstimatorBlock block, in SigmaPoint mean, AssumedPhase phase)
    {
        if (Stands(JobCondition.HoseBlocked))
        {
            _fall.Restart();
            return;
        }

        bool isRead = Require.IsFinite(block.Gauge);
        EstimatorBlock read = block;
        ParityVerdict verdict = _fall.Update(ref block, in mean, phase);
        NotUsed |= isRead && !Require.IsFinite(block.Gauge) ? UnusedReadings.GaugeShutOff : UnusedReadings.None;
        if (verdict != ParityVerdict.Agrees)
        {
            Apply(verdict, in read, _fall.Since);
            block.IsDrawing = block.IsDrawing && !Stands(JobCondition.ValveClosed);
        }
    }

    /// <summary>The scale was stuck: a machine that was found weak since it moved last is none.</summary>
    private void Unname()
    {
        if (_weakAt >= _unmoved.Since)
        {
            _until[(int)JobCondition.MachineUnderperforming] = _suspendedUntil = double.NegativeInfinity;
        }

        Restart();
    }

    /// <summary>A gauge that comes back after a valve was shut is not believed while it still rises.</summary>
    private void Settle(ref EstimatorBlock block)
    {
        if (block.Time - _openedAt > LongestSettling || !block.IsDrawing)
        {
            return;
        }

        if (block.Gauge - _lastGauge > Settled * (block.Gauge + _prior.Atmosphere))
        {
            block.Gauge = double.NaN;
            NotUsed |= UnusedReadings.GaugeShutOff;
        }
        else if (Require.IsFinite(block.Gauge))
        {
            _openedAt = double.NegativeInfinity;
        }
    }

    /// <summary>After the filters have taken it.</summary>
    /// <param name="block">The block as the filters had it.</param>
    /// <param name="isResting">Whether the machine stands and the valves are open.</param>
    public void After(in EstimatorBlock block, bool isResting)
    {
        if (!_fall.IsPending)
        {
            Compare(in block);
        }

        Best(in block, out SigmaPoint mean, out ReducedOutput output);
        ExpectedFlow = output.Flow;
        Left = output.Mass + mean.State.Dissolved;
        Temperature = mean.State.Temperature;
        Pressure = output.Pressure;
        Suction = output.SuctionPressure;
        Free(in block);
        double asTold = Require.IsFinite(block.Gauge) ? _told.Flow(block.Gauge + _prior.Atmosphere, block.AirTemperature) : 0;
        _air.Update(in block, isResting, asTold, _filter.VaporOnly > 0.5);
        Note(JobCondition.ForeignGas, _air.IsAir, double.PositiveInfinity);
        if (!block.IsDrawing && !_still.IsStill && !Stands(JobCondition.ValveClosed))
        {
            // What is wrong with hose or machine is looked for anew when it runs again.
            _until[(int)JobCondition.HoseBlocked] = _until[(int)JobCondition.MachineUnderperforming] = double.NegativeInfinity;
        }
    }

    /// <summary>What the filters had is held against what it should have been.</summary>
    private void Compare(in EstimatorBlock block)
    {
        ParityVerdict verdict = _parity.Update(in block);
        _machine.Update(in block, WellAboveLevel * _prior.Level);
        if (!_still.IsStill && _still.Update(in block, WellAboveLevel * _prior.Level))
        {
            Note(JobCondition.MachineUnderperforming, true, double.PositiveInfinity);
            _filter.GoBack(_moved, 0, block.AirTemperature);
            _filter.Rest(block.Delivered);
            _unmoved.Forget();
            _parity.Restart();
            _machine.Restart();
            return;
        }

        if (_still.HasMoved)
        {
            _filter.Keep(_moved);
        }

        Apply(Confirmed(verdict), in block, _parity.WasWet ? double.NegativeInfinity : _parity.ChangedAt);
    }

    /// <summary>The best estimate, and what follows of it.</summary>
    private void Best(in EstimatorBlock block, out SigmaPoint mean, out ReducedOutput output)
    {
        mean = _filter.Best.Mean();
        AssumedPhase phase = _filter.IsBestWet ? AssumedPhase.LiquidPresent : AssumedPhase.VaporOnly;
        var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing, phase);
        _model.Evaluate(in mean.State, in mean.Parameters, in inputs, out output);
    }

    /// <summary>A gauge that is found to show absolute pressure: what was made of it goes with it.</summary>
    private void Absolute(ref EstimatorBlock block)
    {
        bool before = _absolute.IsAbsolute;
        _absolute.Update(in block);
        if (!_absolute.IsAbsolute)
        {
            return;
        }

        if (!before)
        {
            IsChanged = true;
            _filter.Recover(block.Delivered);
            Restart();
        }

        block.Gauge = double.NaN;
        NotUsed |= UnusedReadings.GaugeInconsistent;
        Note(JobCondition.GaugeInconsistent, true, 0);
        Note(JobCondition.GaugeAbsolute, true, 0);
    }

    private void Events(ScaleTracker scale)
    {
        if (scale.EventTime > _eventTime)
        {
            _eventTime = scale.EventTime;
            Note(JobCondition.ScaleDisturbed, scale.Event == ScaleEvent.Disturbed, Passing);
            Note(JobCondition.TareChanged, scale.Event == ScaleEvent.TareChanged, Passing);
            Note(JobCondition.CylinderChanged, scale.Event == ScaleEvent.CylinderChanged, Passing);
            Restart();
        }

        if (_isLiquid && !scale.IsLiquid)
        {
            _filter.EndLiquid();
        }

        _isLiquid = scale.IsLiquid;
        Note(JobCondition.LiquidTransfer, _isLiquid, 0);
    }

    private void Note(JobCondition condition, bool stands, double seconds)
    {
        if (stands)
        {
            _until[(int)condition] = Math.Max(_until[(int)condition], _now + seconds);
        }
    }

    /// <summary>A hose that was blocked and lets through again.</summary>
    private void Free(in EstimatorBlock block)
    {
        if (!Stands(JobCondition.HoseBlocked) || !Require.IsFinite(block.Gauge))
        {
            return;
        }

        if (_hose.IsFree(block.Gauge + _prior.Atmosphere, Pressure, _filter.VaporOnly))
        {
            _until[(int)JobCondition.HoseBlocked] = double.NegativeInfinity;
            // What the gauge seemed to be off meanwhile was the kink's, and what its rise brought forth is none.
            _filter.Undo(_hose.IsWetBehind ? double.NegativeInfinity : block.Time - BlockedHose.FreeBlocks);
            _filter.Restore(StateIndex.Hose);
            _filter.Restore(StateIndex.GaugeBias);
            Restart();
        }
    }

    /// <summary>A weak machine is named where what it draws at the pressure at its inlet says so as well, or that alone says it plainly.</summary>
    private ParityVerdict Confirmed(ParityVerdict verdict)
    {
        bool isNamed = Stands(JobCondition.MachineUnderperforming);
        return verdict == ParityVerdict.MachineWeak && _machine.Weakness < Confirms ? ParityVerdict.Agrees
            : verdict == ParityVerdict.Agrees && !isNamed && (_machine.Weakness > Plain || _machine.WeaknessRisen > Risen) ? ParityVerdict.MachineWeak
            : verdict;
    }

    /// <summary>What a verdict comes to; what a gauge that falls, or a scale that stands, brought forth since a time is taken back. Where liquid was left before it, those that had taken it to be gone, all but ruled out, have been fed by it: all of them go.</summary>
    private void Apply(ParityVerdict verdict, in EstimatorBlock block, double since)
    {
        switch (verdict)
        {
            case ParityVerdict.ValveClosed:
                Note(JobCondition.ValveClosed, true, double.PositiveInfinity);
                _filter.Undo(since);
                break;
            case ParityVerdict.HoseBlocked:
                Note(JobCondition.HoseBlocked, true, double.PositiveInfinity);
                _filter.Undo(since);
                Change(StateIndex.Hose, HoseVariance);
                Best(in block, out _, out ReducedOutput output);
                _hose.Begin(block.Gauge + _prior.Atmosphere, output.Pressure);
                break;
            case ParityVerdict.MachineWeak:
                Note(JobCondition.MachineUnderperforming, true, double.PositiveInfinity);
                _filter.Undo(since);
                Change(StateIndex.Displacement, 0.25);
                _weakAt = _now;
                Begin();
                return;
            case ParityVerdict.ScalePulled:
                Note(JobCondition.ScaleDisturbed, true, Passing);
                _filter.Widen(StateIndex.ScaleOffset, 0.02);
                break;
            case ParityVerdict.GaugeOff:
                Note(JobCondition.GaugeInconsistent, true, Passing);
                _filter.Widen(StateIndex.GaugeBias, 30e3 * 30e3);
                break;
            default:
                return;
        }

        Restart();
    }

    /// <summary>Something has changed, or has changed back: from here on is compared, and nothing before it taken back.</summary>
    private void Restart()
    {
        _unmoved.Forget();
        Begin();
    }

    private void Begin()
    {
        _parity.Restart();
        _machine.Restart();
        _still.Restart();
    }

    private void Change(int index, double variance)
    {
        IsChanged = true;
        _suspendedUntil = _now + Suspension;
        _filter.Release(index);
        _filter.Widen(index, variance);
    }
}
