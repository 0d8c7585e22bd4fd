using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// What is left in an appliance, how long still, and what is wrong, from gauge, scale and clock while the machine runs: for control loops, in
/// plain SI doubles. Not thread-safe.
/// </summary>
/// <remarks>
/// <see cref="Add"/> takes readings at any rate up to some 100 Hz and makes blocks of one second of them; each block costs one pass of the
/// change-point filter. <see cref="Work"/> does what can wait, forecasts and weighted samples, in slices. <see cref="Read"/> gives the estimate.
/// After its making nothing is allocated. No reading makes it throw; what cannot be used is left out and named.
/// </remarks>
public sealed class RecoveryEstimator
{
    /// <summary>Steps of the model that a slice makes at most, some 0.3 ms, and in the controller's profile, some 0.07 ms.</summary>
    private const int SliceSteps = 1000;

    private const int ControllerSliceSteps = 200;

    /// <summary>Steps that each second of the job adds to what the samples may use, and the most that gathers.</summary>
    private const double StepsPerSecond = 4000;

    private const double MostSteps = 240_000;

    /// <summary>s between the starts of two batches of forecasts, and in the controller's profile.</summary>
    private const double BetweenForecasts = 5;

    private const double ControllerBetweenForecasts = 15;

    /// <summary>A pool counts as cold this many K below the air, near the level: below this many times it.</summary>
    private const double ColdPoolBelowAir = 12;

    private const double ColdPoolNearLevel = 2;

    /// <summary>Share of the probability that the filter has beside the samples.</summary>
    private const double FilterShare = 0.5;

    /// <summary>Probability that the gauge does not see the appliance from which that is said, and from which no time to the level is given.</summary>
    private const double LeastDoubt = 0.03;

    private const double MostDoubt = 0.15;

    /// <summary>The largest probability of what has not come about yet.</summary>
    private const double AlmostSure = 0.99;

    /// <summary>Share by which what should have come past a scale that is not believed may be off. Our choice.</summary>
    private const double FlowUnsure = 0.3;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ChangePointFilter _filter;
    private readonly FilterDraws _filterDraws;
    private readonly WeightedSamples? _samples;
    private readonly SampleDraws? _sampleDraws;
    private readonly ForecastBatch _forecasts;
    private readonly ReadingIntake _intake;
    private readonly WeightedValues _left;
    private readonly WeightedValues _other;
    private readonly Diagnosis _diagnosis;
    private readonly double _toldCharge;
    private readonly double _chargeTolerance;
    private double _credit;
    private double _forecastAt = double.NegativeInfinity;
    private double _gross;
    private int _onScale;

    /// <summary>
    /// An estimator for a planned job. A job that no plan can be made of, since what was told contradicts itself (more charge than fits, say), is taken all the same: the readings show what is true.
    /// </summary>
    /// <param name="job">The job: what it tells is where the estimate begins.</param>
    /// <param name="instruments">Gauge and scale; null for typical ones, with a gauge whose scale reaches what the refrigerant shows.</param>
    /// <param name="options">Tolerances, level, profile; null for the defaults.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">No level can be found for the job (see <see cref="EvacuationRequirement.For"/>), or its refrigerant has no saturation curve to speak of.</exception>
    public RecoveryEstimator(RecoveryJob job, Instruments? instruments = null, MonitorOptions? options = null)
    {
        Require.NotNull(job, nameof(job));
        MonitorOptions how = options ?? new MonitorOptions();
        var table = new SaturationTable(job.Appliance.Fluid.Model);
        Instruments with = instruments ?? TypicalInstruments(job.Appliance, table, job.Barometer);
        Level = how.Level?.Pascals ?? RequiredLevel(job);
        _model = new ReducedModel(table);
        _prior = EstimatorPrior.From(job, table, with, how, Level);
        _filter = new ChangePointFilter(_model, _prior);
        _filterDraws = new FilterDraws(_filter, _model, _prior, how.Seed);
        int values = 80 + FallWatch.Quantiles;
        int points = FilterDraws.WetPoints + FilterDraws.DryPoints;
        if (how.Profile == EstimationProfile.Full)
        {
            _samples = new WeightedSamples(_model, _prior, how.Seed);
            _sampleDraws = new SampleDraws(_samples, _model, _prior.IsOilTold, how.Seed);
            values += WeightedSamples.Size;
            points += SampleDraws.Points;
        }

        _forecasts = new ForecastBatch(_model, Level, points);
        _intake = new ReadingIntake(job, with, _prior, table);
        _left = new WeightedValues(values);
        _other = new WeightedValues(values);
        _diagnosis = new Diagnosis(_model, _prior, _filter, with);
        _toldCharge = job.Appliance.Charge.Kilograms;
        _chargeTolerance = how.Tolerances.Charge.DecimalFractions;
    }

    /// <summary>Absolute pressure that is to be reached, Pa.</summary>
    public double Level { get; }

    /// <summary>Whether slices of work wait.</summary>
    public bool HasWork => _forecasts.IsBusy || (_samples is { HasWork: true } && _credit > 0);

