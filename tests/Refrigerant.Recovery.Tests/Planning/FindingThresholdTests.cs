using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a plan says follows from its course: a finding is there exactly where the course calls for it, over plans that lie on both sides of each.</summary>
public class FindingThresholdTests
{
    private static readonly Dictionary<string, Lazy<RecoveryPlan>> Plans = new()
    {
        ["chiller"] = new(() => RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 140, cylinders: 3))),
        ["chiller with a relief device"] = new(() => RecoveryPlanner.Plan(Designed())),
        ["marked and dated"] = new(() => RecoveryPlanner.Plan(Marked())),
        ["vapor alone"] = new(() => RecoveryPlanner.Plan(VaporAlone(Jobs.Hose(5, 12)))),
        ["through a core"] = new(() => RecoveryPlanner.Plan(VaporAlone(Jobs.Hose(5, 4.7) with { Fittings = [Fitting.CoreDepressor()] }))),
        ["hot"] = new(() => HotRoof.Plan("one")),
        ["two hot"] = new(() => HotRoof.Plan("two")),
        ["ice"] = new(() => HotRoof.Plan("ice")),
        ["ideal machine"] = new(() => RecoveryPlanner.Plan(HotRoof.Job(1) with { Machine = HotRoof.Job(1).Machine with { IsentropicEfficiency = 1 }, Aids = new SiteAids { HasIce = true } })),
        ["hot machine"] = new(() => RecoveryPlanner.Plan(HotRoof.Job(1) with { Machine = HotRoof.Job(1).Machine with { IsentropicEfficiency = 0.35 } })),
        ["insulated"] = new(() => RecoveryPlanner.Plan(Insulated())),
        ["small"] = new(() => RecoveryPlanner.Plan(Small())),
        ["oil change"] = new(() => RecoveryPlanner.Plan(OilChange())),
    };

    /// <summary>What calls for each. 52 °C, 121, 149 and 200 °C, 60 °C, 80 %: common practice, no source.</summary>
    private static readonly Dictionary<string, Func<RecoveryPlan, bool>> CalledFor = new()
    {
        ["cylinder-hot"] = plan => plan.Stages.Where(stage => stage.Cylinder is not null && stage.Result is not null)
            .SelectMany(stage => stage.Result!.Trajectory).Max(point => point.CylinderTemperature.DegreesCelsius) > 52,
        ["cylinder-above-service"] = plan => plan.Cylinders.Any(use => use.PressureAtEnd is Pressure end && plan.Job.Barometer.ToGauge(end) > use.Cylinder.ServicePressure),
        ["machine-hot"] = plan => Discharge(plan) > 121,
        ["hot-surface"] = plan => Discharge(plan) > 60,
        ["air-drawn-in"] = plan => plan.Stages.Min(stage => stage.After.Pressure.Pascals) < 0.98 * 101_325,
        ["near-limit"] = plan => plan.Cylinders.Any(use => use.ShareOfLimit.Percent >= 80),
        ["displaces-air"] = plan => plan.Job.Appliance.Charge.Kilograms * 8.314462618 * plan.Job.Appliance.Temperature.Kelvins / (101_325 * plan.Job.Appliance.Fluid.MolarMass.KilogramsPerMole) > 1,
        ["hoses-slow"] = plan => plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery).MaxBy(stage => stage.Moved.Kilograms) is PlannedStage pull
            && pull.Step is { IsThrottled: false, LowestPressure: null } && pull.Result!.SuctionLineShare.Percent < 80,
        ["heat-sets-pace"] = plan => Waits(plan) > 1800,
        ["push-pull-siphons"] = plan => plan.Stages.Any(stage => stage.Kind == StageKind.PushPull),
        ["design-pressure-unknown"] = plan => plan.Stages.Any(stage => stage.Kind == StageKind.PushPull) && plan.Job.Appliance.DesignGaugePressure is null,
        ["still-above-air"] = plan => plan.End.Pressure.Pascals > 101_325 + 200,
        ["cylinder-marks-unchecked"] = plan => plan.Stages.Select(stage => stage.Cylinder).OfType<string>().Distinct()
            .Any(label => plan.Job.Cylinders.Single(cylinder => cylinder.Label == label) is { Specification: null } or { RequalificationDue: null }),
        ["heat-assumed"] = plan => plan.Job.Appliance.HeatResistance is null || plan.Job.Appliance.MetalMass is null,
        ["oil-holds"] = plan => plan.Job.Appliance.Oil is not null,
        ["appliance-holds-oil"] = plan => plan.Job.Appliance.Oil is not null,
        ["share-recovered"] = plan => plan.Verdict.Outcome == LevelOutcome.ShareRecovered,
        ["throttle-inlet"] = plan => plan.Stages.Any(stage => stage.Step.Reason == StepReason.Throttle),
        ["cool-cylinder"] = plan => plan.Stages.Any(stage => stage.Step.Reason is StepReason.Cool or StepReason.CoolerCylinder),
    };

    public static TheoryData<string> Codes => [.. CalledFor.Keys];

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_finding_is_there_exactly_where_the_course_calls_for_it(string code)
    {
        string[] expected = [.. Plans.Where(plan => CalledFor[code](plan.Value.Value)).Select(plan => plan.Key)];
        Assert.Equal(expected, Plans.Where(plan => plan.Value.Value.Findings.Concat(plan.Value.Value.Cautions).Any(finding => finding.Code == code)).Select(plan => plan.Key));
        Assert.InRange(expected.Length, 1, Plans.Count - 1);
    }

    /// <summary>Oil stands 149 °C (300 °F): near it a note, beyond it a caution, beyond 175 °C a warning, beyond 220 °C the machine is not to be used.</summary>
    [Fact]
    public void The_hotter_the_discharge_the_heavier_the_word()
    {
        var seen = new HashSet<Severity>();
        foreach (RecoveryPlan plan in Plans.Values.Select(plan => plan.Value))
        {
            if (plan.Findings.SingleOrDefault(finding => finding.Code == "machine-hot") is Finding hot)
            {
                double celsius = Discharge(plan);
                Assert.Equal(celsius > 220 ? Severity.Stop : celsius > 175 ? Severity.Warning : celsius > 149 ? Severity.Caution : Severity.Note, hot.Severity);
                seen.Add(hot.Severity);
            }
        }

        Assert.Equal(4, seen.Count);
    }

    /// <summary>A cylinder above its service pressure: the worst first, the others by name.</summary>
    [Fact]
    public void Of_hot_cylinders_the_worst_is_told_with_its_figures()
    {
        RecoveryPlan plan = Plans["two hot"].Value;
        Finding above = plan.Findings.Single(finding => finding.Code == "cylinder-above-service");
        CylinderUse worst = plan.Cylinders.MaxBy(use => use.PressureAtEnd!.Value)!;
        Assert.Contains(worst.Cylinder.Label, above.Message, StringComparison.Ordinal);
        Assert.Equal(worst.PressureAtEnd!.Value.Pascals - 101_325, above.Values.First(value => value.Name == "pressure").InternationalValue!.Value, 1);
        Finding hot = plan.Findings.Single(finding => finding.Code == "cylinder-hot");
        double kelvins = plan.Stages.Where(stage => stage.Cylinder is not null && stage.Result is not null).SelectMany(stage => stage.Result!.Trajectory).Max(point => point.CylinderTemperature.Kelvins);
        Assert.Equal(kelvins, hot.Values.First(value => value.Name == "hottest").InternationalValue!.Value, 1);
    }

    /// <summary>Liquid that waits for heat: latent heat of what is left, given in an hour, or in half of the wait where that is less.</summary>
    [Fact]
    public void The_heat_that_is_named_is_the_latent_heat_of_what_waits()
    {
        RecoveryPlan plan = Plans["insulated"].Value;
        Finding heat = plan.Findings.Single(finding => finding.Code == "heat-sets-pace");
        Assert.Equal(Waits(plan), heat.Values.First(value => value.Name == "waiting").InternationalValue!.Value, 0.02 * Waits(plan));
        TrajectoryPoint[] points = [.. plan.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery).Result!.Trajectory];
        double coldest = points.Where(point => point.LiquidMass.Kilograms > 0).Min(point => point.ApplianceTemperature.Kelvins);
        Assert.Equal(coldest, heat.Values.First(value => value.Name == "coldest").InternationalValue!.Value, 0.1);
        SaturationState cold = plan.Job.Appliance.Fluid.SaturationAt(Temperature.FromKelvins(coldest));
        double latent = (cold.Dew.Enthalpy - cold.Bubble.Enthalpy).JoulesPerKilogram;
        double left = points.Where((point, i) => i > 0 && IsWaiting(plan, point)).Max(point => point.LiquidMass.Kilograms);
        double watts = latent * left / Math.Min(3600, 0.5 * Waits(plan));
        Assert.Equal(watts, heat.Values.First(value => value.Name == "heat").InternationalValue!.Value, 0.1 * watts);
    }

    /// <summary>Nine tenths of what the appliance is built for: where push-pull comes above eight, the inlet is throttled there.</summary>
    [Fact]
    public void Push_pull_is_held_below_the_design_pressure()
    {
        RecoveryPlan plan = Plans["chiller with a relief device"].Value;
        double design = plan.Job.Appliance.DesignGaugePressure!.Value.Pascals;
        double highest = plan.Stages.Where(stage => stage.Kind == StageKind.PushPull).SelectMany(stage => stage.Result!.Trajectory).Max(point => point.AppliancePressure.Pascals) - 101_325;
        Assert.InRange(highest, 0.8 * design, design);
        Finding throttled = plan.Findings.Single(finding => finding.Code == "push-pull-throttled");
        Assert.Equal(0.9 * design, throttled.Values.First(value => value.Name == "throttle at").InternationalValue!.Value, 1);
        Assert.Contains(plan.Stages.First(stage => stage.Kind == StageKind.PushPull).Hookup.Watches, watch => watch.By == WatchedBy.ApplianceGauge && Math.Abs(watch.Value!.InternationalValue!.Value - (0.9 * design)) < 1);
        Assert.DoesNotContain(Plans["chiller"].Value.Findings, finding => finding.Code == "push-pull-throttled");
    }

    /// <summary>Before oil is drained the United States ask for 5 psig at most (40 CFR 82.156); other rules name no figure, and none is told where the appliance ends below the air.</summary>
    [Fact]
    public void The_pressure_to_drain_oil_at_is_told_where_a_rule_names_it()
    {
        RecoveryPlan here = Plans["oil change"].Value;
        Assert.True(here.End.Pressure.Pascals > 101_325);
        Finding caution = here.Cautions.Single(finding => finding.Code == "appliance-holds-oil");
        Assert.Equal(5 * 6894.757, caution.Values.Single(value => value.Name == "highest").InternationalValue!.Value, 1);
        RecoveryPlan there = RecoveryPlanner.Plan(here.Job with { Evacuation = new EvacuationOptions { OwnLevel = here.Requirement.RequiredPressure, Rules = RuleSet.EuropeanUnion } });
        Assert.True(there.End.Pressure.Pascals > 101_325);
        Assert.Empty(there.Cautions.Single(finding => finding.Code == "appliance-holds-oil").Values);
        RecoveryPlan deep = RecoveryPlanner.Plan(here.Job with { Evacuation = null });
        Assert.Empty(deep.Cautions.Single(finding => finding.Code == "appliance-holds-oil").Values);
    }

    private static double Discharge(RecoveryPlan plan) => plan.Stages.Max(stage => stage.Result?.HottestDischarge?.DegreesCelsius) ?? 0;

    /// <summary>Liquid that boils at less than three tenths of the machine's pace, more than 10 K colder than the air.</summary>
    private static bool IsWaiting(RecoveryPlan plan, TrajectoryPoint point)
    {
        double pace = plan.Job.Machine.Displacement.CubicMetersPerSecond * plan.Job.Appliance.Fluid.SaturationAt(plan.Job.Appliance.Temperature).Dew.Density.KilogramsPerCubicMeter;
        return point.LiquidMass.Kilograms > 0 && point.Flow.KilogramsPerSecond < 0.3 * pace && point.ApplianceTemperature.Kelvins < plan.Job.Appliance.Temperature.Kelvins - 10;
    }

    private static double Waits(RecoveryPlan plan)
    {
        PlannedStage? pull = plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && !stage.Step.IsThrottled).MaxBy(stage => stage.Duration.Seconds);
        TrajectoryPoint[] points = pull is null ? [] : [.. pull.Result!.Trajectory];
        return points.Skip(1).Zip(points, (point, before) => IsWaiting(plan, point) ? (point.Time - before.Time).Seconds : 0).Sum();
    }

    private static RecoveryJob Designed()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 60);
        return job with { Appliance = job.Appliance with { DesignGaugePressure = Pressure.FromKilopascals(520) } };
    }

    private static RecoveryJob Marked() =>
        Jobs.Chiller(kilograms: 20) with { Day = new DateTime(2026, 5, 1), Cylinders = [Jobs.Cylinder(123, "C1") with { RequalificationDue = new DateTime(2028, 5, 1) }] };

    private static RecoveryJob VaporAlone(Hose suction)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never, Hoses = new HoseSet { VaporSide = [suction], Discharge = [Jobs.Hose()] } };
        return job with { Machine = job.Machine with { TakesLiquid = false } };
    }

    private static RecoveryJob Insulated()
    {
        RecoveryJob job = VaporAlone(Jobs.Hose());
        return job with
        {
            Appliance = job.Appliance with
            {
                InternalVolume = Volume.FromLiters(50),
                LiquidHeel = Mass.Zero,
                LiquidReachable = false,
                MetalMass = Mass.Zero,
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.5),
            },
        };
    }

    private static RecoveryJob Small() => new()
    {
        Appliance = new Appliance { Fluid = Fluid.Get("R-134a"), Charge = Mass.FromKilograms(0.15), InternalVolume = Volume.FromLiters(1), Temperature = Temperature.FromDegreesCelsius(22) },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3)),
        Hoses = Jobs.Hoses(5, 4.7),
        Cylinders = [Jobs.Cylinder(30, "C1")],
        Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
    };

    private static RecoveryJob OilChange()
    {
        RecoveryJob job = Jobs.Chiller("R-22", 20, cylinders: 1) with { PushPull = PushPullUse.Never, Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } };
        return job with { Appliance = job.Appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(4), Kind = OilKind.Mineral } } };
    }
}
