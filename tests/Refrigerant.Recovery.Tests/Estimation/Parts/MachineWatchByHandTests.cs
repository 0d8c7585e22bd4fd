using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>MachineWatch against its definition, written out with sums over all windows.</summary>
public class MachineWatchByHandTests
{
    private const int Kept = 24;
    private const double Scale = 0.01;
    private static readonly Workbench Bench = new();

    /// <summary>
    /// A machine that draws as told, a little more, and then less, at a pressure that falls and rises. What lies more than 24 windows back counts with e^(−age/60), nearly, and each of its gains is cut at three standard deviations of
    /// a window's; what lies between that and the change counts whole.
    /// </summary>
    [Theory]
    [InlineData(1, 0.55)]
    [InlineData(7, 0.70)]
    public void Weakness_is_what_the_windows_say(int seed, double share)
    {
        var random = new Random(seed);
        var watch = new MachineWatch(Bench.Machine, Bench.Prior);
        var windows = new List<(double Drawn, double Gained, double Pressure)>();
        double delivered = 0;
        int weak = 0;
        int risen = 0;
        watch.Update(Workbench.Block(0, gauge: 4e5, delivered: delivered), 8e4);
        for (int n = 1; n <= 70; n++)
        {
            double gauge = (n < 45 ? 4e5 - (4e3 * n) : 2.2e5 + (1e3 * (n - 45))) + (8e3 * random.NextDouble());
            double flow = Bench.Machine.Flow(gauge + 1e5, 295);
            double gained = (10 * flow * (n >= 45 ? share : 1.05)) + (0.03 * (random.NextDouble() - 0.5)) + (n is 9 ? 0.6 : n is 14 ? -0.7 : 0);
            delivered += gained;
            for (int t = 9; t >= 0; t--)
            {
                watch.Update(Workbench.Block((10 * n) - t, gauge: gauge, delivered: t == 0 ? delivered : 1e3), 8e4);
            }

            windows.Add((10 * flow, gained, gauge + 1e5));
            (double weakness, double weaknessRisen) = ByHand(windows);
            Assert.Equal(weakness, watch.Weakness, 1e-4 * (weakness + 0.01));
            Assert.Equal(weaknessRisen, watch.WeaknessRisen, 1e-4 * (weaknessRisen + 0.01));
            weak += weakness > 0 ? 1 : 0;
            risen += weaknessRisen > 0 ? 1 : 0;
        }

        Assert.InRange(weak, 10, 60);
        Assert.InRange(risen, 5, weak);
    }

    private static (double Weakness, double Risen) ByHand(List<(double Drawn, double Gained, double Pressure)> all)
    {
        int old = Math.Max(0, all.Count - Kept);
        double cut = 3 * Math.Sqrt(Variance(1));
        double[] weight = [.. Enumerable.Range(0, all.Count).Select(i => i < old ? Math.Pow(1 - (1 / 60.0), old - 1 - i) : 1)];
        double[] gained = [.. all.Select((w, i) => i < old ? Math.Clamp(w.Gained, -cut, (2 * w.Drawn) + cut) : w.Gained)];
        double first = 2 * Scale * Scale * Math.Pow(1 - (1 / 60.0), 2 * old);
        double weakness = 0;
        double risen = 0;

        // The change lies before window c, of which five come after it at least.
        for (int c = old; c <= all.Count - 5; c++)
        {
            double drawnAfter = all.Skip(c).Sum(w => w.Drawn);
            double ratio = all.Skip(c).Sum(w => w.Gained) / drawnAfter;
            double mean = all.Skip(c).Average(w => w.Pressure);
            double efficiency = ReducedModel.Efficiency(mean, Bench.Prior.Typical);
            double told = Math.Pow(Bench.Prior.Sigma[StateIndex.Displacement], 2) + Math.Pow(Bench.Prior.Sigma[StateIndex.Clearance] * ((1 / efficiency) - 1), 2);
            double drawn = Enumerable.Range(0, c).Sum(i => weight[i] * all[i].Drawn);
            double former = 1;
            double unsure = told;
            if (drawn > 0)
            {
                double before = Enumerable.Range(0, c).Sum(i => weight[i] * gained[i]) / drawn;
                double pressure = Enumerable.Range(0, c).Sum(i => weight[i] * all[i].Drawn * all[i].Pressure) / drawn;
                double falls = 0.2 * Math.Max(0, 1 - (mean / pressure));
                double windows = weight.Take(old).Sum() + c - old;
                double own = (0.06 * 0.06) + (falls * falls) + ((first + Variance(windows)) / (drawn * drawn));
                former = ((1 / told) + (before / own)) / ((1 / told) + (1 / own));
                unsure = 1 / ((1 / told) + (1 / own));
            }

            double sigmas = ratio < 0.78 * former ? (former - ratio) / Math.Sqrt((Variance(all.Count - c) / (drawnAfter * drawnAfter)) + unsure) : 0;
            weakness = Math.Max(weakness, sigmas);
            double rise = c > old ? mean - all[c - 1].Pressure : 0;
            risen = rise > 0 && rise > Math.Max(0.01 * all[c - 1].Pressure, 3 * Math.Sqrt(Bench.Prior.GaugeNoise / 10)) ? Math.Max(risen, sigmas) : risen;
        }

        return (weakness, risen);
    }

    /// <summary>Of what a scale with 10 g of noise, and 50 g of drift that lasts ten minutes, gains in so many windows of ten seconds.</summary>
    private static double Variance(double windows) => (2 * Scale * Scale) + (2 * 0.05 * 0.05 * Math.Min(1, windows / 60));
}
