using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class WaitingBlocksTests
{
    [Fact]
    public void Durations_and_masses_add_up_the_gauge_is_averaged_and_the_rest_is_the_latest()
    {
        var waiting = new WaitingBlocks(2);
        EstimatorBlock first = Block(10, 1, 4e5, 1) with { LiquidMoved = 0.1, Passed = 0.02, PipeTemperature = 280, CondensingTemperature = 310, AirTemperature = 295 };
        EstimatorBlock second = Block(13, 3, 2e5, 1.4) with { LiquidMoved = 0.3, Passed = 0.05, IsByItself = true, CondensingTemperature = 312, AirTemperature = 297 };
        waiting.Add(1, in first);
        Assert.False(waiting.IsLong(1));
        waiting.Add(1, in second);
        EstimatorBlock both = waiting[1];
        Assert.Equal(13, both.Time);
        Assert.Equal(4, both.Duration);
        Assert.Equal(2.5e5, both.Gauge);
        Assert.Equal(1.4, both.Delivered);
        Assert.Equal(0.4, both.LiquidMoved, 1e-12);
        Assert.Equal(0.07, both.Passed, 1e-12);
        Assert.True(both.IsByItself);
        Assert.Equal(280, both.PipeTemperature);
        Assert.Equal(312, both.CondensingTemperature);
        Assert.Equal(297, both.AirTemperature);
        Assert.True(waiting.IsLong(1));
        Assert.Equal(0, waiting[0].Duration);
    }

    [Fact]
    public void What_is_missing_is_taken_from_the_other()
    {
        var waiting = new WaitingBlocks(1);
        waiting.Add(0, Block(1, 1, double.NaN, 0.5));
        waiting.Add(0, Block(2, 1, 3e5, double.NaN) with { PipeTemperature = 281, CondensingTemperature = 309 });
        Assert.Equal(281, waiting[0].PipeTemperature);
        Assert.Equal(309, waiting[0].CondensingTemperature);
        Assert.Equal(3e5, waiting[0].Gauge);
        Assert.Equal(0.5, waiting[0].Delivered);
        waiting.Add(0, Block(3, 1, double.NaN, 0.7));
        Assert.Equal(3e5, waiting[0].Gauge);
        Assert.Equal(0.7, waiting[0].Delivered);
    }

    [Fact]
    public void Two_seconds_are_long_and_a_switch_of_the_machine_parts_them()
    {
        var waiting = new WaitingBlocks(1);
        EstimatorBlock drawing = Block(1, 1.95, 3e5, 1);
        EstimatorBlock resting = drawing with { IsDrawing = false };
        Assert.False(waiting.IsOther(0, in resting));
        waiting.Add(0, in drawing);
        Assert.False(waiting.IsLong(0));
        Assert.False(waiting.IsOther(0, in drawing));
        Assert.True(waiting.IsOther(0, in resting));
        waiting.Add(0, Block(2, 0.05, 3e5, 1));
        Assert.True(waiting.IsLong(0));
        waiting.Clear(0);
        Assert.Equal(0, waiting[0].Duration);
        waiting.Add(0, in resting);
        Assert.False(waiting[0].IsDrawing);
        waiting.Clear();
        Assert.False(waiting.IsOther(0, in drawing));
    }

    private static EstimatorBlock Block(double time, double duration, double gauge, double delivered) => Workbench.Block(time, duration, gauge, delivered);
}
