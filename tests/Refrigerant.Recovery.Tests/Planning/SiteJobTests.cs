using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Soak;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Jobs as they come up on site, and what a technician would expect of their plans.</summary>
public class SiteJobTests
{
    private static readonly Hose QuarterInchWithCore = Jobs.Hose(5, 4.7) with { Fittings = [Fitting.CoreDepressor()] };

    public static TheoryData<string> Names => [.. All.Keys];

    /// <summary>A split, a rooftop unit, a hot roof, an oil change, a long job, two chillers, a refrigerator, a rack in the cold.</summary>
    private static IReadOnlyDictionary<string, RecoveryJob> All { get; } = new Dictionary<string, RecoveryJob>
    {
        ["split"] = Split(),
        ["rooftop"] = Rooftop(),
        ["hot roof"] = HotRoof(),
        ["oil change"] = OilChange(),
        ["long"] = Long(),
        ["low-pressure chiller"] = LowPressureChiller(),
        ["chiller"] = Jobs.Chiller(kilograms: 140, cylinders: 3),
        ["refrigerator"] = Refrigerator(),
    };

    [Fact]
    public void A_split_is_done_within_three_quarters_of_an_hour_with_one_hold()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Split());
        Assert.Equal(LevelOutcome.ReachedAndHeld, plan.Verdict.Outcome);
        Assert.Single(plan.Stages, stage => stage.Kind == StageKind.Hold);
        Assert.InRange(plan.TotalDuration.Minutes, 15, 45);
    }

    [Fact]
    public void A_rooftop_unit_takes_two_holds_at_most()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Rooftop());
        Assert.Equal(LevelOutcome.ReachedAndHeld, plan.Verdict.Outcome);
        Assert.InRange(plan.Stages.Count(stage => stage.Kind == StageKind.Hold), 1, 2);
        Assert.True(plan.End.Pressure <= plan.Job.Barometer.Pressure);
    }

    /// <summary>R-410A has 2.8 MPa at 46 °C; what the machine adds brings one cylinder to its limit, which is not full for that.</summary>
    [Fact]
    public void On_a_hot_roof_one_cylinder_is_enough_with_a_hand_on_the_inlet_and_it_is_said_so()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(HotRoof());
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.Contains(plan.ToDo, finding => finding.Code is "throttle-inlet" or "cool-cylinder");
        Assert.DoesNotContain(plan.Findings, finding => finding.Code == "cylinder-room-missing");

        RecoveryPlan iced = RecoveryPlanner.Plan(HotRoof() with { Aids = new SiteAids { HasIce = true } });
        Assert.True(iced.IsLevelReached, iced.ToString());
        Assert.Contains(iced.ToDo, finding => finding.Code == "cool-cylinder");
        Assert.True(iced.TotalDuration < plan.TotalDuration);
        Assert.Contains(iced.Stages, stage => stage.Hookup.Settings.Any(setting => setting.Position == HookupPosition.IceBath));
    }

    [Fact]
    public void Neither_cut_out_nor_cylinder_see_more_than_their_limit()
    {
        RecoveryJob job = HotRoof();
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Machine = job.Machine with { Displacement = VolumeFlow.FromLitersPerSecond(3) } });
        double limit = Math.Min(job.Machine.HighPressureCutout.Pascals, (1.25 * job.Cylinders[0].ServicePressure.Pascals) + 101_325);
        Assert.All(plan.Course(), point => Assert.InRange(point.Point.DischargePressure.Pascals, 0, limit * (1 + 1e-6)));
        Assert.True(plan.IsLevelReached, plan.ToString());
    }

    [Fact]
    public void An_oil_change_stops_at_5_psig()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(OilChange());
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.Equal(5 * 6894.757293168361, plan.Requirement.RequiredPressure.Pascals - 101_325, 1);
        double lowest = plan.Course().Min(point => point.Point.AppliancePressure.Pascals);
        Assert.True(lowest > 101_325, $"pulled to {lowest:F0} Pa, a vacuum");
        Assert.True(lowest > 0.94 * plan.Requirement.RequiredPressure.Pascals, $"pulled to {lowest:F0} Pa");
    }

    /// <summary>Two tonnes of R-134a at 0.05 L/s of vapor of 28 kg/m³: 1.4 g/s, 17 days at the least.</summary>
    [Fact]
    public void Two_tonnes_with_a_small_machine_are_a_long_job_not_a_stall()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Long());
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.InRange(plan.TotalDuration.Days, 2000 / (28 * 5e-5) / 86_400, 60);
        Assert.DoesNotContain(plan.Stages, stage => stage.Result?.End == StageEnd.Stalled);
    }

    [Fact]
    public void A_chiller_is_not_pushed_above_its_design_pressure()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(LowPressureChiller());
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.Contains(plan.Stages, stage => stage.Kind == StageKind.PushPull);
        double highest = plan.Course().Max(point => point.Point.AppliancePressure.Pascals);
        Assert.InRange(highest, 0, 101_325 + (15 * 6894.757293168361));
        Assert.Equal(highest > 0.8 * (101_325 + (15 * 6894.757293168361)), plan.Findings.Any(finding => finding.Code == "push-pull-throttled"));
        double free = RecoveryPlanner.Plan(plan.Job with { Appliance = plan.Job.Appliance with { DesignGaugePressure = null } })
            .Course().Max(point => point.Point.AppliancePressure.Pascals);
        Assert.True(free >= highest);
    }

    /// <summary>90 % with the compressor running, or 4 inHg of vacuum (40 CFR 82.156(b)).</summary>
    [Fact]
    public void A_small_appliance_is_done_by_pressure_or_by_share_whichever_is_sooner()
    {
        RecoveryJob oily = Refrigerator();
        RecoveryPlan byPressure = RecoveryPlanner.Plan(oily);
        Assert.True(byPressure.IsLevelReached, byPressure.ToString());
        RecoveryPlan byShare = RecoveryPlanner.Plan(oily with { Appliance = oily.Appliance with { Oil = null } });
        Assert.Equal(LevelOutcome.ShareRecovered, byShare.Verdict.Outcome);
        Assert.True(byShare.Verdict.Recovered.DecimalFractions >= 0.9 - 1e-9);
        Assert.True(byShare.IsLevelReached);
        Assert.DoesNotContain(byShare.Stages, stage => stage.Kind == StageKind.Hold);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Plans_say_seven_things_at_most_each_once_and_in_both_systems_of_units(string name)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(All[name]);
        Assert.Empty(PlanInvariants.Broken(plan));
        Assert.InRange(plan.ToDo.Count, 0, 7);
        Assert.Equal(plan.Findings.Count, plan.ToDo.Count + plan.RestsOn.Count);
        Assert.All(plan.Findings.Concat(plan.Cautions), finding =>
        {
            Assert.NotNull(FindingCodes.Find(finding.Code));
            Assert.DoesNotContain(" kPa", finding.ToText(DisplayUnits.UnitedStatesCustomary), StringComparison.Ordinal);
            Assert.DoesNotContain("psig", finding.ToText(DisplayUnits.International), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Half_of_the_jobs_leave_five_things_to_do_or_fewer()
    {
        int[] counts = [.. All.Values.Select(job => RecoveryPlanner.Plan(job).ToDo.Count).Order()];
        Assert.InRange(counts[counts.Length / 2], 0, 5);
    }

    private static RecoveryJob Job(string fluid, double kilograms, double liters, double celsius, double litersPerSecond, HoseSet hoses, params RecoveryCylinder[] cylinders) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromDegreesCelsius(celsius),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(litersPerSecond)),
        Hoses = hoses,
        Cylinders = cylinders,
    };

    private static HoseSet Short(double bore) => new() { VaporSide = [Jobs.Hose(5, bore)], Discharge = [Jobs.Hose(5, bore)] };

    private static RecoveryJob WithOil(RecoveryJob job, double kilograms, OilKind kind) =>
        job with { Appliance = job.Appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(kilograms), Kind = kind } } };

    private static RecoveryJob Split() => WithOil(
        Job(
            "R-410A",
            2.5,
            7,
            27,
            0.35,
            new HoseSet { VaporSide = [QuarterInchWithCore], Discharge = [Jobs.Hose(5, 4.7)] },
            Jobs.Cylinder(47.6, "C1") with { Content = Mass.FromKilograms(5), Refrigerant = "R-410A" }),
        1,
        OilKind.PolyolEster);

    private static RecoveryJob Rooftop() => WithOil(Job("R-407C", 11, 24, 38, 0.5, Short(8), Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")), 2, OilKind.PolyolEster) with
    {
        Barometer = Barometer.AtElevation(Length.FromMeters(1600)),
    };

    private static RecoveryJob HotRoof()
    {
        RecoveryJob job = Job("R-410A", 6, 14, 46, 0.5, Short(8), Jobs.Cylinder(47.6, "C1"));
        return job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromMegapascals(3.9) } };
    }

    private static RecoveryJob OilChange() => WithOil(Job("R-22", 20, 50, 22, 0.5, Short(8), Jobs.Cylinder(123, "C1")), 4, OilKind.Mineral) with
    {
        Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange },
    };

    private static RecoveryJob Long() => Job(
        "R-134a", 2000, 3000, 20, 0.05, Short(8), [.. Enumerable.Range(1, 20).Select(i => Jobs.Cylinder(300, $"C{i}"))]);

    private static RecoveryJob LowPressureChiller()
    {
        RecoveryJob job = Job("R-123", 300, 600, 24, 2, Jobs.Hoses(10, 15), Jobs.Cylinder(1000, "C1"));
        return job with
        {
            Appliance = job.Appliance with
            {
                LiquidReachable = true,
                LiquidHeel = Mass.FromKilograms(10),
                MetalMass = Mass.FromKilograms(2000),
                DesignGaugePressure = Pressure.FromPoundsForcePerSquareInch(15),
            },
        };
    }

    private static RecoveryJob Refrigerator() => WithOil(Job("R-134a", 0.15, 3, 22, 0.3, Short(4.7), Jobs.Cylinder(30, "C1")), 0.2, OilKind.PolyolEster) with
    {
        Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
    };
}
