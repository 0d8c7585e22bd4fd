using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A gauge that falls between readings far apart: how far vapor can thin out meanwhile, by ln p = ln p0 − ∫ṁ/m·dt, and what the scale says then.</summary>
public class FallWatchTests
{
    private const double Air = 295;
    private const double Seconds = 5;
    private readonly Workbench _bench = new();
    private readonly ChangePointFilter _filter;
    private readonly FallWatch _watch;
    private double _time = 100;
    private double _delivered = 1;

    public FallWatchTests()
    {
        _filter = new ChangePointFilter(_bench.Model, _bench.Prior);
        _watch = new FallWatch(_bench.Model, _bench.Prior, _filter);
    }

    /// <summary>Half a liter a second draws 18 liters down by a factor e in some 36 s: to a hundredth in five it cannot. Nothing comes after: a valve is shut.</summary>
    [Fact]
    public void A_fall_that_no_vapor_can_do_and_nothing_after_it_is_a_shut_valve()
    {
        Assert.Equal(ParityVerdict.Agrees, Take(Suction(), Flow(), out EstimatorBlock seen));
        Assert.False(double.IsNaN(seen.Gauge));
        Assert.Equal(ParityVerdict.Agrees, Take(2e3, Flow(), out seen));
        Assert.True(_watch.IsPending && double.IsNaN(seen.Gauge));
        ParityVerdict verdict = ParityVerdict.Agrees;
        for (int i = 0; i < 4 && verdict == ParityVerdict.Agrees; i++)
        {
            verdict = Take(2e3, 0, out seen);
            Assert.Equal(_watch.IsPending, !seen.IsDrawing);
            Assert.True(double.IsNaN(seen.Gauge));
        }

        Assert.Equal(ParityVerdict.ValveClosed, verdict);
        Assert.False(_watch.IsPending);
        Assert.Equal(double.NegativeInfinity, _watch.Since);
    }

    /// <summary>The same fall, and half of the flow comes: the hose.</summary>
    [Fact]
    public void With_half_of_the_flow_it_is_the_hose()
    {
        Take(Suction(), Flow(), out _);
        Take(2e4, Flow(), out _);
        ParityVerdict verdict = ParityVerdict.Agrees;
        for (int i = 0; i < 4 && verdict == ParityVerdict.Agrees; i++)
        {
            verdict = Take(2e4, 0.5 * Flow(), out _);
        }

        Assert.Equal(ParityVerdict.HoseBlocked, verdict);
    }

    /// <summary>All of the flow goes on: whatever the gauge shows, neither is shut.</summary>
    [Fact]
    public void With_all_of_the_flow_it_is_neither()
    {
        Take(Suction(), Flow(), out _);
        Take(2e3, Flow(), out _);
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(ParityVerdict.Agrees, Take(2e3, Flow(), out _));
        }
    }

    [Fact]
    public void One_reading_that_was_off_is_forgotten()
    {
        Take(Suction(), Flow(), out _);
        Take(2e3, Flow(), out _);
        Assert.Equal(ParityVerdict.Agrees, Take(Suction(), Flow(), out EstimatorBlock seen));
        Assert.False(_watch.IsPending);
        Assert.Equal(0, _watch.Doubt);
        Assert.False(double.IsNaN(seen.Gauge));
    }

    /// <summary>Where more comes than is thought the vapor thins faster: a machine that runs again.</summary>
    [Fact]
    public void What_the_scale_gains_may_have_thinned_it()
    {
        double vapor = _bench.Prior.Typical.Volume * 0.5 * Density();
        Take(Suction(), Flow(), out _);
        Take(0.1 * Suction(), Flow() + (6 * vapor), out EstimatorBlock seen);
        Assert.False(_watch.IsPending);
        Assert.False(double.IsNaN(seen.Gauge));
    }

    /// <summary>In a minute vapor can thin out that far. How likely the last liquid was to go just then decides: not with most of the charge still there.</summary>
    [Fact]
    public void What_vapor_can_do_in_a_minute_leaves_the_question_open()
    {
        Take(Suction(), Flow() * 12, out _, 60);
        Take(0.2 * Suction(), Flow() * 12, out EstimatorBlock seen, 60);
        Assert.False(_watch.IsPending);
        Assert.False(double.IsNaN(seen.Gauge));
        Assert.InRange(_watch.Doubt, 0.5, 1);

        // What is left is thought of as before: between nothing and the charge told, most of it.
        var left = new WeightedValues(FallWatch.Quantiles);
        var charge = new WeightedValues(FallWatch.Quantiles);
        _watch.Charge(1, left, charge);
        EstimateRange range = charge.Range();
        Assert.InRange(range.Best / _bench.Prior.Typical.Charge, 0.85, 1.15);
        Assert.True(range.Low < range.Best && range.Best < range.High);
        Assert.Equal(range.Best - Math.Max(0, _filter.Best.X[StateIndex.Delivered]), left.Range().Best, 1e-9);

        // It stays open while the gauge stands there, and ends where it comes up.
        Take(0.2 * Suction(), 0, out _, 60);
        Assert.True(_watch.Doubt > 0);
        Take(0.9 * Suction(), 0, out _, 60);
        Assert.Equal(0, _watch.Doubt);
    }

    [Fact]
    public void A_rest_ends_the_question_and_readings_close_together_are_none_of_its()
    {
        Take(Suction(), Flow() * 12, out _, 60);
        Take(0.2 * Suction(), Flow() * 12, out _, 60);
        EstimatorBlock rest = Workbench.Block(_time + 60, 60, 1e5, _delivered, isDrawing: false, air: Air);
        _watch.Update(ref rest, _filter.Best.Mean(), AssumedPhase.LiquidPresent);
        Assert.Equal(0, _watch.Doubt);

        Take(Suction(), Flow() / 5, out _, 1);
        Assert.Equal(ParityVerdict.Agrees, Take(2e3, 0, out EstimatorBlock seen, 1));
        Assert.False(_watch.IsPending || double.IsNaN(seen.Gauge));
    }

    private ParityVerdict Take(double absolute, double gained, out EstimatorBlock block, double seconds = Seconds)
    {
        _time += seconds;
        _delivered += gained;
        block = Workbench.Block(_time, seconds, absolute - _bench.Prior.Atmosphere, _delivered, air: Air);
        return _watch.Update(ref block, _filter.Best.Mean(), AssumedPhase.LiquidPresent);
    }

    private double Suction() => Output().SuctionPressure;

    /// <summary>kg in five seconds.</summary>
    private double Flow() => Output().Flow * Seconds;

    private double Density()
    {
        _bench.Table.At(Air, out SaturationValues at);
        return at.VaporDensity;
    }

    private ReducedOutput Output()
    {
        SigmaPoint mean = _filter.Best.Mean();
        var inputs = new ReducedInputs(Air, true, AssumedPhase.LiquidPresent);
        _bench.Model.Evaluate(in mean.State, in mean.Parameters, in inputs, out ReducedOutput output);
        return output;
    }
}
