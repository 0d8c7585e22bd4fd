using System;
using System.Linq;
using MathNet.Numerics;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class RollingLineTests
{
    /// <summary>Against MathNet.Numerics' line through the same points, far from the origin of both axes.</summary>
    [Theory]
    [InlineData(6.5, 7)]
    [InlineData(5, 6)]
    [InlineData(100, 12)]
    public void It_is_the_line_of_least_squares_through_the_last_seconds(double seconds, int points)
    {
        const double From = 90_000;
        double[] times = [.. Enumerable.Range(0, 20).Select(i => From + i)];
        double[] values = [.. Enumerable.Range(0, 20).Select(i => 4e5 - (30 * i) + (200 * Math.Sin(3 * i)))];
        var line = new RollingLine(12);
        for (int i = 0; i < 20; i++)
        {
            line.Add(times[i], values[i]);
        }

        Assert.True(line.Fit(times[^1], seconds, out double slope, out double level));
        (double a, double b) = Fit.Line([.. times.TakeLast(points).Select(t => t - times[^1])], [.. values.TakeLast(points)]);
        Assert.Equal(b, slope, 1e-3);
        Assert.Equal(a, level, 1e-2);
    }

    [Fact]
    public void Fewer_than_five_are_no_line_nor_are_readings_of_one_time()
    {
        var line = new RollingLine(8);
        for (int i = 0; i < 4; i++)
        {
            line.Add(i, 2 * i);
        }

        Assert.False(line.Fit(3, 10, out double slope, out double level));
        Assert.Equal(0, slope);
        Assert.Equal(0, level);
        line.Add(4, 8);
        Assert.True(line.Fit(4, 10, out slope, out level));
        Assert.Equal(2, slope, 1e-6);
        Assert.Equal(8, level, 1e-6);
        line.Clear();
        Assert.False(line.Fit(4, 10, out _, out _));
        for (int i = 0; i < 6; i++)
        {
            line.Add(7, i);
        }

        Assert.False(line.Fit(7, 10, out _, out _));
    }

    /// <summary>After it was cleared the origin is the next reading: single precision would else lose what is told.</summary>
    [Fact]
    public void Cleared_it_begins_at_a_new_origin()
    {
        var line = new RollingLine(8);
        line.Add(0, 0);
        line.Clear();
        for (int i = 0; i < 6; i++)
        {
            line.Add(1e7 + (0.01 * i), 1e9 + (0.02 * i));
        }

        Assert.True(line.Fit(1e7 + 0.05, 1, out double slope, out double level));
        Assert.Equal(2, slope, 1e-4);
        Assert.Equal(1e9 + 0.1, level, 1e-4);
    }
}
