using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>The line that a plan comes to: in one system of units, with what matters most first.</summary>
public class PlanHeadlineTests
{
    [Fact]
    public void It_is_in_the_units_that_are_asked_for_and_no_others()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 5);
        RecoveryPlan weak = RecoveryPlanner.Plan(job with
        {
            Appliance = job.Appliance with { Fluid = Refrigerant.Recovery.Fluids.Fluid.Get("R-410A") },
            Cylinders = [RecoveryCylinder.FromMark("4BA240", Mass.FromKilograms(20), Mass.FromKilograms(10)) with { Label = "C1" }],
        });
        string metric = weak.ToText(DisplayUnits.International);
        string customary = weak.ToText(DisplayUnits.UnitedStatesCustomary);
        Assert.Equal(metric, weak.ToString());
        Assert.All([metric, customary], text => Assert.StartsWith("do not start: ", text, StringComparison.Ordinal));
        Assert.All(["psig", "°F", " lb"], unit => Assert.DoesNotContain(unit, metric, StringComparison.Ordinal));
        Assert.All(["kPa", "°C", " kg"], unit => Assert.DoesNotContain(unit, customary, StringComparison.Ordinal));
        Assert.Contains("psig", customary, StringComparison.Ordinal);
        Assert.Contains("; 0 kg of 5 kg in ", metric, StringComparison.Ordinal);
    }

    /// <summary>Less than a kilogram is told in grams, less than four pounds in ounces: what the scale shows.</summary>
    [Fact]
    public void Small_charges_are_in_grams()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 0.4, litersPerKilogram: 4) with { PushPull = PushPullUse.Never });
        double grams = plan.Ledger.InCylinders.Grams;
        Assert.InRange(grams, 300, 400);
        Assert.Contains(FormattableString.Invariant($"; {grams:F0} g of 400 g in "), plan.ToString(), StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"; {grams / 28.349523:0.#} oz of 14.1 oz in "), plan.ToText(DisplayUnits.UnitedStatesCustomary), StringComparison.Ordinal);
    }

    /// <summary>A cylinder above its limit is a danger to whoever stands near, used or not: the line forbids to start, whatever the plan comes to.</summary>
    [Theory]
    [InlineData(1.03, true)]
    [InlineData(0.97, false)]
    public void An_overfilled_cylinder_stands_in_the_line(double share, bool forbids)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 5);
        double limit = Refrigerant.Recovery.Cylinders.CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).MaximumFill.Kilograms;
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(share * limit), Refrigerant = "R-134a" }, job.Cylinders[1]] });
        Assert.True(plan.IsLevelReached);
        Assert.Equal(forbids, plan.ToString().StartsWith("do not start: ", StringComparison.Ordinal));
        Assert.Equal(forbids, plan.ToString().Contains("over its limit", StringComparison.Ordinal));
    }

    /// <summary>Standing water at the tubes, warmer than 0 °C at the start, pulled without regard to frost: the line says so, though the level is reached.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Tubes_that_freeze_stand_in_the_line(bool kept)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { KeepAboveFreezing = kept, PushPull = PushPullUse.Never };
        job = job with
        {
            Appliance = job.Appliance with
            {
                LiquidReachable = false,
                Temperature = Temperature.FromDegreesCelsius(10),
                MetalMass = Mass.FromKilograms(50),
                Water = TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromDegreesCelsius(8), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.002)),
            },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Finding? freezes = plan.Findings.Said("tubes-freeze");
        Assert.Equal(kept ? null : Severity.Stop, freezes?.Severity);
        Assert.Equal(!kept, plan.ToText(DisplayUnits.UnitedStatesCustomary).StartsWith("do not start: Water in the tubes can freeze", StringComparison.Ordinal));
    }

    /// <summary>A shift has eight hours (common practice, no source): a job that takes longer says so, in its line and as what to decide.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(7)]
    [InlineData(9)]
    public void A_job_longer_than_a_shift_says_so(double hoursToSetUp)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 5) with { Times = new JobTimes { SetUp = Duration.FromHours(hoursToSetUp) } });
        bool isLong = plan.TotalDuration.Hours > 8;
        Assert.Equal(hoursToSetUp > 8, isLong);
        Assert.Equal(isLong, plan.ToString().Contains(", longer than a shift", StringComparison.Ordinal));
        Assert.Equal(isLong, plan.ToDo.Any(finding => finding is { Code: "longer-than-shift", Severity: Severity.Warning }));
        Assert.All(plan.ToDo.Where(finding => finding.Code == "longer-than-shift"), finding => Assert.Equal(plan.TotalDuration.Seconds, finding.Value("on site")!.InternationalValue!.Value, 1e-6));
    }
}