    /// <summary>Whether the oil was told, or that there is none.</summary>
    internal bool IsOilTold => _prior.IsOilTold;

    /// <summary>The change-point filter.</summary>
    internal ChangePointFilter Filter => _filter;

    /// <summary>The weighted samples; null in the controller's profile.</summary>
    internal WeightedSamples? Samples => _samples;

    /// <summary>Takes in a reading.</summary>
    /// <param name="reading">The reading; any numbers.</param>
    public void Add(in RawReading reading)
    {
        if (_intake.Add(in reading, out EstimatorBlock block))
        {
            Take(ref block);
        }
    }

    /// <summary>Does one slice of the work that waits; some 0.3 ms at most.</summary>
    /// <returns>Whether more waits.</returns>
    public bool Work()
    {
        int steps = _samples is null ? ControllerSliceSteps : SliceSteps;
        if (_samples is { HasWork: true } && _credit > 0)
        {
            int done = _samples.Work(steps);
            _credit -= done;
            steps -= done;
        }

        if (steps > 0)
        {
            _forecasts.Work(steps);
        }

        return HasWork;
    }

    /// <summary>The estimate as of the last reading.</summary>
    /// <param name="estimate">The estimate.</param>
    public void Read(out RawEstimate estimate)
    {
        estimate = default;
        double share = Share;
        var inputs = new ReducedInputs(_intake.Last.AirTemperature, _intake.Last.IsDrawing);
        _left.Clear();
        _other.Clear();
        double seen = 1 - _diagnosis.Fall.Doubt;
        _filterDraws.Charge(seen * share, _left, _other);
        estimate.VaporOnly = share * _filter.VaporOnly;
        if (_sampleDraws is not null && share < 1)
        {
            _sampleDraws.Charge(seen * (1 - share), in inputs, _left, _other);
            estimate.VaporOnly += (1 - share) * _sampleDraws.VaporOnly(in inputs);
        }

        if (seen < 1)
        {
            _diagnosis.Fall.Charge(1 - seen, _left, _other);
            estimate.VaporOnly *= seen;
        }

        estimate.Time = _intake.Last.Time;
        estimate.Remaining = RangeOf(_left, _prior.Typical.Charge);
        estimate.TotalCharge = RangeOf(_other, _prior.Typical.Charge);
        estimate.InternalVolume = Quantity(StateIndex.Volume, share, _prior.Typical.Volume);
        estimate.HeatConductance = Quantity(StateIndex.Outer, share, _prior.Typical.OuterConductance);
        estimate.EffectiveDisplacement = Quantity(StateIndex.Displacement, share, _prior.Typical.Displacement);
        estimate.NotUsed = _intake.NotUsed | _diagnosis.NotUsed;
        Forecasts(ref estimate);
        Conditions(ref estimate);
    }

    /// <summary>The range of the values; where it is none, anything up to ten times what was told.</summary>
    private static EstimateRange RangeOf(WeightedValues values, double told)
    {
        EstimateRange range = values.Range();
        bool isRange = Require.IsFinite(range.Low) && Require.IsFinite(range.Best) && Require.IsFinite(range.High);
        return isRange ? range : new EstimateRange(0, told, 10 * told);
    }

    private static double RequiredLevel(RecoveryJob job) => EvacuationRequirement.For(
        job.Appliance.Fluid,
        job.Appliance.Charge,
        job.EffectiveEvacuation).RequiredPressure.Pascals;

    private static Instruments TypicalInstruments(Appliance appliance, SaturationTable table, Barometer barometer)
    {
        double warmest = Math.Max(appliance.Temperature.Kelvins, appliance.SurroundingsKelvin);
        return Instruments.Typical(table.BubblePressure(Math.Min(table.Highest, warmest)) - barometer.Pressure.Pascals);
    }

    /// <summary>The range of a parameter that is a logarithm among the states.</summary>
    private EstimateRange Quantity(int index, double share, double told)
    {
        _other.Clear();
        _filterDraws.Quantity(index, share, _other);
        if (share < 1)
        {
            _sampleDraws?.Quantity(index, 1 - share, _other);
        }

        return RangeOf(_other, told);
    }

    /// <summary>Share of the probability that the filter has.</summary>
    private double Share => _samples is null || _diagnosis.IsChanged ? 1 : FilterShare;

    /// <summary>Weight on the scale, kg; what it should be where the scale is not used, or shows nothing.</summary>
    private double Gross => _intake.Scale.Gross + (_intake.Scale.IsOtherUnit ? Math.Max(0, _filter.Best.X[StateIndex.Delivered]) : _diagnosis.Unseen);

