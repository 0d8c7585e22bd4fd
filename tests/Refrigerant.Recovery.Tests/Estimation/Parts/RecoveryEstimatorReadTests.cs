using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>How RecoveryEstimator puts filter and samples together, when it forecasts and how much it works, and on which side of their limits conditions are said.</summary>
public class RecoveryEstimatorReadTests
{
    private const double Air = 295;
    private static readonly Workbench Bench = new(Workbench.Typical with { Charge = 2, Metal = 8000, Volume = 0.012 });

    /// <summary>Half of the probability is the filter's, half the samples'.</summary>
    [Fact]
    public void Filter_and_samples_have_half_each()
    {
        RecoveryEstimator estimator = Run(EstimationProfile.Full, 125);
        estimator.Read(out RawEstimate estimate);
        var inputs = new ReducedInputs(Air, true);
        var filter = new FilterDraws(estimator.Filter, Bench.Model, Bench.Prior, 1);
        var samples = new SampleDraws(estimator.Samples!, Bench.Model, true, 1);
        var left = new WeightedValues(500);
        var charge = new WeightedValues(500);
        filter.Charge(0.5, left, charge);
        samples.Charge(0.5, in inputs, left, charge);
        Assert.Equal(left.Range(), estimate.Remaining);
        Assert.Equal(charge.Range(), estimate.TotalCharge);
        Assert.InRange(estimator.Filter.VaporOnly, 0.005, 1);
        Assert.Equal(0.5 * (estimator.Filter.VaporOnly + samples.VaporOnly(in inputs)), estimate.VaporOnly, 1e-9);
        (int Index, EstimateRange Range)[] quantities =
        [
            (StateIndex.Volume, estimate.InternalVolume), (StateIndex.Outer, estimate.HeatConductance), (StateIndex.Displacement, estimate.EffectiveDisplacement),
        ];
        foreach ((int index, EstimateRange range) in quantities)
        {
            left.Clear();
            filter.Quantity(index, 0.5, left);
            samples.Quantity(index, 0.5, left);
            Assert.Equal(left.Range(), range);
        }

        Assert.Equal(125, estimate.Time);
    }

    [Fact]
    public void Without_samples_all_is_the_filters()
    {
        RecoveryEstimator estimator = Run(EstimationProfile.Controller, 125);
        estimator.Read(out RawEstimate estimate);
        var left = new WeightedValues(500);
        var charge = new WeightedValues(500);
        new FilterDraws(estimator.Filter, Bench.Model, Bench.Prior, 1).Charge(1, left, charge);
        Assert.Equal(left.Range(), estimate.Remaining);
        Assert.Equal(estimator.Filter.VaporOnly, estimate.VaporOnly);
        Assert.Null(estimator.Samples);
    }

    /// <summary>Forecasts begin every five seconds, and in the controller's profile every fifteen.</summary>
    [Theory]
    [InlineData(EstimationProfile.Controller, 15)]
    [InlineData(EstimationProfile.Full, 5)]
    public void Forecasts_begin_at_their_times(EstimationProfile profile, int every)
    {
        var begun = new List<double>();
        Run(profile, 44, (estimator, time) =>
        {
            if (estimator.HasWork && (every == 15 || time % 10 != 0))
            {
                begun.Add(time);
            }
        });
        Assert.Equal(Enumerable.Range(0, 45).Where(t => t % every == 0 && (every == 15 || t % 10 != 0)).Select(t => (double)t), begun);
    }

    /// <summary>Each second adds 4000 steps to what the samples may use, 240,000 at most; a slice makes a thousand, or as many as a chunk of 25 samples or a proposal takes it beyond.</summary>
    [Fact]
    public void Samples_use_what_has_gathered()
    {
        RecoveryEstimator estimator = Run(EstimationProfile.Full, 1000, work: false, bench: new Workbench());
        int slices = Work(estimator);
        Assert.InRange(slices, 230, 250);
        estimator.Read(out _);
        for (int more = 1; more <= 3; more++)
        {
            estimator.Add(new RawReading(1000 + more) { IsMachineRunning = true });
            Assert.InRange(Work(estimator), 3, 6);
        }
    }

