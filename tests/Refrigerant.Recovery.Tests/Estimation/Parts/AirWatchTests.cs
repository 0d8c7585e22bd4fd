using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class AirWatchTests
{
    private static readonly Workbench Bench = new();

    /// <summary>At rest air goes on rising at the same rate: three windows of ten minutes, after one minute that is the gauge's. A leak of 350 Pa in ten minutes counts, one of 250 does not.</summary>
    [Theory]
    [InlineData(350, 1860)]
    [InlineData(1000, 1860)]
    [InlineData(285, double.NaN)]
    public void A_steady_rise_at_rest_is_air(double perWindow, double expected) => Assert.Equal(expected, AtRest(t => -5e4 + (perWindow * t / 600)));

    /// <summary>Gas from oil comes as 1 − e^(−t/τ): third window over first e^(−1200/τ), 0.51 at half an hour, 0.72 at an hour.</summary>
    [Theory]
    [InlineData(1800, false)]
    [InlineData(2700, false)]
    [InlineData(3600, true)]
    public void What_comes_ever_more_slowly_is_none(double constant, bool isAir) =>
        Assert.Equal(isAir, AtRest(t => -6e4 + (2e4 * (1 - Math.Exp(-t / constant))), 1900) > 0);

    /// <summary>A rise that begins late is said three windows after it began: each window counts anew.</summary>
    [Fact]
    public void Windows_follow_one_another() => Assert.Equal(60 + (4 * 600), AtRest(t => -5e4 + (Math.Max(0, t - 600) * 1000 / 600)));

    [Fact]
    public void Within_three_kilopascals_of_the_atmosphere_nothing_is_said()
    {
        Assert.Equal(double.NaN, AtRest(t => -6e3 + (1000 * t / 600)));
        Assert.Equal(1860, AtRest(t => -6.3e3 + (1000 * t / 600)));
    }

    [Fact]
    public void A_reading_that_is_missing_breaks_no_rest_and_the_machine_does()
    {
        Assert.Equal(1860, AtRest(t => t == 1000 ? double.NaN : -5e4 + t));
        var watch = new AirWatch(Bench.Prior);
        for (double t = 0; t <= 2500; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: -5e4 + t, isDrawing: false);
            watch.Update(in block, t != 1000, 0, true);
        }

        Assert.False(watch.IsAir);
    }

    /// <summary>
    /// While the machine draws: five minutes in which the pressure stands, 100 g that should have come, and less than 35 % of it that did.
    /// </summary>
    [Theory]
    [InlineData(1e-3, 0.30, 300)]
    [InlineData(1e-3, 0.33, 300)]
    [InlineData(1e-3, 0.37, double.NaN)]
    [InlineData(2.4e-4, 0.30, 417)]
    public void A_pressure_that_stands_without_weight_is_air(double expectedFlow, double share, double expected) =>
        Assert.Equal(expected, Drawing(_ => -4e4, expectedFlow, share, out _));

    [Fact]
    public void It_stalls_as_long_as_the_pressure_stands_below_the_atmosphere()
    {
        Drawing(_ => -4e4, 1e-3, 1, out double stalled);
        Assert.Equal(300, stalled);

        // It loses 3 % of 60 kPa in less than five minutes, or in more.
        Drawing(t => -4e4 - (7 * t), 1e-3, 1, out stalled);
        Assert.Equal(double.NaN, stalled);
        Drawing(t => -4e4 - (5 * t), 1e-3, 1, out stalled);
        Assert.Equal(300, stalled);
    }

    /// <summary>A gauge may be off by its standard error, 16 kPa/√3: above that is above the atmosphere.</summary>
    [Theory]
    [InlineData(9e3, 300)]
    [InlineData(9.5e3, double.NaN)]
    public void Above_the_atmosphere_nothing_stalls(double gauge, double expected)
    {
        Drawing(_ => gauge, 1e-3, 1, out double stalled);
        Assert.Equal(expected, stalled);
    }

    [Fact]
    public void Liquid_and_rests_end_it_and_a_missing_reading_does_not()
    {
        var watch = new AirWatch(Bench.Prior);
        for (double t = 0; t <= 320; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: t == 310 ? double.NaN : -4e4, delivered: 1);
            watch.Update(in block, false, 1e-4, true);
        }

        Assert.True(watch.IsStalled);
        Assert.False(watch.IsAir);
        EstimatorBlock next = Workbench.Block(321, gauge: -4e4, delivered: 1);
        watch.Update(in next, false, 1e-4, false);
        Assert.False(watch.IsStalled);
        for (double t = 322; t <= 650; t++)
        {
            next = Workbench.Block(t, gauge: -4e4, delivered: 1);
            watch.Update(in next, false, 1e-4, true);
            Assert.Equal(t >= 622, watch.IsStalled);
        }

        next.IsDrawing = false;
        watch.Update(in next, true, 1e-4, true);
        Assert.False(watch.IsStalled);
    }

    /// <summary>After twenty-five minutes it is compared anew: what came before counts no more.</summary>
    [Fact]
    public void Longer_than_twenty_five_minutes_nothing_is_remembered()
    {
        // All came at once in the first second, 35 % of what should in 1450 s; in the next five minutes nothing comes.
        var watch = new AirWatch(Bench.Prior);
        double said = double.NaN;
        for (double t = 0; t <= 2500 && double.IsNaN(said); t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: -4e4, delivered: t > 0 ? 0.35 * 1e-3 * 1520 : 0);
            watch.Update(in block, false, 1e-3, true);
            said = watch.IsAir ? t : double.NaN;
        }

        Assert.Equal(1501 + 300, said);
    }

    private static double AtRest(Func<double, double> gauge, double until = 4000)
    {
        var watch = new AirWatch(Bench.Prior);
        for (double t = 0; t <= until; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: gauge(t), isDrawing: false);
            watch.Update(in block, true, 0, true);
            if (watch.IsAir)
            {
                return t;
            }
        }

        return double.NaN;
    }

    private static double Drawing(Func<double, double> gauge, double expectedFlow, double share, out double stalled)
    {
        var watch = new AirWatch(Bench.Prior);
        double air = double.NaN;
        stalled = double.NaN;
        for (double t = 0; t <= 1000; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: gauge(t), delivered: share * expectedFlow * t);
            watch.Update(in block, false, expectedFlow, true);
            stalled = double.IsNaN(stalled) && watch.IsStalled ? t : stalled;
            air = double.IsNaN(air) && watch.IsAir ? t : air;
        }

        return air;
    }
}