    private void Take(ref EstimatorBlock block)
    {
        bool isResting = !block.IsDrawing && !_intake.Scale.IsLiquid && _intake.IsOpen;
        if (_intake.Scale.Cylinder != _onScale)
        {
            // What is foreseen to come goes on in the other cylinder.
            _onScale = _intake.Scale.Cylinder;
            _forecasts.Shift(_intake.Scale.Gross - _gross);
        }

        _gross = _intake.Scale.Gross;
        _diagnosis.Before(ref block, _intake.NotUsed, _intake.Scale);
        _prior.TakeLiquid(block.LiquidMoved);
        _filter.Update(in block);
        if (_samples is not null && !_diagnosis.IsChanged)
        {
            _samples.Log.Add(in block);
        }

        _diagnosis.After(in block, isResting);
        _intake.ExpectedFlow = _diagnosis.ExpectedFlow;
        _intake.Left = _diagnosis.Left;
        _intake.ExpectedSuction = _diagnosis.Suction;
        _intake.IsGaugeDoubted = _diagnosis.IsGaugeDoubted;
        _intake.IsGaugeOut = _diagnosis.IsGaugeOut;
        _credit = Math.Min(MostSteps, _credit + (StepsPerSecond * Math.Min(60, block.Duration)));
        _forecasts.Pass(block.IsDrawing ? block.Duration : 0);
        if (!_forecasts.IsBusy && block.Time >= _forecastAt + (_samples is null ? ControllerBetweenForecasts : BetweenForecasts))
        {
            BeginForecasts(in block);
        }
    }

    private void BeginForecasts(in EstimatorBlock block)
    {
        _forecastAt = block.Time;
        _forecasts.Begin(block.Time, block.AirTemperature, Gross);
        double share = Share;
        _filterDraws.Points(share, _forecasts);
        if (_sampleDraws is not null && share < 1)
        {
            var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing);
            _sampleDraws.StartFrom(1 - share, in inputs, _forecasts);
        }
    }

    private void Forecasts(ref RawEstimate estimate)
    {
        double gross = Math.Max(Gross, _intake.Scale.Doubtful);
        double unsure = FlowUnsure * _diagnosis.Unseen;
        double limit = _intake.Scale.LimitOnScale - unsure;
        estimate.CylinderLimitFirst = gross >= limit ? 1 : 0;
        if (double.IsNaN(_forecasts.ReadyAt))
        {
            estimate.FinalGrossWeight = estimate.Remaining.Plus(gross).Widened(unsure);
            return;
        }

        estimate.LevelReachedProbability = _forecasts.Reached;
        estimate.HasTimeToLevel = _forecasts.Reached > 0.5 && _diagnosis.Fall.Doubt < MostDoubt;
        estimate.TimeToLevel = estimate.HasTimeToLevel ? _forecasts.Times.Range().Plus(-_forecasts.Drawn).AtLeast(0) : default;
        estimate.FinalGrossWeight = (_forecasts.More.Count > 0 ? _forecasts.More.Range() : estimate.Remaining).Plus(_forecasts.Gross).Widened(unsure);
        estimate.CylinderLimitFirst = gross >= limit ? 1 : Math.Min(AlmostSure, _forecasts.More.ShareAbove(limit - Math.Max(_forecasts.Gross, _intake.Scale.Doubtful)));
    }

    private void Conditions(ref RawEstimate estimate)
    {
        for (JobCondition condition = JobConditions.First; condition <= JobConditions.Last; condition++)
        {
            estimate.Set(condition, _diagnosis.Stands(condition));
        }

        ref readonly EstimatorBlock last = ref _intake.Last;
        estimate.StandsOff = _diagnosis.StandsOff;
        bool isPool = estimate.VaporOnly < 0.5
            && _diagnosis.Temperature < last.AirTemperature - ColdPoolBelowAir
            && _diagnosis.Pressure < ColdPoolNearLevel * Level;
        bool isOpenQuestion = estimate.VaporOnly is > 0.25 and < 0.75
            && estimate.Remaining.High - estimate.Remaining.Low > 0.1 * estimate.TotalCharge.Best;
        double told = 1.5 * _chargeTolerance;
        estimate.Set(JobCondition.ColdPool, isPool);
        bool isUnseen = _diagnosis.Fall.Doubt > LeastDoubt;
        estimate.IsFallOpen = isUnseen && !isPool;
        estimate.Set(JobCondition.RestSuggested, last.IsDrawing && (isPool || isOpenQuestion || _diagnosis.IsStalled || isUnseen));
        estimate.Set(JobCondition.LevelOutOfReach, !double.IsNaN(_forecasts.ReadyAt) && _forecasts.Reached < 0.1);
        estimate.Set(
            JobCondition.ChargeInconsistent,
            estimate.TotalCharge.Low > _toldCharge * (1 + told) || estimate.TotalCharge.High < _toldCharge * (1 - told));
        estimate.Set(JobCondition.WeightNet, _intake.Scale.IsNet);
        estimate.Set(JobCondition.CylinderInconsistent, _intake.Scale.IsUnlikeTold);
        estimate.Set(JobCondition.CylinderUnknown, _intake.Scale.IsUnknown);
        estimate.Set(JobCondition.CylinderLosesWeight, _intake.Scale.IsFalling);
    }

    /// <summary>The level, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"to {Level / 1e3:G5} kPa absolute{(HasWork ? ", work waits" : string.Empty)}");
}
