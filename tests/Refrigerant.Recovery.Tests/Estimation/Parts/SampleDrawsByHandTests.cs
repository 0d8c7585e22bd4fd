using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>SampleDraws against its definition: samples at random states and weights, seven seconds after the end of the last block.</summary>
public class SampleDrawsByHandTests
{
    private const int Seed = 9;
    private const double Open = 7;
    private static readonly Workbench Bench = new();
    private static readonly ReducedInputs Inputs = new(295, true);
    private static readonly double[] Places = [-1.4, 0.53, 0, -0.53, 1.4];

    /// <summary>What is left of each, moved on to now: wider by 0.7 % of the charge and 35 % of the vapor; with liquid, less the part of the scale's offset that is the model's; of vapor, every other one without oil.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_left_is_of_all_samples(bool isOilTold)
    {
        WeightedSamples samples = Samples();
        var left = new WeightedValues(WeightedSamples.Size + 1);
        var charge = new WeightedValues(WeightedSamples.Size + 1);
        new SampleDraws(samples, Bench.Model, isOilTold, Seed).Charge(0.4, in Inputs, left, charge);
        var wantedLeft = new WeightedValues(WeightedSamples.Size + 1);
        var wantedCharge = new WeightedValues(WeightedSamples.Size + 1);
        double sum = samples.InUse.Particles.Sum(p => Math.Exp(p.LogWeight));
        int dry = 0;
        for (int i = 0; i < WeightedSamples.Size; i++)
        {
            SampleParticle particle = samples.InUse.Particles[i];
            ReducedState state = Now(in particle);
            Bench.Model.Evaluate(in state, in particle.Parameters, in Inputs, out ReducedOutput output);
            double gone = state.Delivered;
            double oil = 0;
            if (output.IsDry)
            {
                dry++;
                oil = isOilTold || i % 2 == 0 ? 0 : state.Dissolved;
            }
            else
            {
                double model = Math.Pow(0.015 * gone, 2);
                gone += particle.Offset * model / (model + Math.Pow(1.2 * 0.05, 2));
            }

            double sigma = Math.Sqrt(Math.Pow(0.007 * particle.Parameters.Charge, 2) + Math.Pow(0.35 * (output.Mass - output.LiquidMass), 2));
            double rest = Math.Max(0, particle.Parameters.Charge - gone - oil + (Places[i % 5] * sigma));
            wantedLeft.Add(rest, 0.4 * Math.Exp(particle.LogWeight) / sum);
            wantedCharge.Add(rest + gone, 0.4 * Math.Exp(particle.LogWeight) / sum);
        }

        Assert.InRange(dry, 50, 250);
        AreAlike(wantedLeft, left);
        AreAlike(wantedCharge, charge);
    }

    [Fact]
    public void Vapor_only_is_the_weight_of_those_without_liquid()
    {
        WeightedSamples samples = Samples();
        double sum = samples.InUse.Particles.Sum(p => Math.Exp(p.LogWeight));
        double dry = samples.InUse.Particles.Where(p =>
        {
            Bench.Model.Evaluate(in p.State, in p.Parameters, in Inputs, out ReducedOutput output);
            return output.IsDry;
        }).Sum(p => Math.Exp(p.LogWeight));
        Assert.Equal(dry / sum, new SampleDraws(samples, Bench.Model, true, Seed).VaporOnly(in Inputs), 1e-12);
    }

    /// <summary>Systematic resampling: thirty-two places at equal distances in the cumulated weight, the first of them at random. Their times are off by a tenth and 5 s, dealt out in turn.</summary>
    [Fact]
    public void Forecasts_start_from_samples_by_their_weight()
    {
        WeightedSamples samples = Samples();
        ForecastBatch batch = Batch();
        new SampleDraws(samples, Bench.Model, true, Seed).StartFrom(0.4, in Inputs, batch);
        batch.Work(int.MaxValue);
        ForecastBatch wanted = Batch();
        SampleParticle[] all = samples.InUse.Particles;
        double first = new RandomNumbers(Seed).Next();
        for (int k = 0; k < 32; k++)
        {
            double place = (first + k) / 32 * all.Sum(p => Math.Exp(p.LogWeight));
            int at = Enumerable.Range(0, all.Length).First(i => all.Take(i + 1).Sum(p => Math.Exp(p.LogWeight)) >= place);
            SigmaPoint point = new() { State = Now(in all[at]), Parameters = all[at].Parameters };
            wanted.Add(in point, 0.4 / 32, Places[k % 5], 0.1, 4 * 3600, 5);
        }

        wanted.Work(int.MaxValue);
        AreAlike(wanted.Times, batch.Times);
        AreAlike(wanted.More, batch.More);
    }

    [Fact]
    public void A_quantity_is_of_all_samples_by_their_weight()
    {
        WeightedSamples samples = Samples();
        int columns = SamplePopulation.Varied.Length;
        int column = Array.IndexOf(SamplePopulation.Varied, StateIndex.Hose);
        var values = new WeightedValues(WeightedSamples.Size + 1);
        new SampleDraws(samples, Bench.Model, true, Seed).Quantity(StateIndex.Hose, 0.4, values);
        var wanted = new WeightedValues(WeightedSamples.Size + 1);
        double sum = samples.InUse.Particles.Sum(p => Math.Exp(p.LogWeight));
        for (int i = 0; i < WeightedSamples.Size; i++)
        {
            wanted.Add(Math.Exp(samples.InUse.Parameters[(i * columns) + column]), 0.4 * Math.Exp(samples.InUse.Particles[i].LogWeight) / sum);
        }

        AreAlike(wanted, values);
    }

    /// <summary>Seven seconds on, in two steps.</summary>
    private static ReducedState Now(in SampleParticle particle)
    {
        ReducedState state = particle.State;
        Bench.Model.Advance(ref state, in particle.Parameters, in Inputs, Open, Open / 2);
        return state;
    }

    private static ForecastBatch Batch()
    {
        var batch = new ForecastBatch(Bench.Model, 7e4, 33);
        batch.Begin(0, 295, 13.5);
        return batch;
    }

    private static WeightedSamples Samples()
    {
        var samples = new WeightedSamples(Bench.Model, Bench.Prior, 4);
        for (int t = 1; t <= Open; t++)
        {
            samples.Log.Add(Workbench.Block(t));
        }

        var random = new Random(11);
        for (int i = 0; i < WeightedSamples.Size; i++)
        {
            ref SampleParticle particle = ref samples.InUse.Particles[i];
            particle.State.Delivered = particle.Parameters.Charge * (0.6 + (0.38 * random.NextDouble()));
            particle.State.Dissolved = 0.05 * random.NextDouble();
            particle.State.Temperature -= 5 * random.NextDouble();
            particle.Offset = 0.2 * (random.NextDouble() - 0.5);
            particle.LogWeight = -3 * random.NextDouble();
        }

        return samples;
    }

    private static void AreAlike(WeightedValues wanted, WeightedValues found)
    {
        Assert.Equal(wanted.Count, found.Count);
        Assert.InRange(found.Count, 1, WeightedSamples.Size);
        foreach (int percent in Enumerable.Range(1, 99))
        {
            Assert.Equal(wanted.Quantile(0.01 * percent), found.Quantile(0.01 * percent), 1e-6 * Math.Abs(wanted.Quantile(0.01 * percent)) + 1e-9);
        }

        // The weight of all of it, against one value of the weight 0.4.
        found.Add(1e9, 0.4);
        wanted.Add(1e9, 0.4);
        Assert.Equal(wanted.ShareAbove(1e8), found.ShareAbove(1e8), 1e-6);
    }
}
