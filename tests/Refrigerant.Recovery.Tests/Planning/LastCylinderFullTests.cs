using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>The last cylinder is full and the appliance is not empty: nothing more goes into the cylinder, not even what the machine holds. Common practice, no source.</summary>
public class LastCylinderFullTests
{
    public static TheoryData<StageKind> Kinds => [StageKind.PushPull, StageKind.LiquidRecovery, StageKind.VaporRecovery];

    /// <summary>Shut first what liquid flows on through; where the machine would run against a shut valve it is stopped first. No valve leads from the appliance to the cylinder any more.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void After_a_full_cylinder_everything_is_shut_and_nothing_is_cleared_into_it(StageKind kind)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Ends(kind));
        PlannedStage full = plan.Stages[^2], close = plan.Stages[^1];
        Assert.Equal((kind, StageEnd.CylinderFull, StageKind.Close), (full.Kind, full.Result!.End, close.Kind));
        HookupSetting[] settings = [.. close.Hookup.Settings];
        Assert.Equal(kind == StageKind.VaporRecovery ? HookupItem.Machine : HookupItem.CylinderLiquidValve, settings[0].Item);
        Assert.All([HookupItem.CylinderLiquidValve, HookupItem.CylinderVaporValve, HookupItem.MachineInletValve, HookupItem.ApplianceVaporPort], item => Assert.Equal(HookupPosition.Shut, settings.Single(setting => setting.Item == item).Position));
        Assert.Equal(HookupPosition.Off, settings.Single(setting => setting.Item == HookupItem.Machine).Position);

