using System;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>10 g/s come onto the scale, a reading every five seconds.</summary>
public class ScaleCourseTests
{
    private const double Step = 5;

    [Fact]
    public void What_the_scale_gains_has_left_and_what_was_not_read_is_no_number()
    {
        ScaleCourse course = Of(t => t is 0 or 50 or 200 ? double.NaN : 13.5 + (0.01 * t));
        Assert.Empty(course.Jumps);
        Assert.Equal(double.NaN, course.Delivered[0]);
        Assert.Equal(0, course.Delivered[1]);
        Assert.Equal(double.NaN, course.Delivered[10]);
        Assert.Equal(0.5, course.Delivered[11], 1e-9);
        Assert.Equal(double.NaN, course.Delivered[^1]);
        Assert.Equal(1.9, course.Delivered[^2], 1e-9);
        ScaleCourse none = ScaleCourse.Of(LogParts.Every(1, 3, t => LogParts.At(t)), LogParts.Job);
        Assert.All(none.Delivered, each => Assert.Equal(double.NaN, each));
        Assert.Empty(none.Jumps);
    }

    /// <summary>120 g and six times what usually comes, 50 g in five seconds: 420 g beyond it.</summary>
    [Theory]
    [InlineData(0.40, false)]
    [InlineData(0.44, true)]
    [InlineData(-0.40, false)]
    [InlineData(-0.44, true)]
    public void A_jump_stands_out(double jump, bool isJump)
    {
        ScaleCourse course = Of(t => 13.5 + (0.01 * t) + (t >= 100 ? jump : 0));
        Assert.Equal(isJump, course.Jumps.Count == 1);
        Assert.Equal(isJump ? 2 : 2 + jump, course.Delivered[^1], 1e-9);
        if (isJump)
        {
            Assert.Equal(100, course.Jumps[0].Time);
            Assert.Equal(jump + 0.05, course.Jumps[0].Kilograms, 1e-9);
            Assert.False(course.Jumps[0].IsSwap);
        }
    }

    /// <summary>Where the machine stands, nothing is added over a jump.</summary>
    [Fact]
    public void Over_a_jump_the_rate_goes_on_where_the_machine_runs()
    {
        double After(bool isRunning, bool isOpen) => ScaleCourse.Of(
            LogParts.Every(Step, 41, t => LogParts.At(t, double.NaN, 13.5 + (0.01 * t) + (t >= 100 ? 3 : 0), t != 100 || isRunning, t != 100 || isOpen)), LogParts.Job).Delivered[20];
        Assert.Equal(1, After(true, true), 1e-9);
        Assert.Equal(0.95, After(false, true), 1e-9);
        Assert.Equal(0.95, After(true, false), 1e-9);
    }

    /// <summary>Liquid that is pushed for a while is fast for longer than from one weight to the next: no jump.</summary>
    [Fact]
    public void Liquid_is_no_jump()
    {
        ScaleCourse course = Of(t => 13.5 + (0.01 * t) + (0.5 * Math.Clamp(t - 50, 0, 15)));
        Assert.Empty(course.Jumps);
        Assert.Equal(2 + 7.5, course.Delivered[^1], 1e-9);
    }

    /// <summary>Another cylinder by its label is left out whatever the step; the same label again is none.</summary>
    [Fact]
    public void A_label_that_changes_is_a_swap()
    {
        ScaleCourse course = ScaleCourse.Of(
            LogParts.Every(Step, 41, t => LogParts.At(t, double.NaN, 13.5 + (0.01 * t) + (t >= 100 ? 0.2 : 0)) with { Cylinder = t switch { 0 or 50 => LogParts.Job.Cylinders[0].Label, 100 => "other", _ => null } }), LogParts.Job);
        ScaleCourse.Jump jump = Assert.Single(course.Jumps);
        Assert.True(jump.IsSwap);
        Assert.Equal(100, jump.Time);
        Assert.Equal(2, course.Delivered[^1], 1e-9);
    }

    /// <summary>Fewer than five rates tell nothing of what is usual.</summary>
    [Theory]
    [InlineData(5, false)]
    [InlineData(6, true)]
    public void A_few_weights_say_nothing(int count, bool isJump) =>
        Assert.Equal(isJump, ScaleCourse.Of(LogParts.Every(Step, count, t => LogParts.At(t, double.NaN, 13.5 + (0.01 * t) + (t >= 10 ? 2 : 0))), LogParts.Job).Jumps.Count > 0);

    /// <summary>An empty cylinder fills with saturated vapor by itself: V·ρ″, in its first minute.</summary>
    [Theory]
    [InlineData(0, 20, 0.3, false)]
    [InlineData(0, 20, 0.9, false)]
    [InlineData(0, 20, 1.1, true)]
    [InlineData(0, 70, 0.9, true)]
    [InlineData(1, 20, 0.9, true)]
    public void An_empty_cylinder_fills_by_itself(double content, double at, double share, bool isJump)
    {
        RecoveryJob job = LogParts.Job with { Cylinders = [LogParts.Job.Cylinders[0] with { Content = Mass.FromKilograms(content) }] };
        double room = job.Cylinders[0].InternalVolume.CubicMeters * Fluid.Get("R-134a").Model.SaturationAtTemperature(295).Dew.Density;
        Assert.Equal(content == 0 ? room : 0, ScaleCourse.Room(job, job.Cylinders[0]), 1e-9);
        Assert.Equal(0, ScaleCourse.Room(job, null));
        ScaleCourse course = ScaleCourse.Of(LogParts.Every(Step, 41, t => LogParts.At(t, double.NaN, 12.5 + (t >= at ? share * room : 0))), job);
        Assert.Equal(isJump, course.Jumps.Count == 1);
        Assert.Equal(isJump ? 0 : share * room, course.Delivered[^1], 1e-9);
    }

    private static ScaleCourse Of(Func<double, double> gross) => ScaleCourse.Of(LogParts.Every(Step, 41, t => LogParts.At(t, double.NaN, gross(t))), LogParts.Job);
}
