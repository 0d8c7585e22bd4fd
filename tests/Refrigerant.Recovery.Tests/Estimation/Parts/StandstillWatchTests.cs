using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Nothing moves: said from three readings, two minutes and half a kilogram that should have come.</summary>
public class StandstillWatchTests
{
    private const double Gauge = 3e5;
    private const double Least = 8e4;
    private static readonly Workbench Bench = new();

    [Theory]
    [InlineData(60, 180)]
    [InlineData(40, 120)]
    [InlineData(39, 156)]
    [InlineData(10, 120)]
    public void Three_readings_and_two_minutes(double step, double expected) => Assert.Equal(expected, Said(step, Gauge, _ => 1, _ => Gauge));

    /// <summary>At this pressure the machine as told would draw half a kilogram in this time.</summary>
    [Theory]
    [InlineData(155)]
    [InlineData(235)]
    public void Half_a_kilogram(double seconds)
    {
        double gauge = GaugeOf(0.5 / seconds);
        Assert.Equal(seconds + 5, Said(10, gauge, _ => 1, _ => gauge));
    }

    [Fact]
    public void A_pressure_that_falls_by_more_than_a_twentieth_is_none_that_stands()
    {
        // 4.9 % and 5.1 % of the absolute pressure over a minute and a half, then as before.
        Assert.Equal(120, Said(10, Gauge, _ => 1, t => Gauge - (t >= 90 ? 0.049 * (Gauge + 1e5) : 0)));
        Assert.Equal(210, Said(10, Gauge, _ => 1, t => Gauge - (t >= 90 ? 0.051 * (Gauge + 1e5) : 0)));
        Assert.Equal(120, Said(10, Gauge, _ => 1, t => Gauge + (t >= 90 ? 0.051 * (Gauge + 1e5) : 0)));
    }

    /// <summary>A tenth of what should have come, but 50 g at least, counts as moved.</summary>
    [Fact]
    public void A_weight_that_gains_a_tenth_of_what_should_come_moves()
    {
        Assert.Equal(120, Said(10, Gauge, t => t >= 10 ? 1.048 : 1, _ => Gauge));
        Assert.Equal(130, Said(10, Gauge, t => t >= 10 ? 1.052 : 1, _ => Gauge));
        Assert.Equal(130, Said(10, Gauge, t => t >= 10 ? 0.948 : 1, _ => Gauge));
        double tenth = 0.1 * 100 * Bench.Machine.Flow(Gauge + 1e5, 295);
        Assert.Equal(120, Said(10, Gauge, t => t >= 100 ? 1 + (0.97 * tenth) : 1, _ => Gauge));
        Assert.Equal(220, Said(10, Gauge, t => t >= 100 ? 1 + (1.03 * tenth) : 1, _ => Gauge));
    }

    /// <summary>Over liquid a machine that stands lets the pressure come up; a machine that draws lets it fall, by a twentieth of the highest and more.</summary>
    [Fact]
    public void A_pressure_that_rises_is_no_movement_and_one_that_falls_is()
    {
        Assert.Equal(120, Said(10, Gauge, _ => 1, t => Gauge + (1000 * t)));
        Assert.Equal(120, Said(10, Gauge, _ => 1, t => Gauge - (t > 60 ? 0.045 * (Gauge + 1e5) : 0)));
        Assert.Equal(190, Said(10, Gauge, _ => 1, t => Gauge + (t < 70 ? 1000 * t : (60_000 - (0.055 * (Gauge + 160_000))))));
    }

    [Fact]
    public void What_is_no_drawing_begins_it_anew()
    {
        foreach (int what in new[] { 0, 1, 2, 3 })
        {
            var watch = new StandstillWatch(Bench.Machine, Bench.Prior);
            double said = double.NaN;
            for (double t = 0; t <= 300 && double.IsNaN(said); t += 10)
            {
                EstimatorBlock block = Workbench.Block(t, 10, t == 50 && what == 3 ? Least - 1e5 - 1 : Gauge, 1);
                block.IsDrawing = t != 50 || what != 0;
                block.LiquidMoved = t == 50 && what == 1 ? -0.01 : 0;
                block.IsByItself = t == 50 && what == 2;
                said = watch.Update(in block, Least) ? t : double.NaN;
            }

            Assert.Equal(180, said);
        }
    }

    [Fact]
    public void A_reading_that_is_missing_says_nothing_and_ends_nothing()
    {
        var watch = new StandstillWatch(Bench.Machine, Bench.Prior);
        for (double t = 0; t <= 120; t += 10)
        {
            EstimatorBlock block = Workbench.Block(t, 10, t is 50 or 120 ? double.NaN : Gauge, t == 60 ? double.NaN : 1);
            Assert.False(watch.Update(in block, Least));
        }

        EstimatorBlock last = Workbench.Block(130, 10, Gauge, 1);
        Assert.True(watch.Update(in last, Least));
        watch.Restart();
        Assert.False(watch.Update(in last, Least));
    }

    private static double Said(double step, double first, System.Func<double, double> weight, System.Func<double, double> gauge)
    {
        var watch = new StandstillWatch(Bench.Machine, Bench.Prior);
        for (double t = 0; t <= 600; t += step)
        {
            EstimatorBlock block = Workbench.Block(t, step, t == 0 ? first : gauge(t), weight(t));
            if (watch.Update(in block, Least))
            {
                return t;
            }
        }

        return double.NaN;
    }

    /// <summary>The gauge at which the machine as told draws this much.</summary>
    private static double GaugeOf(double flow)
    {
        double low = -1e4;
        double high = 1e6;
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Bench.Machine.Flow(middle + 1e5, 295) < flow ? (middle, high) : (low, middle);
        }

        return low;
    }
}
