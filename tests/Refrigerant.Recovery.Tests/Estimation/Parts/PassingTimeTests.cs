using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Time without readings, which a filter passes in long steps.</summary>
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

    private static SquareRootFilter Fresh() => new(
        Bench.Model, Bench.Prior, new DividedDifferences(Bench.Model, Bench.Prior, new FilterWorkspace()), AssumedPhase.LiquidPresent);
}
