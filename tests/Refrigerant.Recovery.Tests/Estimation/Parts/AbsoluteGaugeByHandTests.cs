using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>The evidence that a gauge shows absolute pressure, window by window, against its definition.</summary>
public class AbsoluteGaugeByHandTests
{
    private static readonly Workbench Bench = new();

    /// <summary>
    /// ln(gained/drawn) of each window with the variance of the scale, 12 g a reading and its drift, and 5 % of the model; one displacement, known to 25 %, for all. Gauge pressure may also have a machine that changed between two
    /// windows, at a cost of three: between any two of the first twenty, then between pairs of them, and so on.
    /// </summary>
    [Theory]
    [InlineData(2, 1, 1)]
    [InlineData(4, 0, 1)]
    [InlineData(6, 1, 0.6)]
    public void Evidence_is_what_the_windows_say(int seed, double atmospheres, double later)
    {
        var random = new Random(seed);
        var gauge = new AbsoluteGauge(Bench.Model, Bench.Prior, Bench.Machine, Workbench.Typical.Instruments());
        var groups = new List<(double Precision, double Sum, double Squares)>();
        double[] sums = new double[2];
        double[] squares = new double[2];
        double precision = 0;
        double delivered = 0;
        double from = 0;
        double since = 0;
        double[] drawn = new double[2];
        int windows = 0;
        bool isAbsolute = false;
        for (int t = 0; t <= 1500; t++)
        {
            double pressure = (550e3 * Math.Exp(-t / 1500.0)) + (2e4 * random.NextDouble());
            double flow = Bench.Machine.Flow(pressure, 295);
            delivered += t == 0 ? 0 : flow * (t > 700 ? later : 1) * (0.8 + (0.4 * random.NextDouble()));
            double shown = pressure - (atmospheres * 1e5);
            gauge.Update(Workbench.Block(t, gauge: shown, delivered: delivered));
            drawn[0] += Bench.Machine.Flow(shown + 1e5, 295);
            drawn[1] += Bench.Machine.Flow(shown, 295);
            double gained = delivered - from;
            if (t == 0 || (t - since >= 20 && (gained > 0.12 || t - since > 300)))
            {
                if (t > 0)
                {
                    double noise = ((2 * 0.012 * 0.012) + (2 * 0.05 * 0.05 * (t - since) / 600)) / Math.Pow(Math.Max(gained, 0.12), 2);
                    double weight = 1 / (noise + (0.05 * 0.05));
                    double[] off = [.. drawn.Select(d => Math.Log(gained / d))];
                    precision += weight;
                    for (int k = 0; k < 2; k++)
                    {
                        sums[k] += weight * off[k];
                        squares[k] += weight * off[k] * off[k];
                    }

                    if (groups.Count == 20)
                    {
                        groups = [.. groups.Chunk(2).Select(pair => (pair.Sum(g => g.Precision), pair.Sum(g => g.Sum), pair.Sum(g => g.Squares)))];
                    }

                    groups.Add((weight, weight * off[0], weight * off[0] * off[0]));
                    windows++;
                    double changed = Enumerable.Range(1, groups.Count - 1).Select(n => Left(groups.Take(n)) + Left(groups.Skip(n))).Append(double.PositiveInfinity).Min();
                    double constant = Left(precision, sums[0], squares[0]);
                    double absolute = Left(precision, sums[1], squares[1]);
                    double evidence = gauge.Start + (0.5 * (Math.Min(constant, Math.Min(constant, changed) + 6) - absolute));
                    Assert.Equal(evidence, gauge.Evidence, 1e-3);
                    Assert.Equal(absolute / windows, gauge.Unexplained, 1e-4);
                    Assert.Equal(windows, gauge.Windows);
                    isAbsolute |= windows >= 4 && evidence > 1.3 && absolute / windows < 1.6;
                    Assert.Equal(isAbsolute, gauge.IsAbsolute);
                }

                (from, since, drawn[0], drawn[1]) = (delivered, t, 0, 0);
            }
        }

        Assert.True(windows > 25);
        Assert.Equal(atmospheres == 0, isAbsolute);
    }

    private static double Left(IEnumerable<(double Precision, double Sum, double Squares)> some) => Left(some.Sum(g => g.Precision), some.Sum(g => g.Sum), some.Sum(g => g.Squares));

    /// <summary>Squares that no displacement explains: of what is common to all as much stays as its variance has of 0.25².</summary>
    private static double Left(double precision, double sum, double squares) => squares - (sum * sum / (precision + 16));
}
