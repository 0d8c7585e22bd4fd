using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Samples.Controller;
using Xunit;

namespace Refrigerant.Recovery.Tests.Samples;

public class ControllerTests
{
    private const double Level = 60e3;
    private const double Limit = 20;
    private const double Cutout = 3.9e6;

    [Theory]
    [InlineData(0, (int)EndReason.TargetReached)]
    [InlineData(1, (int)EndReason.CylinderLimit)]
    [InlineData(2, (int)EndReason.HighPressureCutout)]
    [InlineData(3, (int)EndReason.TargetReached)]
    public void Each_setup_ends_at_its_moment_and_a_tick_allocates_nothing(int index, int reason)
    {
        RecoveryJob job = Scenario.All()[index].Told;
        var loop = new ControlLoop(Scenario.All()[index]);
        loop.Run();
        Readings before = loop.Log[^2].Readings;
        Readings last = loop.Log[^1].Readings;
        Assert.Equal((EndReason)reason, loop.End);
        Assert.Equal(0, loop.Allocated);

        double level = EvacuationRequirement.For(job.Appliance.Fluid, job.Appliance.Charge).RequiredPressure.Pascals;
        double limit = CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).MaximumFill.Kilograms;
        double cutout = job.Machine.HighPressureCutout.Pascals;
        Assert.Equal(loop.End == EndReason.TargetReached, last.SuctionPascals <= level);
        Assert.Equal(loop.End == EndReason.CylinderLimit, last.CylinderKilograms >= limit);
        Assert.Equal(loop.End == EndReason.HighPressureCutout, last.DischargePascals >= cutout);
        Assert.True(before.CylinderKilograms < limit && before.DischargePascals < cutout);

        // Past the limit by less than a tick moves, the displacement of vapor that is nowhere here denser than 60 kg/m³, and what the scale rounds.
        Assert.True(last.CylinderKilograms - limit < (ControlLoop.Tick * job.Machine.Displacement.CubicMetersPerSecond * 60) + 0.02);
    }

    [Fact]
    public void A_hose_that_drags_on_the_scale_is_told_while_it_does()
    {
        var loop = new ControlLoop(Scenario.All()[0]);
        loop.Run();
        Assert.Contains(loop.Log.ToArray(), entry => entry.Readings.Seconds is > 200 and < 300 && entry.Estimate.Has(JobCondition.ScaleDisturbed));
        Assert.DoesNotContain(loop.Log.ToArray(), entry => entry.Readings.Seconds < 200 && entry.Estimate.Has(JobCondition.ScaleDisturbed));
    }

    [Fact]
    public void The_level_counts_only_after_it_has_held()
    {
        var controller = new RecoveryController(Level, Limit, Cutout);
        Assert.True(controller.Decide(new Readings(0, 500e3, 600e3, 1)));
        Assert.False(controller.Decide(new Readings(10, 0.89 * Level, 600e3, 1)));
        Assert.True(controller.Decide(new Readings(40, 1.01 * Level, 600e3, 1)));
        Assert.False(controller.Decide(new Readings(50, 0.89 * Level, 600e3, 1)));
        Assert.False(controller.Decide(new Readings(109.9, 0.99 * Level, 600e3, 1)));
        Assert.Equal(EndReason.None, controller.End);
        Assert.False(controller.Decide(new Readings(110, 0.99 * Level, 600e3, 1)));
        Assert.Equal(EndReason.TargetReached, controller.End);
    }

    [Theory]
    [InlineData(500e3, Cutout, 1, (int)EndReason.HighPressureCutout)]
    [InlineData(500e3, 600e3, Limit, (int)EndReason.CylinderLimit)]
    public void A_limit_stops_the_machine_for_good(double appliance, double discharge, double cylinder, int reason)
    {
        var controller = new RecoveryController(Level, Limit, Cutout);
        Assert.False(controller.Decide(new Readings(1, appliance, discharge, cylinder)));
        Assert.False(controller.Decide(new Readings(2, 500e3, 600e3, 1)));
        Assert.Equal((EndReason)reason, controller.End);
    }

    [Theory]
    [InlineData(double.NaN, 600e3, 1)]
    [InlineData(500e3, double.NaN, 1)]
    [InlineData(500e3, 600e3, double.NaN)]
    [InlineData(500e3, 600e3, -1)]
    public void A_sensor_may_be_silent_for_five_seconds_and_no_longer(double appliance, double discharge, double cylinder)
    {
        var controller = new RecoveryController(Level, Limit, Cutout);
        Assert.True(controller.Decide(new Readings(1, appliance, discharge, cylinder)));
        Assert.True(controller.Decide(new Readings(5.9, appliance, discharge, cylinder)));
        Assert.True(controller.Decide(new Readings(6, 500e3, 600e3, 1)));
        Assert.True(controller.Decide(new Readings(7, appliance, discharge, cylinder)));
        Assert.False(controller.Decide(new Readings(12, appliance, discharge, cylinder)));
        Assert.False(controller.Decide(new Readings(13, 500e3, 600e3, 1)));
        Assert.Equal(EndReason.SensorFault, controller.End);
    }
}
