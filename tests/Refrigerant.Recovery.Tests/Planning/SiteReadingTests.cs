using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Plans read as on site: what is shut, what is watched, what must be said. Common practice, no source, where nothing else is named.</summary>
public class SiteReadingTests
{
    private static readonly RecoveryPlan Chiller = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3));

    private static HookupPosition? PositionOf(PlannedStage stage, HookupItem item) => stage.Hookup.Settings.FirstOrDefault(setting => setting.Item == item)?.Position;

    private static RecoveryJob Plain(string fluid, double kilograms, double liters, double celsius, double air, params RecoveryCylinder[] cylinders)
    {
        RecoveryJob job = Jobs.Chiller(fluid, kilograms, liters / kilograms);
        return job with
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(fluid),
                Charge = Mass.FromKilograms(kilograms),
                InternalVolume = Volume.FromLiters(liters),
                Temperature = Temperature.FromDegreesCelsius(celsius),
                Surroundings = Temperature.FromDegreesCelsius(air),
            },
            Hoses = new HoseSet { VaporSide = [Jobs.Hose(6, 6)], Discharge = [Jobs.Hose(6, 6)] },
            Cylinders = cylinders.Length > 0 ? cylinders : [Jobs.Cylinder(123, "C1")],
        };
    }

    [Fact]
    public void At_the_end_the_appliance_is_shut()
    {
        RecoveryJob small = Jobs.Chiller(cylinders: 1) with { Cylinders = [Jobs.Cylinder(47, "C1")] };
        RecoveryPlan full = RecoveryPlanner.Plan(small with { PushPull = PushPullUse.Always });
        Assert.False(full.IsLevelReached);
        foreach (PlannedStage close in new[] { Chiller.Stages[^1], full.Stages[^1] })
        {
            Assert.Equal(StageKind.Close, close.Kind);
            Assert.Equal(HookupPosition.Shut, PositionOf(close, HookupItem.ApplianceVaporPort));
            Assert.Equal(HookupPosition.Shut, PositionOf(close, HookupItem.ApplianceLiquidPort));
        }

        Assert.Contains(full.Stages[^1].Hookup.Settings, setting => setting.Item == HookupItem.HoseValves && setting.Why!.Contains("shut at both ends", StringComparison.Ordinal));
    }

    [Fact]
    public void Between_two_push_pulls_the_hoses_stay_where_they_are()
    {
        PlannedStage[] stages = [.. Chiller.Stages];
        int change = Array.FindIndex(stages, stage => stage.Kind == StageKind.CylinderChange);
        PlannedStage push = stages.First(stage => stage.Kind == StageKind.PushPull);
        Assert.Equal(push.Hookup.Lines.Select(line => line.ToString()), stages[change].Hookup.Lines.Select(line => line.ToString()));
    }

    /// <summary>10.5 kg of R-448A in 9 L: 1167 kg/m³, the density of its liquid at some 8 °C.</summary>
    [Theory]
    [InlineData(10.5, true)]
    [InlineData(6, false)]
    public void A_part_that_is_shut_off_full_of_liquid_is_told_before_it_bursts(double kilograms, bool full)
    {
        RecoveryJob job = Plain("R-448A", 6 + kilograms, 29, -20, 35, Jobs.Cylinder(123, "C1"));
        job = job with
        {
            Appliance = job.Appliance with
            {
                Sections =
                [
                    new ApplianceSection { Name = "condensing unit", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(6) },
                    new ApplianceSection { Name = "evaporator", InternalVolume = Volume.FromLiters(9), Charge = Mass.FromKilograms(kilograms) },
                ],
            },
        };
        Finding? finding = RecoveryPlanner.Plan(job).ToDo.FirstOrDefault(finding => finding.Code == "section-full-of-liquid");
        Assert.Equal(full, finding is { Severity: Severity.Stop });
        if (full)
        {
            Assert.InRange(finding!.Value("full at")!.InternationalValue!.Value, 276, 286);
        }
    }

    /// <summary>Carbon dioxide at −10 °C in a room of 22 °C: 2.65 MPa now, 6.0 MPa once it is as warm (saturation, Span and Wagner 1996).</summary>
    [Theory]
    [InlineData(4, true)]
    [InlineData(9, false)]
    public void An_appliance_that_warms_above_the_cut_out_is_not_begun(double cutoutMegapascals, bool stops)
    {
        RecoveryJob job = Plain("R-744", 12, 60, -10, 22, RecoveryCylinder.FromMark("3AA1800", Mass.FromPounds(110), Mass.FromPounds(130)) with { Label = "C1" });
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromMegapascals(cutoutMegapascals) } });
        Assert.Equal(stops, plan.ToDo.Any(finding => finding is { Code: "appliance-above-cutout", Severity: Severity.Stop }));
        Assert.Equal(stops, plan.Stages.Count == 0);
    }

    [Fact]
    public void What_is_taken_for_granted_of_a_cylinder_is_said()
    {
        RecoveryJob job = Plain("R-134a", 10, 25, 20, 20);
        RecoveryCylinder dated = job.Cylinders[0] with { RequalificationDue = new DateTime(2020, 1, 1) };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Cylinders = [dated] });
        Assert.Contains(plan.RestsOn, finding => finding.Code == "cylinder-taken-evacuated" && finding.Message.Contains("C1", StringComparison.Ordinal));
        Assert.Contains(plan.RestsOn, finding => finding.Code == "cylinder-due-unchecked" && finding.Message.Contains("2020-01-01", StringComparison.Ordinal));
        RecoveryPlan known = RecoveryPlanner.Plan(job with { Cylinders = [dated with { RequalificationDue = new DateTime(2030, 1, 1), Content = Mass.FromKilograms(1) }], Day = new DateTime(2026, 11, 27) });
        Assert.DoesNotContain(known.Findings, finding => finding.Code is "cylinder-taken-evacuated" or "cylinder-due-unchecked");
    }

    /// <summary>An appliance in the sun is no cylinder: what is said of the cylinder's temperature was simulated for the cylinder.</summary>
    [Fact]
    public void A_hot_appliance_makes_no_hot_cylinder()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Plain("R-22", 6, 30, 70, 20));
        double hottest = plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery).SelectMany(stage => stage.Result!.Trajectory).Max(point => point.CylinderKelvins);
        Assert.Equal(hottest > 325.15, plan.ToDo.Any(finding => finding.Code == "cylinder-hot"));
        Assert.True(hottest < 325.15, $"{hottest} K");
    }

    /// <summary>90 % of the charge with a machine of the year 2000 (40 CFR 82.156(b)): what the scale shows then ends the pull.</summary>
    [Fact]
    public void A_share_is_shown_by_the_scale()
    {
        RecoveryJob job = Plain("R-134a", 1.2, 4, 22, 22) with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small, CompressorRuns = true } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Equal(LevelOutcome.ShareRecovered, plan.Verdict.Outcome);
        PlannedStage pull = plan.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);
        StageWatch scale = pull.Hookup.Watches.First(watch => watch.By == WatchedBy.Scale && watch.Value?.Name == "share");
        Assert.Equal(plan.Cylinders[0].GrossWeight.Kilograms, scale.Value!.InternationalValue!.Value, 0.02);
        Assert.DoesNotContain(plan.ToDo, finding => finding.Code == "pull-past-level");
    }

    [Fact]
    public void A_machine_that_is_hot_again_at_once_is_not_rested_a_dozen_times()
    {
        RecoveryJob job = Plain("R-410A", 11, 30, 45, 45);
        RecoveryMachine weak = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.15)) with { ThermalCutout = Temperature.FromDegreesCelsius(130) };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Machine = weak });
        PlannedStage[] pulls = [.. plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery)];
        Assert.True(pulls.SkipLast(1).Skip(2).All(pull => pull.Moved.Kilograms >= 0.02 * 11), string.Join(", ", pulls.Select(pull => pull.Moved.Kilograms)));
        Assert.All(
            pulls.Where(pull => pull.Result!.End == StageEnd.ThermalCutout),
            pull => Assert.Contains(pull.Hookup.Watches, watch => watch.By == WatchedBy.Machine && watch.Value!.InternationalValue == 403.15));
    }

    /// <summary>A riser keeps push-pull from paying, not a lack of liquid.</summary>
    [Fact]
    public void Why_push_pull_is_not_used_names_the_height()
    {
        RecoveryJob job = Jobs.Chiller();
        Hose up = Jobs.Hose(120) with { Rise = Length.FromMeters(35) };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            Appliance = job.Appliance with { Temperature = Temperature.FromDegreesCelsius(2) },
            Machine = job.Machine with { TakesLiquid = false },
            Hoses = job.Hoses with { LiquidSide = [up] },
        });
        Assert.DoesNotContain(plan.Stages, stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery);
        Assert.Contains(plan.RestsOn, finding => finding.Code == "push-pull-not-used" && finding.Message.Contains("rises", StringComparison.Ordinal));
    }

    /// <summary>Canada names no figure: the bound of our own is near what other places allow, 17 to 19 kg of R-410A in 21.6 kg of water.</summary>
    [Fact]
    public void A_place_without_a_figure_is_no_reason_for_a_tenth_of_the_fill()
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12)) with { RequalificationDue = new DateTime(2030, 1, 1) };
        FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get("R-410A"), new FillOptions { Today = new DateTime(2026, 11, 27), Rules = FillRules.Canada });
        Assert.InRange(limit.MaximumFill.Kilograms, 15, 18);
        Assert.Contains(limit.Findings, finding => finding.Code == "cylinder-no-fill-figure");
    }
}
