using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What people do by hand takes the time that they say, and the refrigerant does not wait meanwhile.</summary>
public class HandlingTests
{
    private static readonly JobTimes Times = new()
    {
        SetUp = Duration.FromMinutes(7),
        HoseChange = Duration.FromMinutes(6),
        CylinderChange = Duration.FromMinutes(3),
        Close = Duration.FromMinutes(2),
        Hold = Duration.FromMinutes(11),
    };

    private static readonly RecoveryJob Job = Jobs.Chiller(kilograms: 60, cylinders: 2) with { Times = Times };

    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Job);

    [Theory]
    [InlineData(StageKind.SetUp, 7)]
    [InlineData(StageKind.HoseChange, 6)]
    [InlineData(StageKind.CylinderChange, 3)]
    [InlineData(StageKind.Hold, 11)]
    [InlineData(StageKind.Close, 2)]
    public void Handling_takes_its_time(StageKind kind, double minutes) =>
        Assert.Equal(minutes, Assert.Single(Plan.Stages, stage => stage.Kind == kind).Duration.Minutes, 1e-9);

    /// <summary>Usual times: common practice, no source.</summary>
    [Fact]
    public void Usual_times_are_those_of_the_trade()
    {
        var usual = new JobTimes();
        Assert.Equal([5, 5, 4, 5, 10, 3, 120], new[] { usual.SetUp, usual.HoseChange, usual.CylinderChange, usual.Close, usual.Hold, usual.OilService, usual.Patience }.Select(time => time.Minutes));
    }

    /// <summary>A cold appliance warms towards the air while hoses and cylinders are changed, and its gauge rises, not above the saturation of that air; nothing leaves it.</summary>
    [Theory]
    [InlineData(StageKind.CylinderChange)]
    [InlineData(StageKind.Hold)]
    public void Meanwhile_a_cold_appliance_warms(StageKind kind)
    {
        int at = Enumerable.Range(0, Plan.Stages.Count).First(i => Plan.Stages[i].Kind == kind);
        ApplianceState before = Plan.Stages[at - 1].After, after = Plan.Stages[at].After;
        Assert.True(after.Pressure > before.Pressure);
        Assert.InRange(after.Temperature.Kelvins, before.Temperature.Kelvins, Job.Appliance.Temperature.Kelvins + 1e-6);
        Assert.Equal(before.Mass.Kilograms, after.Mass.Kilograms, 1e-9);
        Assert.Equal(0, Plan.Stages[at].Moved.Kilograms);
    }

    /// <summary>A cold appliance in warm air warms from the moment the work begins, towards the air and not beyond it; nothing leaves it.</summary>
    [Fact]
    public void While_it_is_set_up_a_cold_appliance_warms()
    {
        PlannedStage setUp = Assert.Single(RecoveryPlanner.Plan(Cold(null), new SetUpOnly()).Stages);
        Assert.Equal(7, setUp.Duration.Minutes, 1e-9);
        Assert.InRange(setUp.After.Temperature.DegreesCelsius, 15, 40);
        Assert.Equal(20, setUp.After.Mass.Kilograms, 1e-9);
    }

    /// <summary>Where it comes to what it is built for meanwhile, its state is told at that moment, but who sets up the hoses needs the same time.</summary>
    [Fact]
    public void Setting_up_takes_its_time_whatever_the_gauge_shows()
    {
        PlannedStage setUp = Assert.Single(RecoveryPlanner.Plan(Cold(Pressure.FromKilopascals(300)), new SetUpOnly()).Stages);
        Assert.Equal(StageEnd.DesignPressure, setUp.Result!.End);
        Assert.InRange(setUp.Result.Duration.Minutes, 0.1, 6);
        Assert.Equal(300, setUp.After.Pressure.Kilopascals - 101.325, 0.1);
        Assert.Equal(7, setUp.Duration.Minutes, 1e-9);
    }

    /// <summary>A machine at rest loses its heat to the air as any body does: the excess falls by exp(−t·G/C).</summary>
    [Fact]
    public void A_machine_at_rest_cools_by_its_own_time_constant()
    {
        double air = Job.Appliance.Temperature.Kelvins;
        MachineBody body = Job.Machine.Body!;
        int hold = Enumerable.Range(0, Plan.Stages.Count).First(i => Plan.Stages[i].Kind == StageKind.Hold);
        Excess(hold, 11 * 60);
        Excess(Plan.Stages.Count - 1, 2 * 60);

        void Excess(int at, double seconds)
        {
            double before = Plan.Stages[at - 1].State.MachineTemperature!.Value.Kelvins - air;
            Assert.True(before > 2);
            Assert.Equal(
                before * Math.Exp(-seconds * body.AirConductance / body.HeatCapacity.JoulesPerKelvin), Plan.Stages[at].State.MachineTemperature!.Value.Kelvins - air, 1e-6);
        }
    }

    /// <summary>A cylinder that was taken off goes on cooling: when it comes back it is nearer to the air.</summary>
    [Fact]
    public void A_cylinder_that_waits_cools()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job, new BackAndForth(Duration.FromHours(2)));
        PlannedStage[] first = [.. plan.Stages.Where(stage => stage.Cylinder == "C1")];
        int left = Array.FindIndex(first, stage => stage.Kind == StageKind.VaporRecovery);
        CylinderState warm = first[left].State.Cylinder!, back = first[left + 1].State.Cylinder!;
        Assert.Equal(StageKind.CylinderChange, first[left + 1].Kind);
        double air = Job.Appliance.Temperature.Kelvins;
        Assert.True(warm.Temperature.Kelvins > air + 1);
        Assert.InRange(back.Temperature.Kelvins - air, 0, 0.6 * (warm.Temperature.Kelvins - air));
        Assert.Equal(warm.Mass.Kilograms, back.Mass.Kilograms, 1e-9);
    }

    [Fact]
    public void Without_a_hold_the_plan_ends_at_the_level()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job with { Times = Times with { Hold = Duration.Zero } });
        Assert.DoesNotContain(plan.Stages, stage => stage.Kind == StageKind.Hold);
        Assert.Equal(LevelOutcome.Reached, plan.Verdict.Outcome);
        Assert.Equal(plan.Requirement.RequiredPressure.Pascals, plan.End.Pressure.Pascals, 1e-3 * plan.Requirement.RequiredPressure.Pascals);
        Assert.Equal(Duration.Zero, plan.Verdict.HeldFor);
    }

    /// <summary>Each vessel of the machine with oil is drained and filled by itself: fitted and capped each time, and to drain it the oil must run out.</summary>
    [Theory]
    [InlineData(150, 60, 2)]
    [InlineData(150, 0, 1)]
    public void Oil_is_changed_vessel_by_vessel(double compressor, double separator, int vessels)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job with
        {
            MachinePast = new MachinePast
            {
                Refrigerant = Fluid.Get("R-22"),
                Oil = OilKind.Mineral,
                CompressorOil = Volume.FromMilliliters(compressor),
                SeparatorOil = Volume.FromMilliliters(separator),
            },
        });
        PlannedStage drain = Assert.Single(plan.Stages, stage => stage.Kind == StageKind.OilDrain), fill = Assert.Single(plan.Stages, stage => stage.Kind == StageKind.OilFill);
        Assert.Equal(3.0 * vessels, fill.Duration.Minutes, 1e-9);

        // 150 mL of 60 mPa·s through a metre of 5 mm at 86 kPa: Poiseuille gives 22 mL/s at best, so a quarter of a minute each, not minutes.
        Assert.InRange(drain.Duration.Minutes - fill.Duration.Minutes, 0.01, 0.5 * vessels);
        Assert.Equal(StageKind.SetUp, plan.Stages[plan.Stages.ToList().IndexOf(fill) + 1].Kind);
        double running = drain.Duration.Seconds - (180 * vessels);
        double bore = Math.PI * Math.Pow(5e-3, 4) * 12.5 * 6894.757 / (128 * 0.06 * 1);
        Assert.Equal((compressor + separator) * 1e-6 / bore, running, 0.2 * running);
    }

    private static RecoveryJob Cold(Pressure? design)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { Times = Times };
        return job with
        {
            Appliance = job.Appliance with
            {
                Temperature = Temperature.FromDegreesCelsius(5),
                Surroundings = Temperature.FromDegreesCelsius(40),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1.0 / 300),
                DesignGaugePressure = design,
            },
        };
    }

    private sealed class SetUpOnly : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => now.Stages.Count == 0 ? new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder } : null;
    }

    /// <summary>Sweep, equalize, pull a while, go over to the other cylinder, wait, and come back.</summary>
    private sealed class BackAndForth(Duration wait) : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => now.Stages.Count switch
        {
            0 => new PlanStep(StageKind.SetUp) { Cylinder = Job.Cylinders[0] },
            1 => new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromMinutes(5) },
            2 => new PlanStep(StageKind.CylinderChange) { Cylinder = Job.Cylinders[1] },
            3 => new PlanStep(StageKind.Rest) { Duration = wait },
            4 => new PlanStep(StageKind.CylinderChange) { Cylinder = Job.Cylinders[0] },
            _ => null,
        };
    }
}
