using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What must hold for the hookup of every stage of every kind, whatever the job: common practice, no source.</summary>
public class HookupRuleTests
{
    private static readonly Dictionary<string, Lazy<RecoveryPlan>> Plans = new()
    {
        ["push-pull"] = new(() => RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3))),
        ["liquid"] = new(() => RecoveryPlanner.Plan(WaterCooled())),
        ["two ports"] = new(() => RecoveryPlanner.Plan(TwoPorts())),
        ["ice"] = new(() => HotRoof.Plan("ice")),
        ["bath"] = new(() => HotRoof.Plan("bath")),
        ["fan"] = new(() => HotRoof.Plan("fan")),
        ["throttle"] = new(() => HotRoof.Plan("one")),
        ["rests"] = new(() => HotRoof.Plan("thermal")),
        ["heat"] = new(() => RecoveryPlanner.Plan(Warmed())),
        ["past"] = new(() => RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with
        {
            MachinePast = new MachinePast { Refrigerant = Fluid.Get("R-22"), IsCleared = false, Oil = OilKind.Mineral },
        })),
    };

    private static readonly StageKind[] Draws = [StageKind.PushPull, StageKind.LiquidRecovery, StageKind.VaporRecovery];

    public static TheoryData<string> Names => [.. Plans.Keys];

    private static IEnumerable<PlannedStage> All => Plans.Values.SelectMany(plan => plan.Value.Stages);

    [Fact]
    public void Every_kind_of_stage_is_among_the_plans() =>
        Assert.Equal(Enum.GetValues<StageKind>().Except([StageKind.Warm]).Order(), All.Select(stage => stage.Kind).Distinct().Order());

    /// <summary>It runs where it moves gas, clears where it clears, and is off wherever hands are at fittings.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_machine_runs_only_where_it_moves_something(string name)
    {
        foreach (PlannedStage stage in Plans[name].Value.Stages.Where(stage => stage.Kind != StageKind.Close))
        {
            HookupPosition expected = stage.Kind == StageKind.HoseSweep || Draws.Contains(stage.Kind) ? HookupPosition.On
                : stage.Kind == StageKind.MachineClearing ? HookupPosition.Clearing
                : HookupPosition.Off;
            Assert.Equal(expected, At(stage, HookupItem.Machine));
        }
    }

    /// <summary>A port of the appliance is open where a line of the stage ends at it, and shut elsewhere but for what must not be trapped: liquid in its hose.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void A_port_is_open_where_a_line_needs_it(string name)
    {
        foreach (PlannedStage stage in Plans[name].Value.Stages)
        {
            HookupPort[] ends = [.. stage.Hookup.Lines.SelectMany(line => new[] { line.From, line.To })];
            if (Draws.Contains(stage.Kind) || stage.Kind == StageKind.Equalize)
            {
                Assert.Equal(ends.Contains(HookupPort.ApplianceVapor), At(stage, HookupItem.ApplianceVaporPort) == HookupPosition.Open);
                Assert.Equal(ends.Contains(HookupPort.CylinderVapor), At(stage, HookupItem.CylinderVaporValve) == HookupPosition.Open);
                Assert.Equal(ends.Contains(HookupPort.CylinderLiquid), At(stage, HookupItem.CylinderLiquidValve) == HookupPosition.Open);
                Assert.Equal(stage.Kind == StageKind.Equalize, !ends.Contains(HookupPort.MachineInlet));
                Assert.Equal(stage.Kind == StageKind.Equalize ? HookupPort.CylinderVapor : stage.Kind == StageKind.PushPull ? HookupPort.ApplianceVapor : HookupPort.CylinderLiquid, ends[^1]);
            }

            if (ends.Contains(HookupPort.ApplianceLiquid) && Draws.Contains(stage.Kind))
            {
                Assert.Equal(HookupPosition.Open, At(stage, HookupItem.ApplianceLiquidPort));
            }
        }
    }

    /// <summary>Hoses are swept with everything shut that holds refrigerant and everything open that holds air, down to the pressure that the job gives.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void A_sweep_draws_the_air_and_nothing_else(string name)
    {
        RecoveryPlan plan = Plans[name].Value;
        PlannedStage sweep = plan.Stages.Single(stage => stage.Kind == StageKind.HoseSweep);
        Assert.Equal(HookupPosition.Shut, At(sweep, HookupItem.ApplianceVaporPort));
        Assert.Equal(HookupPosition.Shut, At(sweep, HookupItem.CylinderLiquidValve));
        Assert.Equal(HookupPosition.Open, At(sweep, HookupItem.HoseValves));
        Assert.Equal(HookupPosition.Open, At(sweep, HookupItem.MachineInletValve));
        Assert.Equal(HookupPosition.Open, At(sweep, HookupItem.MachineVent));
        bool liquid = plan.Job.Appliance.LiquidReachable && plan.Job.Hoses.LiquidSide.Count > 0;
        Assert.Equal(liquid ? HookupPosition.Shut : null, At(sweep, HookupItem.ApplianceLiquidPort));
        Assert.Equal(liquid, sweep.Hookup.Lines.Any(line => line.From == HookupPort.ApplianceLiquid && line.Hoses.SequenceEqual(plan.Job.Hoses.LiquidSide)));
        Assert.Contains(sweep.Hookup.Lines, line => line is { From: HookupPort.MachineOutlet, To: HookupPort.Air });
        StageWatch gauge = Assert.Single(sweep.Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge);
        Assert.Equal(plan.Job.SweepPressure.Pascals - plan.Job.Barometer.Pressure.Pascals, gauge.Value!.InternationalValue!.Value, 1);
    }

    /// <summary>A cylinder that comes off is shut at both valves, and its weight is read; nothing but the liquid hose stays open to the appliance.</summary>
    [Fact]
    public void What_comes_off_is_shut_and_weighed()
    {
        foreach (PlannedStage stage in All.Where(stage => stage.Kind is StageKind.CylinderChange or StageKind.Close))
        {
            Assert.Equal(HookupPosition.Shut, At(stage, HookupItem.CylinderLiquidValve));
            Assert.Equal(HookupPosition.Shut, At(stage, HookupItem.CylinderVaporValve));
            Assert.Equal(HookupPosition.Read, At(stage, HookupItem.Scale));
        }

        Assert.All(All.Where(stage => stage.Kind == StageKind.CylinderChange), stage => Assert.Equal(HookupPosition.Shut, At(stage, HookupItem.ApplianceVaporPort)));
        foreach (PlannedStage stage in All.Where(stage => stage.Kind == StageKind.SetUp))
        {
            Assert.Empty(stage.Hookup.Lines);
            Assert.Equal(HookupPosition.Read, At(stage, HookupItem.Scale));
            Assert.Equal(HookupPosition.Shut, At(stage, HookupItem.CylinderLiquidValve));
            Assert.Equal(HookupPosition.Shut, At(stage, HookupItem.CylinderVaporValve));
        }
    }

    /// <summary>What condenses needs its fan, and its water where water cools it; in push-pull gas is to arrive hot.</summary>
    [Fact]
    public void A_condenser_works_where_vapor_is_to_condense()
    {
        foreach (PlannedStage stage in All.Where(stage => stage.Kind is StageKind.LiquidRecovery or StageKind.VaporRecovery))
        {
            Assert.Equal(HookupPosition.On, At(stage, HookupItem.CondenserFan));
            Assert.Equal(HookupPosition.Connected, At(stage, HookupItem.FloatSwitch));
        }

        PlannedStage[] water = [.. Plans["liquid"].Value.Stages.Where(stage => stage.Kind is StageKind.LiquidRecovery or StageKind.VaporRecovery)];
        Assert.Equal(2, water.Select(stage => stage.Kind).Distinct().Count());
        Assert.All(water, stage => Assert.Equal(HookupPosition.On, At(stage, HookupItem.CondenserWater)));
        Assert.All(water, stage => Assert.Equal(HookupPosition.On, At(stage, HookupItem.TubeWater)));
        Assert.DoesNotContain(Plans.Where(plan => plan.Key != "liquid").SelectMany(plan => plan.Value.Value.Stages), stage => At(stage, HookupItem.CondenserWater) is not null || At(stage, HookupItem.TubeWater) is not null);
    }

    /// <summary>The inlet: by the gauge for liquid and where something must be kept below a limit, wide open else, shut where the appliance is watched or the machine empties itself.</summary>
    [Fact]
    public void The_inlet_is_throttled_where_a_limit_asks_for_it()
    {
        foreach (PlannedStage stage in All)
        {
            bool keepsTubes = stage.Kind == StageKind.VaporRecovery && ReferenceEquals(Plans["liquid"].Value.Stages.FirstOrDefault(each => each == stage), stage);
            HookupPosition? expected = stage.Kind switch
            {
                StageKind.LiquidRecovery => HookupPosition.Throttled,
                StageKind.VaporRecovery => stage.Step.IsThrottled || keepsTubes ? HookupPosition.Throttled : HookupPosition.Open,
                StageKind.HoseSweep or StageKind.PushPull => HookupPosition.Open,
                StageKind.Hold or StageKind.MachineClearing => HookupPosition.Shut,
                _ => null,
            };
            Assert.Equal(expected, At(stage, HookupItem.MachineInletValve));
        }

        Assert.Contains(Plans["throttle"].Value.Stages, stage => stage is { Kind: StageKind.VaporRecovery, Step.IsThrottled: true });
    }

    /// <summary>Ice and water at 0 °C, a bath above it, a fan's stream, or, at rest with none of them, the shade.</summary>
    [Theory]
    [InlineData("ice", HookupPosition.IceBath)]
    [InlineData("bath", HookupPosition.WaterBath)]
    [InlineData("fan", HookupPosition.FanStream)]
    public void The_cylinder_stands_in_what_is_at_hand(string name, HookupPosition position)
    {
        PlannedStage pull = Plans[name].Value.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(StepReason.Cool, pull.Step.Reason);
        Assert.Equal(position, At(pull, HookupItem.CylinderCooling));
        Assert.All(Plans["rests"].Value.Stages.Where(stage => stage.Kind == StageKind.Rest), stage => Assert.Equal(HookupPosition.Shade, At(stage, HookupItem.CylinderCooling)));
        Assert.All(Plans["push-pull"].Value.Stages, stage => Assert.Null(At(stage, HookupItem.CylinderCooling)));
    }

    [Fact]
    public void What_warms_is_switched_on_in_the_pull_that_it_warms()
    {
        PlannedStage pull = Plans["heat"].Value.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(HookupPosition.On, At(pull, HookupItem.ApplianceHeater));
        Assert.Equal(HookupPosition.On, At(pull, HookupItem.CrankcaseHeater));
        Assert.Equal(HookupPosition.On, At(pull, HookupItem.ApplianceFans));
        Assert.DoesNotContain(
            Plans["heat"].Value.Stages.Where(stage => stage != pull).Concat(Plans["push-pull"].Value.Stages),
            stage => At(stage, HookupItem.ApplianceHeater) is not null || At(stage, HookupItem.CrankcaseHeater) is not null || At(stage, HookupItem.ApplianceFans) is not null);
    }

    /// <summary>Two vapor ports draw together, each through its own hoses; in every other stage the second is shut.</summary>
    [Fact]
    public void A_second_vapor_port_has_a_run_of_its_own()
    {
        RecoveryPlan plan = Plans["two ports"].Value;
        foreach (PlannedStage stage in plan.Stages.Where(stage => stage.Kind is StageKind.HoseSweep or StageKind.VaporRecovery or StageKind.Hold))
        {
            HookupLine second = Assert.Single(stage.Hookup.Lines, line => line.From == HookupPort.ApplianceSecondVapor);
            Assert.Equal(HookupPort.MachineInlet, second.To);
            Assert.Equal(plan.Job.Hoses.SecondVaporSide, second.Hoses);
            Assert.Equal(plan.Job.Hoses.VaporSide, Assert.Single(stage.Hookup.Lines, line => line.From == HookupPort.ApplianceVapor).Hoses);
            Assert.Equal(stage.Kind == StageKind.VaporRecovery ? HookupPosition.Open : HookupPosition.Shut, At(stage, HookupItem.ApplianceSecondVaporPort));
        }
    }

    /// <summary>Each line is laid with the hoses that were given for it; without a liquid hose liquid comes through the vapor hose.</summary>
    [Fact]
    public void Lines_are_laid_with_the_hoses_of_the_job()
    {
        RecoveryPlan push = Plans["push-pull"].Value;
        HookupLine[] lines = [.. push.Stages.First(stage => stage.Kind == StageKind.PushPull).Hookup.Lines];
        Assert.Equal([push.Job.Hoses.LiquidSide, push.Job.Hoses.Discharge, push.Job.Hoses.VaporSide], lines.Select(line => line.Hoses));
        HookupLine even = Assert.Single(push.Stages.First(stage => stage.Kind == StageKind.Equalize).Hookup.Lines);
        Assert.Equal(push.Job.Hoses.VaporSide.Concat(push.Job.Hoses.Discharge), even.Hoses);
        RecoveryPlan liquid = Plans["liquid"].Value;
        Assert.Empty(liquid.Job.Hoses.LiquidSide);
        Assert.Equal(liquid.Job.Hoses.VaporSide, liquid.Stages.First(stage => stage.Kind == StageKind.LiquidRecovery).Hookup.Lines[0].Hoses);
    }

    /// <summary>What the machine last held goes into a cylinder of its own, and oil through the drain, before anything of this job is connected.</summary>
    [Fact]
    public void A_machine_with_a_past_is_cleared_into_another_cylinder()
    {
        PlannedStage[] stages = [.. Plans["past"].Value.Stages];
        PlannedStage first = stages.First(stage => stage.Kind == StageKind.MachineClearing), last = stages.Last(stage => stage.Kind == StageKind.MachineClearing);
        Assert.Equal(HookupPort.LastRefrigerantCylinder, Assert.Single(first.Hookup.Lines).To);
        Assert.Contains("R-22", first.Hookup.Settings.Single(setting => setting.Item == HookupItem.Scale).Why, StringComparison.Ordinal);
        Assert.Null(first.Cylinder);
        Assert.Equal(HookupPort.CylinderLiquid, Assert.Single(last.Hookup.Lines).To);
        Assert.Null(At(last, HookupItem.Scale));
        PlannedStage drain = stages.Single(stage => stage.Kind == StageKind.OilDrain), fill = stages.Single(stage => stage.Kind == StageKind.OilFill);
        Assert.Contains(drain.Hookup.Lines, line => line is { From: HookupPort.MachineDrain, To: HookupPort.OilContainer });
        Assert.Equal(2, drain.Hookup.Lines.Count(line => line.From == HookupPort.Nitrogen));
        Assert.Equal(HookupPosition.Open, At(drain, HookupItem.NitrogenRegulator));
        Assert.Equal(HookupPort.OilMeasure, Assert.Single(fill.Hookup.Lines).From);
    }

    /// <summary>Wherever something flows into a cylinder, the most that its scale may show is told: tare and filling limit.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_scale_is_watched_wherever_a_cylinder_fills(string name)
    {
        RecoveryPlan plan = Plans[name].Value;
        foreach (PlannedStage stage in plan.Stages)
        {
            double[] told = [.. stage.Hookup.Watches.Where(watch => watch.By == WatchedBy.Scale && watch.Value is not null).Select(watch => watch.Value!.InternationalValue!.Value)];
            bool fills = Draws.Contains(stage.Kind) || stage.Kind == StageKind.Equalize;
            bool clears = stage is { Kind: StageKind.MachineClearing, Cylinder: not null };
            Assert.Equal(fills || clears, told.Length > 0);
            if (fills || clears)
            {
                RecoveryCylinder cylinder = plan.Job.Cylinders.Single(each => each.Label == stage.Cylinder);
                Assert.Equal(CylinderFill.Limit(cylinder, plan.Job.Appliance.Fluid).MaximumGrossWeight.Kilograms, told.Max(), 1e-6);
            }

            Assert.Equal(fills, stage.Hookup.Scale.Count > 0);
        }
    }

    /// <summary>Nine readings, even in time; each lies on the course that was simulated.</summary>
    [Fact]
    public void Readings_of_the_scale_lie_on_the_course()
    {
        foreach (PlannedStage stage in Plans["push-pull"].Value.Stages.Where(stage => stage.Hookup.Scale.Count > 0))
        {
            Assert.Equal(9, stage.Hookup.Scale.Count);
            double tare = stage.State.Cylinder!.Cylinder.TareWeight.Kilograms;
            TrajectoryPoint[] points = [.. stage.Result!.Trajectory];
            for (int i = 0; i < 9; i++)
            {
                double time = stage.Duration.Seconds * i / 8, weight = stage.Hookup.Scale[i].GrossWeight.Kilograms - tare;
                Assert.Equal(time, stage.Hookup.Scale[i].Time.Seconds, 1e-9);
                TrajectoryPoint before = points.Last(point => point.Time.Seconds <= time + 1e-9), after = points.First(point => point.Time.Seconds >= time - 1e-9);
                Assert.InRange(weight, before.CylinderMass.Kilograms - 1e-9, after.CylinderMass.Kilograms + 1e-9);
                double share = after.Time > before.Time ? (time - before.Time.Seconds) / (after.Time - before.Time).Seconds : 0;
                Assert.Equal((before.CylinderMass.Kilograms * (1 - share)) + (after.CylinderMass.Kilograms * share), weight, 1e-6);
            }
        }
    }

    /// <summary>Only what ends by the clock has a time to watch, and a hold has its level too: what the gauge may not pass meanwhile.</summary>
    [Fact]
    public void The_clock_is_watched_where_it_ends_something()
    {
        foreach (PlannedStage stage in All)
        {
            StageWatch? clock = stage.Hookup.Watches.SingleOrDefault(watch => watch.By == WatchedBy.Clock);
            bool timed = stage.Kind == StageKind.Hold || (stage.Step.Duration is not null && stage.Step.CylinderPressure is null);
            Assert.Equal(timed, clock is not null);
            if (clock is not null)
            {
                Assert.Equal((stage.Kind == StageKind.Hold ? stage.Duration : stage.Step.Duration!.Value).Seconds, clock.Value!.InternationalValue!.Value, 1e-6);
            }
        }

        foreach (RecoveryPlan plan in Plans.Values.Select(plan => plan.Value).Where(plan => plan.Stages.Any(stage => stage.Kind == StageKind.Hold)))
        {
            StageWatch level = Assert.Single(plan.Stages.Last(stage => stage.Kind == StageKind.Hold).Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge);
            double most = Math.Min(plan.Requirement.RequiredPressure.Pascals, plan.Job.Barometer.Pressure.Pascals);
            Assert.Equal(most - plan.Job.Barometer.Pressure.Pascals, level.Value!.InternationalValue!.Value, 1);
        }
    }

    /// <summary>Vapor goes first until the cylinder has what liquid needs, and its gauge is watched for that.</summary>
    [Theory]
    [InlineData("push-pull", "even enough")]
    [InlineData("liquid", "enough for liquid")]
    public void Vapor_first_is_watched_on_the_cylinders_gauge(string name, string words)
    {
        PlannedStage even = Plans[name].Value.Stages.First(stage => stage.Kind == StageKind.Equalize);
        StageWatch gauge = Assert.Single(even.Hookup.Watches, watch => watch.By == WatchedBy.CylinderGauge);
        Assert.Contains(words, gauge.Text, StringComparison.Ordinal);
        Assert.Equal(even.State.Cylinder!.Pressure.Pascals - 101_325, gauge.Value!.InternationalValue!.Value, 1e-3 * even.State.Cylinder.Pressure.Pascals);
    }

    private static HookupPosition? At(PlannedStage stage, HookupItem item) => stage.Hookup.Settings.SingleOrDefault(setting => setting.Item == item)?.Position;

    private static RecoveryJob WaterCooled()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { KeepAboveFreezing = true };
        return job with
        {
            Hoses = job.Hoses with { LiquidSide = [] },
            Machine = job.Machine with { Condenser = job.Machine.Condenser with { Cooling = CondenserCooling.Water, CoolantTemperature = Temperature.FromDegreesCelsius(15) } },
            Appliance = job.Appliance with
            {
                Water = TubeWater.Moving(MassFlow.FromKilogramsPerSecond(2), Temperature.FromDegreesCelsius(18), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.002)),
            },
        };
    }

    private static RecoveryJob TwoPorts()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        return job with
        {
            Appliance = job.Appliance with { LiquidReachable = false },
            Hoses = new HoseSet { VaporSide = [Jobs.Hose(10)], SecondVaporSide = [Jobs.Hose(5)], Discharge = [Jobs.Hose(6)] },
        };
    }

    private static RecoveryJob Warmed()
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 14, 1.9) with
        {
            PushPull = PushPullUse.Never,
            Aids = new SiteAids { Heater = Power.FromWatts(1500), CrankcaseHeater = Power.FromWatts(60), ApplianceFans = 3 },
        };
        return job with
        {
            Appliance = job.Appliance with
            {
                LiquidReachable = false,
                Temperature = Temperature.FromDegreesCelsius(15),
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(1), Kind = OilKind.PolyolEster },
            },
        };
    }
}
