using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

public class RecoveryPlanJsonTests
{
    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Jobs.Chiller());

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_plan_survives_the_round_trip(bool course)
    {
        PlanDocument document = PlanDocument.From(Plan, course);
        string json = RecoveryPlanJson.Write(document);
        PlanDocument read = RecoveryPlanJson.Read(json);
        Assert.Equivalent(document, read, strict: true);
        Assert.Equal(json, RecoveryPlanJson.Write(read));
        Assert.Equal(json, RecoveryPlanJson.Write(Plan, course));
        Assert.Equal(course ? Plan.Course().Count() : 0, read.Course?.Count ?? 0);
    }

    [Fact]
    public void The_document_says_what_the_plan_says()
    {
        PlanDocument document = RecoveryPlanJson.Read(RecoveryPlanJson.Write(Plan));
        Assert.Equal(Plan.TotalDuration.Seconds, document.TotalDurationSeconds, 1e-6);
        Assert.Equal(Plan.IsLevelReached, document.Level.IsReached);
        Assert.Equal(Plan.Requirement.RequiredPressure.Kilopascals, document.Level.RequiredKilopascalsAbsolute, 1e-9);
        Assert.Equal(Plan.Requirement.GaugeReading.Kilopascals, document.Level.RequiredKilopascalsGauge, 1e-9);
        Assert.Equal(Plan.Stages.Select(stage => stage.Kind), document.Stages.Select(stage => stage.Kind));
        Assert.Equal(Plan.Cylinders.Select(use => use.GrossWeight.Kilograms), document.Cylinders.Select(entry => entry.GrossWeightKilograms), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(Plan.Findings.Select(finding => finding.Message), document.Findings.Select(finding => finding.Message));
        Assert.Equal(Plan.Ledger.InCylinders.Kilograms, document.Ledger.InCylindersKilograms, 1e-9);
    }

    /// <summary>Held above freezing over water at 0.2 °C the machine moves nothing for as long as it may run: nothing, give or take the simulation's tolerance.</summary>
    [Fact]
    public void A_job_in_which_nothing_flows_can_be_written()
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 107, 4);
        Temperature cold = Temperature.FromDegreesCelsius(0.2);
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            Appliance = job.Appliance with
            {
                Temperature = Temperature.FromDegreesCelsius(-10),
                Surroundings = cold,
                MetalMass = Mass.Zero,
                Water = TubeWater.Standing(Mass.FromKilograms(107), cold, ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
            },
            KeepAboveFreezing = true,
            PushPull = PushPullUse.Never,
            Machine = job.Machine with { TakesLiquid = false },
        });
        Assert.Equal(0, plan.Ledger.InCylinders.Kilograms, 0.02);
        PlanDocument document = RecoveryPlanJson.Read(RecoveryPlanJson.Write(plan));
        Assert.Equal(plan.Ledger.InCylinders.Kilograms, document.Ledger.InCylindersKilograms, 1e-9);
        LedgerEntry pushedOut = document.Ledger with { InCylindersKilograms = -0.01 };
        Assert.Equal(-0.01, pushedOut.InCylindersKilograms);
    }

    [Theory]
    [InlineData("\"refrigerant\": \"R-134a\"", "\"refrigerant\": null", "$.refrigerant")]
    [InlineData("\"chargeKilograms\": 60", "\"chargeKilograms\": -60", "$.ledger.chargeKilograms")]
    [InlineData("refrigerant-recovery-plan/1", "refrigerant-recovery-plan/2", "$.format")]
    [InlineData("\"severity\": ", "\"weight\": ", "$.findings[0].weight")]
    public void A_changed_document_is_told_where(string good, string bad, string path)
    {
        string json = RecoveryPlanJson.Write(Plan);
        Assert.Contains(good, json, StringComparison.Ordinal);
        Assert.Equal(path, Assert.Throws<DocumentException>(() => RecoveryPlanJson.Read(json.Replace(good, bad, StringComparison.Ordinal))).Path);
    }

    /// <summary>A program elsewhere relies on these names; a change of them is a new version of the format.</summary>
    [Fact]
    public void The_shape_is_stable()
    {
        using var document = System.Text.Json.JsonDocument.Parse(RecoveryPlanJson.Write(Plan));
        Assert.Equal(
            ["format", "libraryVersion", "refrigerant", "totalDurationSeconds", "level", "stages", "cylinders", "ledger", "findings", "cautions"],
            document.RootElement.EnumerateObject().Select(member => member.Name));
    }
}
