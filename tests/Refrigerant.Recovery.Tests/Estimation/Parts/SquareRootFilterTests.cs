using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Readings that are straight in the states, against a Kalman filter with whole matrices.</summary>
public class SquareRootFilterTests
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private static readonly Workbench Bench = new();

    /// <summary>Scale, pipe and condenser in one block that takes no time: gains, covariance and likelihood of the Kalman filter.</summary>
    [Fact]
    public void Straight_readings_come_in_as_in_a_Kalman_filter()
    {
        SquareRootFilter filter = Mixed(out double[,] p);
        double[] x = (double[])filter.X.Clone();
        var block = new EstimatorBlock
        {
            Gauge = double.NaN,
            Delivered = x[StateIndex.Delivered] + x[StateIndex.ScaleOffset] + 0.02,
            PipeTemperature = x[StateIndex.MetalTemperature] - 3,
            CondensingTemperature = x[StateIndex.Condensing] + 4,
        };
        filter.Update(in block);
        double log = Update(x, p, Row(StateIndex.Delivered, StateIndex.ScaleOffset), block.Delivered, Bench.Prior.ScaleNoise, out double scale);

        // A pipe is off the lump by 1.5 K for a minute; a condensing temperature by 1 K as long.
        log += Update(x, p, Row(StateIndex.MetalTemperature, -1), block.PipeTemperature, 1.5 * 1.5 * 60, out _);
        log += Update(x, p, Row(StateIndex.Condensing, -1), block.CondensingTemperature, 60, out _);
        AssertSame(x, p, filter);
        Assert.Equal(log, filter.LogLikelihood, 1e-9);
        Assert.Equal(scale, filter.ScaleConsistency, 1e-9);
        Assert.Equal(double.NaN, filter.GaugeConsistency);
    }

    /// <summary>So little spread that the gauge is straight in it: slopes by differences of the model, noise of gauge and model together.</summary>
    [Fact]
    public void The_gauge_comes_in_by_its_slopes()
    {
        SquareRootFilter filter = Mixed(out double[,] p, 1e-3);
        double[] x = (double[])filter.X.Clone();
        var slopes = new double[N];
        double center = Shown(x);
        for (int i = 0; i < N; i++)
        {
            double step = 1e-3 * Math.Sqrt(p[i, i]);
            double[] above = (double[])x.Clone();
            double[] below = (double[])x.Clone();
            above[i] += step;
            below[i] -= step;
            slopes[i] = (Shown(above) - Shown(below)) / (2 * step);
        }

        var block = new EstimatorBlock { Gauge = center + 2e4, Delivered = double.NaN, PipeTemperature = double.NaN, CondensingTemperature = double.NaN, AirTemperature = 295 };
        double[] before = (double[])x.Clone();
        double noise = Bench.Prior.GaugeNoise + Bench.Prior.ModelNoise;
        filter.Update(in block);
        double log = UpdateBy(x, p, slopes, 2e4, noise, out double squared);
        for (int i = 0; i < N; i++)
        {
            Assert.Equal(x[i] - before[i], filter.X[i] - before[i], (1e-2 * Math.Abs(x[i] - before[i])) + 1e-9);
        }

        Assert.Equal(log, filter.LogLikelihood, 1e-3);
        Assert.Equal(squared, filter.GaugeConsistency, 1e-3 * squared);
    }

    /// <summary>More than five standard deviations off it is left out, at the cost of five in likelihood; the sixth in a row comes in, with a variance by which it is five.</summary>
    [Fact]
    public void Outliers_are_left_out_until_there_are_six_in_a_row()
    {
        SquareRootFilter filter = Mixed(out double[,] p);
        double[] row = Row(StateIndex.Delivered, StateIndex.ScaleOffset);
        double variance = Quadratic(p, row) + Bench.Prior.ScaleNoise;
        double[] x = (double[])filter.X.Clone();
        double off = 8 * Math.Sqrt(variance);
        var block = new EstimatorBlock { Gauge = double.NaN, PipeTemperature = double.NaN, CondensingTemperature = double.NaN, Delivered = x[StateIndex.Delivered] + x[StateIndex.ScaleOffset] + off };
        for (int k = 1; k <= 5; k++)
        {
            filter.Update(in block);
            Assert.Equal(64, filter.ScaleConsistency, 1e-6);
            Assert.Equal(x, filter.X);
            Assert.Equal(-0.5 * k * (25 + Math.Log(variance)), filter.LogLikelihood, 1e-9);
        }

        filter.Update(in block);
        Update(x, p, row, block.Delivered, (variance * 64 / 25) - Quadratic(p, row), out double squared);
        Assert.Equal(25, squared, 1e-6);
        AssertSame(x, p, filter);

        // A good one ends the run.
        SquareRootFilter other = Mixed(out _);
        for (int k = 0; k < 11; k++)
        {
            double[] before = (double[])other.X.Clone();
            EstimatorBlock next = block;
            next.Delivered = before[StateIndex.Delivered] + before[StateIndex.ScaleOffset] + (k == 5 ? 0.001 : 10);
            other.Update(in next);
            Assert.Equal(k == 5, before[StateIndex.Delivered] != other.X[StateIndex.Delivered]);
        }
    }

    [Fact]
    public void A_reading_of_infinite_likelihood_costs_and_tells_nothing()
    {
        SquareRootFilter filter = Mixed(out _);
        double[] x = (double[])filter.X.Clone();
        x[StateIndex.ScaleOffset] = double.NaN;
        filter.X[StateIndex.ScaleOffset] = double.NaN;
        var block = new EstimatorBlock { Gauge = double.NaN, PipeTemperature = double.NaN, CondensingTemperature = double.NaN, Delivered = 1 };
        filter.Update(in block);
        Assert.Equal(x, filter.X);
        Assert.Equal(-50, filter.LogLikelihood);
        Assert.False(filter.IsFinite);
        filter.Reset();
        Assert.True(filter.IsFinite);
        Assert.Equal(Bench.Prior.Mean, filter.X);
        Assert.Equal(0, filter.LogLikelihood);
        for (int i = 0; i < N; i++)
        {
            Assert.Equal(Bench.Prior.Sigma[i], Math.Sqrt(filter.Variance(i)), 1e-12 * Bench.Prior.Sigma[i]);
        }
    }

    /// <summary>At rest and known to the last digit, each state gains what it wanders by; what is set for a filter stands in for the prior's.</summary>
    [Fact]
    public void States_gain_what_they_wander_by()
    {
        SquareRootFilter filter = Filter(AssumedPhase.LiquidPresent);
        filter.ChargeNoise = 1e-4;
        filter.TemperatureNoise = 0.5;
        filter.InnerNoise = 3e-3;
        Array.Clear(filter.L);
        EstimatorBlock block = Workbench.Block(2, 2, isDrawing: false);
        filter.Update(in block);
        for (int i = 0; i < StateIndex.FirstMoving; i++)
        {
            // The slow error of the pressure: 3 kPa and 1 % of 500 kPa before anything was read, in 90 s.
            double rate = i == StateIndex.Charge ? 1e-4 : i == StateIndex.Inner ? 3e-3 : i == StateIndex.GaugeDrift ? 2 * ((3e3 * 3e3) + (5e3 * 5e3)) / 90 : Bench.Prior.NoiseRate[i];
            Assert.Equal(2 * rate, filter.Variance(i), 1e-9 * (rate + 1e-9));
        }

        Assert.Equal(1, filter.Variance(StateIndex.Temperature), 1e-9);
        Assert.Equal(2 * Bench.Prior.NoiseRate[StateIndex.Delivered], filter.Variance(StateIndex.Delivered), 1e-15);

        // After a reading it goes by the pressure read, 20 kPa at least.
        foreach (double gauge in new[] { 3e5, -9e4 })
        {
            block = Workbench.Block(3, 0, gauge, isDrawing: false);
            filter.Update(in block);
            Array.Clear(filter.L);
            block = Workbench.Block(4, 1, isDrawing: false);
            filter.Update(in block);
            double pressure = Math.Max(2e4, gauge + 1e5);
            Assert.Equal(2 * ((3e3 * 3e3) + (1e-4 * pressure * pressure)) / 90, filter.Variance(StateIndex.GaugeDrift), 1);
        }
    }

    /// <summary>Beyond two and a half standard deviations of what was told a state is pulled back as by a reading of its prior that takes twenty seconds.</summary>
    [Theory]
    [InlineData(StateIndex.Hose, 1)]
    [InlineData(StateIndex.Displacement, -1)]
    [InlineData(StateIndex.ScaleOffset, 1)]
    public void What_leaves_what_was_told_is_pulled_back(int index, int sign)
    {
        const double Seconds = 2;
        double sigma = index == StateIndex.ScaleOffset ? Bench.Prior.ScaleDrift : Bench.Prior.Sigma[index];
        double keeps = index == StateIndex.ScaleOffset ? Math.Exp(-Seconds / 600) : 1;
        foreach (bool isReleased in new[] { false, true })
        {
            SquareRootFilter filter = Filter(AssumedPhase.LiquidPresent);
            filter.Released = isReleased ? index : -1;
            Array.Clear(filter.L);
            filter.L[(index * Stride) + index] = sigma;
            filter.X[index] = Bench.Prior.Mean[index] + (sign * 4 * sigma);
            EstimatorBlock block = Workbench.Block(Seconds, Seconds, isDrawing: false);
            filter.Update(in block);
            double variance = (keeps * keeps * sigma * sigma) + (Seconds * Bench.Prior.NoiseRate[index]);
            double beyond = sign * ((4 * keeps) - 2.5) * sigma;
            double all = variance + (sigma * sigma * 20 / Seconds);
            double expected = Bench.Prior.Mean[index] + (sign * 4 * sigma * keeps) - (isReleased ? 0 : variance / all * beyond);
            Assert.Equal(expected, filter.X[index], 1e-9);
            Assert.Equal(isReleased ? 0 : -0.5 * beyond * beyond / all, filter.LogLikelihood, 1e-9);

            // Within it nothing pulls.
            filter.X[index] = Bench.Prior.Mean[index] + (sign * 2.4 * sigma);
            block = Workbench.Block(Seconds, 1e-9, isDrawing: false);
            double before = filter.LogLikelihood;
            filter.Update(in block);
            Assert.Equal(before, filter.LogLikelihood, 1e-12);
        }
    }

    /// <summary>The charge is no larger than told and two and a half standard deviations, or than the scale has received: only where liquid is taken for granted.</summary>
    [Fact]
    public void Mass_balance_bounds_the_charge()
    {
        double sigma = Bench.Prior.Sigma[StateIndex.Charge];
        double most = Math.Log(6) + (2.5 * sigma);
        SquareRootFilter wet = Filter(AssumedPhase.LiquidPresent);
        Assert.Equal(most, wet.MostCharge, 1e-12);
        wet.X[StateIndex.Delivered] = 12;
        Assert.Equal(Math.Log(12), wet.MostCharge, 1e-12);
        foreach (AssumedPhase phase in new[] { AssumedPhase.LiquidPresent, AssumedPhase.VaporOnly })
        {
            SquareRootFilter filter = Filter(phase);
            Array.Clear(filter.L);
            filter.L[0] = sigma;
            filter.X[StateIndex.Charge] = most + sigma;
            EstimatorBlock block = Workbench.Block(1, 1, isDrawing: false);
            filter.Update(in block);
            double expected = phase == AssumedPhase.LiquidPresent ? most + sigma - (sigma / 21) : most + sigma;
            Assert.Equal(expected, filter.X[StateIndex.Charge], 1e-9);
        }
    }

    [Fact]
    public void Liquid_that_moved_is_delivered()
    {
        SquareRootFilter filter = Mixed(out _);
        double before = filter.X[StateIndex.Delivered];
        EstimatorBlock block = Workbench.Block(0, 0) with { LiquidMoved = 0.7 };
        filter.Update(in block);
        Assert.Equal(before + 0.7, filter.X[StateIndex.Delivered], 1e-12);
    }

    [Fact]
    public void A_state_is_widened_restored_and_copied_by_itself()
    {
        SquareRootFilter filter = Mixed(out double[,] p);
        filter.AddVariance(StateIndex.Hose, 0.25);
        p[StateIndex.Hose, StateIndex.Hose] += 0.25;
        AssertSame(filter.X, p, filter);
        var copy = new SquareRootFilter(Bench.Model, Bench.Prior, new DividedDifferences(Bench.Model, Bench.Prior, new FilterWorkspace()), AssumedPhase.VaporOnly);
        filter.LogLikelihood = -3;
        copy.CopyFrom(filter);
        AssertSame(filter.X, p, copy);
        Assert.Equal(0, copy.LogLikelihood);
        filter.X[StateIndex.Hose] = 3;
        filter.Released = StateIndex.Hose;
        filter.Restore(StateIndex.Hose);
        Assert.Equal(Bench.Prior.Mean[StateIndex.Hose], filter.X[StateIndex.Hose]);
        Assert.Equal(-1, filter.Released);
        for (int i = 0; i < N; i++)
        {
            p[i, StateIndex.Hose] = p[StateIndex.Hose, i] = 0;
        }

        p[StateIndex.Hose, StateIndex.Hose] = Math.Pow(Bench.Prior.Sigma[StateIndex.Hose], 2);
        AssertSame(filter.X, p, filter);
        filter.Released = StateIndex.Volume;
        filter.Restore(StateIndex.Hose);
        Assert.Equal(StateIndex.Volume, filter.Released);
    }

    private static SquareRootFilter Filter(AssumedPhase phase) =>
        new(Bench.Model, Bench.Prior, new DividedDifferences(Bench.Model, Bench.Prior, new FilterWorkspace()), phase);

    /// <summary>A filter whose states hang together, and its covariance.</summary>
    private static SquareRootFilter Mixed(out double[,] p, double spread = 1)
    {
        SquareRootFilter filter = Filter(AssumedPhase.LiquidPresent);
        var random = new Random(11);
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sigma = i == StateIndex.Delivered ? 0.03 : Bench.Prior.Sigma[i];
                filter.L[(i * Stride) + j] = spread * sigma * (i == j ? 0.7 : 0.4 * (random.NextDouble() - 0.5));
            }
        }

        p = new double[N, N];
        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k < N; k++)
            {
                for (int j = 0; j < N; j++)
                {
                    p[i, k] += filter.L[(i * Stride) + j] * filter.L[(k * Stride) + j];
                }
            }
        }

        filter.X[StateIndex.Delivered] = 1;
        filter.X[StateIndex.ScaleOffset] = 0.01;
        return filter;
    }

    private static double Shown(double[] x)
    {
        var values = new double[N];
        for (int i = 0; i < N; i++)
        {
            values[i] = StateIndex.IsLogarithm(i) ? Math.Exp(x[i]) : 0;
        }

        SigmaPoint point = SigmaPoint.From(x, values, Bench.Prior.Typical, Bench.Table);
        Bench.Model.Evaluate(in point.State, in point.Parameters, new ReducedInputs(295, false, AssumedPhase.LiquidPresent), out ReducedOutput output);
        return output.SuctionPressure - 1e5 + x[StateIndex.GaugeBias] + x[StateIndex.GaugeDrift];
    }

    private static double[] Row(int first, int second)
    {
        var row = new double[N];
        row[first] = 1;
        if (second >= 0)
        {
            row[second] = 1;
        }

        return row;
    }

    private static double Quadratic(double[,] p, double[] h)
    {
        double sum = 0;
        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k < N; k++)
            {
                sum += h[i] * p[i, k] * h[k];
            }
        }

        return sum;
    }

    /// <summary>x += K·ν, P −= K·S·Kᵀ with K = P·hᵀ/S.</summary>
    private static double Update(double[] x, double[,] p, double[] h, double read, double noise, out double squared)
    {
        double shown = 0;
        for (int i = 0; i < N; i++)
        {
            shown += h[i] * x[i];
        }

        return UpdateBy(x, p, h, read - shown, noise, out squared);
    }

    private static double UpdateBy(double[] x, double[,] p, double[] h, double innovation, double noise, out double squared)
    {
        double s = Quadratic(p, h) + noise;
        var gain = new double[N];
        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k < N; k++)
            {
                gain[i] += p[i, k] * h[k] / s;
            }
        }

        for (int i = 0; i < N; i++)
        {
            x[i] += gain[i] * innovation;
            for (int k = 0; k < N; k++)
            {
                p[i, k] -= gain[i] * s * gain[k];
            }
        }

        squared = innovation * innovation / s;
        return -0.5 * (squared + Math.Log(s));
    }

    private static void AssertSame(double[] x, double[,] p, SquareRootFilter filter)
    {
        for (int i = 0; i < N; i++)
        {
            Assert.Equal(x[i], filter.X[i], 1e-9 * (1 + Math.Abs(x[i])));
            for (int k = 0; k < N; k++)
            {
                Assert.Equal(p[i, k], VectorRows.Dot(filter.L, i * Stride, filter.L, k * Stride, Stride), 1e-9 * Math.Sqrt(p[i, i] * p[k, k]));
            }
        }
    }
}
