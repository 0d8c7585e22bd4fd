using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>R-134a of 295 K, 603 kPa; a gauge with a standard error of 16 kPa/√3.</summary>
public class GaugeGuardTests
{
    private static readonly Workbench Bench = new(Workbench.Typical with { HoseResistance = 4e10 });
    private static readonly PropertyModel Engine = Fluid.Get("R-134a").Model;
    private static readonly double Error = 3 * 16e3 / Math.Sqrt(3);

    /// <summary>At the start it shows no more than 15 % above saturation 15 K warmer than told.</summary>
    [Theory]
    [InlineData(0.99, false)]
    [InlineData(1.01, true)]
    public void Too_high_is_said_from_eight_blocks(double share, bool isSaid)
    {
        double most = (1.15 * Engine.SaturationAtTemperature(310).Bubble.Pressure) + Error;
        var run = new Run();
        for (int i = 1; i <= 20; i++)
        {
            EstimatorBlock block = run.Add((share * most) - 1e5);
            Assert.Equal(isSaid && i >= 8, run.Guard.IsInconsistent);

            // Each that is off is left out, be it one of too few to say so.
            Assert.Equal(isSaid, double.IsNaN(block.Gauge));
        }
    }

    /// <summary>No less than six tenths of saturation 8 K colder, and of what the hose leaves of it, while little has left.</summary>
    [Theory]
    [InlineData(1.02, 0, false)]
    [InlineData(0.98, 0, true)]
    [InlineData(1.02, 0.1, false)]
    [InlineData(0.98, 0.1, true)]
    public void Too_low_is_said_while_little_has_left(double share, double left, bool isSaid)
    {
        var run = new Run { Delivered = left * 6, IsDrawing = false };
        double least = (0.6 * (1 - (left / 0.25)) * Engine.SaturationAtTemperature(287).Dew.Pressure) - Error;
        for (int i = 1; i <= 10; i++)
        {
            run.Add((share * least) - 1e5);
        }

        Assert.Equal(isSaid, run.Guard.IsInconsistent);
    }

    [Fact]
    public void While_it_draws_the_hose_leaves_less()
    {
        var run = new Run();
        var inputs = new ReducedInputs(295, true, AssumedPhase.LiquidPresent);
        SigmaPoint mean = run.Mean();
        Bench.Model.Evaluate(in mean.State, in mean.Parameters, in inputs, out ReducedOutput output);
        Assert.InRange(output.SuctionPressure / output.Pressure, 0.3, 0.97);
        double least = (0.6 * output.SuctionPressure / output.Pressure * Engine.SaturationAtTemperature(287).Dew.Pressure) - Error;
        for (int i = 1; i <= 10; i++)
        {
            run.Add((1.02 * least) - 1e5);
        }

        Assert.False(run.Guard.IsInconsistent);
        run = new Run();
        for (int i = 1; i <= 10; i++)
        {
            run.Add((0.98 * least) - 1e5);
        }

        Assert.True(run.Guard.IsInconsistent);
    }

    /// <summary>While the machine fills its hoses seven may be off; after fifteen nothing is compared any more.</summary>
    [Fact]
    public void A_few_at_the_start_say_nothing()
    {
        var run = new Run();
        for (int i = 1; i <= 40; i++)
        {
            run.Add(i <= 7 || i > 15 ? 2e6 : 4e5);
        }

        Assert.False(run.Guard.IsInconsistent);
        run = new Run();
        for (int i = 1; i <= 15; i++)
        {
            run.Add(i is <= 7 or 15 ? 2e6 : 4e5);
        }

        Assert.True(run.Guard.IsInconsistent);
    }

    /// <summary>Three blocks in a row beyond the gauge's range: what then comes within it is not believed either.</summary>
    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public void Beyond_its_range_it_is_not_believed_after(int blocks, bool isSaid)
    {
        var run = new Run();
        for (int i = 0; i < blocks; i++)
        {
            run.Add(double.NaN, true);
        }

        Assert.Equal(isSaid, run.Guard.IsInconsistent);
        Assert.Equal(isSaid, double.IsNaN(run.Add(run.Shown()).Gauge));
    }

    /// <summary>Set right by somebody, it jumps by half to where it should be: thirty blocks that agree restore belief.</summary>
    [Fact]
    public void Set_right_it_is_believed_after_thirty_blocks()
    {
        var run = Distrusted();
        int blocks = 0;
        while (run.Guard.IsInconsistent && blocks < 100)
        {
            run.Add(run.Shown());
            blocks++;
        }

        Assert.Equal(30, blocks);

        // Within 15 % of what it should show, and in a row: after one that does not agree it has come there little by little.
        run = Distrusted();
        for (int i = 1; i <= 65; i++)
        {
            run.Add((1.13 * (run.Shown() + 1e5)) - 1e5);
            Assert.Equal(i < 30, run.Guard.IsInconsistent);
        }

        run = Distrusted();
        for (int i = 1; i <= 65; i++)
        {
            run.Add(((i == 20 ? 1.2 : 1) * (run.Shown() + 1e5)) - 1e5);
            Assert.True(run.Guard.IsInconsistent);
        }

        run = Distrusted();
        for (int i = 1; i <= 65; i++)
        {
            run.Add((1.17 * (run.Shown() + 1e5)) - 1e5);
            Assert.True(run.Guard.IsInconsistent);
        }
    }

