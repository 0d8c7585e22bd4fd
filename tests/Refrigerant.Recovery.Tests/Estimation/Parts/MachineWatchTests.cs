using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>What the scale gains over what the machine as told draws, in windows of ten seconds.</summary>
public class MachineWatchTests
{
    private const double Gauge = 3e5;
    private static readonly Workbench Bench = new();

    [Fact]
    public void A_machine_as_told_is_not_weak()
    {
        MachineWatch watch = Run(_ => 1, _ => Gauge, 400, out double weakest, out _);
        Assert.Equal(0, weakest);
        Assert.Equal(0, watch.WeaknessRisen);
    }

    /// <summary>
    /// Its displacement is known to 10 % and 8 % of the model, w/√3: at 60 % from the first second it is weak by as many standard deviations of that and of the scale, each window with 50 g of drift that lasts
    /// ten minutes and 10 g of noise.
    /// </summary>
    [Fact]
    public void One_that_was_weak_from_the_start_is_as_unlikely_as_its_displacement()
    {
        Run(_ => 0.6, _ => Gauge, 100, out double weakest, out _);
        double flow = Bench.Machine.Flow(Gauge + 1e5, 295);
        ReducedParameters told = Bench.Prior.Typical;
        double efficiency = ReducedModel.Efficiency(Gauge + 1e5, in told);
        double known = Math.Pow(0.1 / Math.Sqrt(3), 2) + (0.08 * 0.08) + Math.Pow(0.5 * (1 - efficiency) / efficiency, 2);
        double scale = ((2 * 0.01 * 0.01) + (2 * 0.05 * 0.05 * 90 / 600.0)) / Math.Pow(90 * flow, 2);
        Assert.Equal(0.4 / Math.Sqrt(known + scale), weakest, 0.02 * weakest);
    }

    /// <summary>It is weak below 78 % of before.</summary>
    [Theory]
    [InlineData(0.76, true)]
    [InlineData(0.80, false)]
    public void Weak_is_less_than_78_percent(double share, bool isWeak)
    {
        Run(_ => share, _ => Gauge, 100, out double weakest, out _);
        Assert.Equal(isWeak, weakest > 0);
    }

    /// <summary>Five windows are compared at least: nothing is said before.</summary>
    [Fact]
    public void A_change_takes_five_windows()
    {
        Run(_ => 0.5, _ => Gauge, 49, out double before, out _);
        Run(_ => 0.5, _ => Gauge, 50, out double first, out _);
        Assert.Equal(0, before);
        Assert.True(first > 0);
        Run(t => t > 200 ? 0.5 : 1, _ => Gauge, 251, out double after, out _);
        Assert.InRange(after, 3, 12);

        // What it did before counts: the more of it, the plainer.
        Run(t => t > 600 ? 0.5 : 1, _ => Gauge, 651, out double longer, out _);
        Assert.True(longer > after);

        // A machine that always drew 30 % more than told, and then as told, is weak.
        Run(t => t > 600 ? 0.95 : 1.4, _ => Gauge, 660, out double relative, out _);
        Assert.True(relative > 0);
    }

    /// <summary>Where the pressure at the inlet has risen meanwhile by a hundredth, or by three standard deviations of the gauge over a window.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(2e3, false)]
    [InlineData(3e3, false)]
    [InlineData(5e3, true)]
    public void Less_evidence_will_do_where_the_pressure_has_risen(double rise, bool isRisen)
    {
        // 1 % of 400 kPa; noise of 2.4 kPa, 2.3 kPa over ten seconds.
        Run(t => t > 200 ? 0.5 : 1, t => Gauge + (t > 200 ? rise : 0), 260, out double weakest, out double risen);
        Assert.True(weakest > 0);
        Assert.Equal(isRisen, risen > 0);
        Assert.True(risen <= weakest);
    }

    [Fact]
    public void What_is_no_drawing_begins_a_new_window_and_keeps_what_was_learned()
    {
        for (int what = 0; what < 5; what++)
        {
            var watch = new MachineWatch(Bench.Machine, Bench.Prior);
            double delivered = 0;
            for (double t = 0; t <= 300; t++)
            {
                delivered += (t > 200 ? 0.5 : 1) * Bench.Machine.Flow(Gauge + 1e5, 295);
                EstimatorBlock block = Workbench.Block(t, gauge: t == 230 && what == 4 ? -5e4 : Gauge, delivered: delivered);
                block.IsDrawing = t != 230 || what != 0;
                block.LiquidMoved = t == 230 && what == 1 ? 0.1 : 0;
                block.IsByItself = t == 230 && what == 2;
                block.Duration = t == 230 && what == 3 ? 11 : 1;
                watch.Update(in block, 8e4);
                Assert.Equal(t >= 281, watch.Weakness > 0);
            }

            watch.Restart();
            Assert.Equal(0, watch.Weakness);
        }
    }

    /// <summary>Readings that are missing are gone over.</summary>
    [Fact]
    public void Missing_readings_are_gone_over()
    {
        var watch = new MachineWatch(Bench.Machine, Bench.Prior);
        double delivered = 0;
        for (double t = 0; t <= 100; t++)
        {
            delivered += 0.5 * Bench.Machine.Flow(Gauge + 1e5, 295);
            EstimatorBlock block = Workbench.Block(t, gauge: t % 3 == 1 ? double.NaN : Gauge, delivered: t % 7 == 5 ? double.NaN : delivered);
            watch.Update(in block, 8e4);
        }

        Run(_ => 0.5, _ => Gauge, 100, out double weakest, out _);
        Assert.Equal(weakest, watch.Weakness, 0.15 * weakest);
    }

    /// <summary>A hose that pulls on the scale is one window's outlier among many, on both sides of it.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(-0.5)]
    public void A_step_of_the_scale_in_what_was_before_is_cut(double step)
    {
        Run(_ => 1, _ => Gauge, 600, out double weakest, out _, t => t > 55 ? step : 0, 300);
        Assert.Equal(0, weakest);
    }

    private static MachineWatch Run(Func<double, double> share, Func<double, double> gauge, double until, out double weakest, out double risen, Func<double, double>? pull = null, double from = 0)
    {
        var watch = new MachineWatch(Bench.Machine, Bench.Prior);
        double delivered = 0;
        weakest = risen = 0;
        for (double t = 0; t <= until; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: gauge(t), delivered: delivered + (pull?.Invoke(t) ?? 0));
            watch.Update(in block, 8e4);
            weakest = t >= from ? Math.Max(weakest, watch.Weakness) : 0;
            risen = Math.Max(risen, watch.WeaknessRisen);
            delivered += share(t + 1) * Bench.Machine.Flow(gauge(t + 1) + 1e5, 295);
        }

        return watch;
    }
}
