using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What hurts someone where a plan is done as it reads.</summary>
public class SiteSafetyTests
{
    [Fact]
    public void A_second_vapor_port_is_shut_while_the_hoses_are_swept_and_in_the_hold()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Hoses = job.Hoses with { SecondVaporSide = job.Hoses.VaporSide } });
        foreach (PlannedStage stage in plan.Stages.Where(stage => stage.Kind is StageKind.HoseSweep or StageKind.Hold or StageKind.CylinderChange))
        {
            Assert.Equal(HookupPosition.Shut, Assert.Single(stage.Hookup.Settings, setting => setting.Item == HookupItem.ApplianceSecondVaporPort).Position);
        }

        PlannedStage pull = plan.Stages.First(stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Equal(HookupPosition.Open, Assert.Single(pull.Hookup.Settings, setting => setting.Item == HookupItem.ApplianceSecondVaporPort).Position);
        Assert.DoesNotContain(RecoveryPlanner.Plan(job).Stages.SelectMany(stage => stage.Hookup.Settings), setting => setting.Item == HookupItem.ApplianceSecondVaporPort);
    }

    /// <summary>Liquid between two shut valves bursts what holds it when it warms; a full cylinder goes on filling while its valve is open.</summary>
    [Fact]
    public void A_change_of_cylinders_shuts_the_cylinder_first_and_traps_no_liquid()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3));
        PlannedStage[] changes = [.. plan.Stages.Where(stage => stage.Kind == StageKind.CylinderChange)];
        Assert.NotEmpty(changes);
        Assert.All(changes, change =>
        {
            Assert.Equal(HookupItem.CylinderLiquidValve, change.Hookup.Settings[0].Item);
            Assert.Equal(HookupPosition.Shut, change.Hookup.Settings[0].Position);
            Assert.Equal(HookupPosition.Open, Assert.Single(change.Hookup.Settings, setting => setting.Item == HookupItem.ApplianceLiquidPort).Position);
        });
    }

    /// <summary>A gauge behind a shut port shows the hose alone, and a hold would always pass.</summary>
    [Fact]
    public void In_a_hold_the_gauge_sees_the_appliance_and_the_level_is_told()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20));
        PlannedStage hold = plan.Stages.Last(stage => stage.Kind == StageKind.Hold);
        Assert.Equal(HookupPosition.Open, Assert.Single(hold.Hookup.Settings, setting => setting.Item == HookupItem.ApplianceVaporPort).Position);
        Assert.Equal(HookupPosition.Shut, Assert.Single(hold.Hookup.Settings, setting => setting.Item == HookupItem.MachineInletValve).Position);
        Assert.Contains(hold.Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge && watch.Value is not null);
    }

    /// <summary>A cylinder whose content nobody named is the last to be filled.</summary>
    [Fact]
    public void A_cylinder_of_unknown_content_waits()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 10);
        RecoveryCylinder named = Jobs.Cylinder(47.6, "named") with { Content = Mass.FromKilograms(5), Refrigerant = job.Appliance.Fluid.Designation };
        RecoveryCylinder unnamed = Jobs.Cylinder(47.6, "unnamed") with { Content = Mass.FromKilograms(1) };
        Assert.Equal("named", RecoveryPlanner.Plan(job with { Cylinders = [unnamed, named] }).Stages.First(stage => stage.Cylinder is not null).Cylinder);
    }

    /// <summary>52 °C (125 °F): common practice, no source.</summary>
    [Theory]
    [InlineData(540)]
    [InlineData(5000)]
    public void No_heater_makes_the_appliance_hot(double watts)
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 14, 1.9) with { PushPull = PushPullUse.Never, Aids = new SiteAids { Heater = Power.FromWatts(watts) } };
        job = job with { Appliance = job.Appliance with { LiquidReachable = false, Water = null, Temperature = Temperature.FromDegreesCelsius(45), Surroundings = Temperature.FromDegreesCelsius(50) } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        double hottest = plan.Stages.Where(stage => stage.Result is not null).SelectMany(stage => stage.Result!.Trajectory).Max(point => Math.Max(point.ApplianceKelvins, point.MetalKelvins));
        Assert.True(hottest < 326, $"{hottest} K");
    }

    [Fact]
    public void Cold_liquid_at_the_level_of_an_oil_change_is_a_warning()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 60) with { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } };
        job = job with { Appliance = job.Appliance with { Temperature = Temperature.FromDegreesCelsius(-22), Surroundings = null, Water = null } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Finding nothing = Assert.Single(plan.Findings, finding => finding.Code == "nothing-to-recover");
        Assert.Equal(Severity.Warning, nothing.Severity);
        Assert.Contains("only while it is as cold as now", nothing.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_back_warm_is_said_and_what_is_warm_already_is_not()
    {
        RecoveryJob cold = Jobs.Chiller("R-410A", 2.5, 2.2) with { PushPull = PushPullUse.Never };
        cold = cold with
        {
            Appliance = cold.Appliance with
            {
                Temperature = Temperature.FromDegreesCelsius(24),
                Surroundings = null,
                Water = null,
                LiquidReachable = false,
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.9), Kind = OilKind.PolyolEster },
            },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(cold);
        StageResult later = Hold.Simulate(cold.Appliance, new HoldOptions { Start = plan.Stages[^1].State, Duration = Duration.FromHours(3) });
        bool comesBack = later.Appliance.Pressure.Pascals > plan.Requirement.RequiredPressure.Pascals + 10_000;
        Assert.Equal(plan.IsLevelReached && comesBack, plan.ToDo.Any(finding => finding.Code == "comes-back-warm"));
        Assert.Equal(plan.IsLevelReached && comesBack, plan.ToString().Contains("but comes back to", StringComparison.Ordinal));
        RecoveryPlan dry = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20));
        Assert.DoesNotContain(dry.ToDo, finding => finding.Code == "comes-back-warm");
    }

    [Fact]
    public void A_level_behind_a_shut_restriction_is_not_reached()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        Appliance whole = job.Appliance with { Water = null, LiquidReachable = false };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            Appliance = whole with
            {
                Sections =
                [
                    new ApplianceSection { Name = "suction", InternalVolume = whole.InternalVolume * 0.5, Charge = whole.Charge * 0.02 },
                    new ApplianceSection { Name = "receiver", InternalVolume = whole.InternalVolume * 0.5, Charge = whole.Charge * 0.98 },
                ],
                Connections = [new SectionConnection { From = "suction", To = "receiver", FlowCoefficient = 0.02, IsCheckValve = true }],
                VaporPort = "suction",
            },
        });
        Assert.False(plan.IsLevelReached, plan.ToString());
        Assert.Equal(LevelObstacle.HiddenSection, plan.Verdict.Obstacle);
        Assert.Contains(plan.ToDo, finding => finding.Severity == Severity.Stop && finding.Message.Contains("does not see stands above it", StringComparison.Ordinal));
    }

    /// <summary>An evacuated cylinder would take carbon dioxide as dry ice: that with gas in it goes first.</summary>
    [Fact]
    public void Carbon_dioxide_goes_into_the_cylinder_that_holds_gas()
    {
        RecoveryCylinder With(string label, double kilograms) =>
            RecoveryCylinder.FromMark("3AA1800", Mass.FromKilograms(40), Mass.FromKilograms(45)) with { Label = label, Content = Mass.FromKilograms(kilograms), Refrigerant = kilograms > 0 ? "R-744" : null };
        RecoveryJob job = Jobs.Chiller("R-744", 3, 2.5) with
        {
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3), highPressureCutout: Pressure.FromBars(90)),
            Cylinders = [With("empty", 0), With("gas", 2)],
        };
        job = job with { Appliance = job.Appliance with { Temperature = Temperature.FromDegreesCelsius(20), Surroundings = null, LiquidReachable = false, Water = null } };
        Assert.Equal("gas", RecoveryPlanner.Plan(job).Stages.First(stage => stage.Kind == StageKind.SetUp).Cylinder);
    }

    /// <summary>Full of liquid at 20 °C, as a rule of the caller's may ask: not to be filled.</summary>
    [Fact]
    public void A_rule_of_ones_own_that_bursts_a_cylinder_is_a_stop()
    {
        FillRules full = FillRules.FromCaller("own", Ratio.FromPercent(100), Temperature.FromDegreesCelsius(20), "own");
        FillLimit limit = CylinderFill.Limit(Jobs.Cylinder(60), Fluid.Get("R-134a"), new FillOptions { Rules = full });
        Assert.Contains(limit.Findings, finding => finding.Code == "cylinder-full-when-warm" || (finding.Severity == Severity.Stop && finding.Message.Contains("full of liquid", StringComparison.Ordinal)));
        Assert.Contains(limit.Findings, finding => finding.Severity == Severity.Stop);
    }

    [Fact]
    public void A_strategy_moves_nothing_before_a_cylinder_is_connected()
    {
        InvalidOperationException error = Assert.Throws<InvalidOperationException>(() => RecoveryPlanner.Plan(Jobs.Chiller(), new First(StageKind.VaporRecovery)));
        Assert.Contains("before a cylinder is connected", error.Message, StringComparison.Ordinal);
        Assert.Equal(LevelObstacle.TooManyPulls, RecoveryPlanner.Plan(Jobs.Chiller(), new First(StageKind.OilDrain)).Verdict.Obstacle);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanStep((StageKind)99));
    }

    [Fact]
    public void Undefined_values_are_refused_and_a_reading_by_initializer_is_a_running_machine()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new EvacuationOptions { Class = (PressureClass)99 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new EvacuationOptions { Purpose = (OpeningPurpose)99 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new EvacuationOptions { Appliance = (ApplianceKind)99 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Jobs.Chiller() with { PushPull = (PushPullUse)99 });
        var reading = new RawReading { Time = 3, GrossWeight = 20 };
        Assert.True(reading.IsMachineRunning && reading.IsValveOpen);
        Assert.True(double.IsNaN(reading.SuctionGaugePressure) && double.IsNaN(reading.AirTemperature));
        Assert.Equal(-1, reading.Cylinder);
    }

    private sealed class First(StageKind kind) : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => new PlanStep(kind);
    }
}
