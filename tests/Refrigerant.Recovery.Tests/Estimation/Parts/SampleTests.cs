using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>SampleLog, SamplePopulation, SampleDraws and WeightedSamples.</summary>
public class SampleTests
{
    private static readonly Workbench Bench = new();

    /// <summary>Blocks of ten seconds whose readings are the mean of their second half.</summary>
    [Fact]
    public void SampleLog_averages_the_second_half_of_ten_seconds()
    {
        var log = new SampleLog(Bench.Prior);
        for (int t = 1; t <= 20; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: t <= 5 ? 9e5 : 1000 * t, delivered: t == 8 ? double.NaN : t <= 5 ? 50 : t, air: 290 + t) with { LiquidMoved = 0.01, Passed = 0.02 };
            Assert.Equal(t % 10 == 0, log.Add(in block));
            Assert.Equal(t % 10, log.Open, 1e-9);
        }

        Assert.Equal(2, log.Count);
        Assert.Equal(10, log[0].Duration);
        Assert.Equal(8000, log[0].Gauge, 1e-9);
        Assert.Equal(8, log[0].Delivered, 1e-9);
        Assert.Equal(0.1, log[0].LiquidMoved, 1e-9);
        Assert.Equal(0.2, log[0].Passed, 1e-9);
        Assert.Equal(300, log[0].AirTemperature);
        Assert.True(log[0].IsDrawing);
        Assert.Equal(18_000, log[1].Gauge, 1e-9);
        Assert.False(log.IsFull);
    }

    [Fact]
    public void SampleLog_closes_a_block_where_the_machine_is_switched()
    {
        var log = new SampleLog(Bench.Prior);
        for (int t = 1; t <= 4; t++)
        {
            log.Add(Workbench.Block(t, gauge: 1e5, delivered: 1));
        }

        Assert.True(log.Add(Workbench.Block(5, gauge: 1e5, delivered: 1, isDrawing: false)));
        Assert.Equal(1, log.Count);
        Assert.Equal(4, log[0].Duration);
        Assert.Equal(double.NaN, log[0].Gauge);
        Assert.Equal(0, log[0].GaugePrecision);
        Assert.Equal(0, log[0].ScalePrecision);
        Assert.Equal(1, log.Open);
        Assert.False(log[1].IsDrawing);
    }

    /// <summary>Each time the job is 360 times its block long the blocks double: ten seconds in the first hour, twenty in the second, then forty; ten hours have room.</summary>
    [Fact]
    public void SampleLog_doubles_its_blocks_with_the_job()
    {
        var log = new SampleLog(Bench.Prior);
        int t = 0;
        while (!log.IsFull && t < 100_000)
        {
            t++;
            log.Add(Workbench.Block(t, gauge: 1e5, delivered: 1));
        }

        Assert.Equal(1200, log.Count);
        Assert.Equal(10, log[359].Duration);
        Assert.Equal(20, log[360].Duration);
        Assert.Equal(20, log[360 + 179].Duration);
        Assert.Equal(40, log[360 + 180].Duration);
        Assert.Equal(40, log[360 + 360 - 1].Duration);
        Assert.Equal(80, log[360 + 360].Duration);
        Assert.True(t > 36_000);
        Assert.False(log.Add(Workbench.Block(t + 1)));
    }

    /// <summary>
    /// The gains of a Kalman filter for bias and slow error of the gauge, offset of the scale, written out: the gauge's slow error has 4 kPa and 1.5 % of the pressure, 9 kPa at the start, the scale's 1.2 times its drift and
    /// 1.5 % of what has flowed.
    /// </summary>
    [Fact]
    public void SampleLog_has_the_gains_of_a_Kalman_filter()
    {
        var log = new SampleLog(Bench.Prior);
        double bias = Math.Pow(Bench.Prior.Sigma[StateIndex.GaugeBias], 2);
        double slow = Math.Pow(4000, 2) + Math.Pow(9000, 2);
        double cross = 0;
        double offset = Math.Pow(Bench.Prior.Sigma[StateIndex.ScaleOffset], 2);
        for (int k = 0; k < 5; k++)
        {
            double gauge = k == 2 ? double.NaN : k == 3 ? -9e4 : 3e5;
            double delivered = k == 1 ? double.NaN : 2 + k;
            for (int i = 1; i <= 10; i++)
            {
                log.Add(Workbench.Block((10 * k) + i, gauge: gauge, delivered: delivered));
            }

            SampleBlock block = log[k];
            double keeps = Math.Exp(-10 / 90.0);
            double pressure = double.IsNaN(gauge) ? 5e4 : Math.Max(5e4, gauge + 1e5);
            Assert.Equal(keeps, block.SlowKeeps, 1e-12);
            cross *= keeps;
            slow = (slow * keeps * keeps) + ((Math.Pow(4000, 2) + Math.Pow(0.015 * pressure, 2)) * (1 - (keeps * keeps)));
            if (!double.IsNaN(gauge))
            {
                // Both are seen as their sum, with 1.5 kPa of noise.
                double s = bias + (2 * cross) + slow + (1500 * 1500);
                double toBias = (bias + cross) / s;
                double toSlow = (cross + slow) / s;
                Assert.Equal(1 / s, block.GaugePrecision, 1e-6 / s);
                Assert.Equal(toBias, block.BiasGain, 1e-9);
                Assert.Equal(toSlow, block.SlowGain, 1e-9);
                (bias, cross, slow) = (bias - (toBias * toBias * s), cross - (toBias * toSlow * s), slow - (toSlow * toSlow * s));
            }

            double keepsScale = Math.Exp(-10 / 600.0);
            double seen = double.IsNaN(delivered) ? 0 : delivered;
            Assert.Equal(keepsScale, block.OffsetKeeps, 1e-12);
            offset = (offset * keepsScale * keepsScale) + ((Math.Pow(1.2 * 0.05, 2) + Math.Pow(0.015 * seen, 2)) * (1 - (keepsScale * keepsScale)));
            if (!double.IsNaN(delivered))
            {
                double s = offset + 1e-4;
                Assert.Equal(1 / s, block.ScalePrecision, 1e-6 / s);
                Assert.Equal(offset / s, block.OffsetGain, 1e-9);
                offset -= offset * offset / s;
            }
        }
    }

    /// <summary>A normal prior, of the charge Student's of four degrees of freedom: (1 + t²/4)^(−5/2).</summary>
    [Fact]
    public void SamplePopulation_has_the_density_of_its_prior()
    {
        var population = new SamplePopulation(Bench.Model, Bench.Prior, 1);
        double[] at = [.. SamplePopulation.Varied.Select(k => Bench.Prior.Mean[k])];
        Assert.Equal(0, population.LogPrior(at, 0));
        Assert.Equal(0, Array.IndexOf(SamplePopulation.Varied, StateIndex.Charge));
        at[0] += 3 * Bench.Prior.Sigma[StateIndex.Charge];
        Assert.Equal(-2.5 * Math.Log(1 + (9 / 4.0)), population.LogPrior(at, 0), 1e-12);
        at[1] -= 2 * Bench.Prior.Sigma[StateIndex.Volume];
        Assert.Equal((-2.5 * Math.Log(1 + (9 / 4.0))) - 2, population.LogPrior(at, 0), 1e-12);
        double[] shifted = [7, .. at];
        Assert.Equal(population.LogPrior(at, 0), population.LogPrior(shifted, 1), 1e-12);
    }

    /// <summary>Draws have the mean and spread of the prior; the charge's lie within five standard deviations.</summary>
    [Fact]
    public void SamplePopulation_draws_from_its_prior()
    {
        const int Size = 2000;
        var population = new SamplePopulation(Bench.Model, Bench.Prior, Size);
        var random = new RandomNumbers(3);
        for (int i = 0; i < Size; i++)
        {
            population.Draw(i, ref random);
        }

        int columns = SamplePopulation.Varied.Length;
        for (int k = 0; k < columns; k++)
        {
            double[] z = [.. Enumerable.Range(0, Size).Select(i => (population.Parameters[(i * columns) + k] - Bench.Prior.Mean[SamplePopulation.Varied[k]]) / Bench.Prior.Sigma[SamplePopulation.Varied[k]])];
            double[] sorted = [.. z.Order()];

            // The upper quartile: 0.674 of a normal distribution, 0.741 of Student's; the ends.
            Assert.Equal(k == 0 ? 0.741 : 0.674, sorted[3 * Size / 4], 0.12);
            Assert.Equal(0, sorted[Size / 2], 0.12);
            Assert.True(k == 0 ? sorted[^1] <= 5 + 1e-9 && sorted[^1] > 3.6 : sorted[^1] < 4.5);
            SampleParticle one = population.Particles[7];
            Assert.Equal(Math.Exp(population.Parameters[7 * columns]), one.Parameters.Charge, 1e-12);
            Assert.Equal(0, one.LogWeight);
            Assert.Equal(0, one.State.Delivered);
            Assert.Equal(one.State.Temperature, one.State.MetalTemperature);
            Assert.Equal(one.State.Temperature, one.State.WetTemperature);
            Assert.Equal(population.Parameters[(7 * columns) + Array.IndexOf(SamplePopulation.Varied, StateIndex.Temperature)], one.State.Temperature);
        }
    }

    /// <summary>Kish: (Σw)²/Σw².</summary>
    [Fact]
    public void SamplePopulation_counts_what_its_weights_amount_to()
    {
        var population = new SamplePopulation(Bench.Model, Bench.Prior, 4);
        double[] logs = [-700, -700 + Math.Log(2), -700 + Math.Log(3), double.NegativeInfinity];
        for (int i = 0; i < 4; i++)
        {
            population.Particles[i].LogWeight = logs[i];
        }

        Assert.Equal(36 / 14.0, population.Effective, 1e-9);
        Assert.Equal(-700 + Math.Log(3), population.MostWeight());
    }

    /// <summary>A block's log-likelihood: half of the squared innovations over their variances, fifty at most each, and the errors move by their gains.</summary>
    [Fact]
    public void SamplePopulation_weighs_a_block_by_its_innovations()
    {
        var population = new SamplePopulation(Bench.Model, Bench.Prior, 1);
        double[] at = [.. SamplePopulation.Varied.Select(k => Bench.Prior.Mean[k])];
        population.Start(at, 0, out SampleParticle particle);
        ReducedState state = particle.State;
        ReducedParameters parameters = particle.Parameters;
        var inputs = new ReducedInputs(295, true) { Passing = 0.002 };
        Bench.Model.Advance(ref state, in parameters, in inputs, 10, 2.5);
        Bench.Model.Evaluate(in state, in parameters, in inputs, out ReducedOutput output);
        var block = new SampleBlock
        {
            Duration = 10,
            AirTemperature = 295,
            IsDrawing = true,
            Passed = 0.02,
            LiquidMoved = 0.3,
            SlowKeeps = 0.9,
            OffsetKeeps = 0.8,
            Gauge = output.SuctionPressure - 1e5 + 5000,
            GaugePrecision = 1e-8,
            BiasGain = 0.2,
            SlowGain = 0.3,
            Delivered = state.Delivered + 0.3 + 0.1,
            ScalePrecision = 400,
            OffsetGain = 0.5,
        };
        particle.Bias = 1000;
        particle.Slow = 500;
        particle.Offset = 0.02;
        double log = population.Step(ref particle, in block);

        // 5000 − 1000 − 450; 0.1 − 0.016. Liquid that was taken leaves as much less in the appliance: the pressure of a pool stays.
        Assert.Equal(-0.5 * ((3550 * 3550 * 1e-8) + (0.084 * 0.084 * 400)), log, 1e-3);
        Assert.Equal(log, particle.LogLikelihood);
        Assert.Equal(1000 + (0.2 * 3550), particle.Bias, 2);
        Assert.Equal(450 + (0.3 * 3550), particle.Slow, 2);
        Assert.Equal(0.016 + (0.5 * 0.084), particle.Offset, 1e-9);
        Assert.Equal(state.Delivered + 0.3, particle.State.Delivered, 1e-12);
        Assert.Equal(0.3, particle.Parameters.LiquidTaken, 1e-12);
        block.Gauge += 1e6;
        block.Delivered += 100;
        Assert.Equal(-50, population.Step(ref particle, in block), 1e-9);
        block.GaugePrecision = block.ScalePrecision = 0;
        Assert.Equal(0, population.Step(ref particle, in block));
    }

    /// <summary>Over a job that goes as the model has it the samples come to its charge, and work comes in slices that end.</summary>
    [Fact]
    public void WeightedSamples_come_to_the_truth()
    {
        var bench = new Workbench(Workbench.Typical with { Charge = 1.2, Metal = 4000, Volume = 0.008 });
        var samples = new WeightedSamples(bench.Model, bench.Prior, 1);
        var draws = new SampleDraws(samples, bench.Model, true, 1);
        var truth = new OwnTruth(bench, 1.15);
        double before = Spread();
        while (truth.Output.Pressure > 6e4)
        {
            EstimatorBlock block = truth.Next();
            if (samples.Log.Add(in block))
            {
                Assert.True(samples.HasWork);
                int most = 0;
                while (samples.HasWork)
                {
                    int done = samples.Work(500);
                    most = Math.Max(most, done);
                    Assert.True(done > 0);
                }

                // At most about as many as allowed: a chunk of 25 samples may be begun before its end.
                Assert.InRange(most, 1, 600 + 4);
            }
        }

        Assert.Equal(0, samples.Work(100));
        Assert.True(samples.InUse.Effective >= 100);
        Assert.True(Spread() < 0.35 * before);
        var left = new WeightedValues(WeightedSamples.Size);
        var charge = new WeightedValues(WeightedSamples.Size);
        var inputs = new ReducedInputs(295, true);
        draws.Charge(0.5, in inputs, left, charge);
        Assert.Equal(1.38, charge.Quantile(0.5), 0.03 * 1.38);
        Assert.Equal(truth.Left, left.Quantile(0.5), 0.03);
        Assert.True(left.Range().Low <= truth.Left && truth.Left <= left.Range().High);
        Assert.True(draws.VaporOnly(in inputs) > 0.95);
        var displacement = new WeightedValues(WeightedSamples.Size);
        draws.Quantity(StateIndex.Displacement, 1, displacement);
        Assert.Equal(bench.Prior.Typical.Displacement, displacement.Quantile(0.5), 0.08 * bench.Prior.Typical.Displacement);
        var batch = new ForecastBatch(bench.Model, 4e4, SampleDraws.Points);
        batch.Begin(0, 295, 20);
        draws.StartFrom(0.5, in inputs, batch);
        batch.Work(1_000_000);
        Assert.Equal(SampleDraws.Points, batch.Times.Count);
        double start = truth.Time;
        while (truth.Output.Pressure > 4e4)
        {
            truth.Next();
        }

        Assert.Equal(truth.Time - start, batch.Times.Quantile(0.5), 0.3 * (truth.Time - start));
        Assert.True(batch.Reached > 0.9);

        double Spread()
        {
            var values = new WeightedValues(WeightedSamples.Size);
            draws.Quantity(StateIndex.Charge, 1, values);
            return values.Range().High - values.Range().Low;
        }
    }

    /// <summary>
    /// One sample with all of the weight, its place in the middle: what is left is its charge less what has left. Of the offset of the scale as much is the model's as the flow's variance has of both, (1.5 % of 2 kg)² of
    /// (30 g)² + (60 g)². Of vapor alone none is.
    /// </summary>
    [Fact]
    public void SampleDraws_share_the_scales_offset()
    {
        var samples = new WeightedSamples(Bench.Model, Bench.Prior, 4);
        for (int i = 0; i < WeightedSamples.Size; i++)
        {
            samples.InUse.Particles[i].LogWeight = i == 7 ? 0 : double.NegativeInfinity;
        }

        ref SampleParticle particle = ref samples.InUse.Particles[7];
        particle.Parameters.Charge = 6;
        particle.Parameters.Volume = 0.018;
        particle.State.Delivered = 2;
        particle.State.Dissolved = 0.01;
        particle.Offset = 0.1;
        Assert.Equal(6 - 2 - (0.1 * 0.2), Left(true), 1e-9);
        particle.State.Delivered = 5.8;
        Assert.Equal(0.2, Left(true), 1e-9);

        // Oil that was not told: in every other draw of vapor alone what it holds is not there.
        Assert.Equal(0.2 - 0.01, Left(false), 1e-9);

        // A place to either side of the middle: by 0.7 % of the charge and 35 % of the vapor, root of the squares.
        samples.InUse.Particles[6] = particle;
        particle.LogWeight = double.NegativeInfinity;
        double sigma = Math.Sqrt(Math.Pow(0.007 * 6, 2) + Math.Pow(0.35 * 0.19, 2));
        Assert.Equal(0.2 + (0.53 * sigma), Left(true), 1e-9);

        double Left(bool isOilTold)
        {
            var left = new WeightedValues(WeightedSamples.Size);
            var charge = new WeightedValues(WeightedSamples.Size);
            new SampleDraws(samples, Bench.Model, isOilTold, 1).Charge(1, new ReducedInputs(295, true), left, charge);
            Assert.Equal(1, left.Count);
            return left.Quantile(0.5);
        }
    }

    /// <summary>Before anything was read the samples are the prior: nine in ten of the charges lie within 2.13 of Student's standard deviations (t of 4 degrees of freedom at 95 %).</summary>
    [Fact]
    public void WeightedSamples_begin_at_the_prior()
    {
        var samples = new WeightedSamples(Bench.Model, Bench.Prior, 4);
        Assert.False(samples.HasWork);
        var draws = new SampleDraws(samples, Bench.Model, true, 1);
        var values = new WeightedValues(WeightedSamples.Size);
        draws.Quantity(StateIndex.Charge, 1, values);
        double reach = 2.1318 * Bench.Prior.Sigma[StateIndex.Charge];
        Assert.Equal(6 * Math.Exp(-reach), values.Range().Low, 0.3);
        Assert.Equal(6, values.Range().Best, 0.25);
        Assert.Equal(6 * Math.Exp(reach), values.Range().High, 0.9);
        Assert.Equal(WeightedSamples.Size, samples.InUse.Effective, 1e-9);
        Assert.Equal(0, draws.VaporOnly(new ReducedInputs(295, true)));
        var other = new WeightedSamples(Bench.Model, Bench.Prior, 4);
        Assert.Equal(samples.InUse.Parameters, other.InUse.Parameters);
        Assert.NotEqual(samples.InUse.Parameters, new WeightedSamples(Bench.Model, Bench.Prior, 5).InUse.Parameters);
    }
}