        // Behind the condenser of a machine that ran into the cylinder there is liquid; behind one that pushed gas into the appliance there is none.
        Assert.Equal(kind != StageKind.PushPull, settings.Any(setting => setting is { Item: HookupItem.MachineOutletValve, Position: HookupPosition.Open }));
    }

    /// <summary>The cylinder holds no more than its limit in the ledger too; the machine keeps what it holds uncleared, vapor alone after push-pull, and the plan says how much.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_machine_keeps_what_it_holds_and_the_limit_stands(StageKind kind)
    {
        RecoveryJob job = Ends(kind);
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.All(plan.Cylinders, use => Assert.True(use.Content < use.Limit.MaximumFill, use.ToString()));
        Assert.All(plan.Stages.Where(stage => stage.State.Cylinder is not null), stage => Assert.True(stage.State.Cylinder!.Mass.Kilograms <= plan.Cylinders[0].Limit.MaximumFill.Kilograms * (1 + 1e-6)));
        CylinderState cylinder = plan.Stages[^1].State.Cylinder!;
        MachineClearing clearing = MachineClearing.Estimate(job.Appliance.Fluid, job.Machine, job.Hoses, job.Appliance.Temperature, cylinder.Pressure, job.SweepPressure);
        double kept = plan.Ledger.InHosesAndMachine.Kilograms;
        Assert.True(kind == StageKind.PushPull ? kept < 0.5 * clearing.HeldBefore.Kilograms : kept > clearing.HeldBefore.Kilograms, FormattableString.Invariant($"{kept} kg of {clearing.HeldBefore.Kilograms}"));
        Finding told = Assert.Single(plan.ToDo, finding => finding.Code == "machine-not-cleared");
        Assert.Equal((Severity.Warning, kept), (told.Severity, told.Figure("kept")));
        Assert.Contains("C1", told.Message, StringComparison.Ordinal);
    }

    /// <summary>Into a cylinder with room the machine is cleared as ever, and its scale is watched meanwhile.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Into_a_cylinder_with_room_the_machine_is_cleared(StageKind kind)
    {
        RecoveryJob job = Ends(kind) with { Cylinders = [Jobs.Cylinder(123, "C1"), Jobs.Cylinder(123, "C2")] };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        PlannedStage clearing = plan.Stages[^2];
        Assert.Equal((StageKind.MachineClearing, "C2"), (clearing.Kind, clearing.Cylinder));
        StageWatch scale = Assert.Single(clearing.Hookup.Watches, watch => watch.By == WatchedBy.Scale);
        Assert.Equal(CylinderFill.Limit(job.Cylinders[1], job.Appliance.Fluid).MaximumGrossWeight.Kilograms, scale.Value!.InternationalValue!.Value, 1e-9);
        Assert.DoesNotContain(plan.Findings, finding => finding.Code == "machine-not-cleared");
    }

    /// <summary>A strategy of the caller's own that clears into a full cylinder is wrong, and told so.</summary>
    [Fact]
    public void Nobody_clears_into_a_full_cylinder()
    {
        var clear = new CourseStage(StageKind.MachineClearing) { End = null };
        RecoveryJob job = Course.Job();
        Assert.Contains("\"C1\"", Assert.Throws<InvalidOperationException>(() => Course.Run(job, Course.SetUp, Course.Pull(StageEnd.CylinderFull), clear)).Message, StringComparison.Ordinal);
        Assert.Equal(StageKind.MachineClearing, Course.Run(job, Course.SetUp, Course.Pull(), clear).Stages[^1].Kind);
    }

    /// <summary>Cleared straight after liquid, by a strategy of the caller's own: what a change of hoses shuts is shut first.</summary>
    [Theory]
    [InlineData(StageKind.PushPull)]
    [InlineData(StageKind.LiquidRecovery)]
    public void A_clearing_straight_after_liquid_shuts_what_liquid_flows_through(StageKind kind)
    {
        var clear = new CourseStage(StageKind.MachineClearing) { End = null };
        PlanRun run = Course.Run(Course.Job(), Course.SetUp, new CourseStage(kind) { End = StageEnd.LiquidGone }, clear);
        HookupSetting[] settings = [.. run.Stages[^1].Hookup.Settings];
        Assert.All([HookupItem.CylinderVaporValve, HookupItem.ApplianceVaporPort, HookupItem.MachineInletValve], item => Assert.Equal(HookupPosition.Shut, settings.Single(setting => setting.Item == item).Position));
        Assert.Equal(kind == StageKind.PushPull, settings.Single(setting => setting.Item == HookupItem.CylinderLiquidValve).Why!.StartsWith("first: liquid keeps flowing", StringComparison.Ordinal));
    }

    /// <summary>A change of cylinders shows the hoses as they are: those of vapor once they were changed over, those of push-pull before.</summary>
    [Fact]
    public void A_change_of_cylinders_shows_the_hoses_as_they_are()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 62, cylinders: 2));
        int change = plan.Stages.ToList().FindIndex(stage => stage.Kind == StageKind.CylinderChange);
        Assert.Equal([StageKind.PushPull, StageKind.HoseChange], plan.Stages.Take(change).TakeLast(2).Select(stage => stage.Kind));
        Assert.Equal(StageKind.VaporRecovery, plan.Stages[change + 1].Kind);
        Assert.Equal(plan.Stages[change + 1].Hookup.Lines.Select(line => line.ToString()), plan.Stages[change].Hookup.Lines.Select(line => line.ToString()));
        RecoveryPlan more = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 100, cylinders: 2));
        change = more.Stages.ToList().FindIndex(stage => stage.Kind == StageKind.CylinderChange);
        Assert.Equal(StageKind.PushPull, more.Stages[change - 1].Kind);
        Assert.Equal(more.Stages[change - 1].Hookup.Lines.Select(line => line.ToString()), more.Stages[change].Hookup.Lines.Select(line => line.ToString()));
    }

    /// <summary>A chiller that fills its one cylinder in a stage of a kind.</summary>
    private static RecoveryJob Ends(StageKind kind)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 80, cylinders: 1);
        return kind switch
        {
            StageKind.PushPull => job with { PushPull = PushPullUse.Always },
            StageKind.LiquidRecovery => job with { PushPull = PushPullUse.Never },
            _ => job.With(appliance => appliance with { LiquidReachable = false, LiquidHeel = Mass.Zero }),
        };
    }
}
