using System;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// FilterDraws against its definition with whole matrices and library distributions: one filter with liquid at a quarter of the probability, two of vapor alone at a half and a quarter, means and roots at random.
/// </summary>
public class FilterDrawsByHandTests
{
    private const int N = StateIndex.Count;
    private const int Seed = 5;

    /// <summary>Of the charge: twenty quantiles of Student's distribution above the least with liquid, that least itself dealt out; ten of each dry filter, wider by 0.7 % of the charge and 35 % of what is left.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void What_is_left_is_of_all_filters(double oil)
    {
        (Workbench bench, ChangePointFilter filter) = Filters(oil);
        var left = new WeightedValues(80);
        var charge = new WeightedValues(80);
        new FilterDraws(filter, bench.Model, bench.Prior, Seed).Charge(0.8, left, charge);
        var wantedLeft = new WeightedValues(80);
        var wantedCharge = new WeightedValues(80);
        filter.ChargeOf(out double location, out double scale, out double least);
        double[] tenths = Middles(10);
        for (int i = 0; i < 20; i++)
        {
            double mass = Math.Exp(Quantile(location, scale, least + (tenths[3 * i % 10] * filter.LeastSpread()), (i + 0.5) / 20));
            double gone = filter.Wet.X[StateIndex.Delivered];
            wantedLeft.Add(Math.Max(0, mass - gone), 0.8 * filter.WetProbability / 20);
            wantedCharge.Add(Math.Max(mass, gone), 0.8 * filter.WetProbability / 20);
        }

        foreach (int slot in new[] { 0, 1 })
        {
            SquareRootFilter dry = filter.Dry(slot)!;
            double mass = Math.Exp(dry.X[StateIndex.Charge]);
            double rest = mass - dry.X[StateIndex.Delivered];
            Matrix<double> p = Covariance(dry);
            double variance = (mass * mass * p[0, 0]) + p[StateIndex.Delivered, StateIndex.Delivered] - (2 * mass * p[0, StateIndex.Delivered]);
            double sigma = Math.Sqrt(variance + Math.Pow(0.007 * mass, 2) + Math.Pow(0.35 * rest, 2));
            for (int i = 0; i < 10; i++)
            {
                double hidden = oil == 0 || i % 2 == 0 ? 0 : Math.Exp(dry.X[StateIndex.Dissolved]);
                double value = Math.Max(0, rest + (tenths[i] * sigma) - hidden);
                wantedLeft.Add(value, 0.8 * filter.DryProbability(slot) / 10);
                wantedCharge.Add(value + dry.X[StateIndex.Delivered], 0.8 * filter.DryProbability(slot) / 10);
            }
        }

        AreAlike(wantedLeft, left, 1e-4);
        AreAlike(wantedCharge, charge, 1e-4);
    }

    [Fact]
    public void A_quantity_is_of_all_filters()
    {
        (Workbench bench, ChangePointFilter filter) = Filters(0);
        var values = new WeightedValues(30);
        new FilterDraws(filter, bench.Model, bench.Prior, Seed).Quantity(StateIndex.Outer, 0.6, values);
        var wanted = new WeightedValues(30);
        for (int slot = -1; slot < 2; slot++)
        {
            SquareRootFilter one = slot < 0 ? filter.Wet : filter.Dry(slot)!;
            double weight = slot < 0 ? filter.WetProbability : filter.DryProbability(slot);
            foreach (double z in Middles(10))
            {
                wanted.Add(Math.Exp(one.X[StateIndex.Outer] + (z * Math.Sqrt(Covariance(one)[StateIndex.Outer, StateIndex.Outer]))), 0.6 * weight / 10);
            }
        }

        AreAlike(wanted, values, 1e-2);
    }

