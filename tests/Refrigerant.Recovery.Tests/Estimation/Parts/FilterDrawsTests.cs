using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class FilterDrawsTests
{
    private static readonly Workbench Bench = new();

    /// <summary>Before anything was read: what was told, by Student's quantiles above the least that there can be with liquid.</summary>
    [Fact]
    public void At_the_start_the_charge_is_what_was_told()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        var draws = new FilterDraws(filter, Bench.Model, Bench.Prior, 1);
        var left = new WeightedValues(100);
        var charge = new WeightedValues(100);
        draws.Charge(1, left, charge);
        Assert.Equal(20, left.Count);
        double sigma = Bench.Prior.Sigma[StateIndex.Charge];
        foreach (double part in new[] { 0.075, 0.225, 0.525, 0.875 })
        {
            // Value i of twenty stands at (i + ½)/20.
            double t = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 4, part);
            Assert.Equal(6 * Math.Exp(sigma * t), charge.Quantile(part), 0.05);
            Assert.Equal(charge.Quantile(part), left.Quantile(part), 1e-9);
        }
    }

    /// <summary>A parameter: the tenths of a normal distribution of its logarithm, 5 % at 1.645 standard deviations.</summary>
    [Fact]
    public void A_quantity_has_the_spread_of_its_logarithm()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        var draws = new FilterDraws(filter, Bench.Model, Bench.Prior, 1);
        var values = new WeightedValues(100);
        draws.Quantity(StateIndex.Volume, 1, values);
        Assert.Equal(10, values.Count);
        double sigma = Bench.Prior.Sigma[StateIndex.Volume];
        foreach (double part in new[] { 0.05, 0.15, 0.45, 0.85, 0.95 })
        {
            Assert.Equal(0.018 * Math.Exp(sigma * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, part)), values.Quantile(part), 1e-4 * 0.018);
        }
    }

    /// <summary>Forecasts of the wet filter start from charges that take ten quantiles, states as they are, the others within what goes with it.</summary>
    [Fact]
    public void Wet_points_take_the_quantiles_of_the_charge()
    {
        var bench = new Workbench(Workbench.Typical with { Metal = 1e6 });
        var filter = new ChangePointFilter(bench.Model, bench.Prior);
        var draws = new FilterDraws(filter, bench.Model, bench.Prior, 1);
        var batch = new ForecastBatch(bench.Model, 1e5, 18);
        batch.Begin(0, 295, 13.5);
        draws.Points(0.5, batch);
        batch.Work(10_000_000);
        Assert.Equal(10, batch.Times.Count);

        // What comes until the level: all but the vapor of 100 kPa in 18 L, 4.3 kg/m³ and colder; 77 g of it, and what the last step takes.
        double sigma = bench.Prior.Sigma[StateIndex.Charge];
        double median = batch.More.Quantile(0.5);
        Assert.InRange(median, 5.2, 6.1);
        double low = 6 * Math.Exp(sigma * MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 4, 0.05));
        double high = 6 * Math.Exp(sigma * MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 4, 0.95));
        Assert.Equal(low, batch.More.Quantile(0), 0.15 * low);
        Assert.Equal(high, batch.More.Quantile(1), 0.15 * high);
    }

    /// <summary>When the last liquid has gone: the range of what is left holds the truth, and forecasts the time to the level.</summary>
    [Fact]
    public void Of_vapor_alone_range_and_time_hold_the_truth()
    {
        var bench = new Workbench(Workbench.Typical with { Charge = 2, Metal = 8000, Volume = 0.012 });
        var filter = new ChangePointFilter(bench.Model, bench.Prior);
        var draws = new FilterDraws(filter, bench.Model, bench.Prior, 1);
        var truth = new OwnTruth(bench, 1.1);
        while (truth.Output.Pressure > 1.2e5)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
        }

        Assert.True(truth.Output.IsDry && filter.VaporOnly > 0.97);
        var left = new WeightedValues(200);
        var charge = new WeightedValues(200);
        draws.Charge(1, left, charge);
        EstimateRange range = left.Range();
        Assert.True(range.Contains(truth.Left), $"{range} {truth.Left}");
        Assert.Equal(truth.Left, range.Best, 0.02);
        Assert.InRange(range.High - range.Low, 0.01, 0.25);
        Assert.Equal(2.2, charge.Quantile(0.5), 0.02);
        var batch = new ForecastBatch(bench.Model, 5e4, 18);
        batch.Begin(truth.Time, 295, 13.5);
        draws.Points(1, batch);
        batch.Work(10_000_000);
        Assert.Equal(8, batch.Times.Count);
        double start = truth.Time;
        while (truth.Output.Pressure > 5e4)
        {
            truth.Next();
        }

        double seconds = truth.Time - start;
        Assert.Equal(seconds, batch.Times.Quantile(0.5), 0.15 * seconds);
        Assert.True(batch.Times.Quantile(0.05) < seconds && seconds < batch.Times.Quantile(0.95));
        Assert.Equal(1, batch.Reached, 1e-6);
    }

    /// <summary>Where nothing was told of oil, every other draw has none: what oil would hold is not there.</summary>
    [Fact]
    public void Oil_that_was_not_told_widens_what_is_left()
    {
        var bench = new Workbench(Workbench.Typical with { Charge = 2, Metal = 8000, Volume = 0.012, Oil = -1 });
        var filter = new ChangePointFilter(bench.Model, bench.Prior);
        var draws = new FilterDraws(filter, bench.Model, bench.Prior, 1);
        var truth = new OwnTruth(bench);
        while (truth.Output.Pressure > 8e4)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
        }

        var left = new WeightedValues(200);
        var charge = new WeightedValues(200);
        draws.Charge(1, left, charge);
        Assert.True(left.Range().Contains(truth.Left), $"{left.Range()} {truth.Left}");
    }
}
