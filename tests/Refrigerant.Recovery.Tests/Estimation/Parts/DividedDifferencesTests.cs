using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// Mean and covariance by the sums of the paper over whole columns: f0 + Σ(f+ + f− − 2·f0)/6, Σ(f+ − f−)²/12 and 2·Σ(f+ + f− − 2·f0)²/36 for a spread of √3.
/// </summary>
public class DividedDifferencesTests
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private static readonly Workbench Bench = new();

    /// <summary>At rest, and drawing, where neighbours take the suction of the one in the middle as their start.</summary>
    [Theory]
    [InlineData(false, 1, 1e-9)]
    [InlineData(false, 400, 1e-9)]
    [InlineData(true, 1, 0.02)]
    [InlineData(true, 5, 0.02)]
    public void A_step_is_that_of_the_sums(bool isDrawing, double seconds, double share)
    {
        var work = new FilterWorkspace();
        var differences = new DividedDifferences(Bench.Model, Bench.Prior, work);
        double[] x = Mean();
        double[] root = Root();
        for (int i = 0; i < N; i++)
        {
            work.NoiseVariance[i] = 1e-4 * Bench.Prior.Sigma[i] * Bench.Prior.Sigma[i];
        }

        var inputs = new ReducedInputs(298, isDrawing, AssumedPhase.LiquidPresent);
        Expected(x, root, isDrawing, seconds, work.NoiseVariance, out double[] mean, out double[,] covariance);
        differences.Predict(x, root, in inputs, seconds, DividedDifferences.StepFor(seconds));
        for (int i = 0; i < N; i++)
        {
            double sigma = Math.Sqrt(covariance[i, i]);
            Assert.Equal(mean[i], x[i], 1e-12 + (share * sigma * 0.2));
            for (int k = 0; k < N; k++)
            {
                double found = VectorRows.Dot(root, i * Stride, root, k * Stride, Stride);
                Assert.Equal(covariance[i, k], found, (share * sigma * Math.Sqrt(covariance[k, k])) + 1e-15);
            }
        }
    }

    /// <summary>The gauge's mean and slopes likewise, and the variance of what bends.</summary>
    [Fact]
    public void The_gauge_is_that_of_the_sums()
    {
        var work = new FilterWorkspace();
        var differences = new DividedDifferences(Bench.Model, Bench.Prior, work);
        double[] x = Mean();
        double[] root = Root();
        var inputs = new ReducedInputs(298, false, AssumedPhase.LiquidPresent);
        double mean = differences.Gauge(x, root, in inputs, out double second);
        double center = Shown(x);
        double expected = center;
        double bends = 0;
        for (int j = 0; j < N; j++)
        {
            double above = Shown(Moved(x, root, j, Math.Sqrt(3)));
            double below = Shown(Moved(x, root, j, -Math.Sqrt(3)));
            Assert.Equal((above - below) / (2 * Math.Sqrt(3)), work.Slope[j], 1e-6 * center);
            expected += (above + below - (2 * center)) / 6;
            bends += 2 * Math.Pow(above + below - (2 * center), 2) / 36;
        }

        Assert.Equal(expected, mean, 1e-9 * center);
        Assert.Equal(bends, second, 1e-6 * bends);
        for (int j = N; j < Stride; j++)
        {
            Assert.Equal(0, work.Slope[j]);
        }
    }

    /// <summary>
    /// Vapor only: where the charge may be less than what has left, what is left goes by its logarithm, so that the pressure, which goes with it, stays above zero: times √(1 + s²) + s and by it.
    /// </summary>
    [Fact]
    public void Of_vapor_alone_what_is_left_goes_by_its_logarithm()
    {
        var work = new FilterWorkspace();
        var differences = new DividedDifferences(Bench.Model, Bench.Prior, work);
        double[] x = Mean();
        x[StateIndex.Delivered] = 5.9;
        x[StateIndex.Dissolved] = Math.Log(0.02);
        const double Left = 0.08;
        var root = new double[N * Stride];
        root[(StateIndex.Charge * Stride) + 0] = 0.008;
        root[(StateIndex.Delivered * Stride) + 1] = 0.03;
        root[(StateIndex.Dissolved * Stride) + 2] = 0.3;
        var inputs = new ReducedInputs(298, false, AssumedPhase.VaporOnly);
        double mean = differences.Gauge(x, root, in inputs, out _);
        double center = Shown(x, AssumedPhase.VaporOnly) + 1e5;
        double expected = center;
        double[] more = [6 * 0.008, -0.03, -0.02 * 0.3];
        for (int j = 0; j < 3; j++)
        {
            double s = Math.Sqrt(3) * more[j] / Left;
            double factor = Math.Sqrt(1 + (s * s)) + s;

            // The gas is all but ideal: its pressure goes with its mass, to what its compressibility changes.
            Assert.Equal(center * (factor - (1 / factor)) / (2 * Math.Sqrt(3)), work.Slope[j], 0.12 * Math.Abs(work.Slope[j]));
            Assert.Equal(Math.Sign(more[j]), Math.Sign(work.Slope[j]));
            expected += center * (factor + (1 / factor) - 2) / 6;
        }

        Assert.Equal(expected, mean + 1e5, 0.12 * (expected - center));
        Assert.Equal(0, work.Slope[3], 1e-6);

        // A prediction has the same points: nothing is delivered at rest, and nothing is lost.
        double before = Math.Sqrt(VectorRows.Dot(root, StateIndex.Delivered * Stride, root, StateIndex.Delivered * Stride, Stride));
        differences.Predict(x, root, in inputs, 1, DividedDifferences.StepFor(1));
        Assert.Equal(5.9, x[StateIndex.Delivered], 1e-9);
        Assert.Equal(before, Math.Sqrt(VectorRows.Dot(root, StateIndex.Delivered * Stride, root, StateIndex.Delivered * Stride, Stride)), 1e-9);
    }

    private static double[] Mean()
    {
        double[] x = (double[])Bench.Prior.Mean.Clone();
        x[StateIndex.Temperature] = 281;
        x[StateIndex.WetTemperature] = 284;
        x[StateIndex.MetalTemperature] = 287;
        x[StateIndex.Delivered] = 1;
        x[StateIndex.Dissolved] = Math.Log(0.05);
        x[StateIndex.OilCapacity] = Math.Log(0.02);
        x[StateIndex.GaugeDrift] = 2000;
        x[StateIndex.ScaleOffset] = 0.03;
        return x;
    }

    private static double[] Root()
    {
        var random = new Random(21);
        var root = new double[N * Stride];
        for (int i = 0; i < N; i++)
        {
            double sigma = i == StateIndex.Delivered ? 0.1 : 0.4 * Math.Min(Bench.Prior.Sigma[i], i is StateIndex.Dissolved or StateIndex.Inner ? 0.4 : double.MaxValue);
            for (int j = 0; j <= i; j++)
            {
                root[(i * Stride) + j] = sigma * (i == j ? 0.8 : 0.3 * (random.NextDouble() - 0.5));
            }
        }

        return root;
    }

    private static double[] Moved(double[] x, double[] root, int column, double by)
    {
        var moved = new double[N];
        for (int i = 0; i < N; i++)
        {
            moved[i] = x[i] + (by * root[(i * Stride) + column]);
        }

        return moved;
    }

    /// <summary>The states a duration on: those that the model moves, and the errors of the instruments that fade.</summary>
    private static double[] Next(double[] x, bool isDrawing, double seconds)
    {
        SigmaPoint point = SigmaPoint.From(x, Values(x), Bench.Prior.Typical, Bench.Table);
        Bench.Model.Advance(ref point.State, in point.Parameters, new ReducedInputs(298, isDrawing, AssumedPhase.LiquidPresent), seconds, Math.Max(2.5, seconds / 60));
        double[] next = (double[])x.Clone();
        next[StateIndex.Dissolved] = Math.Log(point.State.Dissolved);
        next[StateIndex.Delivered] = point.State.Delivered;
        next[StateIndex.MetalTemperature] = point.State.MetalTemperature;
        next[StateIndex.WetTemperature] = point.State.WetTemperature;
        next[StateIndex.Temperature] = point.State.Temperature;
        next[StateIndex.ScaleOffset] *= Math.Exp(-seconds / 600);
        next[StateIndex.GaugeDrift] *= Math.Exp(-seconds / 90);
        return next;
    }

    private static void Expected(double[] x, double[] root, bool isDrawing, double seconds, double[] noise, out double[] mean, out double[,] covariance)
    {
        double[] center = Next(x, isDrawing, seconds);
        mean = (double[])center.Clone();
        covariance = new double[N, N];
        for (int j = 0; j < N; j++)
        {
            double[] above = Next(Moved(x, root, j, Math.Sqrt(3)), isDrawing, seconds);
            double[] below = Next(Moved(x, root, j, -Math.Sqrt(3)), isDrawing, seconds);
            for (int i = 0; i < N; i++)
            {
                mean[i] += (above[i] + below[i] - (2 * center[i])) / 6;
                for (int k = 0; k < N; k++)
                {
                    covariance[i, k] += ((above[i] - below[i]) * (above[k] - below[k]) / 12)
                        + (2 * (above[i] + below[i] - (2 * center[i])) * (above[k] + below[k] - (2 * center[k])) / 36);
                }
            }
        }

        for (int i = 0; i < N; i++)
        {
            covariance[i, i] += noise[i];
        }
    }

    private static double[] Values(double[] x)
    {
        var values = new double[N];
        for (int i = 0; i < N; i++)
        {
            values[i] = StateIndex.IsLogarithm(i) ? Math.Exp(x[i]) : 0;
        }

        return values;
    }

    private static double Shown(double[] x, AssumedPhase phase = AssumedPhase.LiquidPresent)
    {
        SigmaPoint point = SigmaPoint.From(x, Values(x), Bench.Prior.Typical, Bench.Table);
        Bench.Model.Evaluate(in point.State, in point.Parameters, new ReducedInputs(298, false, phase), out ReducedOutput output);
        return output.SuctionPressure - 1e5 + x[StateIndex.GaugeBias] + x[StateIndex.GaugeDrift];
    }
}