    /// <summary>The charge lies beyond one and a half times its tolerance, w/√3 and a quarter: what the scale has received leaves no other way.</summary>
    [Theory]
    [InlineData(0.97, false)]
    [InlineData(1.03, true)]
    public void A_charge_is_inconsistent_beyond_one_and_a_half_tolerances(double times, bool isSaid)
    {
        var estimator = new RecoveryEstimator(Bench.Job, Bench.Told.Instruments(), Bench.Told.Options() with { Profile = EstimationProfile.Controller });
        estimator.Add(new RawReading(0));
        double most = 2 * (1 + (1.5 * 0.25));
        double[] x = estimator.Filter.Wet.X;
        for (x[StateIndex.Delivered] = 1; Low() < most * times; x[StateIndex.Delivered] += 0.005)
        {
        }

        estimator.Read(out RawEstimate estimate);
        Assert.Equal(most * times, estimate.TotalCharge.Low, 0.01);
        Assert.Equal(isSaid, estimate.Has(JobCondition.ChargeInconsistent));

        double Low()
        {
            estimator.Read(out RawEstimate now);
            return now.TotalCharge.Low;
        }
    }

    /// <summary>A pool twelve kelvins colder than the air, at less than twice the level, while the machine draws.</summary>
    [Theory]
    [InlineData(12.6, 1.9, true, true, true)]
    [InlineData(11.4, 1.9, true, false, false)]
    [InlineData(12.6, 2.1, true, false, false)]
    [InlineData(12.6, 1.9, false, true, false)]
    public void A_cold_pool_near_the_level_is_said(double colder, double levels, bool isDrawing, bool isPool, bool isRest)
    {
        double level = Bench.Table.DewPressure(Air - colder) / levels;
        var estimator = new RecoveryEstimator(Bench.Job, Bench.Told.Instruments(), Bench.Told.Options() with { Profile = EstimationProfile.Controller, Level = UnitsNet.Pressure.FromPascals(level) });
        estimator.Add(new RawReading(0) { AirTemperature = Air, IsMachineRunning = isDrawing });
        foreach (int index in new[] { StateIndex.Temperature, StateIndex.MetalTemperature, StateIndex.WetTemperature })
        {
            estimator.Filter.Wet.X[index] = Air - colder;
        }

        estimator.Filter.Wet.X[StateIndex.Outer] = Math.Log(1e-3);
        estimator.Filter.Wet.X[StateIndex.Displacement] = Math.Log(1e-9);
        estimator.Add(new RawReading(1) { AirTemperature = Air, IsMachineRunning = isDrawing });
        estimator.Read(out RawEstimate estimate);
        Assert.Equal(isPool, estimate.Has(JobCondition.ColdPool));
        Assert.Equal(isRest, estimate.Has(JobCondition.RestSuggested));
    }

    /// <summary>Where vapor alone is as likely as liquid, and what is left unsure by more than a tenth of the charge, a rest tells them apart.</summary>
    [Fact]
    public void A_rest_is_suggested_where_it_is_an_open_question()
    {
        var said = new List<(bool Open, bool Suggested)>();
        Run(EstimationProfile.Controller, 300, (estimator, _) =>
        {
            estimator.Read(out RawEstimate estimate);
            bool isOpen = estimate.VaporOnly is > 0.25 and < 0.75 && estimate.Remaining.High - estimate.Remaining.Low > 0.1 * estimate.TotalCharge.Best;
            said.Add((isOpen, estimate.Has(JobCondition.RestSuggested) && !estimate.Has(JobCondition.ColdPool)));
        });
        Assert.Contains(said, s => s.Open);
        Assert.All(said.Take(150), s => Assert.Equal(s.Open, s.Suggested));
    }

    private static int Work(RecoveryEstimator estimator)
    {
        int slices = 0;
        while (estimator.HasWork)
        {
            estimator.Work();
            slices++;
        }

        return slices;
    }

    private static RecoveryEstimator Run(EstimationProfile profile, int seconds, Action<RecoveryEstimator, double>? see = null, bool work = true, Workbench? bench = null)
    {
        bench ??= Bench;
        var estimator = new RecoveryEstimator(bench.Job, bench.Told.Instruments(), bench.Told.Options() with { Profile = profile, Seed = 1 });
        var truth = new OwnTruth(bench);
        double delivered = 0;
        double gauge = truth.Output.SuctionPressure - 1e5;
        for (int t = 0; t <= seconds; t++)
        {
            estimator.Add(new RawReading(t) { SuctionGaugePressure = gauge, GrossWeight = 13.5 + delivered, AirTemperature = Air });
            see?.Invoke(estimator, t);
            while (work && estimator.HasWork)
            {
                estimator.Work();
            }

            EstimatorBlock next = truth.Next();
            (gauge, delivered) = (next.Gauge, next.Delivered);
        }

        return estimator;
    }
}
