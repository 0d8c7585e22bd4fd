using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>The filter on its own model's truth: innovations and errors as large as it says (Bar-Shalom, Li and Kirubarajan 2001, 5.4).</summary>
public class ConsistencyTests
{
    private const int Jobs = 60;
    private const int Seconds = 200;

    /// <summary>Share of the prior's spread that the truths are drawn with and the filter starts with: so wide as it is, the model is far from linear.</summary>
    private const double Spread = 0.3;

    private static readonly string[] Fluids = ["R-134a", "R-22", "R-410A", "R-32", "R-404A"];

    [Fact]
    public void Innovations_and_errors_are_as_large_as_the_filter_says()
    {
        double gauge = 0;
        double scale = 0;
        int gauges = 0;
        int scales = 0;
        double nees = 0;
        for (int job = 0; job < Jobs; job++)
        {
            var random = new Draws(80_000 + job);
            Told told = Job(random);
            var table = new SaturationTable(told.Job().Appliance.Fluid.Model);
            var model = new ReducedModel(table);
            EstimatorPrior prior = EstimatorPrior.From(told.Job(), table, told.Instruments(), told.Options(), told.Level);
            var filter = new SquareRootFilter(model, prior, new DividedDifferences(model, prior, new FilterWorkspace()), AssumedPhase.LiquidPresent);
            double[] truth = new double[StateIndex.Count];
            for (int k = 0; k < StateIndex.Count; k++)
            {
                filter.L[(k * FilterWorkspace.Stride) + k] = Spread * prior.Sigma[k];
                truth[k] = prior.Mean[k] + (Spread * prior.Sigma[k] * random.Normal());
            }

            double drift = 2 * ((prior.SlowGauge * prior.SlowGauge) + Math.Pow(prior.SlowGaugeShare * 5e5, 2)) / prior.SlowGaugeTime;
            for (int t = 1; t <= Seconds; t++)
            {
                var inputs = new ReducedInputs(told.Temperature, true, AssumedPhase.LiquidPresent);
                Move(truth, model, prior, in inputs, drift, random, out double shown);
                filter.Update(new EstimatorBlock
                {
                    Time = t,
                    Duration = 1,
                    AirTemperature = told.Temperature,
                    IsDrawing = true,
                    PipeTemperature = double.NaN,
                    CondensingTemperature = double.NaN,
                    Gauge = shown + (Math.Sqrt(prior.GaugeNoise + prior.ModelNoise) * random.Normal()),
                    Delivered = truth[StateIndex.Delivered] + truth[StateIndex.ScaleOffset] + (Math.Sqrt(prior.ScaleNoise) * random.Normal()),
                });
                gauge += filter.GaugeConsistency;
                scale += filter.ScaleConsistency;
                gauges++;
                scales++;
                drift = 2 * ((prior.SlowGauge * prior.SlowGauge) + Math.Pow(prior.SlowGaugeShare * (shown + prior.Atmosphere), 2)) / prior.SlowGaugeTime;
            }

            nees += Squared(filter, truth);
        }

        // 12 000 innovations each: the mean of a chi-square of one degree has a standard deviation of √(2/12000) = 0.013.
        Assert.InRange(gauge / gauges, 0.95, 1.05);
        Assert.InRange(scale / scales, 0.95, 1.05);

        // 60 errors of 21 states: mean 21, standard deviation √(2·21/60) = 0.84; four of them to either side.
        Assert.InRange(nees / Jobs, StateIndex.Count - 3.4, StateIndex.Count + 3.4);
    }

    private static Told Job(Draws random)
    {
        string fluid = Fluids[random.Below(Fluids.Length)];
        double charge = random.LogUniform(2, 15);
        return new Told
        {
            Fluid = fluid,
            Charge = charge,
            Volume = charge * random.Uniform(0.0025, 0.004),
            Temperature = random.Uniform(283, 303),
            Outer = charge * random.LogUniform(3, 9),
            Metal = charge * random.LogUniform(2e3, 5e3),
            Displacement = charge * random.LogUniform(4e-5, 1e-4),
            HoseResistance = random.LogUniform(2e9, 1e10),
            Oil = charge * 0.1,
            Level = 7e4,
        };
    }

    /// <summary>The truth a second on, with the noise that the filter takes for granted.</summary>
    private static void Move(double[] x, ReducedModel model, EstimatorPrior prior, in ReducedInputs inputs, double drift, Draws random, out double shown)
    {
        double[] values = Values(x);
        SigmaPoint point = SigmaPoint.From(x, values, prior.Typical, model.Table);
        model.Advance(ref point.State, in point.Parameters, in inputs, 1, 1);
        x[StateIndex.Dissolved] = Math.Log(point.State.Dissolved);
        x[StateIndex.Delivered] = point.State.Delivered;
        x[StateIndex.MetalTemperature] = point.State.MetalTemperature;
        x[StateIndex.WetTemperature] = point.State.WetTemperature;
        x[StateIndex.Temperature] = point.State.Temperature;
        x[StateIndex.ScaleOffset] *= Math.Exp(-1 / prior.ScaleTime);
        x[StateIndex.GaugeDrift] *= Math.Exp(-1 / prior.SlowGaugeTime);
        for (int k = 0; k < StateIndex.Count; k++)
        {
            x[k] += Math.Sqrt(k == StateIndex.GaugeDrift ? drift : prior.NoiseRate[k]) * random.Normal();
        }

        point = SigmaPoint.From(x, Values(x), prior.Typical, model.Table);
        model.Evaluate(in point.State, in point.Parameters, in inputs, out ReducedOutput output);
        shown = output.SuctionPressure - prior.Atmosphere + point.GaugeError;
    }

    private static double[] Values(double[] x)
    {
        var values = new double[x.Length];
        for (int k = 0; k < x.Length; k++)
        {
            values[k] = StateIndex.IsLogarithm(k) ? Math.Exp(x[k]) : 0;
        }

        return values;
    }

    /// <summary>eᵀ·P⁻¹·e, by a Cholesky root of P made anew.</summary>
    private static double Squared(SquareRootFilter filter, double[] truth)
    {
        const int N = StateIndex.Count;
        var root = new double[N, N];
        var e = new double[N];
        double sum = 0;
        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k <= i; k++)
            {
                double s = 0;
                for (int c = 0; c < N; c++)
                {
                    s += filter.L[(i * FilterWorkspace.Stride) + c] * filter.L[(k * FilterWorkspace.Stride) + c];
                }

                for (int c = 0; c < k; c++)
                {
                    s -= root[i, c] * root[k, c];
                }

                root[i, k] = i == k ? Math.Sqrt(s) : s / root[k, k];
            }

            double v = truth[i] - filter.X[i];
            for (int k = 0; k < i; k++)
            {
                v -= root[i, k] * e[k];
            }

            e[i] = v / root[i, i];
            sum += e[i] * e[i];
        }

        return sum;
    }
}
