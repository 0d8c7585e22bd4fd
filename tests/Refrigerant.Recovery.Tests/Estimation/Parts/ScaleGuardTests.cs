using Refrigerant.Recovery.Estimation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A scale counts as stuck after thirty blocks and a minute, and when 100 g and ten of its steps should have come.</summary>
public class ScaleGuardTests
{
    /// <summary>Steps of 10 g: 200 g must be missing. The last column is the time at which it is first said.</summary>
    [Theory]
    [InlineData(1, 0.01, 60)]
    [InlineData(3, 0.01, 90)]
    [InlineData(1, 0.0024, 84)]
    [InlineData(2, 0.0024, 84)]
    public void It_is_said_when_all_three_have_come(double step, double flow, double expected)
    {
        ScaleGuard guard = Guard(10);
        Assert.Equal(expected, Stuck(guard, step, flow, true, 300));
        Assert.Equal(flow * expected, guard.Unseen, 1e-9);
    }

    /// <summary>At 2.75 g/s 110 g are missing after 40 s, less than the minute; 300 g of steps of 20 g after 109.1 s.</summary>
    [Theory]
    [InlineData(1, 60)]
    [InlineData(20, 110)]
    public void A_coarser_scale_takes_more(double grams, double expected) => Assert.Equal(expected, Stuck(Guard(grams), 1, 0.00275, true, 300));

    [Fact]
    public void At_rest_nothing_is_missing()
    {
        ScaleGuard guard = Guard(10);
        Assert.Equal(double.NaN, Stuck(guard, 1, 0.05, false, 1000));
        Assert.True(guard.HasMoved);
        Assert.Equal(0, guard.Unseen);
    }

    [Fact]
    public void What_it_shows_is_taken_out_until_it_moves()
    {
        ScaleGuard guard = Guard(10);
        double at = Stuck(guard, 1, 0.01, true, 300);
        EstimatorBlock block = Workbench.Block(at + 1, delivered: 3);
        guard.Check(ref block, 0.01);
        Assert.True(double.IsNaN(block.Delivered));
        Assert.False(guard.HasMoved);
        Assert.Equal(0.01 * (at + 1), guard.Unseen, 1e-9);

        // Blocks without a weight go on counting.
        block = Workbench.Block(at + 2);
        guard.Check(ref block, 0.01);
        Assert.Equal(0.01 * (at + 2), guard.Unseen, 1e-9);
        block = Workbench.Block(at + 3, delivered: 3.6);
        guard.Check(ref block, 0.01);
        Assert.False(guard.IsStuck);
        Assert.True(guard.HasMoved);
        Assert.Equal(3.6, block.Delivered);
        Assert.Equal(0, guard.Unseen);
    }

    [Fact]
    public void Without_a_weight_what_should_have_come_is_counted_until_the_next()
    {
        ScaleGuard guard = Guard(10);
        EstimatorBlock block = Workbench.Block(0, delivered: 3);
        guard.Check(ref block, 0.01);
        for (int i = 1; i <= 5; i++)
        {
            block = Workbench.Block(i, isDrawing: i != 3);
            guard.Check(ref block, 0.02);
        }

        Assert.Equal(0.08, guard.Unseen, 1e-12);
        Assert.False(guard.HasMoved);
        block = Workbench.Block(6, delivered: 3);
        guard.Check(ref block, 0.02);
        Assert.Equal(0, guard.Unseen);
        Assert.False(guard.HasMoved);
    }

    private static ScaleGuard Guard(double grams) => new(new Instruments { Scale = ScaleAccuracy.FromResolution(Mass.FromGrams(grams)) });

    /// <summary>The time at which it is first called stuck.</summary>
    private static double Stuck(ScaleGuard guard, double step, double flow, bool isDrawing, double until)
    {
        for (double t = 0; t <= until; t += step)
        {
            EstimatorBlock block = Workbench.Block(t, step, delivered: 3, isDrawing: isDrawing);
            guard.Check(ref block, flow);
            if (guard.IsStuck)
            {
                return t;
            }
        }

        return double.NaN;
    }
}
