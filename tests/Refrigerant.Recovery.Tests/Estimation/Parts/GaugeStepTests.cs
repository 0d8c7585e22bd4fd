using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A gauge that falls within three seconds, faster than vapor can thin out, and then stands for eight.</summary>
public class GaugeStepTests
{
    private const double High = 6e5;
    private static readonly Workbench Bench = new();

    /// <summary>It falls between the seconds 20 and 21: the mean of two readings shows the whole of it at 22, and it has stood at 19 + 3 + 8 s.</summary>
    [Fact]
    public void A_fall_that_stands_is_said_when_it_has_stood()
    {
        GaugeStep step = Run(t => t > 20 ? 0.8 * High : High, 0, out double said);
        Assert.Equal(step.At + 3 + GaugeStep.Standing, said);
        Assert.InRange(step.At, 18, 20);
        Assert.Equal(0.2, step.Share, 1e-12);
    }

    /// <summary>Less than 6 % is none; nor what vapor thins by, with a fifth more, in three seconds; nor five standard deviations of the gauge, which is off by 0.15 of its limit.</summary>
    [Theory]
    [InlineData(High, 0, 0.056, false)]
    [InlineData(High, 0, 0.064, true)]
    [InlineData(High, 0.05, 0.17, false)]
    [InlineData(High, 0.05, 0.19, true)]
    [InlineData(1.2e5, 0, 0.095, false)]
    [InlineData(1.2e5, 0, 0.105, true)]
    public void It_must_be_large_enough(double pressure, double thinning, double share, bool isSaid)
    {
        // Class 1 of 1.6 MPa: 16 kPa, noise of 2.4 kPa, 12 kPa that are none.
        Run(t => t > 20 ? (1 - share) * pressure : pressure, thinning, out double said);
        Assert.Equal(isSaid, said > 0);
    }

    /// <summary>Of 100 kPa: what comes back by more than three tenths, or goes on falling by more than a fifth from the middle to the end, does not stand.</summary>
    [Theory]
    [InlineData(25e3, true)]
    [InlineData(35e3, false)]
    [InlineData(-15e3, true)]
    [InlineData(-25e3, false)]
    public void It_must_stand(double back, bool isSaid)
    {
        GaugeStep step = Run(t => t > 27 ? High - 100e3 + back : t > 20 ? High - 100e3 : High, 0, out double said);
        Assert.Equal(isSaid, said > 0);
        Assert.Equal(isSaid, !double.IsNaN(step.At));
    }

    /// <summary>What had come down before by a quarter of the fall is no step.</summary>
    [Theory]
    [InlineData(0.22, true)]
    [InlineData(0.28, false)]
    public void What_has_been_falling_for_a_while_is_none(double before, bool isSaid)
    {
        Run(t => t > 20 ? High - 60e3 : t > 16 ? High : High + (before * 60e3), 0, out double said);
        Assert.Equal(isSaid, said > 0);
    }

    [Fact]
    public void After_a_gap_of_more_than_three_seconds_it_begins_anew()
    {
        Assert.True(Gap(3) > 0);
        Assert.False(Gap(3.1) > 0);
    }

    private static double Gap(double gap)
    {
        var step = new GaugeStep(Bench.Prior);
        double time = 0;
        for (int i = 0; i < 60; i++)
        {
            time += i == 24 ? gap : 1;
            EstimatorBlock block = Workbench.Block(time, gauge: (i > 20 ? 0.8 * High : High) - 1e5);
            if (step.Update(in block, 0))
            {
                return time;
            }
        }

        return double.NaN;
    }

    private static GaugeStep Run(Func<double, double> pressure, double thinning, out double said)
    {
        var step = new GaugeStep(Bench.Prior);
        said = double.NaN;
        for (double t = 0; t <= 60; t++)
        {
            EstimatorBlock block = Workbench.Block(t, gauge: pressure(t) - 1e5);
            if (step.Update(in block, thinning))
            {
                said = t;
                break;
            }
        }

        return step;
    }
}
