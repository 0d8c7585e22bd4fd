using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>The flow that a course shows is what the appliance loses, whatever moves it.</summary>
public class CourseFlowTests
{
    private static readonly Appliance Unit = Setups.Appliance("R-134a", 10, 30, 20, 50) with { LiquidReachable = true, LiquidHeel = Mass.FromKilograms(1) };

    [Fact]
    public void Of_vapor() => IsWhatIsLost(
        VaporRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(10) }));

    [Fact]
    public void Of_liquid_through_the_machine() => IsWhatIsLost(
        LiquidRecovery.Simulate(Unit, Setups.Machine(0.1), Setups.Hoses(), Setups.Cylinder(60, 2), new LiquidRecoveryOptions()));

    [Fact]
    public void Of_liquid_that_vapor_pushes() => IsWhatIsLost(
        PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(6, 5), Setups.Cylinder(60, 2), new PushPullOptions()));

    [Fact]
    public void Of_what_goes_over_by_itself() => IsWhatIsLost(Equalization.Simulate(Unit, Setups.Hoses(), Setups.Cylinder(30), new EqualizationOptions()));

    /// <summary>By the trapezoidal rule over the points of the course.</summary>
    private static void IsWhatIsLost(StageResult result)
    {
        TrajectoryPoint[] points = [.. result.Trajectory];
        double flowed = points.Skip(1).Zip(points, (later, sooner) => 0.5 * (later.Flow + sooner.Flow).KilogramsPerSecond * (later.Time - sooner.Time).Seconds).Sum();
        double lost = (points[0].ApplianceMass - points[^1].ApplianceMass).Kilograms;
        Assert.True(lost > 0.1);
        Assert.Equal(lost, result.RecoveredMass.Kilograms, 1e-6);
        Assert.Equal(lost, flowed, 0.03 * lost);
    }
}
