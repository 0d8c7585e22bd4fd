using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What must be said before anything is connected.</summary>
public class StartGateTests
{
    /// <summary>
    /// 49 CFR 173.304a(a)(2): from 1800 psi on, ammonia from 480 psi on. are not listed; their critical pressures, 48.3 and 37.5 bar (NIST Chemistry WebBook),
    /// are above 5/4 of 400 psi, 34.5 bar.
    /// </summary>
    [Theory]
    [InlineData("R-744", -10)]
    [InlineData("R-13", 0)]
    [InlineData("R-717", 18)]
    [InlineData("R-23", -20)]
    [InlineData("R-14", -80)]
    public void A_cylinder_too_weak_for_the_refrigerant_is_refused(string fluid, double celsius)
    {
        RecoveryJob job = Cold(fluid, celsius);
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Empty(plan.Stages);
        Assert.Equal(LevelObstacle.NoFitCylinder, plan.Verdict.Obstacle);
        Finding stop = plan.ToDo.First(finding => finding.Code is "cylinder-too-weak" or "cylinder-below-listed-pressure");
        Assert.Equal(Severity.Stop, stop.Severity);
        Assert.StartsWith("do not start: ", plan.ToString(), StringComparison.Ordinal);

        RecoveryPlan strong = RecoveryPlanner.Plan(job with { Cylinders = [.. job.Cylinders, Strong("S")] });
        Assert.NotEmpty(strong.Stages);
        Assert.All(strong.Stages.Where(stage => stage.Cylinder is not null), stage => Assert.Equal("S", stage.Cylinder));
        Assert.DoesNotContain("do not start", strong.ToString(), StringComparison.Ordinal);
    }

