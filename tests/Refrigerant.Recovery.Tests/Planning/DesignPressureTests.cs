using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A disc of 15 psi holds against the air at the place, wherever that is.</summary>
public class DesignPressureTests
{
    private const double Psi = 6894.757293168361;

    /// <summary>U.S. Standard Atmosphere 1976: 101.3, 83.5 and 70.1 kPa. The throttle stays at nine tenths of the disc: common practice, no source.</summary>
    [Theory]
    [InlineData(0, 101_325)]
    [InlineData(1600, 83_524)]
    [InlineData(3000, 70_109)]
    public void The_throttle_is_at_nine_tenths_of_the_disc_in_the_air_of_the_place(double meters, double air)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Chiller(meters, 32));
        PlannedStage push = Assert.Single(plan.Stages, stage => stage.Kind == StageKind.PushPull);
        Assert.Equal(StageEnd.LiquidGone, push.Result!.End);
        double highest = plan.Course().Max(point => point.Point.AppliancePressure.Pascals) - air;
        Assert.InRange(highest / Psi, 12.5, 13.51);
        StageWatch watch = Assert.Single(push.Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge);
        Assert.StartsWith("13.5 psig", watch.ToString(), System.StringComparison.Ordinal);
        Assert.Contains("13.5 psig", plan.ToDo.Single(finding => finding.Code == "push-pull-throttled").Message, System.StringComparison.Ordinal);
    }

    /// <summary>A stage by itself goes by the barometer it is given: the disc ends it there where no hand throttles.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(3000)]
    public void An_unthrottled_push_ends_at_the_disc(double meters)
    {
        RecoveryJob job = Chiller(meters, 32);
        StageResult result = PushPull.Simulate(
            job.Appliance, job.Machine, job.Hoses, job.Cylinders[0], new PushPullOptions { Barometer = job.Barometer, KeepBelowDesignPressure = false });
        Assert.Equal(StageEnd.DesignPressure, result.End);
        Assert.Equal(15, job.Barometer.ToGauge(result.Trajectory[^1].AppliancePressure).Pascals / Psi, 0.01);
    }

    /// <summary>R-123 has 198 kPa at 47 °C: 14.1 psig at sea level, 16.7 psig at 1600 m.</summary>
    [Fact]
    public void An_appliance_above_its_disc_at_the_place_is_turned_down()
    {
        ImpossibleJobException told = Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(Chiller(1600, 47)));
        Assert.Equal(nameof(Appliance.DesignGaugePressure), told.ParamName);
        Assert.NotEmpty(RecoveryPlanner.Plan(Chiller(0, 47)).Stages);
    }

    private static RecoveryJob Chiller(double meters, double celsius) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-123"),
            Charge = Mass.FromKilograms(300),
            InternalVolume = Volume.FromLiters(600),
            Temperature = Temperature.FromDegreesCelsius(celsius),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(10),
            MetalMass = Mass.FromKilograms(20),
            DesignGaugePressure = Pressure.FromPoundsForcePerSquareInch(15),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(30)),
        Hoses = Jobs.Hoses(10, 25) with { LiquidSide = [Jobs.Hose(20, 7)] },
        Cylinders = [Jobs.Cylinder(1000, "C1")],
        Barometer = Barometer.AtElevation(Length.FromMeters(meters)),
        PushPull = PushPullUse.Always,
    };
}
