using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Time without readings, which a filter passes in long steps; and readings far apart.</summary>
public class PassingTimeTests
{
    private static readonly Workbench Bench = new();

    /// <summary>Half a minute to two minutes of drawing, against the same in steps of 2.5 s: within a fifth of what it is unsure by.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(60)]
    [InlineData(120)]
    public void Long_steps_end_where_short_ones_do(double seconds)
    {
        SquareRootFilter longer = Fresh();
        SquareRootFilter shorter = Fresh();
        longer.Pass(seconds, 295);
        EstimatorBlock block = Workbench.Block(seconds, seconds);
        shorter.Update(in block);
        foreach (int index in new[] { StateIndex.Delivered, StateIndex.Temperature, StateIndex.MetalTemperature, StateIndex.WetTemperature, StateIndex.Charge })
        {
            Assert.Equal(shorter.X[index], longer.X[index], 0.2 * Math.Sqrt(shorter.Variance(index)));
            Assert.InRange(longer.Variance(index) / shorter.Variance(index), 0.85, 1.15);
        }
    }

    /// <summary>No time changes nothing.</summary>
    [Fact]
    public void No_time_leaves_all_as_it_was()
    {
        SquareRootFilter filter = Fresh();
        double[] x = (double[])filter.X.Clone();
        double[] root = (double[])filter.L.Clone();
        filter.Pass(0, 295);
        Assert.Equal(x, filter.X);
        Assert.Equal(root, filter.L);
    }

    /// <summary>Six readings in a row that are off are believed where they are a second apart; where each stands for half a minute or a minute two are, for ten seconds six, and never one alone.</summary>
    [Theory]
    [InlineData(1, 6)]
    [InlineData(10, 6)]
    [InlineData(20, 3)]
    [InlineData(30, 2)]
    [InlineData(60, 2)]
    [InlineData(600, 2)]
    public void A_run_of_outliers_is_the_shorter_the_further_apart_they_are(double seconds, int length)
    {
        SquareRootFilter read = Fresh();
        SquareRootFilter blind = Fresh();
        for (int i = 1; i <= length; i++)
        {
            EstimatorBlock block = Workbench.Block(i * seconds, seconds);
            blind.Update(in block);
            double sigma = Math.Sqrt(blind.Variance(StateIndex.Delivered) + blind.Variance(StateIndex.ScaleOffset) + Bench.Prior.ScaleNoise);
            block.Delivered = blind.X[StateIndex.Delivered] + blind.X[StateIndex.ScaleOffset] + (10 * sigma);
            read.Update(in block);
            Assert.Equal(i == length, read.X[StateIndex.Delivered] > blind.X[StateIndex.Delivered] + (0.01 * sigma));
        }
    }

    private static SquareRootFilter Fresh() => new(
        Bench.Model, Bench.Prior, new DividedDifferences(Bench.Model, Bench.Prior, new FilterWorkspace()), AssumedPhase.LiquidPresent);
}
