using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a plan says where it matters, and does not say where it does not.</summary>
public sealed class SiteTextTests
{
    /// <summary>52 °C is the most that a cylinder is to see; in air at 50 °C what is condensed into it warms it past that, at 20 °C it does not.</summary>
    [Theory]
    [InlineData(50, true)]
    [InlineData(20, false)]
    public void A_cylinder_that_gets_hot_is_named_with_its_temperature(double celsius, bool hot)
    {
        RecoveryJob job = Split("R-410A", 5, 12, celsius);
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromMegapascals(3.9) } });
        double hottest = plan.Cylinders.Max(use => use.TemperatureAtEnd?.Kelvins ?? 0);
        Finding? finding = plan.Findings.SingleOrDefault(finding => finding.Code == "cylinder-hot");
        Assert.Equal(hot, finding is not null);
        if (finding is not null)
        {
            Assert.Equal(Severity.Warning, finding.Severity);
            Assert.True(finding.Value("hottest")!.InternationalValue >= Math.Max(325.15, hottest - 1e-6) - 273.15, finding.Message);
            Assert.Contains("125 °F", finding.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>All that is left, what the oil holds included, thinned to a tenth of 1.3 % by volume (IEC 60079-20-1): n = ln(m/(V·0.1·c)).</summary>
    [Fact]
    public void What_is_left_of_a_refrigerant_that_burns_is_purged_before_a_flame()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Fridge("R-600a"));
        Finding finding = Assert.Single(plan.ToDo, finding => finding.Code == "purge-before-flame");
        double limit = 0.013 * 0.058122 / 0.024465;
        double expected = Math.Log(plan.End.Mass.Kilograms / 1.5e-3 / (0.1 * limit));
        Assert.True(plan.End.DissolvedMass.Kilograms > 1e-3);
        Assert.True(expected > 1);
        Assert.Equal(expected, finding.Value("volume exchanges")!.InternationalValue!.Value, 1e-3);
        Assert.Equal(plan.End.DissolvedMass.Kilograms, finding.Value("dissolved")!.InternationalValue!.Value, 1e-9);
        Assert.DoesNotContain(RecoveryPlanner.Plan(Fridge("R-134a")).Findings, finding => finding.Code == "purge-before-flame");
    }

    [Theory]
    [InlineData("R-717", true)]
    [InlineData("R-123", false)]
    public void Ammonia_and_copper_are_kept_apart_and_poison_asks_for_more_than_air(string fluid, bool copper)
    {
        Finding[] cautions = [.. RefrigerantFacts.For(Fluid.Get(fluid)).Findings];
        Assert.Equal(copper, cautions.Any(caution => caution.Code == "refrigerant-attacks-copper" && caution.Message.Contains("brass", StringComparison.Ordinal)));
        string toxic = Assert.Single(cautions, caution => caution.Code == "refrigerant-toxic").Message;
        Assert.All(["ventilate", "detector", "breathing protection", "Local codes"], word => Assert.Contains(word, toxic, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(30, false)]
    [InlineData(150, true)]
    public void Oil_stands_under_pressure_only_where_the_appliance_ends_above_the_air(double kilopascals, bool presses)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Fridge("R-134a") with { Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(kilopascals) } });
        Assert.Equal(presses, plan.End.Pressure > plan.Job.Barometer.Pressure);
        Finding oil = Assert.Single(plan.Cautions, caution => caution.Code == "appliance-holds-oil");
        Assert.Equal(presses, oil.Message.Contains("under pressure", StringComparison.Ordinal));
        Assert.Equal(presses, oil.Value("highest") is not null);
        Assert.Contains("never compressed air", oil.Message, StringComparison.Ordinal);
    }

    /// <summary>R-134a at 18 °C stands at 4.3 bar gauge; the push adds a few bar, far below 40 and near to 6.</summary>
    [Fact]
    public void Throttle_for_the_design_pressure_is_said_only_near_it()
    {
        RecoveryJob job = Jobs.Chiller();
        RecoveryPlan Built(double bar) => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { DesignGaugePressure = Pressure.FromBars(bar) } });
        RecoveryPlan far = Built(40);
        Assert.Contains(far.Stages, stage => stage.Kind == StageKind.PushPull);
        Assert.DoesNotContain(far.Findings, finding => finding.Code == "push-pull-throttled");
        double peak = far.Stages.Where(stage => stage.Kind == StageKind.PushPull).SelectMany(stage => stage.Result!.Trajectory).Max(point => point.AppliancePressure.Bars);
        Assert.Contains(Built(peak - 1.01325 + 0.2).Findings, finding => finding.Code == "push-pull-throttled");
    }

    [Fact]
    public void One_finding_says_that_there_is_no_port_below_the_liquid()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { LiquidReachable = false, LiquidHeel = Mass.Zero } });
        Assert.Single(plan.Findings, finding => finding.Message.Contains("no port below the liquid", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Stages.SelectMany(stage => stage.Hookup.Settings), setting => setting.Item == HookupItem.ApplianceLiquidPort);

        RecoveryPlan reached = RecoveryPlanner.Plan(job);
        Assert.Contains(reached.Stages.SelectMany(stage => stage.Hookup.Settings), setting => setting.Item == HookupItem.ApplianceLiquidPort);
        Assert.All(reached.Findings, finding => Assert.DoesNotContain("no port below", finding.Message, StringComparison.Ordinal));
    }

    /// <summary>What a cylinder does at its limit counts at 90 % of it, not at a tenth.</summary>
    [Theory]
    [InlineData(0.05, false)]
    [InlineData(0.9, true)]
    public void What_happens_at_the_limit_is_said_near_the_limit(double share, bool said)
    {
        RecoveryJob job = Split("R-32", 0.5, 3, 25);
        RecoveryCylinder cylinder = job.Cylinders[0];
        FillLimit limit = CylinderFill.Limit(cylinder, job.Appliance.Fluid);
        Assert.Contains(limit.Findings, finding => finding.Code == "cylinder-water-capacity-rule");
        RecoveryPlan plan = RecoveryPlanner.Plan(job with
        {
            Cylinders = [cylinder with { Content = Mass.FromKilograms(share * limit.MaximumFill.Kilograms), Refrigerant = "R-32" }],
        });
        Assert.Equal(said, plan.Findings.Any(finding => finding.Code == "cylinder-water-capacity-rule"));
    }

    [Fact]
    public void A_cylinder_of_another_refrigerant_that_is_not_needed_is_a_note_else_a_stop()
    {
        RecoveryJob job = Split("R-410A", 2.5, 7, 25);
        RecoveryCylinder other = Jobs.Cylinder(47.6, "C2") with { Refrigerant = "R-22" };
        Finding spare = Assert.Single(RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0], other] }).Findings, Mixes);
        Assert.Equal(Severity.Note, spare.Severity);
        Assert.StartsWith("C2 is not used.", spare.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Stop, Assert.Single(RecoveryPlanner.Plan(job with { Cylinders = [other] }).ToDo, Mixes).Severity);

        static bool Mixes(Finding finding) => finding.Code == "cylinder-other-refrigerant";
    }

    [Fact]
    public void A_design_pressure_is_held_against_a_gauge_pressure()
    {
        RecoveryJob job = Jobs.Chiller();
        ImpossibleJobException low = Assert.Throws<ImpossibleJobException>(
            () => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { DesignGaugePressure = Pressure.FromKilopascals(100) } }));
        double absolute = job.Appliance.Fluid.SaturationAt(job.Appliance.Temperature).Bubble.Pressure.Kilopascals;
        Assert.Contains(FormattableString.Invariant($"stands at {absolute - 101.325:G7} kPa gauge ({absolute:G7} kPa absolute)"), low.Message, StringComparison.Ordinal);

        ImpossibleJobException small = Assert.Throws<ImpossibleJobException>(
            () => RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { InternalVolume = Volume.FromLiters(10) } }));
        Assert.Equal(small.Message.LastIndexOf("(Parameter", StringComparison.Ordinal), small.Message.IndexOf("(Parameter", StringComparison.Ordinal));
    }

    /// <summary>R-134a has 1043 kg/m³ as a liquid at 60 °C: 21.58 L hold 22.5 kg then, and 29 kg at −40 °C.</summary>
    [Fact]
    public void An_overfilled_cylinder_in_hot_air_is_a_stop_not_an_exception()
    {
        RecoveryJob job = Split("R-134a", 2, 8, 60);
        RecoveryCylinder over = job.Cylinders[0] with { Content = Mass.FromKilograms(24), Refrigerant = "R-134a" };
        RecoveryPlan plan = RecoveryPlanner.Plan(job with { Cylinders = [over] });
        Assert.False(plan.IsLevelReached);
        Assert.Contains(plan.ToDo, finding => finding is { Code: "cylinder-over-limit", Severity: Severity.Stop });
        Assert.Contains(plan.ToDo, finding => finding is { Code: "cylinder-full-of-liquid", Severity: Severity.Stop });
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job with { Cylinders = [over with { Content = Mass.FromKilograms(60) }] }));
    }

    /// <summary>A cold chiller with still water in its tubes and no liquid port.</summary>
    private static RecoveryJob Wet()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 30) with { PushPull = PushPullUse.Never };
        return job with
        {
            Appliance = job.Appliance with
            {
                LiquidReachable = false,
                LiquidHeel = Mass.Zero,
                Temperature = Temperature.FromDegreesCelsius(8),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.1),
                Water = TubeWater.Standing(Mass.FromKilograms(20), Temperature.FromDegreesCelsius(8), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005)),
            },
        };
    }

    [Fact]
    public void A_pull_that_waits_for_water_says_so_and_what_shortens_it()
    {
        RecoveryJob wet = Wet();
        RecoveryPlan plan = RecoveryPlanner.Plan(wet);
        Finding finding = Assert.Single(plan.ToDo, finding => finding.Code == "water-sets-pace");
        Assert.Contains("draining", finding.Message, StringComparison.Ordinal);
        Assert.InRange(finding.Value("waiting")!.InternationalValue!.Value, 3600, plan.TotalDuration.Seconds);
        RecoveryPlan drained = RecoveryPlanner.Plan(wet with { Appliance = wet.Appliance with { Water = null } });
        Assert.DoesNotContain(drained.Findings, finding => finding.Code == "water-sets-pace");
        Assert.True(drained.TotalDuration < plan.TotalDuration);
    }

    /// <summary>Water that stands in the tubes is kept from freezing unless the job says otherwise; then the plan forbids to begin.</summary>
    [Fact]
    public void Tubes_with_water_do_not_freeze_unasked()
    {
        RecoveryJob wet = Wet();
        RecoveryPlan kept = RecoveryPlanner.Plan(wet), careless = RecoveryPlanner.Plan(wet with { KeepAboveFreezing = false });
        Assert.All(kept.Stages.Where(stage => stage.Result is not null), stage => Assert.True(stage.Result!.ColdestSurface.DegreesCelsius >= -0.01));
        Assert.DoesNotContain(kept.Findings, finding => finding.Code == "tubes-freeze");
        Assert.Contains(careless.ToDo, finding => finding is { Code: "tubes-freeze", Severity: Severity.Stop });
        Assert.StartsWith("do not start: Water in the tubes", careless.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Ammonia eats brass and brazed seams: 4BA is not among the specifications that 49 CFR 173.304a(a)(2) lists for it.</summary>
    [Fact]
    public void Ammonia_goes_into_a_listed_cylinder_only()
    {
        RecoveryJob job = Jobs.Chiller("R-717", 12);
        RecoveryCylinder Marked(string mark) => RecoveryCylinder.FromMark(mark, Mass.FromPounds(123), Mass.FromPounds(70)) with { Label = mark };
        RecoveryPlan brazed = RecoveryPlanner.Plan(job with { Cylinders = [Marked("4BA480")] });
        Assert.Contains(brazed.ToDo, finding => finding is { Code: "cylinder-type-not-listed", Severity: Severity.Stop });
        Assert.Equal(0, brazed.Ledger.InCylinders.Kilograms);
        RecoveryPlan both = RecoveryPlanner.Plan(job with { Cylinders = [Marked("4BA480"), Marked("4AA480")] });
        Assert.All(both.Cylinders, use => Assert.Equal(use.Cylinder.Label == "4AA480", use.Received.Kilograms > 0));
    }

    [Theory]
    [InlineData(0.001, true)]
    [InlineData(1, false)]
    public void A_level_that_was_met_before_the_job_is_not_pulled_past(double kilograms, bool met)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Split("R-410A", kilograms, 8, 25));
        Assert.Equal(met, plan.Findings.Any(finding => finding.Code == "level-met-at-start"));
        Assert.False(met && plan.Findings.Any(finding => finding.Code == "pull-past-level"));
    }

    /// <summary>A heater can be switched: more watts never make the plan longer by more than what halving leaves.</summary>
    [Fact]
    public void A_heater_that_is_too_strong_is_used_in_part()
    {
        RecoveryJob job = Split("R-22", 4, 10, 10);
        double Minutes(double watts) => RecoveryPlanner.Plan(job with { Aids = new SiteAids { Heater = Power.FromWatts(watts) } }).TotalDuration.Minutes;
        double none = Minutes(0), right = Minutes(1000), strong = Minutes(16_000);
        Assert.True(right < none, FormattableString.Invariant($"{none:F1} min without, {right:F1} min with"));
        Assert.True(strong <= right + 1, FormattableString.Invariant($"{none:F1} min without, {right:F1} min with 1 kW, {strong:F1} min with 16 kW"));
    }

    /// <summary>47.6 lb and 12.5 kg are the marks of one cylinder; read as if both were kilograms, or pounds, they do not go together.</summary>
    [Theory]
    [InlineData(47.6, 27.5, false)]
    [InlineData(47.6, 12.5, true)]
    [InlineData(21.6, 27.5, true)]
    public void Marks_in_two_units_are_asked_about(double waterCapacity, double tare, bool odd)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(waterCapacity), Mass.FromPounds(tare));
        Assert.Equal(odd, CylinderFill.Limit(cylinder, Fluid.Get("R-134a")).Findings.Any(finding => finding.Code == "cylinder-marks-odd"));
        RecoveryPlan plan = RecoveryPlanner.Plan(Split("R-134a", 1, 5, 20) with { Cylinders = [cylinder] });
        Assert.Equal(odd, plan.Findings.Any(finding => finding.Code == "cylinder-marks-odd"));
    }

    private static RecoveryJob Split(string fluid, double kilograms, double liters, double celsius) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromDegreesCelsius(celsius),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
        Hoses = new HoseSet { VaporSide = [Jobs.Hose(5, 8)], Discharge = [Jobs.Hose(5, 8)] },
        Cylinders = [Jobs.Cylinder(47.6, "C1")],
    };

    private static RecoveryJob Fridge(string fluid)
    {
        RecoveryJob job = Split(fluid, 0.06, 1.5, 22);
        return job with
        {
            Appliance = job.Appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.15), Kind = OilKind.Mineral } },
            Machine = job.Machine with { ListedForFlammable = true },
        };
    }
}