    /// <summary>R-410A has 33 bar at 54 °C, below 5/4 of 400 psi: the usual cylinder for it stays in use, in 55 °C of heat too.</summary>
    [Fact]
    public void The_usual_cylinder_is_not_refused()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller("R-410A", 20));
        Assert.True(plan.IsLevelReached, plan.ToString());
    }

    [Theory]
    [InlineData("R-744", 20)]
    [InlineData("R-410A", 75 - 5)]
    public void A_machine_is_not_connected_to_an_appliance_above_its_cutout(string fluid, double celsius)
    {
        RecoveryJob job = Cold(fluid, celsius);
        job = job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromPoundsForcePerSquareInch(565) }, Cylinders = [Strong("S")] };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Empty(plan.Stages);
        Assert.Equal(LevelObstacle.ApplianceAboveCutout, plan.Verdict.Obstacle);
        Finding stop = Assert.Single(plan.ToDo, finding => finding.Code == "appliance-above-cutout");
        Assert.Equal(Severity.Stop, stop.Severity);
        Assert.Contains("do not connect", plan.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("do not start: ", plan.ToString(), StringComparison.Ordinal);

        RecoveryPlan stronger = RecoveryPlanner.Plan(job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromPoundsForcePerSquareInch(1200) } });
        Assert.NotEmpty(stronger.Stages);
    }

    [Theory]
    [InlineData(0.6)]
    [InlineData(0.05)]
    [InlineData(0.999)]
    public void A_blend_with_a_share_that_burns_counts_as_one_that_burns(double share)
    {
        RecoveryJob job = Of(Fluid.Blend([new KeyValuePair<string, double>("R-134a", 1 - share), new KeyValuePair<string, double>("R-290", share)]));
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Finding stop = Assert.Single(plan.ToDo, finding => finding.Code == "machine-not-listed");
        Assert.Equal(Severity.Stop, stop.Severity);
        Assert.Equal(share, stop.Value("share that burns")!.InternationalValue!.Value, 1e-6);
        Assert.StartsWith("do not start: ", plan.ToString(), StringComparison.Ordinal);
        RecoveryPlan listed = RecoveryPlanner.Plan(job with { Machine = job.Machine with { ListedForFlammable = true } });
        Assert.DoesNotContain(listed.Findings, finding => finding.Code == "machine-not-listed");
    }

    /// <summary>R-410A is of group A1 as charged, R-32 in it or not (ASHRAE 34); R-134a/R-125 has nothing in it that burns.</summary>
    [Fact]
    public void A_blend_known_not_to_burn_does_not_count()
    {
        Fluid[] fluids = [Fluid.Get("R-410A"), Fluid.Blend([new KeyValuePair<string, double>("R-134a", 0.5), new KeyValuePair<string, double>("R-125", 0.5)])];
        Assert.All(fluids, fluid => Assert.DoesNotContain(RecoveryPlanner.Plan(Of(fluid)).Findings, finding => finding.Code == "machine-not-listed"));
    }

    [Fact]
    public void What_forbids_to_begin_comes_first()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Of(Fluid.Get("R-290")));
        Assert.StartsWith("do not start: R-290 burns", plan.ToString(), StringComparison.Ordinal);
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        RecoveryPlan spare = RecoveryPlanner.Plan(job with { Cylinders = [.. job.Cylinders, Jobs.Cylinder(30, "other") with { Refrigerant = "R-22" }] });
        Assert.Contains(spare.Findings, finding => finding.Severity == Severity.Note && finding.Message.StartsWith("other is not used.", StringComparison.Ordinal));
        Assert.DoesNotContain("do not start", spare.ToString(), StringComparison.Ordinal);
    }

    /// <summary>40 CFR 82.156: no higher than 5 psig before an oil change. R-123 at 20 °C has 76 kPa (NIST Chemistry WebBook).</summary>
    [Fact]
    public void Nothing_is_recovered_before_an_oil_change_below_its_level()
    {
        RecoveryJob job = Of(Fluid.Get("R-123"), 20, 200) with { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Empty(plan.Stages);
        Assert.True(plan.IsLevelReached);
        Assert.Equal(LevelOutcome.NothingToRecover, plan.Verdict.Outcome);
        Finding said = Assert.Single(plan.ToDo, finding => finding.Code == "nothing-to-recover");
        Assert.Contains("draws air in", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Findings, finding => finding.Code == "level-reached");

        RecoveryPlan warming = RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { Surroundings = Temperature.FromDegreesCelsius(60), MetalMass = Mass.Zero } });
        Assert.NotEqual(LevelOutcome.NothingToRecover, warming.Verdict.Outcome);
        RecoveryPlan repair = RecoveryPlanner.Plan(job with { Evacuation = null });
        Assert.NotEmpty(repair.Stages);
    }

    /// <summary>R-22 goes into a cylinder of its own, whatever is on hand for the job.</summary>
    [Fact]
    public void The_last_refrigerant_goes_into_a_cylinder_that_is_not_the_jobs()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20, cylinders: 1) with { MachinePast = new MachinePast { Refrigerant = Fluid.Get("R-22"), IsCleared = false } };
        PlannedStage clearing = RecoveryPlanner.Plan(job).Stages[0];
        Assert.Equal(StageKind.MachineClearing, clearing.Kind);
        HookupLine line = Assert.Single(clearing.Hookup.Lines);
        Assert.Equal(HookupPort.LastRefrigerantCylinder, line.To);
        string text = clearing.Hookup.ToString();
        Assert.Contains("a separate cylinder of R-22", text, StringComparison.Ordinal);
        Assert.Contains("never one of this job's", text, StringComparison.Ordinal);
        Assert.DoesNotContain("C1", text, StringComparison.Ordinal);
        PlannedStage last = RecoveryPlanner.Plan(job).Stages.Last(stage => stage.Kind == StageKind.MachineClearing);
        Assert.Equal(HookupPort.CylinderLiquid, Assert.Single(last.Hookup.Lines).To);
    }

    private static RecoveryCylinder Strong(string label) =>
        RecoveryCylinder.FromMark("3AA1800", Mass.FromPounds(123), Mass.FromPounds(150)) with { Label = label };

    private static RecoveryJob Cold(string fluid, double celsius)
    {
        RecoveryJob job = Of(Fluid.Get(fluid), celsius);
        return job with { Machine = job.Machine with { ListedForFlammable = true } };
    }

    private static RecoveryJob Of(Fluid fluid, double celsius = 20, double kilograms = 5) => new()
    {
        Appliance = new Appliance
        {
            Fluid = fluid,
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(6 * kilograms),
            Temperature = Temperature.FromDegreesCelsius(celsius),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
        Hoses = Jobs.Hoses(),
        Cylinders = [Jobs.Cylinder(123, "C1")],
    };
}
