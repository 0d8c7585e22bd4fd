using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// A pool at rest whose gauge shows what 6 K more than told would: by Bayes the temperature lies between, with the likelihood to the power 0.2, and nothing else is told of. The samples are resampled after the first block and moved
/// while two more come.
/// </summary>
public class WeightedSamplesTests
{
    private const double Off = 6;
    private const int Seeds = 8;
    private static readonly Workbench Bench = new();
    private static readonly int Columns = SamplePopulation.Varied.Length;
    private static readonly int Temperature = Array.IndexOf(SamplePopulation.Varied, StateIndex.Temperature);
    private static readonly Lazy<WeightedSamples[]> All = new(() => [.. Enumerable.Range(1, Seeds).Select(Moved)]);

    /// <summary>Mean and spread of the temperature are those of prior and likelihood, by quadrature; of all else they are the prior's.</summary>
    [Fact]
    public void Moved_they_are_drawn_from_prior_and_likelihood()
    {
        SampleLog log = All.Value[0].Log;
        double told = Bench.Prior.Mean[StateIndex.Temperature];
        double sigma = Bench.Prior.Sigma[StateIndex.Temperature];
        double sum = 0;
        double first = 0;
        double second = 0;
        for (double t = -8 * sigma; t <= 8 * sigma; t += 0.01)
        {
            double off = log[0].Gauge + 1e5 - Bench.Table.DewPressure(told + t);
            double weight = Math.Exp((-0.5 * t * t / (sigma * sigma)) - (0.2 * 0.5 * Math.Min(50, off * off * log[0].GaugePrecision)));
            sum += weight;
            first += weight * t;
            second += weight * t * t;
        }

        double mean = first / sum;
        double spread = Math.Sqrt((second / sum) - (mean * mean));
        Assert.InRange(mean, 1.2 * sigma, 3 * sigma);

        // The two blocks that came while they were moved weigh them anew: as they were moved they have the same weight.
        for (int k = 0; k < Columns; k++)
        {
            double[] values = [.. All.Value.SelectMany(s => Enumerable.Range(0, WeightedSamples.Size).Select(i => s.InUse.Parameters[(i * Columns) + k]))];
            double expected = Bench.Prior.Mean[SamplePopulation.Varied[k]];
            double wide = Bench.Prior.Sigma[SamplePopulation.Varied[k]];
            double average = values.Average();
            double deviation = Math.Sqrt(values.Average(v => (v - average) * (v - average)));
            if (k == Temperature)
            {
                Assert.Equal(told + mean, average, 0.2 * spread);
                Assert.Equal(spread, deviation, 0.15 * spread);
            }
            else
            {
                // Student's distribution of the charge, four degrees of freedom, has the root of two times its scale.
                Assert.Equal(expected, average, 0.25 * wide);
                Assert.Equal(SamplePopulation.Varied[k] == StateIndex.Charge ? Math.Sqrt(2) * wide : wide, deviation, 0.22 * wide);
            }
        }
    }

    /// <summary>Six moves each: hardly two are the same any more.</summary>
    [Fact]
    public void Moved_they_differ() => Assert.All(All.Value, samples => Assert.InRange(
        Enumerable.Range(0, WeightedSamples.Size).Select(i => samples.InUse.Parameters[(i * Columns) + Temperature]).Distinct().Count(), 0.75 * WeightedSamples.Size, WeightedSamples.Size));

    /// <summary>Each is where its parameters lead to through the whole log, and weighs what the blocks that came since say of it.</summary>
    [Fact]
    public void Each_is_where_its_parameters_lead_to()
    {
        foreach (WeightedSamples samples in All.Value.Take(2))
        {
            var one = new SamplePopulation(Bench.Model, Bench.Prior, 1);
            var since = new List<double>();
            for (int i = 0; i < WeightedSamples.Size; i++)
            {
                one.Start(samples.InUse.Parameters, i * Columns, out SampleParticle particle);
                double[] logs = [.. Enumerable.Range(0, samples.Log.Count).Select(b => one.Step(ref particle, in samples.Log[b]))];
                SampleParticle found = samples.InUse.Particles[i];
                Assert.Equal(particle.State, found.State);
                Assert.Equal(particle.LogLikelihood, found.LogLikelihood, 1e-9);
                Assert.Equal(particle.Offset, found.Offset, 1e-12);
                Assert.Equal(particle.Bias, found.Bias, 1e-9);
                Assert.Equal(particle.Slow, found.Slow, 1e-9);
                since.Add(0.2 * logs.Skip(1).Sum());
            }

            Assert.Equal(3, samples.Log.Count);
            Assert.InRange(since.Max() - since.Min(), 1e-3, 20);
            for (int i = 0; i < WeightedSamples.Size; i++)
            {
                Assert.Equal(since[i] - since.Max(), samples.InUse.Particles[i].LogWeight, 1e-9);
            }
        }
    }

    /// <summary>A block that says what was known already leaves them as they are; those in use go on while others are moved.</summary>
    [Fact]
    public void Where_the_weights_are_even_nothing_is_moved()
    {
        var samples = new WeightedSamples(Bench.Model, Bench.Prior, 1);
        double[] before = [.. samples.InUse.Parameters];
        SamplePopulation inUse = samples.InUse;
        Add(samples, 0, 0);
        int steps = Finish(samples);
        Assert.Same(inUse, samples.InUse);
        Assert.Equal(before, samples.InUse.Parameters);
        Assert.Equal(WeightedSamples.Size * SamplePopulation.StepsPerBlock, steps);
        Assert.InRange(samples.InUse.Effective, 0.5 * WeightedSamples.Size, WeightedSamples.Size - 1);
        Assert.Equal(0, samples.InUse.MostWeight());

        // Twelve chunks of twenty-five samples each, and then they are in use while others are moved.
        samples = new WeightedSamples(Bench.Model, Bench.Prior, 1);
        inUse = samples.InUse;
        Add(samples, 0, Off);
        for (int chunk = 0; chunk < 12; chunk++)
        {
            Assert.True(samples.HasWork);
            Assert.Equal(100, samples.Work(1));
        }

        Assert.True(samples.HasWork);
        Assert.Equal(1, samples.Work(1));
        Assert.Same(inUse, samples.InUse);
        Assert.InRange(samples.InUse.Effective, 1, 0.5 * WeightedSamples.Size);
        Finish(samples);
        Assert.NotSame(inUse, samples.InUse);
        Assert.Equal(WeightedSamples.Size, samples.InUse.Effective, 1e-9);
    }

    private static WeightedSamples Moved(int seed)
    {
        var samples = new WeightedSamples(Bench.Model, Bench.Prior, seed);
        Add(samples, 0, Off);
        for (int i = 0; i < 60; i++)
        {
            samples.Work(200);
        }

        Add(samples, 1, 0.5 * Off);
        for (int i = 0; i < 20; i++)
        {
            samples.Work(200);
        }

        Add(samples, 2, 0.4 * Off);
        Finish(samples);
        return samples;
    }

    private static int Finish(WeightedSamples samples)
    {
        int steps = 0;
        while (samples.HasWork)
        {
            steps += samples.Work(1000);
        }

        return steps;
    }

    /// <summary>A block at rest whose gauge shows so many kelvins more than told.</summary>
    private static void Add(WeightedSamples samples, int block, double kelvins)
    {
        double gauge = Bench.Table.DewPressure(295 + kelvins) - 1e5;
        for (int t = 1; t <= 10; t++)
        {
            samples.Log.Add(Workbench.Block((10 * block) + t, gauge: gauge, isDrawing: false));
        }
    }
}