    /// <summary>
    /// Ten points with liquid: the quantiles of the charge; parameters as they go with it by regression, within a standard deviation, and drawn from what that leaves. Eight of vapor, as many of each filter as its probability has:
    /// drawn, but dealt out in equal parts along the direction in which ln of the pressure grows; their times are off by 30 % and 4 s, dealt out as well.
    /// </summary>
    [Fact]
    public void Forecasts_start_from_points_of_all_filters()
    {
        (Workbench bench, ChangePointFilter filter) = Filters(0);
        ForecastBatch batch = Batch(bench);
        new FilterDraws(filter, bench.Model, bench.Prior, Seed).Points(0.7, batch);
        batch.Work(int.MaxValue);
        ForecastBatch wanted = Batch(bench);
        var random = new RandomNumbers(Seed);
        filter.ChargeOf(out double location, out double scale, out double least);
        Matrix<double> covariance = Covariance(filter.Wet);
        Matrix<double> root = Root(filter.Wet);
        int[] asTheyAre = [StateIndex.Temperature, StateIndex.MetalTemperature, StateIndex.WetTemperature, StateIndex.Delivered, StateIndex.GaugeDrift];
        for (int i = 0; i < 10; i++)
        {
            double charge = Quantile(location, scale, least, (i + 0.5) / 10);
            Vector<double> normal = Normals(ref random);
            Vector<double> goes = covariance.Column(0) / covariance[0, 0];
            Vector<double> states = Vector<double>.Build.Dense(filter.Wet.X) + (root * normal) - (goes * (root.Row(0) * normal));
            for (int k = 1; k < N; k++)
            {
                states[k] += asTheyAre.Contains(k) ? 0 : goes[k] * Math.Clamp(charge - location, -scale, scale);
            }

            states[0] = charge;
            Add(bench, wanted, states, 0.7 * filter.WetProbability / 10, 0, 0, 0, 0);
        }

        double[] eighths = Middles(8);
        for (int i = 0; i < 8; i++)
        {
            // The halves and quarters of the probability: two thirds and one third of what is dry.
            SquareRootFilter dry = filter.Dry((i + 0.5) / 8 <= filter.DryProbability(0) / (1 - filter.WetProbability) ? 0 : 1)!;
            int part = 3 * i % 8;
            Vector<double> states = Dry(dry, Normals(ref random), eighths[part]);
            Add(bench, wanted, states, 0.7 * (1 - filter.WetProbability) / 8, eighths[((3 * part) + 3) % 8], 0.3, 3600, 4);
        }

        wanted.Work(int.MaxValue);
        Assert.Equal(18, batch.Times.Count);
        AreAlike(wanted.Times, batch.Times, 0.02);
        AreAlike(wanted.More, batch.More, 2e-4);
        Assert.Equal(wanted.Reached, batch.Reached, 1e-6);
    }

    /// <summary>What has a probability below a thousandth, and of forecasts below a fiftieth, is left out.</summary>
    [Theory]
    [InlineData(0.0009, 20, 0)]
    [InlineData(0.0011, 30, 0)]
    [InlineData(0.018, 30, 0)]
    [InlineData(0.022, 30, 8)]
    public void What_is_negligible_is_left_out(double dry, int values, int points)
    {
        var bench = new Workbench();

        // The scale shows 2.9 kg, where it has less by so much that it becomes as unlikely as is wanted.
        double low = 0;
        double high = 1;
        ChangePointFilter filter = Unlikely(bench, high);
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            filter = Unlikely(bench, middle);
            (low, high) = filter.VaporOnly > dry ? (middle, high) : (low, middle);
        }