    /// <summary>A wrong unit that the pressure happens to pass is not believed for it: it must follow the pressure by a factor of 1.3.</summary>
    [Fact]
    public void One_that_agrees_by_chance_must_follow()
    {
        var run = Distrusted();

        // It comes near little by little, and then agrees while nothing changes.
        for (double share = 2.9; share > 1; share -= 0.1)
        {
            run.Add((share * (run.Shown() + 1e5)) - 1e5);
        }

        for (int i = 0; i < 100; i++)
        {
            run.Add(run.Shown());
            Assert.True(run.Guard.IsInconsistent);
        }

        for (int i = 0; i < 60; i++)
        {
            run.Temperature -= 0.3;
            run.Add(run.Shown());
        }

        Assert.False(run.Guard.IsInconsistent);
    }

    /// <summary>The same reading for thirty blocks and two minutes, while a tenth of the charge leaves.</summary>
    [Theory]
    [InlineData(1, 0.002, 120)]
    [InlineData(1, 0.0006, 167)]
    [InlineData(5, 0.002, 150)]
    public void It_is_stuck_where_it_must_change(double step, double share, double expected)
    {
        var run = new Run();
        double said = double.NaN;
        for (double t = 0; t <= 300 && double.IsNaN(said); t += step)
        {
            run.Delivered = 6 * share * t;
            EstimatorBlock block = run.Add(4e5, false, step);
            said = run.Guard.IsStuck ? t : double.NaN;
            Assert.Equal(run.Guard.IsStuck, double.IsNaN(block.Gauge));
        }

        Assert.Equal(expected, said);
        run.Add(4.01e5);
        Assert.False(run.Guard.IsStuck);
        Assert.False(run.Guard.IsInconsistent);
    }

    [Fact]
    public void At_rest_it_may_stand()
    {
        var run = new Run { IsDrawing = false };
        for (double t = 0; t <= 300; t++)
        {
            run.Delivered = 0.01 * t;
            run.Add(4e5);
            Assert.False(run.Guard.IsStuck);
        }
    }

    /// <summary>A gauge in psi that is taken for kPa shows 1/6.894757 of what it should (NIST SP 811, B.8). Half-way between the two it is neither.</summary>
    [Theory]
    [InlineData(6.894757, true)]
    [InlineData(6.894757 / 1.3, true)]
    [InlineData(6.894757 * 1.4, false)]
    [InlineData(2.6, false)]
    public void Psi_for_kPa_is_said_while_it_draws(double factor, bool isSaid)
    {
        // So much has left that no pressure is too low.
        var run = new Run { Delivered = 0.3 * 6 };
        for (int i = 1; i <= 10; i++)
        {
            EstimatorBlock block = run.Add(run.Shown() / factor);
            Assert.Equal(isSaid && i >= 8, run.Guard.IsInconsistent);
            Assert.Equal(isSaid && i < 15, run.Guard.IsDoubted);
            Assert.Equal(isSaid, double.IsNaN(block.Gauge));
        }
    }

    private static Run Distrusted()
    {
        var run = new Run();
        for (int i = 0; i < 20; i++)
        {
            run.Add(2e6);
        }

        Assert.True(run.Guard.IsInconsistent);
        return run;
    }

    private sealed class Run
    {
        private double _time = -1;

        public GaugeGuard Guard { get; } = new(Bench.Model, Bench.Prior);

        public double Delivered { get; set; }

        public double Temperature { get; set; } = 295;

        public bool IsDrawing { get; set; } = true;

        public SigmaPoint Mean()
        {
            SigmaPoint mean = default;
            mean.Parameters = Bench.Prior.Typical;
            mean.State = new ReducedState { Temperature = Temperature, MetalTemperature = Temperature, WetTemperature = Temperature, Delivered = Delivered };
            return mean;
        }

        /// <summary>What it should show, gauge.</summary>
        public double Shown()
        {
            SigmaPoint mean = Mean();
            Bench.Model.Evaluate(in mean.State, in mean.Parameters, new ReducedInputs(295, IsDrawing, AssumedPhase.LiquidPresent), out ReducedOutput output);
            return output.SuctionPressure - 1e5;
        }

        public EstimatorBlock Add(double gauge, bool isOut = false, double step = 1)
        {
            _time += step;
            EstimatorBlock block = Workbench.Block(_time, step, gauge, Delivered, IsDrawing);
            SigmaPoint mean = Mean();
            Guard.Check(ref block, isOut, in mean, AssumedPhase.LiquidPresent);
            return block;
        }
    }
}
