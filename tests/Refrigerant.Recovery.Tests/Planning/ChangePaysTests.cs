using System.Linq;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A cylinder that is not full is changed for an empty one only where the job ends clearly sooner for it.</summary>
public class ChangePaysTests
{
    /// <summary>The less the machine draws against the full one, and the faster the hands, the sooner it pays; where it does not, the second cylinder stays shut.</summary>
    [Theory]
    [InlineData(0.165, 1, true)]
    [InlineData(0.165, 4, true)]
    [InlineData(0.165, 8, false)]
    [InlineData(0.19, 8, true)]
    [InlineData(0.19, 60, false)]
    public void The_change_is_made_where_the_plan_ends_sooner_by_more_than_it_takes(double clearance, double minutes, bool changes)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20, litersPerKilogram: 10) with { Times = new JobTimes { CylinderChange = Duration.FromMinutes(minutes) } };
        job = job with { Machine = job.Machine with { ClearanceRatio = clearance, Displacement = VolumeFlow.FromLitersPerSecond(0.1), TakesLiquid = false }, PushPull = PushPullUse.Never };
        RecoveryPlan two = RecoveryPlanner.Plan(job), one = RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0]] });
        Assert.True(two.IsLevelReached && one.IsLevelReached);
        Assert.Equal(changes, two.Stages.Any(stage => stage.Kind == StageKind.CylinderChange));
        if (!changes)
        {
            Assert.Equal(one.TotalDuration.Seconds, two.TotalDuration.Seconds, 1e-6);
            return;
        }

        Assert.True(one.TotalDuration.Minutes - two.TotalDuration.Minutes > minutes);
        PlannedStage until = two.Stages.First(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(StepReason.UntilChange, until.Step.Reason);
        Assert.True(until.After.Pressure > two.Requirement.RequiredPressure);
        Assert.False(until.After.HasLiquid);
    }
}
