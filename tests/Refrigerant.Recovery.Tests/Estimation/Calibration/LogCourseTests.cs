using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Parts;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

public class LogCourseTests
{
    private static readonly SaturationTable Table = new Workbench().Table;

    [Fact]
    public void About_a_hundred_and_forty_readings_are_compared()
    {
        LogCourse course = Of(LogParts.Every(1, 1401, t => LogParts.At(t, 9e5 - (100 * t), 13.5 + (0.01 * t))));
        LogCourse.Moment[] compared = [.. course.Moments.Where(m => !double.IsNaN(m.Pressure))];

        // One in ten seconds, more in the first five, and the last.
        Assert.InRange(compared.Length, 141, 148);
        Assert.Equal(0, course.Start);
        Assert.Equal(1400, course.End);
        Assert.Equal(0, course.DeliveredBefore);
        foreach (LogCourse.Moment moment in compared)
        {
            Assert.Equal(1e6 - (100 * moment.Time), moment.Pressure, 1e-6);
            Assert.Equal(0.01 * moment.Time, moment.Delivered, 1e-9);
            Assert.Equal(moment.Delivered, moment.Gained);
            Assert.True(moment.IsDrawing);
            Assert.False(moment.IsPassing);
            Assert.Equal(295, moment.AirTemperature);
        }

        Assert.InRange(compared.Count(m => m.Time <= 5), 4, 6);
        Assert.Equal(10, compared[^1].Time - compared[^2].Time, 1.01);
    }

    /// <summary>Within a switch nothing is compared, right after it more is, and what acts changes there.</summary>
    [Fact]
    public void A_switch_is_a_moment_of_its_own()
    {
        LogCourse course = Of(LogParts.Every(1, 1401, t => LogParts.At(t, 9e5, 13.5, t is < 500 or >= 700, t is < 1000 or >= 1100)));
        foreach ((double at, bool draws) in new[] { (500.0, false), (700, true), (1000, false), (1100, true) })
        {
            LogCourse.Moment moment = Assert.Single(course.Moments, m => m.Time == at);
            Assert.Equal(draws, moment.IsDrawing);
            Assert.Equal(double.NaN, moment.Pressure);
            Assert.Equal(double.NaN, moment.Delivered);
            Assert.InRange(course.Moments.Count(m => m.Time > at && m.Time <= at + 5), 3, 5);
            Assert.InRange(course.Moments.Count(m => m.Time > at + 20 && m.Time <= at + 60), 3, 5);
        }

        // Behind a shut valve the gauge does not see the appliance; the scale is read.
        Assert.All(course.Moments.Where(m => m.Time is > 1000 and < 1100), m => Assert.True(double.IsNaN(m.Pressure) && !double.IsNaN(m.Delivered)));
        Assert.All(course.Moments.Where(m => m.Time is > 500 and < 700), m => Assert.False(double.IsNaN(m.Pressure)));
    }

    [Fact]
    public void What_was_read_last_holds_on()
    {
        LogCourse course = Of(LogParts.Every(10, 50, t => LogParts.At(t, 9e5, 13.5) with
        {
            Ambient = t == 100 ? Temperature.FromKelvins(301) : null,
            DischargeGaugePressure = t == 200 ? Pressure.FromPascals(11e5) : null,
        }));
        Assert.All(course.Moments, m => Assert.Equal(m.Time < 100 ? 295 : 301, m.AirTemperature, 1e-9));

        // Before a discharge pressure was read it is that of the cylinder as long as it holds vapor alone: 1 kg in 60 L.
        double cylinder = new PassingVapor(LogParts.Job, Table, 1).CylinderPressure(0, 1, 295);
        Assert.Equal(cylinder, course.Moments[0].Discharge, 1e-6);
        Assert.All(course.Moments.Where(m => m.Time >= 200), m => Assert.Equal(12e5, m.Discharge, 1e-6));
    }

    [Fact]
    public void It_begins_where_it_is_told_to()
    {
        JobLog log = LogParts.Every(10, 50, t => LogParts.At(t, 9e5, 13.5 + (0.01 * t)));
        LogCourse course = Of(log, 7);
        Assert.Equal(70, course.Start);
        Assert.Equal(0.7, course.DeliveredBefore, 1e-9);
        Assert.Equal(0.7, course.Moments[0].Delivered, 1e-9);
    }

