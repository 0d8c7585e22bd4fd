using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is to be checked of cylinders is said of those that the plan fills, and of no other.</summary>
public class CylindersInUseTests
{
    private static readonly DateTime Due = new(2028, 5, 1);

    /// <summary>One of them is enough; the second stays shut.</summary>
    private static RecoveryPlan Plan(Func<RecoveryCylinder, RecoveryCylinder> used, Func<RecoveryCylinder, RecoveryCylinder> spare) => RecoveryPlanner.Plan(
        Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never, Cylinders = [used(Jobs.Cylinder(123, "C1")), spare(Jobs.Cylinder(60, "C2"))] });

    [Fact]
    public void The_cylinder_that_is_filled_is_named_and_the_spare_one_is_not()
    {
        RecoveryPlan plan = Plan(cylinder => cylinder, cylinder => cylinder);
        Assert.Equal(["C1"], plan.Stages.Select(stage => stage.Cylinder).OfType<string>().Distinct());
        Assert.Equal("C1", Named(plan, "cylinder-taken-evacuated"));
        Assert.Equal("C1 (requalification date)", Named(plan, "cylinder-marks-unchecked"));
        Assert.Null(Named(plan, "cylinder-due-unchecked"));
    }

    [Fact]
    public void What_is_given_of_it_is_not_asked_for()
    {
        RecoveryPlan plan = Plan(cylinder => cylinder with { RequalificationDue = Due, Content = Mass.FromKilograms(1) }, cylinder => cylinder with { RequalificationDue = Due, Content = Mass.FromKilograms(1) });
        Assert.Null(Named(plan, "cylinder-taken-evacuated"));
        Assert.Null(Named(plan, "cylinder-marks-unchecked"));
        Assert.Equal("C1 (2028-05-01)", Named(plan, "cylinder-due-unchecked"));
    }

    [Fact]
    public void A_cylinder_without_marks_is_asked_for_both()
    {
        RecoveryPlan plan = Plan(
            cylinder => new RecoveryCylinder { Label = "C1", WaterCapacity = cylinder.WaterCapacity, TareWeight = cylinder.TareWeight, ServicePressure = cylinder.ServicePressure },
            cylinder => cylinder with { RequalificationDue = Due });
        Assert.Equal("C1 (specification, requalification date)", Named(plan, "cylinder-marks-unchecked"));
        Assert.Null(Named(plan, "cylinder-due-unchecked"));
    }

    private static string? Named(RecoveryPlan plan, string code) =>
        plan.Findings.Concat(plan.Cautions).SingleOrDefault(finding => finding.Code == code) is Finding finding ? finding.Values.Single(value => value.Name == "cylinders").ToText(DisplayUnits.International) : null;
}
