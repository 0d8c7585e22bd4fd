using System;
using System.Threading;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

public class PlanUncertaintyTests
{
    private static readonly InputTolerances None = new()
    {
        InternalVolume = Ratio.Zero,
        HeatExchange = Ratio.Zero,
        Charge = Ratio.Zero,
        Displacement = Ratio.Zero,
        Temperature = TemperatureDelta.Zero,
        Gauge = Pressure.Zero,
        Scale = Mass.Zero,
        Oil = Ratio.Zero,
        Metal = Ratio.Zero,
    };

    [Fact]
    public void The_same_seed_gives_the_same_ranges_on_any_number_of_threads()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        PlanUncertainty one = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 32, MaximumThreads = 1 });
        PlanUncertainty two = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 32, MaximumThreads = 4 });
        Assert.Equal(one.TotalDuration.Median, two.TotalDuration.Median);
        Assert.Equal(one.Remaining.High, two.Remaining.High);
        Assert.NotEqual(
            one.TotalDuration.Median,
            PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 32, Seed = 2 }).TotalDuration.Median);
    }

    [Fact]
    public void The_range_holds_the_plan_and_widens_with_the_tolerance()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        double plan = RecoveryPlanner.Plan(job).TotalDuration.Seconds;
        PlanUncertainty narrow = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 64, Tolerances = None with { Displacement = Ratio.FromPercent(5) } });
        PlanUncertainty wide = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 64, Tolerances = None with { Displacement = Ratio.FromPercent(30) } });

        Assert.InRange(plan, narrow.TotalDuration.Low.Seconds, narrow.TotalDuration.High.Seconds);
        Assert.True(wide.TotalDuration.High - wide.TotalDuration.Low > narrow.TotalDuration.High - narrow.TotalDuration.Low);
        InputInfluence only = Assert.Single(wide.Influences);
        Assert.Equal(UncertainInput.Displacement, only.Input);
        Assert.True(only.OnDuration < -0.9, only.ToString());
    }

    /// <summary>Sections move with the appliance, so that they still add up to it.</summary>
    [Fact]
    public void An_appliance_of_sections_has_ranges_too()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        Appliance whole = job.Appliance;
        Appliance split = whole with
        {
            Sections =
            [
                new ApplianceSection { Name = "a", InternalVolume = whole.InternalVolume * 0.6, Charge = whole.Charge * 0.6 },
                new ApplianceSection { Name = "b", InternalVolume = whole.InternalVolume * 0.4, Charge = whole.Charge * 0.4 },
            ],
            Connections = [new SectionConnection { From = "a", To = "b", FlowCoefficient = 2 }],
        };
        PlanUncertainty ranges = PlanUncertainty.Run(job with { Appliance = split }, new UncertaintyOptions { Samples = 16 });
        Assert.True(ranges.TotalDuration.High > ranges.TotalDuration.Low);
    }

    [Fact]
    public void Without_tolerance_there_is_no_spread()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        PlanUncertainty none = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 16, Tolerances = None });
        Assert.Equal(none.TotalDuration.Low.Seconds, none.TotalDuration.High.Seconds, 1e-9 * none.TotalDuration.High.Seconds);
        Assert.Empty(none.Influences);
    }

    [Fact]
    public void It_can_be_cancelled_and_tells_its_progress()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        using var source = new CancellationTokenSource();
        var progress = new Recorder(() => source.Cancel());
        Assert.Throws<OperationCanceledException>(() =>
            PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 4096, MaximumThreads = 1 }, source.Token, progress));
        Assert.InRange(progress.Last, 0, 0.1);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(7)]
    public void The_sample_fills_the_cube_evenly(int dimensions)
    {
        var sequence = new QuasiRandom(dimensions, 5);
        for (int j = 0; j < dimensions; j++)
        {
            int[] bins = new int[16];
            for (int i = 0; i < 1024; i++)
            {
                double x = sequence.At(i, j);
                Assert.InRange(x, 0, 1);
                bins[(int)(x * 16)]++;
            }

            // A Kronecker sequence of 1024 points puts 64 in a sixteenth, give or take its star discrepancy of a few points.
            Assert.All(bins, count => Assert.InRange(count, 56, 72));
        }
    }

    private sealed class Recorder(Action atFirst) : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value)
        {
            Last = value;
            atFirst();
        }
    }
}
