using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Whatever appliance, machine and hoses: the way that is chosen for the liquid ends no later than either of the two, but for what an estimate may miss.</summary>
public class ChosenWayTests
{
    /// <summary>Ways that are far apart are told apart by an estimate; nearer than 15 % and a minute to each other both are planned to their end.</summary>
    [Theory]
    [InlineData("R-134a", 12, 0.3, 10.5, 2)]
    [InlineData("R-22", 30, 0.8, 10.5, 3)]
    [InlineData("R-410A", 15, 0.2, 8, 2)]
    [InlineData("R-134a", 60, 2, 6, 2)]
    [InlineData("R-123", 40, 3, 12, 3)]
    public void It_ends_no_later_than_either_way(string fluid, double kilograms, double displacement, double bore, double litersPerKilogram)
    {
        RecoveryJob job = Jobs.Chiller(fluid, kilograms, litersPerKilogram, cylinders: 3);
        job = job with { Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(displacement)), Hoses = Jobs.Hoses(10, bore) };
        RecoveryPlan chosen = RecoveryPlanner.Plan(job);
        RecoveryPlan[] ways = [RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Always }), RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Never })];
        Assert.True(chosen.IsLevelReached, chosen.ToString());
        double soonest = ways.Where(way => way.IsLevelReached).Min(way => way.TotalDuration.Seconds);
        Assert.InRange(chosen.TotalDuration.Seconds, 0.99 * soonest, 1.05 * soonest);
        Assert.Contains(ways, way => Math.Abs((way.TotalDuration - chosen.TotalDuration).Seconds) < 1);
    }
}
