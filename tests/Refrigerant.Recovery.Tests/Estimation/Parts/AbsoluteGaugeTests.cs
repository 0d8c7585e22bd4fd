using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A machine that draws as told from a pressure that falls, read by a gauge that is right or shows absolute pressure.</summary>
public class AbsoluteGaugeTests
{
    private static readonly Workbench Bench = new();

    [Fact]
    public void An_absolute_gauge_is_found_by_flow_and_start_and_a_right_one_never()
    {
        AbsoluteGauge absolute = Run(t => 550e3 * Math.Exp(-t / 500), true, 1, 900);
        Assert.True(absolute.IsAbsolute);
        Assert.True(absolute.Start > 0);
        Assert.True(absolute.Evidence > 1.3);
        Assert.True(absolute.Windows >= 4);
        AbsoluteGauge right = Run(t => 550e3 * Math.Exp(-t / 500), false, 1, 900);
        Assert.False(right.IsAbsolute);
        Assert.True(right.Start < 0);
        Assert.True(right.Evidence < -1);
    }

    /// <summary>Exactly an atmosphere too much leaves nothing unexplained; right, the flow is that at the pressure, and what absolute pressure would leave is.</summary>
    [Fact]
    public void What_fits_leaves_nothing_unexplained()
    {
        Assert.Equal(0, Run(t => 550e3 * Math.Exp(-t / 500), true, 1, 900).Unexplained, 0.01);
        Assert.True(Run(t => 550e3 * Math.Exp(-t / 500), false, 1, 900).Unexplained > 0.5);
    }

    /// <summary>Below zero no absolute pressure is: a gauge that shows less than its error limit there is right, whatever was said before.</summary>
    [Fact]
    public void A_vacuum_refutes_it()
    {
        AbsoluteGauge gauge = Run(t => 550e3 * Math.Exp(-t / 500), true, 1, 900);
        EstimatorBlock block = Workbench.Block(901, gauge: -15e3, delivered: 5);
        gauge.Update(in block);
        Assert.True(gauge.IsAbsolute);
        block = Workbench.Block(902, gauge: -17e3, delivered: 5);
        gauge.Update(in block);
        Assert.False(gauge.IsAbsolute);
        int windows = gauge.Windows;
        for (int i = 0; i < 100; i++)
        {
            block = Workbench.Block(903 + i, gauge: 3e5, delivered: 5 + (0.02 * i));
            gauge.Update(in block);
        }

        Assert.Equal(windows, gauge.Windows);
    }

    /// <summary>A machine that becomes weak does not look like it where it may have changed: the flow of before and after fits a gauge that is right.</summary>
    [Fact]
    public void A_machine_that_becomes_weak_is_no_absolute_gauge()
    {
        var watch = Gauge();
        double delivered = 0;
        for (double t = 0; t <= 900; t++)
        {
            double pressure = 550e3 * Math.Exp(-t / 500);
            EstimatorBlock block = Workbench.Block(t, gauge: pressure - 1e5, delivered: delivered);
            watch.Update(in block);
            delivered += (t > 300 ? 0.6 : 1) * Bench.Machine.Flow(pressure, 295);
        }

        Assert.False(watch.IsAbsolute);
    }

    /// <summary>Windows of twenty seconds and 120 g; of five minutes where less comes.</summary>
    [Theory]
    [InlineData(4e5, 300, 14, 15)]
    [InlineData(0.5e5, 700, 2, 4)]
    [InlineData(0.2e5, 1000, 3, 3)]
    public void Windows_last_until_something_has_come(double pressure, double seconds, int least, int most) => Assert.InRange(Run(_ => pressure, true, 1, seconds).Windows, least, most);

    [Fact]
    public void What_is_no_drawing_is_no_window()
    {
        for (int what = 0; what < 4; what++)
        {
            var watch = Gauge();
            for (double t = 0; t <= 200; t++)
            {
                EstimatorBlock block = Workbench.Block(t, what == 3 ? 20.5 : 1, 3e5, 0.02 * t);
                block.IsDrawing = what != 0;
                block.LiquidMoved = what == 1 ? 0.01 : 0;
                block.IsByItself = what == 2;
                watch.Update(in block);
            }

            Assert.Equal(0, watch.Windows);
        }
    }

    /// <summary>
    /// Ten readings at the start against saturation at the temperature told: Student's t of four degrees of freedom, (ν + 1)/2·ln(1 + e²/(ν·σ²)), σ of 1.5 K besides the temperature's own, half of the hose's drop,
    /// the model and the gauge.
    /// </summary>
    [Fact]
    public void The_start_is_held_against_saturation()
    {
        double told = Bench.Prior.Sigma[StateIndex.Temperature];
        Bench.Table.At(295, out SaturationValues at);
        var state = new ReducedState { Temperature = 295, MetalTemperature = 295, WetTemperature = 295 };
        ReducedParameters typical = Bench.Prior.Typical;
        Bench.Model.Evaluate(in state, in typical, new ReducedInputs(295, true, AssumedPhase.LiquidPresent), out ReducedOutput output);
        double kelvins = Math.Sqrt((1.5 * 1.5) + (told * told));
        double variance = Math.Pow(at.Pressure * at.PressureSlope * kelvins, 2) + Math.Pow(0.5 * (output.Pressure - output.SuctionPressure), 2)
            + Bench.Prior.ModelNoise + Math.Pow(Bench.Prior.Sigma[StateIndex.GaugeBias], 2);
        double shown = output.SuctionPressure - 20e3;
        double expected = 2.5 * Math.Log((1 + (Math.Pow(shown + 1e5 - output.SuctionPressure, 2) / (4 * variance))) / (1 + (Math.Pow(shown - output.SuctionPressure, 2) / (4 * variance))));
        var gauge = Gauge();
        for (int i = 0; i < 10; i++)
        {
            Assert.Equal(0, gauge.Start);
            EstimatorBlock block = Workbench.Block(i, gauge: shown + (i % 2 == 0 ? 3e3 : -3e3));
            gauge.Update(in block);
        }

        Assert.Equal(expected, gauge.Start, 1e-9);
        Assert.True(expected > 0);
        Assert.Equal(expected, gauge.Evidence, 1e-9);
    }

    private static AbsoluteGauge Gauge() => new(Bench.Model, Bench.Prior, Bench.Machine, Workbench.Typical.Instruments());

    private static AbsoluteGauge Run(Func<double, double> pressure, bool isAbsolute, double share, double until)
    {
        AbsoluteGauge gauge = Gauge();
        double delivered = 0;
        for (double t = 0; t <= until; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: pressure(t) - (isAbsolute ? 0 : 1e5), delivered: delivered);
            gauge.Update(in block);
            delivered += share * Bench.Machine.Flow(pressure(t), 295);
        }

        return gauge;
    }
}