        Assert.Equal(dry, filter.VaporOnly, 1e-3 * dry);
        var draws = new FilterDraws(filter, bench.Model, bench.Prior, Seed);
        var left = new WeightedValues(80);
        draws.Charge(1, left, new WeightedValues(80));
        Assert.Equal(values, left.Count);
        var quantity = new WeightedValues(80);
        draws.Quantity(StateIndex.Volume, 1, quantity);
        Assert.Equal(values - 10, quantity.Count);
        ForecastBatch batch = Batch(bench);
        draws.Points(1, batch);
        batch.Work(int.MaxValue);
        Assert.Equal(10 + points, batch.Times.Count);
    }

    private static Vector<double> Dry(SquareRootFilter dry, Vector<double> normal, double z)
    {
        double charge = Math.Exp(dry.X[StateIndex.Charge]);
        double dissolved = Math.Exp(dry.X[StateIndex.Dissolved]);
        double mass = charge - dry.X[StateIndex.Delivered] - dissolved;
        Vector<double> gradient = Vector<double>.Build.Dense(N);
        gradient[StateIndex.Charge] = charge / mass;
        gradient[StateIndex.Delivered] = -1 / mass;
        gradient[StateIndex.Dissolved] = -dissolved / mass;
        gradient[StateIndex.Volume] = -1;
        gradient[StateIndex.Temperature] = 1 / dry.X[StateIndex.Temperature];
        Vector<double> direction = Root(dry).TransposeThisAndMultiply(gradient).Normalize(2);
        Vector<double> moved = Root(dry) * (normal + ((z - (direction * normal)) * direction));
        Vector<double> states = Vector<double>.Build.Dense(dry.X) + moved;
        double share = ((charge * moved[StateIndex.Charge]) - moved[StateIndex.Delivered] - (dissolved * moved[StateIndex.Dissolved])) / mass;
        states[StateIndex.Charge] = Math.Log(states[StateIndex.Delivered] + Math.Exp(states[StateIndex.Dissolved]) + (mass * Math.Exp(Math.Asinh(share))));
        return states;
    }

    private static void Add(Workbench bench, ForecastBatch to, Vector<double> states, double weight, double z, double relative, double longest, double seconds)
    {
        double[] values = [.. states.Select((x, i) => StateIndex.IsLogarithm(i) ? Math.Exp(x) : 0)];
        SigmaPoint point = SigmaPoint.From(states.ToArray(), values, bench.Prior.Typical, bench.Table);
        to.Add(in point, weight, z, relative, longest, seconds);
    }

    private static ForecastBatch Batch(Workbench bench)
    {
        var batch = new ForecastBatch(bench.Model, 7e4, 18);
        batch.Begin(0, 295, 13.5);
        return batch;
    }

    private static (Workbench Bench, ChangePointFilter Filter) Filters(double oil)
    {
        Told told = Workbench.Typical with { Oil = oil };
        var bench = new Workbench(told);
        var filter = new ChangePointFilter(bench.Model, bench.Prior);
        Bear(filter);
        Bear(filter);
        Assert.Equal(0.25, filter.WetProbability, 0.01);
        Assert.Equal(0.5, filter.DryProbability(0), 0.01);
        var random = new Random(3);
        Randomize(filter.Wet, 5.2, random);
        Randomize(filter.Dry(0)!, 5.65, random);
        Randomize(filter.Dry(1)!, 5.72, random);
        return (bench, filter);
    }

    /// <summary>Liquid that had moved has come to an end: with 5 of 6 kg gone vapor alone is as likely as not.</summary>
    private static void Bear(ChangePointFilter filter, double gone = 5)
    {
        filter.Wet.X[StateIndex.Delivered] = gone;
        filter.EndLiquid();
        filter.Update(Workbench.Block(1, 1, isDrawing: false));
        filter.Update(Workbench.Block(2, 1, isDrawing: false));
    }

    private static ChangePointFilter Unlikely(Workbench bench, double off)
    {
        var filter = new ChangePointFilter(bench.Model, bench.Prior);
        Bear(filter, 2.9);
        filter.Dry(0)!.X[StateIndex.Delivered] -= off;
        filter.Update(Workbench.Block(3, 1, delivered: 2.9, isDrawing: false));
        filter.Update(Workbench.Block(4, 1, delivered: 2.9, isDrawing: false));
        return filter;
    }

    private static void Randomize(SquareRootFilter filter, double delivered, Random random)
    {
        double[] x = filter.X;
        x[StateIndex.Charge] = Math.Log(6);
        x[StateIndex.Volume] = Math.Log(0.018);
        x[StateIndex.Dissolved] = Math.Log(0.06);
        x[StateIndex.Delivered] = delivered;
        Array.Clear(filter.L, 0, filter.L.Length);
        for (int i = 0; i < N; i++)
        {
            double sigma = i switch
            {
                StateIndex.Charge => 0.01,
                StateIndex.Delivered => 0.03,
                StateIndex.Temperature or StateIndex.MetalTemperature or StateIndex.WetTemperature => 2,
                StateIndex.GaugeBias or StateIndex.GaugeDrift => 4000,
                StateIndex.ScaleOffset => 0.03,
                StateIndex.Condensing => 1,
                _ => 0.1,
            };
            for (int j = 0; j < N; j++)
            {
                filter.L[(i * FilterWorkspace.Stride) + j] = sigma * (random.NextDouble() - 0.5);
            }
        }
    }

    private static Matrix<double> Root(SquareRootFilter filter) => Matrix<double>.Build.Dense(N, N, (i, j) => filter.L[(i * FilterWorkspace.Stride) + j]);

    private static Matrix<double> Covariance(SquareRootFilter filter) => Root(filter) * Root(filter).Transpose();

    private static Vector<double> Normals(ref RandomNumbers random)
    {
        double[] all = new double[N];
        for (int i = 0; i < N; i++)
        {
            all[i] = random.Normal();
        }

        return Vector<double>.Build.Dense(all);
    }

    /// <summary>Middles of equal parts of a standard normal distribution.</summary>
    private static double[] Middles(int parts) => [.. Enumerable.Range(0, parts).Select(i => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (i + 0.5) / parts))];

    private static double Quantile(double location, double scale, double least, double part)
    {
        double below = MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 4, (least - location) / scale);
        return location + Math.Min(2.5, scale * MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 4, below + ((1 - below) * part)));
    }

    private static void AreAlike(WeightedValues wanted, WeightedValues found, double within)
    {
        Assert.Equal(wanted.Count, found.Count);
        foreach (int percent in Enumerable.Range(1, 99))
        {
            Assert.Equal(wanted.Quantile(0.01 * percent), found.Quantile(0.01 * percent), within);
        }
    }
}