    /// <summary>Where the gauge shows the discharge, what comes is taken from the scale and not drawn.</summary>
    [Fact]
    public void Vapor_that_comes_by_itself_is_the_scales()
    {
        LogCourse course = Of(LogParts.Every(10, 50, t => LogParts.At(t, t < 100 ? 4e5 : 2e5, 13.5 + (0.02 * Math.Min(t, 100))) with { DischargeGaugePressure = Pressure.FromPascals(4e5) }));
        LogCourse.Moment[] passing = [.. course.Moments.Where(m => m.IsPassing)];
        Assert.Equal(10, passing.Length);
        foreach (LogCourse.Moment moment in passing)
        {
            Assert.Equal(0.02, moment.Passing, 1e-9);
            Assert.False(moment.IsDrawing);
            Assert.Equal(double.NaN, moment.Pressure);
        }

        Assert.All(course.Moments.Where(m => m.Time >= 100), m => Assert.True(m.IsDrawing && m.Passing == 0));
    }

    /// <summary>Three times what the machine draws of vapor at the start, over fifteen seconds: pushed liquid ends with the last such reading.</summary>
    [Theory]
    [InlineData(3.2, 3.2, 60)]
    [InlineData(2.8, 2.8, 0)]
    [InlineData(10, 2.8, 40)]
    public void Pushed_liquid_ends_with_the_last_fast_reading(double first, double then, double expected)
    {
        ReducedParameters typical = ReducedParameters.FromJob(LogParts.Job, Table);
        Table.At(295, out SaturationValues at);
        double flow = typical.Displacement * at.VaporDensity;
        JobLog log = LogParts.Every(5, 60, t => LogParts.At(t, 4e5, 13.5 + (flow * ((first * Math.Min(t, 30)) + (then * Math.Clamp(t - 30, 0, 30)) + (0.8 * Math.Max(0, t - 60))))));
        int end = LiquidStart.End(LogParts.Job, in typical, Table, log, ScaleCourse.Of(log, LogParts.Job));
        Assert.InRange(log.Readings[end].Time.Seconds, expected, expected + (expected > 0 ? 10 : 0));
    }

    [Fact]
    public void The_cylinder_on_the_scale_holds_what_was_told_and_what_came()
    {
        RecoveryJob job = LogParts.Job with { Cylinders = [LogParts.Job.Cylinders[0] with { Label = "A" }, LogParts.Job.Cylinders[0] with { Label = "B", Content = Mass.FromKilograms(3) }] };
        JobLog log = LogParts.Every(10, 30, t => LogParts.At(t, 4e5, t == 50 ? double.NaN : 13.5 + (0.01 * t) + (t >= 100 ? 2 : 0)) with { Cylinder = t switch { 100 => "B", 200 => "C", _ => null } });
        var cylinder = new LoggedCylinder(new LoggedJob(job, log), ScaleCourse.Of(log, job));
        Assert.Equal(double.NaN, cylinder.Content);
        cylinder.MoveTo(0);
        Assert.Equal(0, cylinder.Number);
        Assert.Equal(1, cylinder.Content, 1e-9);
        cylinder.MoveTo(4);
        Assert.Equal(1.4, cylinder.Content, 1e-9);
        cylinder.MoveTo(5);
        Assert.Equal(1.4, cylinder.Content, 1e-9);
        cylinder.MoveTo(15);
        Assert.Equal(1, cylinder.Number);

        // From the last weight before it came: the change itself took ten seconds at the rate before.
        Assert.Equal(3.6, cylinder.Content, 1e-9);
        cylinder.MoveTo(25);
        Assert.Equal(2, cylinder.Number);
        Assert.Equal(double.NaN, cylinder.Content);
    }

    private static LogCourse Of(JobLog log, int first = 0)
    {
        var logged = new LoggedJob(LogParts.Job, log);
        return LogCourse.Of(logged, ScaleCourse.Of(log, LogParts.Job), first, Table, new Instruments());
    }
}
