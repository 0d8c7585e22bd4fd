using System;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Stages as work on site: common practice, no source.</summary>
public class HookupTests
{
    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3));

    [Theory]
    [InlineData(StageKind.Equalize, new[] { "appliance's vapor port to cylinder's vapor port" })]
    [InlineData(StageKind.PushPull, new[] { "appliance's liquid port to cylinder's liquid port", "cylinder's vapor port to machine's inlet", "machine's outlet to appliance's vapor port" })]
    [InlineData(StageKind.VaporRecovery, new[] { "appliance's vapor port to machine's inlet", "machine's outlet to cylinder's liquid port" })]
    [InlineData(StageKind.MachineClearing, new[] { "machine's outlet to cylinder's liquid port" })]
    public void Lines_run_from_port_to_port(StageKind kind, string[] lines) =>
        Assert.Equal(lines, Plan.Stages.First(stage => stage.Kind == kind).Hookup.Lines.Select(line => line.ToString()));

    [Fact]
    public void In_push_pull_the_fan_is_off_and_only_the_scale_guards()
    {
        Hookup hookup = Plan.Stages.First(stage => stage.Kind == StageKind.PushPull).Hookup;
        Assert.Contains(hookup.Settings, setting => setting is { Item: HookupItem.CondenserFan, Position: HookupPosition.Off });
        Assert.Contains(hookup.Settings, setting => setting is { Item: HookupItem.FloatSwitch, Position: HookupPosition.Bypassed });
        Assert.All(hookup.Watches, watch => Assert.NotEqual(WatchedBy.Machine, watch.By));
        StageWatch scale = hookup.Watches.Last(watch => watch.By == WatchedBy.Scale);
        Assert.Contains("lb", scale.ToText(DisplayUnits.UnitedStatesCustomary), StringComparison.Ordinal);
        Assert.Contains("kg", scale.ToText(DisplayUnits.International), StringComparison.Ordinal);
    }

    /// <summary>Before a hose comes off, what stands under pressure at its ends is shut; the liquid hose stays on an open port.</summary>
    [Fact]
    public void Nothing_is_open_where_a_hose_is_moved()
    {
        Hookup change = Plan.Stages.First(stage => stage.Kind == StageKind.HoseChange).Hookup;
        foreach (HookupItem item in new[] { HookupItem.CylinderLiquidValve, HookupItem.CylinderVaporValve, HookupItem.ApplianceVaporPort, HookupItem.HoseValves })
        {
            Assert.Contains(change.Settings, setting => setting.Item == item && setting.Position == HookupPosition.Shut);
        }

        Assert.Contains(change.Settings, setting => setting is { Item: HookupItem.ApplianceLiquidPort, Position: HookupPosition.Open });
        Assert.Contains(Plan.Stages.First(stage => stage.Kind == StageKind.Equalize).Hookup.Watches, watch => watch.ToText(DisplayUnits.International).Contains("shut port and cylinder before a hose is moved", StringComparison.Ordinal));
    }

    [Fact]
    public void The_pull_ends_on_the_gauge_that_the_technician_reads()
    {
        PlannedStage pull = Plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        StageWatch gauge = Assert.Single(pull.Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge);
        Assert.Contains("inHg of vacuum", gauge.ToText(DisplayUnits.UnitedStatesCustomary), StringComparison.Ordinal);
        double absolute = Plan.Job.Barometer.Pressure.Pascals + gauge.Value!.InternationalValue!.Value;
        Assert.Equal(pull.After.Pressure.Pascals, absolute, 0.002 * absolute);
    }

    /// <summary>The scale shows tare and content: at the start what the stage before left, at the end what this one leaves, and it only rises.</summary>
    [Fact]
    public void The_scale_is_told_against_time()
    {
        foreach (PlannedStage stage in Plan.Stages.Where(stage => stage.Kind is StageKind.PushPull or StageKind.VaporRecovery))
        {
            double[] weights = [.. stage.Hookup.Scale.Select(reading => reading.GrossWeight.Kilograms)];
            Assert.Equal(weights.Order(), weights);
            Assert.Equal(stage.State.Cylinder!.GrossWeight.Kilograms, weights[^1], 1e-6 * weights[^1]);
            Assert.Equal(stage.Duration.Seconds, stage.Hookup.Scale[^1].Time.Seconds, 1e-6 * stage.Duration.Seconds);
        }
    }

    /// <summary>A minute before a cylinder is full the scale shows what flows in that minute less, counted from the course.</summary>
    [Fact]
    public void A_cylinder_that_comes_to_be_full_is_slowed_down_before()
    {
        PlannedStage[] full = [.. Plan.Stages.Where(stage => stage.Result?.End == StageEnd.CylinderFull)];
        Assert.NotEmpty(full);
        foreach (PlannedStage stage in full)
        {
            double[] scale = [.. stage.Hookup.Watches.Where(watch => watch.By == WatchedBy.Scale && watch.Value is not null).Select(watch => watch.Value!.InternationalValue!.Value)];
            Assert.Equal(2, scale.Length);
            TrajectoryPoint[] lastMinute = [.. stage.Result!.Trajectory.Where(point => point.Seconds >= stage.Duration.Seconds - 60)];
            double slowest = lastMinute.Min(point => point.KilogramsPerSecond), fastest = lastMinute.Max(point => point.KilogramsPerSecond);
            Assert.InRange(scale[1] - scale[0], 0.9 * 60 * slowest, 1.1 * 60 * fastest);
        }

        Assert.All(
            Plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && stage.Result!.End != StageEnd.CylinderFull),
            stage => Assert.Single(stage.Hookup.Watches, watch => watch.By == WatchedBy.Scale && watch.Value is not null));
    }

    [Fact]
    public void Every_stage_says_what_is_done()
    {
        Assert.All(Plan.Stages, stage => Assert.True(stage.Hookup.Settings.Count + stage.Hookup.Lines.Count > 0, stage.Kind.ToString()));
        Assert.Contains(Plan.Stages[^1].Hookup.Settings, setting => setting.Item == HookupItem.Scale && setting.Why!.Contains("recovered", StringComparison.Ordinal));
    }

    /// <summary>A hold is a wait in which the cylinder cools, and its course shows it.</summary>
    [Fact]
    public void The_course_of_a_hold_shows_the_cylinder()
    {
        PlannedStage hold = Plan.Stages.Single(stage => stage.Kind == StageKind.Hold);
        Assert.All(hold.Result!.Trajectory, point => Assert.True(point.CylinderMass.Kilograms > 1));
        Assert.True(hold.Result.Trajectory[^1].CylinderTemperature <= hold.Result.Trajectory[0].CylinderTemperature);
    }
}
