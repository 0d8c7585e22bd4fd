using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Samples.Controller;
using UnitsNet;
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
    public void Each_setup_ends_at_its_moment_and_a_tick_allocates_nothing(int index, int reason)
    {
        Setup setup = Setup.All()[index];
        var loop = new ControlLoop(setup);
        loop.Run();
        Readings before = loop.Log[^2];
        Readings last = loop.Log[^1];
        Assert.Equal((EndReason)reason, loop.End);
        Assert.Equal(0, loop.Allocated);

        double level = EvacuationRequirement.For(setup.Fluid, Mass.FromKilograms(setup.Charge)).RequiredPressure.Pascals;
        double limit = CylinderFill.Limit(setup.Cylinder, setup.Fluid).MaximumFill.Kilograms;
        double cutout = setup.Machine.HighPressureCutout.Pascals;
        Assert.Equal(loop.End == EndReason.TargetReached, last.AppliancePascals <= level);
        Assert.Equal(loop.End == EndReason.CylinderLimit, last.CylinderKilograms >= limit);
        Assert.Equal(loop.End == EndReason.HighPressureCutout, last.DischargePascals >= cutout);
        Assert.True(before.CylinderKilograms < limit && before.DischargePascals < cutout);

        // Past the limit by less than a tick moves: the displacement, of vapor that is nowhere here denser than 60 kg/m³.
        Assert.True(last.CylinderKilograms - limit < ControlLoop.Tick * setup.Displacement * 60);
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
    [InlineData(double.NaN, 600e3, 1, (int)EndReason.SensorFault)]
    [InlineData(500e3, double.NaN, 1, (int)EndReason.SensorFault)]
    [InlineData(500e3, 600e3, double.NaN, (int)EndReason.SensorFault)]
    [InlineData(500e3, 600e3, -1, (int)EndReason.SensorFault)]
    [InlineData(500e3, Cutout, 1, (int)EndReason.HighPressureCutout)]
    [InlineData(500e3, 600e3, Limit, (int)EndReason.CylinderLimit)]
    public void A_limit_or_a_sensor_that_fails_stops_the_machine_for_good(double appliance, double discharge, double cylinder, int reason)
    {
        var controller = new RecoveryController(Level, Limit, Cutout);
        Assert.False(controller.Decide(new Readings(1, appliance, discharge, cylinder)));
        Assert.False(controller.Decide(new Readings(2, 500e3, 600e3, 1)));
        Assert.Equal((EndReason)reason, controller.End);
    }
}
