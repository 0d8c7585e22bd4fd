using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

public class RecoveryPlannerTests
{
    [Fact]
    public void A_chiller_is_swept_pushed_changed_over_pulled_held_cleared_and_closed()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());

        Assert.True(plan.IsLevelReached, plan.ToString());
        StageKind[] order =
        [
            StageKind.SetUp, StageKind.HoseSweep, StageKind.Equalize, StageKind.PushPull, StageKind.HoseChange, StageKind.VaporRecovery, StageKind.Hold,
            StageKind.MachineClearing, StageKind.Close,
        ];
        Assert.Equal(order, plan.Stages.Select(stage => stage.Kind).Where(order.Contains).Distinct());
        Assert.True(plan.End.Pressure <= plan.Requirement.RequiredPressure);
        Assert.False(plan.End.HasLiquid);
        Assert.DoesNotContain(plan.Findings, finding => finding.Severity == Severity.Stop);
    }

    [Fact]
    public void Stages_follow_each_other_without_gap()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());
        double clock = 0;
        foreach (PlannedStage stage in plan.Stages)
        {
            Assert.Equal(clock, stage.Start.Seconds, 6);
            clock += stage.Duration.Seconds;
        }

        Assert.Equal(clock, plan.TotalDuration.Seconds, 6);
        double[] times = [.. plan.Course().Select(point => point.Time.Seconds)];
        Assert.NotEmpty(times);
        Assert.Equal(times.OrderBy(time => time), times);
    }

    [Fact]
    public void What_stages_move_is_what_the_appliance_loses()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());
        double moved = plan.Stages.Sum(stage => stage.Moved.Kilograms);
        Assert.Equal(plan.Ledger.Charge.Kilograms - plan.Ledger.InAppliance.Kilograms, moved, 6);
    }

    [Fact]
    public void Too_few_cylinders_is_a_plan_that_says_so_and_how_far_it_gets()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 150, cylinders: 1));

        Assert.False(plan.IsLevelReached);
        Finding missing = Assert.Single(plan.Findings, finding => finding.Subject == FindingSubject.CylinderCapacity && finding.Severity == Severity.Stop);
        double room = CylinderFill.Limit(Jobs.Cylinder(123), Fluid.Get("R-134a")).MaximumFill.Kilograms;
        Assert.Equal(150 - room, missing.Value("missing")!.InternationalValue!.Value, 1e-9);
        Assert.Equal(room, plan.Ledger.InCylinders.Kilograms, 0.02 * room);
    }

    [Fact]
    public void Without_any_cylinder_nothing_leaves_the_appliance()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(cylinders: 0));

        Assert.False(plan.IsLevelReached);
        Assert.Equal(plan.Ledger.Charge, plan.Ledger.InAppliance);
        Assert.Contains(plan.Findings, finding => finding.Subject == FindingSubject.CylinderCapacity && finding.Severity == Severity.Stop);
    }

    [Fact]
    public void A_level_out_of_the_machines_reach_is_a_plan_that_says_so()
    {
        RecoveryJob job = Jobs.Chiller();
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Machine = job.Machine with { ClearanceRatio = 0.4 } });

        Assert.False(plan.IsLevelReached);
        Assert.True(plan.End.Pressure > plan.Requirement.RequiredPressure);
        Assert.Contains(plan.Findings, finding => finding.Subject == FindingSubject.EvacuationLevel && finding.Severity == Severity.Stop);
    }

    [Fact]
    public void Most_room_first_needs_fewest_change_overs()
    {
        RecoveryJob job = Jobs.Chiller() with { Cylinders = [Jobs.Cylinder(30, "small"), Jobs.Cylinder(239, "large"), Jobs.Cylinder(47.6, "middle")] };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);

        Assert.Equal(["large", "middle", "small"], plan.Cylinders.Select(use => use.Cylinder.Label));
        Assert.DoesNotContain(plan.Stages, stage => stage.Kind == StageKind.CylinderChange);
    }

    [Fact]
    public void A_cylinder_past_its_requalification_date_is_not_used()
    {
        RecoveryCylinder overdue = Jobs.Cylinder(239, "overdue") with { RequalificationDue = new DateTime(2020, 1, 1) };
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller() with { Cylinders = [overdue], Day = new DateTime(2026, 1, 1) });

        Assert.Equal(0, plan.Ledger.InCylinders.Kilograms);
        Assert.Contains(plan.Findings, finding => finding.Subject == FindingSubject.CylinderFitness && finding.Severity == Severity.Stop);
    }

    [Fact]
    public void A_flammable_refrigerant_on_a_machine_not_listed_for_it_is_stopped()
    {
        RecoveryJob job = Jobs.Chiller("R-32", 12);
        Assert.Contains(RecoveryPlanner.Plan(job).Findings, finding => finding.Subject == FindingSubject.Flammability && finding.Severity == Severity.Stop);
        RecoveryPlan listed = RecoveryPlanner.Plan(job with { Machine = job.Machine with { ListedForFlammable = true } });
        Assert.DoesNotContain(listed.Findings, finding => finding.Subject == FindingSubject.Flammability && finding.Severity == Severity.Stop);
        Assert.Contains(listed.Cautions, caution => caution.Subject == FindingSubject.Flammability);
    }

    [Fact]
    public void High_up_the_pull_goes_down_to_the_air_at_the_place_where_the_law_asks_for_less()
    {
        RecoveryJob job = Jobs.Chiller("R-22", 20) with { Barometer = Barometer.AtElevation(Length.FromMeters(2000)) };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);

        Assert.True(plan.Requirement.RequiredPressure > job.Barometer.Pressure);
        Assert.True(plan.IsLevelReached);
        Assert.True(plan.End.Pressure <= job.Barometer.Pressure);
        Assert.Contains(plan.Findings, finding => finding.Subject == FindingSubject.VacuumAndAltitude);
    }

    [Fact]
    public void The_callers_own_level_counts()
    {
        RecoveryJob job = Jobs.Chiller() with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(30) } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);

        Assert.Equal(30, plan.Requirement.RequiredPressure.Kilopascals, 9);
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.True(plan.End.Pressure.Kilopascals <= 30);
    }

    /// <summary>Little heat: liquid is left where the gauge first shows the level. It is boiled away in the same pull, and the one hold passes.</summary>
    [Fact]
    public void One_pull_goes_on_over_cold_liquid_until_one_hold_passes()
    {
        RecoveryJob job = Jobs.Chiller();
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            PushPull = PushPullUse.Never,
            Appliance = job.Appliance with
            {
                Charge = Mass.FromKilograms(20),
                InternalVolume = Volume.FromLiters(50),
                LiquidHeel = Mass.Zero,
                LiquidReachable = false,
                MetalMass = Mass.Zero,
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.5),
            },
        });

        Assert.True(plan.IsLevelReached, plan.ToString());
        PlannedStage pull = Assert.Single(plan.Stages, stage => stage.Kind == StageKind.VaporRecovery);
        Assert.Single(plan.Stages, stage => stage.Kind == StageKind.Hold);
        TrajectoryPoint atLevel = pull.Result!.Trajectory.First(point => point.AppliancePressure <= plan.Requirement.RequiredPressure);
        Assert.True(atLevel.LiquidMass.Kilograms > 0.1, "no liquid where the gauge first shows the level");
        Assert.Equal(StepReason.PullLonger, pull.Step.Reason);
        Assert.Contains(plan.ToDo, finding => finding.Code == "heat-sets-pace");
    }

    [Fact]
    public void The_same_job_in_other_units_is_the_same_plan()
    {
        RecoveryJob si = Jobs.Chiller();
        RecoveryJob ip = si with
        {
            Appliance = si.Appliance with
            {
                Charge = Mass.FromPounds(si.Appliance.Charge.Pounds),
                InternalVolume = Volume.FromCubicFeet(si.Appliance.InternalVolume.CubicFeet),
                Temperature = Temperature.FromDegreesFahrenheit(si.Appliance.Temperature.DegreesFahrenheit),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicFeetPerMinute(si.Machine.Displacement.CubicFeetPerMinute)),
        };

        RecoveryPlan a = RecoveryPlanner.Plan(si);
        RecoveryPlan b = RecoveryPlanner.Plan(ip);
        Assert.Equal(a.TotalDuration.Seconds, b.TotalDuration.Seconds, 1e-4 * a.TotalDuration.Seconds);
        Assert.Equal(a.Ledger.InCylinders.Kilograms, b.Ledger.InCylinders.Kilograms, 1e-4 * a.Ledger.InCylinders.Kilograms);
    }

    [Fact]
    public void A_low_pressure_chiller_is_pulled_to_25_mmHg_absolute()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller("R-123", 100));
        Assert.Equal(25 * 133.322387415, plan.Requirement.RequiredPressure.Pascals, 0.1);
        Assert.Equal(plan.IsLevelReached, plan.End.Pressure <= plan.Requirement.RequiredPressure);
    }

    /// <summary>The composition goes on drifting from pull to pull, through holds and changes of cylinders.</summary>
    [Fact]
    public void A_followed_composition_drifts_through_the_whole_plan()
    {
        RecoveryJob job = Jobs.Chiller("R-407C", 40, cylinders: 1) with
        {
            Cylinders = [Jobs.Cylinder(30, "A"), Jobs.Cylinder(30, "B"), Jobs.Cylinder(60, "C")],
            PushPull = PushPullUse.Never,
            FollowComposition = true,
        };
        job = job with { Machine = job.Machine with { TakesLiquid = false } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job), asCharged = RecoveryPlanner.Plan(job with { FollowComposition = false });
        Assert.True(plan.IsLevelReached);
        Assert.Null(asCharged.Fractionation);
        Assert.True(plan.Stages.Count(stage => stage.Result is StageResult) > 2);
        Assert.Equal(0, plan.Ledger.Unexplained.Kilograms, 1e-9);
        FractionationResult drift = plan.Fractionation!;
        Assert.All(plan.Stages.Where(stage => stage.Result is not null), stage => Assert.InRange(stage.Result!.Closure.Mass, 0, 1e-9));
        Assert.True(drift.LiquidDrift("R-32") < -0.1);
        Assert.Equal(0, drift.Points[0].Time.Seconds, 1e-9);
        for (int i = 1; i < drift.Points.Count; i++)
        {
            Assert.True(drift.Points[i].Time >= drift.Points[i - 1].Time);
            Assert.True(drift.Points[i].Composition[0].MassFraction <= drift.Points[i - 1].Composition[0].MassFraction + 1e-9);
        }

        Assert.Equal(plan.End.Composition[0].MassFraction, drift.Points[^1].Composition[0].MassFraction, 1e-9);
        Assert.NotEqual(asCharged.TotalDuration, plan.TotalDuration);
        Assert.Contains(plan.Findings, finding => finding.Subject == FindingSubject.Fractionation);
    }
}
