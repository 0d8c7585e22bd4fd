using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;
using static Refrigerant.Recovery.Tests.Planning.CylinderOfCoursesTests;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is connected, set and watched in a stage, over courses that are set down by hand.</summary>
public class HookupOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    private static readonly double Tare = Plain.Cylinders[0].TareWeight.Kilograms;

    /// <summary>The pull ends on the appliance's gauge where the step names a pressure, and only a pull does.</summary>
    [Fact]
    public void A_pull_ends_on_the_gauge_that_its_step_names()
    {
        var to = new PlanStep(StageKind.VaporRecovery) { AppliancePressure = Pressure.FromPascals(80_000) };
        Assert.Equal(80_000 - Air, Watch(Plain, to, StageEnd.TargetReached, "appliance")!.Value, 1e-6);
        Assert.Null(Watch(Plain, to with { AppliancePressure = null }, StageEnd.TargetReached, "appliance"));
        Assert.Null(Watch(Plain, new PlanStep(StageKind.LiquidRecovery) { AppliancePressure = Pressure.FromPascals(80_000) }, StageEnd.TargetReached, "appliance"));
    }

    /// <summary>A throttled stage keeps the outlet below the limit of cylinder and machine; one that is not names it only where it ends there.</summary>
    [Fact]
    public void A_throttled_stage_watches_the_outlet()
    {
        double most = Math.Min(Plain.Machine.HighPressureCutout.Pascals - Air, 1.25 * Plain.Cylinders[0].ServicePressure.Pascals);
        foreach (StageKind kind in new[] { StageKind.VaporRecovery, StageKind.LiquidRecovery })
        {
            Assert.Equal(most, Watch(Plain, new PlanStep(kind) { IsThrottled = true }, StageEnd.TargetReached, "not above")!.Value, 1.0);
        }

        Assert.Null(Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.TargetReached, "not above"));
        Assert.Equal(most, Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.CylinderPressure, "limit")!.Value, 1.0);
        Assert.Equal(Plain.Machine.HighPressureCutout.Pascals - Air, Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.HighPressureCutout, "cut-out")!.Value, 1.0);
        RecoveryJob thermal = Plain with { Machine = Plain.Machine with { ThermalCutout = Temperature.FromKelvins(400) } };
        Assert.Equal(400, Watch(thermal, new PlanStep(StageKind.VaporRecovery), StageEnd.ThermalCutout, "cut-out")!.Value, 1e-9);
        Assert.Null(Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.ThermalCutout, "cut-out"));
        Assert.Null(Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.TargetReached, "cut-out"));
        Assert.Null(Watch(Plain, new PlanStep(StageKind.VaporRecovery), StageEnd.TargetReached, "limit"));
    }

    /// <summary>A sweep goes down to its pressure, and nothing else does.</summary>
    [Fact]
    public void A_sweep_watches_its_pressure()
    {
        PlanRun run = Run(Plain with { SweepPressure = Pressure.FromPascals(30_000) }, SetUp, new CourseStage(StageKind.HoseSweep) { End = null });
        Assert.Equal(30_000 - Air, run.Stages[1].Hookup.Watches.Single(watch => watch.Value?.Name == "hoses").Value!.InternationalValue!.Value, 1e-6);
        Assert.DoesNotContain(run.Stages[0].Hookup.Watches, watch => watch.Value?.Name == "hoses");
    }

    /// <summary>A minute before a cylinder is full, or at half of a stage of less than two, its weight is told: slow down there.</summary>
    [Theory]
    [InlineData(600, 540)]
    [InlineData(120, 60)]
    [InlineData(100, 50)]
    public void A_cylinder_is_slowed_down_a_minute_before_it_is_full(double seconds, double at)
    {
        CourseStage fill = Pull(StageEnd.CylinderFull) with { Seconds = seconds, Points = [At(0, content: 2), At(seconds, content: 10)] };
        PlanRun run = Run(Plain, SetUp, fill);
        StageWatch slow = run.Stages[1].Hookup.Watches.Single(watch => watch.Value?.Name == "slow down at");
        Assert.Equal(Tare + 2 + (8 * at / seconds), slow.Value!.InternationalValue!.Value, 1e-9);
        Assert.DoesNotContain(Run(Plain, SetUp, fill with { End = StageEnd.TargetReached }).Stages[1].Hookup.Watches, watch => watch.Value?.Name == "slow down at");
        Assert.DoesNotContain(Run(Plain, SetUp, fill with { Points = [At(0)] }).Stages[1].Hookup.Watches, watch => watch.Value?.Name == "slow down at");
    }

    /// <summary>The most that the scale may show is told wherever refrigerant comes in: tare and limit.</summary>
    [Theory]
    [InlineData(StageKind.VaporRecovery, true)]
    [InlineData(StageKind.LiquidRecovery, true)]
    [InlineData(StageKind.PushPull, true)]
    [InlineData(StageKind.Equalize, true)]
    [InlineData(StageKind.Hold, false)]
    [InlineData(StageKind.Rest, false)]
    public void The_most_that_the_scale_may_show_is_told(StageKind kind, bool isTold)
    {
        PlanRun run = Run(Plain, SetUp, new CourseStage(kind));
        double[] gross = [.. run.Stages[1].Hookup.Watches.Where(watch => watch.Value?.Name == "gross" && watch.Text.StartsWith("most", StringComparison.Ordinal)).Select(watch => watch.Value!.InternationalValue!.Value)];
        Assert.Equal(isTold ? [Tare + run.Cylinders[0].Limit.MaximumFill.Kilograms] : [], gross, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    /// <summary>Vapor that goes over by itself is even enough on the cylinder's gauge where it comes to the pressure of the step, to a hundredth; else on the scale, which comes to rest.</summary>
    [Theory]
    [InlineData(0.985, true)]
    [InlineData(0.995, false)]
    public void Even_pressures_are_read_on_one_of_two(double share, bool onScale)
    {
        double pressure = Plain.Appliance.Fluid.Model.SaturationAtTemperature(290).Bubble.Pressure;
        var even = new PlanStep(StageKind.Equalize) { CylinderPressure = Pressure.FromPascals(pressure / share) };
        PlanRun run = Run(Plain, SetUp, new CourseStage(even) { After = Cylinder(Plain, 5, 290) });
        IReadOnlyList<StageWatch> watches = run.Stages[1].Hookup.Watches;
        Assert.Equal(!onScale, watches.Any(watch => watch.Value?.Name == "cylinder"));
        StageWatch[] rest = [.. watches.Where(watch => watch.Text.Contains("comes to rest", StringComparison.Ordinal))];
        Assert.Equal(onScale ? [Tare + 5] : [], rest.Select(watch => watch.Value!.InternationalValue!.Value), (a, b) => Math.Abs(a - b) < 1e-9);
        if (!onScale)
        {
            Assert.Equal((pressure / share) - Air, watches.Single(watch => watch.Value?.Name == "cylinder").Value!.InternationalValue!.Value, 1.0);
        }

        Assert.Contains(Run(Plain, SetUp, new CourseStage(StageKind.Equalize)).Stages[1].Hookup.Watches, watch => watch.Text.Contains("comes to rest", StringComparison.Ordinal));
        var rests = new PlanStep(StageKind.Rest) { CylinderPressure = Pressure.FromPascals(pressure / share) };
        Assert.Contains(Run(Plain, SetUp, new CourseStage(rests) { After = Cylinder(Plain, 5, 290) }).Stages[1].Hookup.Watches, watch => watch.Text == "on the cylinder's gauge: cool enough");
    }

    /// <summary>The clock ends what has a time and no gauge for it; a hold always.</summary>
    [Fact]
    public void The_clock_ends_what_nothing_else_ends()
    {
        double? Clock(PlanStep step, double seconds = 600) => Run(Plain, SetUp, new CourseStage(step) { Seconds = seconds }).Stages[1].Hookup.Watches.SingleOrDefault(watch => watch.By == WatchedBy.Clock)?.Value!.InternationalValue;
        string? Words(PlanStep step) => Run(Plain, SetUp, new CourseStage(step)).Stages[1].Hookup.Watches.SingleOrDefault(watch => watch.By == WatchedBy.Clock)?.Text;
        var timed = new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(432) };
        Assert.Equal(432, Clock(timed));
        Assert.Null(Clock(timed with { CylinderPressure = Pressure.FromPascals(5e5) }));
        Assert.Null(Clock(timed with { Duration = null }));
        Assert.Equal(700, Clock(new PlanStep(StageKind.Hold), 700));
        Assert.Equal(432, Clock(new PlanStep(StageKind.Hold) { Duration = Duration.FromSeconds(432) }, 700));
        Assert.Equal(700, Clock(new PlanStep(StageKind.Hold) { CylinderPressure = Pressure.FromPascals(5e5) }, 700));
        Assert.Equal("then stop", Words(timed));
        Assert.Contains("crawls", Words(timed with { Reason = StepReason.GiveUp }), StringComparison.Ordinal);
        Assert.Contains("another cylinder", Words(timed with { Reason = StepReason.UntilChange }), StringComparison.Ordinal);
        Assert.Equal("then go on", Words(new PlanStep(StageKind.Rest) { Duration = Duration.FromSeconds(432) }));
        Assert.Equal("then go on", Words(new PlanStep(StageKind.Warm) { Duration = Duration.FromSeconds(432) }));
        Assert.Equal("watch the gauge", Words(new PlanStep(StageKind.Hold)));
    }

    /// <summary>A share that a rule asks for instead is read on the scale, in the pull that brings it out.</summary>
    [Fact]
    public void A_share_is_read_on_the_scale()
    {
        RecoveryJob small = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(1) }) with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small } };
        double left = Run(small).LeftByShare;
        double? Share(RecoveryJob job, StageKind kind, double kilograms) =>
            Run(job, SetUp, new CourseStage(kind) { After = Holds(job, kilograms).And(Cylinder(job, 5, 290)) }).Stages[1].Hookup.Watches.SingleOrDefault(watch => watch.Value?.Name == "share")?.Value!.InternationalValue;
        Assert.Equal(Tare + 5, Share(small, StageKind.VaporRecovery, left - 1e-6)!.Value, 1e-9);
        Assert.Null(Share(small, StageKind.VaporRecovery, left + 1e-6));
        Assert.Null(Share(small, StageKind.LiquidRecovery, left - 1e-6));
        Assert.Null(Share(Plain, StageKind.VaporRecovery, 0.01));
    }

    /// <summary>The freezing point of water and the triple point of carbon dioxide are watched while there is liquid to boil.</summary>
    [Fact]
    public void Floors_are_watched_while_there_is_liquid()
    {
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) });
        CourseStage dry = new(StageKind.Rest) { After = Holds(wet, 0.05) };
        double? Floor(RecoveryJob job, PlanStep step, params CourseStage[] before) =>
            Run(job, [SetUp, .. before, new CourseStage(step)]).Stages[^1].Hookup.Watches.SingleOrDefault(watch => watch.Value?.Name == "not below")?.Value!.InternationalValue;
        double ice = Plain.Appliance.Fluid.Model.SaturationAtTemperature(273.15).Bubble.Pressure;
        Assert.Equal(ice - Air, Floor(wet, new PlanStep(StageKind.VaporRecovery))!.Value, 1.0);
        Assert.Equal(ice - Air, Floor(wet, new PlanStep(StageKind.LiquidRecovery))!.Value, 1.0);
        Assert.Null(Floor(wet, new PlanStep(StageKind.PushPull)));
        Assert.Null(Floor(wet, new PlanStep(StageKind.VaporRecovery), dry));
        Assert.Null(Floor(wet with { KeepAboveFreezing = false }, new PlanStep(StageKind.VaporRecovery)));
        Assert.Null(Floor(Plain, new PlanStep(StageKind.VaporRecovery)));
        var keep = new PlanStep(StageKind.VaporRecovery) { Reason = StepReason.KeepLiquid, LowestPressure = Pressure.FromPascals(150_000) };
        Assert.Equal(150_000 - Air, Floor(Plain, keep)!.Value, 1e-6);
        Assert.Null(Floor(Plain, keep with { Reason = StepReason.Usual }));
        RecoveryJob carbon = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-744"), Charge = Mass.FromKilograms(8) }) with
        {
            Machine = Plain.Machine with { HighPressureCutout = Pressure.FromBars(90) },
            Cylinders = [RecoveryCylinder.FromMark("3AA1800", Mass.FromKilograms(40), Mass.FromKilograms(45)) with { Label = "C1" }],
        };
        Assert.Equal(517_950 - Air, Floor(carbon, new PlanStep(StageKind.VaporRecovery))!.Value, 100.0);
        Assert.Equal(600_000 - Air, Floor(carbon, keep with { LowestPressure = Pressure.FromPascals(600_000) })!.Value, 1e-6);
        Assert.Null(Floor(carbon, new PlanStep(StageKind.VaporRecovery), new CourseStage(StageKind.Rest) { After = Holds(carbon, 0.1) }));
        Assert.Null(Floor(carbon, new PlanStep(StageKind.Hold)));
    }

    /// <summary>In a hold the level is watched, as low as what is left is cold where the rule takes it at a temperature of reference.</summary>
    [Fact]
    public void A_hold_watches_the_level()
    {
        PlanRun run = Run(Plain, SetUp, Pull() with { After = Stands(Plain, 80_000, 250) }, Hold());
        Assert.Equal(Goal - Air, run.Stages[2].Hookup.Watches.Single(watch => watch.Value?.Name == "level").Value!.InternationalValue!.Value, 1e-6);
        Assert.DoesNotContain(run.Stages[1].Hookup.Watches, watch => watch.Value?.Name == "level");
    }

    /// <summary>A push that may come to a design pressure is watched at nine tenths of it; a stalled pull by a gauge that stands still.</summary>
    [Fact]
    public void A_push_and_a_stalled_pull_have_watches_of_their_own()
    {
        RecoveryJob job = Plain.With(appliance => appliance with { DesignGaugePressure = Pressure.FromPascals(1e6) });
        Assert.Equal(0.9e6, Watch(job, new PlanStep(StageKind.PushPull), StageEnd.LiquidGone, "throttle")!.Value, 1e-6);
        Assert.Null(Watch(job, new PlanStep(StageKind.VaporRecovery), StageEnd.LiquidGone, "throttle"));
        Assert.Null(Watch(Plain, new PlanStep(StageKind.PushPull), StageEnd.LiquidGone, "throttle"));
        bool Says(StageKind kind, StageEnd end, string words) => Run(Plain, SetUp, new CourseStage(kind) { End = end }).Stages[1].Hookup.Watches.Any(watch => watch.Text.Contains(words, StringComparison.Ordinal));
        Assert.True(Says(StageKind.VaporRecovery, StageEnd.Stalled, "stands still"));
        Assert.False(Says(StageKind.VaporRecovery, StageEnd.TargetReached, "stands still"));
        Assert.False(Says(StageKind.LiquidRecovery, StageEnd.Stalled, "stands still"));
        Assert.True(Says(StageKind.PushPull, StageEnd.LiquidGone, "sight glass"));
        Assert.False(Says(StageKind.LiquidRecovery, StageEnd.LiquidGone, "sight glass"));
        Assert.True(Says(StageKind.LiquidRecovery, StageEnd.LiquidGone, "open the vapor side"));
        Assert.False(Says(StageKind.VaporRecovery, StageEnd.LiquidGone, "open the vapor side"));
    }

    /// <summary>What warms and cools is switched on where the step has it, each by itself.</summary>
    [Fact]
    public void What_warms_and_cools_is_set_by_its_step()
    {
        (HookupItem, HookupPosition)[] Heat(SimulationInputs inputs, StageKind kind = StageKind.VaporRecovery) =>
            [.. HookupSettings.Heat(new PlanStep(kind) { Inputs = inputs }, Plain).Select(setting => (setting.Item, setting.Position))];
        Assert.Empty(Heat(default));
        Assert.Equal([(HookupItem.ApplianceHeater, HookupPosition.On)], Heat(new SimulationInputs { HeaterPower = 0.05 }));
        Assert.Equal([(HookupItem.CrankcaseHeater, HookupPosition.On)], Heat(new SimulationInputs { CrankcaseHeaterPower = 0.05 }));
        Assert.Equal([(HookupItem.ApplianceFans, HookupPosition.On)], Heat(new SimulationInputs { FanFactor = 1.05 }));
        Assert.Empty(Heat(new SimulationInputs { FanFactor = 1 }));
        Assert.Equal([(HookupItem.CylinderCooling, HookupPosition.FanStream)], Heat(new SimulationInputs { CylinderFactor = 1.05 }));
        Assert.Equal([(HookupItem.CylinderCooling, HookupPosition.IceBath)], Heat(new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 274 }));
        Assert.Equal([(HookupItem.CylinderCooling, HookupPosition.WaterBath)], Heat(new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 274.1 }));
        Assert.Equal([(HookupItem.CylinderCooling, HookupPosition.Shade)], Heat(default, StageKind.Rest));
    }

    /// <summary>The inlet is throttled for liquid, for tubes, or for the outlet, in this order; else open.</summary>
    [Fact]
    public void The_inlet_is_set_by_what_asks_for_it()
    {
        RecoveryJob wet = Plain.With(appliance => appliance with { Water = TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) });
        string Inlet(PlanStep step, RecoveryJob job) => HookupSettings.For(step, job, default).Single(setting => setting.Item == HookupItem.MachineInletValve).ToString();
        var plain = new PlanStep(StageKind.VaporRecovery);
        Assert.Equal("machine's inlet valve open", Inlet(plain, Plain));
        Assert.Contains("throttled: by the gauge at the outlet", Inlet(plain with { IsThrottled = true }, Plain), StringComparison.Ordinal);
        Assert.Contains("tubes do not freeze", Inlet(plain with { IsThrottled = true }, wet), StringComparison.Ordinal);
        Assert.EndsWith("by the appliance's gauge", Inlet(plain with { Reason = StepReason.KeepLiquid }, wet), StringComparison.Ordinal);
        Assert.Equal("machine's inlet valve open", Inlet(plain, wet with { KeepAboveFreezing = false }));
        Assert.Contains(HookupSettings.For(plain, wet, default), setting => setting.Item == HookupItem.TubeWater);
        Assert.DoesNotContain(HookupSettings.For(plain, Plain, default), setting => setting.Item is HookupItem.TubeWater or HookupItem.CondenserWater);
        RecoveryJob water = Plain with { Machine = Plain.Machine with { Condenser = Plain.Machine.Condenser with { Cooling = CondenserCooling.Water } } };
        Assert.Contains(HookupSettings.For(plain, water, default), setting => setting.Item == HookupItem.CondenserWater && setting.Position == HookupPosition.On);
    }

    /// <summary>Ports that the job has are set, ports that it has not are not; push-pull names the part of its port where there are several.</summary>
    [Fact]
    public void Only_ports_that_there_are_are_set()
    {
        RecoveryJob chiller = Jobs.Chiller();
        RecoveryJob second = chiller with { Hoses = chiller.Hoses with { SecondVaporSide = chiller.Hoses.VaporSide } };
        bool Sets(RecoveryJob job, StageKind kind, HookupItem item) => HookupSettings.For(new PlanStep(kind), job, default).Any(setting => setting.Item == item);
        foreach (StageKind kind in new[] { StageKind.HoseSweep, StageKind.VaporRecovery, StageKind.Hold, StageKind.Close, StageKind.CylinderChange, StageKind.HoseChange })
        {
            Assert.True(Sets(chiller, kind, HookupItem.ApplianceLiquidPort));
            Assert.False(Sets(chiller with { Hoses = chiller.Hoses with { LiquidSide = [] } }, kind, HookupItem.ApplianceLiquidPort));
            Assert.False(Sets(chiller.With(appliance => appliance with { LiquidReachable = false }), kind, HookupItem.ApplianceLiquidPort));
            Assert.True(Sets(second, kind, HookupItem.ApplianceSecondVaporPort));
            Assert.False(Sets(chiller, kind, HookupItem.ApplianceSecondVaporPort));
        }

        string Port(RecoveryJob job) => HookupSettings.For(new PlanStep(StageKind.PushPull), job, default).Single(setting => setting.Item == HookupItem.ApplianceVaporPort).ToString();
        Assert.DoesNotContain("part", Port(Plain), StringComparison.Ordinal);
        Assert.Contains("part with the liquid port", Port(VerdictsOfCoursesTests.Divided()), StringComparison.Ordinal);
        Assert.Equal(3, HookupLines.For(StageKind.VaporRecovery, second, false).Count);
        Assert.Equal(2, HookupLines.For(StageKind.VaporRecovery, chiller, false).Count);
        Assert.Equal(3, HookupLines.For(StageKind.HoseSweep, chiller, false).Count);
        Assert.Equal(2, HookupLines.For(StageKind.HoseSweep, Plain, false).Count);
        Assert.Same(chiller.Hoses.LiquidSide[0], HookupLines.For(StageKind.LiquidRecovery, chiller, false)[0].Hoses[0]);
        Assert.Same(Plain.Hoses.VaporSide[0], HookupLines.For(StageKind.LiquidRecovery, Plain, false)[0].Hoses[0]);
    }

    private static double? Watch(RecoveryJob job, PlanStep step, StageEnd end, string name) =>
        Run(job, SetUp, new CourseStage(step) { End = end }).Stages[1].Hookup.Watches.SingleOrDefault(watch => watch.Value?.Name == name)?.Value!.InternationalValue;
}
