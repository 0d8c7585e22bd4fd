using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

/// <summary>Each rule, worked out by hand for a made-up fluid of closed formulas.</summary>
public sealed class FillLimitTests
{
    /// <summary>kg of water in a m³ at 60 °F: 0.45359237 kg in 27.737 in³ (49 CFR 173.304a, that conversion from memory).</summary>
    private const double Water = 0.45359237 / (27.737 * 1.6387064e-5);

    private const double Psi = 6894.757293168361;

    /// <summary>A cylinder of exactly 50 L.</summary>
    private static readonly RecoveryCylinder FiftyLiters = new()
    {
        Label = "C1",
        WaterCapacity = Kilograms(0.05 * Water),
        TareWeight = Kilograms(20),
        ServicePressure = Pascals(400 * Psi),
        Specification = CylinderSpecification.FromMark("DOT-4BA400"),
        RequalificationDue = new DateTime(2030, 1, 1),
    };

    private static readonly FillOptions Today = new() { Today = new DateTime(2026, 5, 1) };

    private static Mass Kilograms(double value) => new(value, MassUnit.Kilogram);

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Fluid Simple(string designation = "R-test") => Fluid.FromModel(new SimpleFluid(designation));

    private static double MassOf(FillLimit limit, FillRuleKind kind) => limit.Rule(kind)!.Mass.Kilograms;

    [Fact]
    public void EveryGeneralRule_GivesItsFormula()
    {
        // SimpleFluid: ρ'(T) = 1200 − 4·(T − 298.15).
        FillLimit limit = CylinderFill.Limit(FiftyLiters, Simple(), Today);
        Assert.Equal(0.05 * 0.8 * 1200, MassOf(limit, FillRuleKind.EightyPercentAt25C), 1e-9);
        Assert.Equal(0.05 * 1080 * (1 - 1e-6), MassOf(limit, FillRuleKind.NotLiquidFullAt55C), 1e-9);
        Assert.Equal(0.05 * 0.95 * 1100, MassOf(limit, FillRuleKind.LiquidDensityAt50C), 1e-9);
        Assert.Equal(0.05 * 1060 * (1 - 1e-6), MassOf(limit, FillRuleKind.NotLiquidFullAt60C), 1e-9);
        Assert.Equal(0.8 * 0.05 * Water, MassOf(limit, FillRuleKind.EightyPercentOfWaterCapacity), 1e-9);
        Assert.Equal(FillRuleKind.EightyPercentAt25C, limit.GoverningRule.Kind);
        Assert.Equal(48, limit.MaximumFill.Kilograms, 1e-9);
        Assert.Equal(68, limit.MaximumGrossWeight.Kilograms, 1e-9);
        Assert.Equal(48, limit.Room.Kilograms, 1e-9);
        Assert.Null(limit.Rule(FillRuleKind.ListedFillingDensity));
        Assert.Null(limit.Rule(FillRuleKind.ListedFillingRatio));
        Assert.Null(limit.Rule(FillRuleKind.RecoveredWithOil));
        Assert.Equal(
            [FillRuleKind.ListedFillingRatio, FillRuleKind.ListedFillingDensity, FillRuleKind.RecoveredWithOil],
            limit.NotApplied.Select(skipped => skipped.Kind));
        Assert.Equal("R-test in C1: 48.000 kg at most, 68.000 kg on the scale (liquid fills 80 % of the volume at 77 °F (25 °C))", limit.ToString());
    }

    [Fact]
    public void PressureRules_GiveTheDensityAtTheirPressure()
    {
        // A "gas" at every temperature of the rules: ρ = p·M/(R·T), M = 0.1 kg/mol.
        Fluid gas = Fluid.FromModel(new SimpleFluid { Critical = 290, Lowest = 200 });
        FillLimit limit = CylinderFill.Limit(FiftyLiters, gas, Today);
        double Gas(double pascals, double kelvins) => 0.05 * pascals * 0.1 / (8.314462618 * kelvins);
        Assert.Equal(Gas((1.25 * 400 * Psi) + 101_325, 328.15), MassOf(limit, FillRuleKind.PressureAt55C), 1e-6);
        Assert.Equal(Gas((400 * Psi) + 101_325, 294.2611111), MassOf(limit, FillRuleKind.PressureAt21C), 1e-6);

        // 4BA: test pressure twice the service pressure (from memory); P200 holds p − 1 bar against it.
        Assert.Equal(Gas((800 * Psi) + 1e5, 338.15), MassOf(limit, FillRuleKind.TestPressureAt65C), 1e-6);
        Assert.Equal(FillRuleKind.PressureAt21C, limit.GoverningRule.Kind);
        Assert.Null(limit.Rule(FillRuleKind.EightyPercentAt25C));
        Assert.Null(limit.Rule(FillRuleKind.NotLiquidFullAt55C));
        Assert.Contains(limit.NotApplied, skipped => skipped.Kind == FillRuleKind.NotLiquidFullAt55C && skipped.Reason.Contains("critical", StringComparison.Ordinal));
    }

    [Fact]
    public void ASaturationPressureAboveFiveFourths_LeavesRoomForVaporOnlyAndStops()
    {
        SimpleFluid strong = new() { PressureAt313 = 2.5e6 };
        RecoveryCylinder weak = FiftyLiters with { ServicePressure = Pascals(300 * Psi), Specification = CylinderSpecification.FromMark("4BA300") };
        FillLimit limit = CylinderFill.Limit(weak, Fluid.FromModel(strong), Today);
        double allowed = (1.25 * 300 * Psi) + 101_325;
        Assert.True(strong.BubblePressure(328.15) > allowed);
        Assert.Equal(FillRuleKind.PressureAt55C, limit.GoverningRule.Kind);
        Assert.Equal(0.05 * strong.VaporDensity(328.15, allowed), limit.MaximumFill.Kilograms, 1e-9);
        Finding stop = Assert.Single(limit.Findings, finding => finding.Severity == Severity.Stop);
        Assert.Equal(FindingSubject.CylinderPressure, stop.Subject);
        Assert.Contains("375 psig", stop.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(30.9, Severity.Stop)]
    [InlineData(31.5, Severity.Caution)]
    public void UnCylinder_IsHeldAgainstItsTestPressure(double bar, Severity expected)
    {
        // Bubble pressure at 65 °C chosen as 32 bar absolute: P200 asks for 31 bar, 49 CFR 173.304b for 32.
        SimpleFluid model = new() { PressureAt313 = 32e5 / Math.Exp(2500 * ((1 / 313.15) - (1 / 338.15))) };
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(Pascals(bar * 1e5), Kilograms(0.05 * Water), Kilograms(20)) with { RequalificationDue = new DateTime(2030, 1, 1) };
        FillLimit limit = CylinderFill.Limit(cylinder, Fluid.FromModel(model), Today);
        Assert.Single(limit.Findings, finding => finding.Subject == FindingSubject.CylinderPressure && finding.Severity == expected);
        Assert.Null(limit.Rule(FillRuleKind.PressureAt55C));
        Assert.Null(limit.Rule(FillRuleKind.PressureAt21C));
        Assert.Equal(expected == Severity.Stop, limit.GoverningRule.Kind == FillRuleKind.TestPressureAt65C);
    }

    [Fact]
    public void UnCylinder_StrongEnough_HasNoPressureFinding()
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(Pascals(48e5), Kilograms(0.05 * Water), Kilograms(20));
        Assert.DoesNotContain(CylinderFill.Limit(cylinder, Simple(), Today).Findings, finding => finding.Subject == FindingSubject.CylinderPressure);
    }

    [Theory]
    [InlineData("R-22", 400, 105)]
    [InlineData("R-12", 400, 119)]
    [InlineData("R-115", 225, 110)]
    [InlineData("R-142b", 150, 100)]
    [InlineData("R-717", 480, 54)]
    [InlineData("R-744", 1800, 68)]
    [InlineData("R-744", 1999, 68)]
    [InlineData("R-744", 2000, 70.3)]
    [InlineData("R-744", 2265, 73.2)]
    [InlineData("R-744", 2400, 74.5)]
    [InlineData("R-744", 3000, 74.5)]
    [InlineData("R-744", 1000, 68)]
    public void ListedFillingDensity_IsThePercentOfWaterCapacity(string designation, int psi, double percent)
    {
        // 49 CFR 173.304a(a)(2).
        RecoveryCylinder cylinder = FiftyLiters with { ServicePressure = Pascals(psi * Psi), Specification = CylinderSpecification.FromMark("3AA" + psi) };
        FillLimit limit = CylinderFill.Limit(cylinder, Simple(designation), Today);
        Assert.Equal(percent / 100 * 0.05 * Water, MassOf(limit, FillRuleKind.ListedFillingDensity), 1e-9);
        Assert.True(limit.Rule(FillRuleKind.ListedFillingDensity)!.IsLimit);
        bool weak = designation == "R-744" && psi < 1800;
        Assert.Equal(weak, limit.Findings.Any(finding => finding.Message.Contains("lowest service pressure listed", StringComparison.Ordinal)));
    }

    /// <summary>49 CFR 173.304a(a)(2) lists R-22 for a mark of 240 psi; the equation of state gives 300.8 psig at 55 °C, 5/4 of it are 300.</summary>
    [Theory]
    [InlineData("4BA240", false)]
    [InlineData("4BA230", true)]
    [InlineData("4AA240", true)]
    public void AMarkThatTheLawLists_IsNotTooWeak(string mark, bool weak)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(mark, Kilograms(20), Kilograms(12)) with { RequalificationDue = new DateTime(2030, 1, 1) };
        Assert.Equal(weak, CylinderFill.Limit(cylinder, Fluid.Get("R-22"), Today).Findings.Any(f => f.Code == "cylinder-too-weak"));
        Assert.Contains(CylinderFill.Limit(cylinder, Fluid.Get("R-407C"), Today).Findings, f => f.Code == "cylinder-too-weak");
    }

    [Fact]
    public void SpecificationsThatAreNotListed_ArePointedOut()
    {
        RecoveryCylinder cylinder = FiftyLiters with { ServicePressure = Pascals(480 * Psi), Specification = CylinderSpecification.FromMark("4BA480") };
        Assert.Contains(CylinderFill.Limit(cylinder, Simple("R-717"), Today).Findings, f => f.Severity == Severity.Stop && f.Message.Contains("is not among", StringComparison.Ordinal));
        RecoveryCylinder right = cylinder with { Specification = CylinderSpecification.FromMark("4AA480") };
        Assert.DoesNotContain(CylinderFill.Limit(right, Simple("R-717"), Today).Findings, f => f.Subject == FindingSubject.CylinderFitness);
        Assert.DoesNotContain(CylinderFill.Limit(cylinder, Simple("R-152a"), Today).Findings, f => f.Subject == FindingSubject.CylinderFitness);
        RecoveryCylinder un = RecoveryCylinder.FromTestPressure(Pascals(5e6), Kilograms(10), Kilograms(5)) with { RequalificationDue = new DateTime(2030, 1, 1) };
        Assert.DoesNotContain(CylinderFill.Limit(un, Simple("R-717"), Today).Findings, f => f.Subject == FindingSubject.CylinderFitness);
    }

    [Theory]
    [InlineData(1105.0, true)]
    [InlineData(1095.0, false)]
    public void AListedRatio_BindsOnlyWhereItIsMoreThanTwoPercentStricter(double densityAt50, bool binds)
    {
        // R-134a is remembered with 1.05 kg/l; the rule gives 0.95·ρ'(50 °C): 1049.75 or 1040.25 kg/m³ times the factor below.
        double scale = binds ? 1.0719 / 1.04975 : 1.07 / 1.04025;
        SimpleFluid model = new("R-134a") { LiquidDensity = (densityAt50 * scale) + 40, Expansion = 1.6 };
        Assert.Equal(binds ? 1071.9 : 1070.0, 0.95 * model.Liquid(323.15), 0.05);
        FillRule rule = CylinderFill.Limit(FiftyLiters, Fluid.FromModel(model), Today).Rule(FillRuleKind.ListedFillingRatio)!;
        Assert.Equal(binds, rule.IsLimit);
        Assert.Equal(0.05 * 1050, rule.Mass.Kilograms, 1e-9);
        Assert.Equal(Evidence.Read, rule.Figure.Evidence);
        Assert.Contains(binds ? "-2.04 %" : "-1.87 %", rule.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(35, 0.87)]
    [InlineData(48.9, 0.87)]
    [InlineData(49, 0.95)]
    [InlineData(60, 0.95)]
    [InlineData(20, 0.87)]
    public void AListedRatio_IsThatOfTheTestPressure(double bar, double kilogramsPerLiter)
    {
        // R-125, remembered at 35 and 49 bar; below both, the lower.
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(Pascals(bar * 1e5), Kilograms(0.05 * Water), Kilograms(20));
        FillLimit limit = CylinderFill.Limit(cylinder, Simple("R-125"), Today);
        Assert.Equal(50 * kilogramsPerLiter, MassOf(limit, FillRuleKind.ListedFillingRatio), 1e-9);
    }

    // ADR, 4.1.4.1, P200 table 2, the test pressures in bar and the ratios from memory; one below each pressure the row before counts.
    [Theory]
    [InlineData("R-13B1", 42, 1.13)]
    [InlineData("R-13B1", 119, 1.13)]
    [InlineData("R-13B1", 120, 1.44)]
    [InlineData("R-13B1", 250, 1.60)]
    [InlineData("R-13", 119, 0.83)]
    [InlineData("R-13", 120, 0.90)]
    [InlineData("R-21", 10, 1.23)]
    [InlineData("R-170", 119, 0.25)]
    [InlineData("R-170", 120, 0.30)]
    [InlineData("R-170", 300, 0.40)]
    [InlineData("R-744", 249, 0.68)]
    [InlineData("R-744", 250, 0.76)]
    public void ListedRatios_AreThePublishedOnes(string designation, double bar, double kilogramsPerLiter)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(Pascals(bar * 1e5), Kilograms(0.05 * Water), Kilograms(20));
        FillLimit limit = CylinderFill.Limit(cylinder, Simple(designation), Today);
        Assert.Equal(50 * kilogramsPerLiter, MassOf(limit, FillRuleKind.ListedFillingRatio), 1e-9);
    }

    [Fact]
    public void AListedRatio_WithoutAnyGeneralRule_Binds()
    {
        RecoveryCylinder plain = FiftyLiters with { Specification = null };
        Fluid gas = Fluid.FromModel(new SimpleFluid("R-744") { Critical = 290 });
        FillRule rule = CylinderFill.Limit(plain, gas, Today).Rule(FillRuleKind.ListedFillingRatio)!;
        Assert.True(rule.IsLimit);
        Assert.Equal(0.05 * 680, rule.Mass.Kilograms, 1e-9);
        Assert.Contains("gives no figure", rule.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void RecoveredWithOil_IsShownAndBindsOnlyWhenAsked()
    {
        // TRG 102, annex group 3.1: R-22 with oil 0.75 kg/l.
        FillLimit shown = CylinderFill.Limit(FiftyLiters, Simple("R-22"), Today);
        Assert.Equal(37.5, MassOf(shown, FillRuleKind.RecoveredWithOil), 1e-9);
        Assert.False(shown.Rule(FillRuleKind.RecoveredWithOil)!.IsLimit);
        Assert.NotEqual(FillRuleKind.RecoveredWithOil, shown.GoverningRule.Kind);
        FillLimit asked = CylinderFill.Limit(FiftyLiters, Simple("R-22"), Today with { ApplyRecoveredWithOil = true });
        Assert.Equal(FillRuleKind.RecoveredWithOil, asked.GoverningRule.Kind);
        Assert.Equal(37.5, asked.MaximumFill.Kilograms, 1e-9);
        Assert.Equal(37.5, MassOf(CylinderFill.Limit(FiftyLiters, Simple("R-12"), Today), FillRuleKind.RecoveredWithOil), 1e-9);
    }

    [Fact]
    public void Oil_TakesRoomFromTheRefrigerant()
    {
        FillLimit limit = CylinderFill.Limit(FiftyLiters, Simple(), Today with { OilVolume = new Volume(5, VolumeUnit.Liter) });
        Assert.Equal(0.045 * 0.8 * 1200, limit.MaximumFill.Kilograms, 1e-9);
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(
            () => CylinderFill.Limit(FiftyLiters, Simple(), Today with { OilVolume = new Volume(50.001, VolumeUnit.Liter) }));
        Assert.Contains("OilVolume", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheOldRule_IsNeverALimitAndIsCalledOutWhereItOverfills()
    {
        Fluid light = Fluid.FromModel(new SimpleFluid { LiquidDensity = 500, Expansion = 1.5 });
        FillLimit limit = CylinderFill.Limit(FiftyLiters, light, Today);
        Assert.False(limit.Rule(FillRuleKind.EightyPercentOfWaterCapacity)!.IsLimit);
        Assert.Equal(0.05 * 0.8 * 500, limit.MaximumFill.Kilograms, 1e-9);

        // 0.8·997.94 against 0.8·500: 99.6 % over.
        Assert.Contains(limit.Findings, f => f.Subject == FindingSubject.CylinderOverfill && f.Message.Contains("99.6 % over", StringComparison.Ordinal));
        Assert.DoesNotContain(CylinderFill.Limit(FiftyLiters, Simple(), Today).Findings, f => f.Subject == FindingSubject.CylinderOverfill);
    }

    [Fact]
    public void Content_TakesRoomAndOverfillStops()
    {
        RecoveryCylinder half = FiftyLiters with { Content = Kilograms(30), Refrigerant = "R-test" };
        FillLimit limit = CylinderFill.Limit(half, Simple(), Today);
        Assert.Equal(48, limit.MaximumFill.Kilograms, 1e-9);
        Assert.Equal(18, limit.Room.Kilograms, 1e-9);
        Assert.DoesNotContain(limit.Findings, f => f.Severity >= Severity.Warning);

        FillLimit over = CylinderFill.Limit(half with { Content = Kilograms(50) }, Simple(), Today);
        Assert.Equal(0, over.Room.Kilograms);
        Finding stop = Assert.Single(over.Findings, f => f.Severity == Severity.Stop);
        Assert.Equal(FindingSubject.CylinderOverfill, stop.Subject);
        Assert.Contains("2 kg over its limit of 48 kg", stop.ToText(DisplayUnits.International), StringComparison.Ordinal);
        Assert.Equal("cylinder-over-limit", stop.Code);
    }

    [Fact]
    public void AnotherRefrigerantInTheCylinder_Stops()
    {
        FillLimit mixed = CylinderFill.Limit(FiftyLiters with { Refrigerant = "R-other" }, Simple(), Today);
        Assert.Single(mixed.Findings, f => f.Subject == FindingSubject.Mixing && f.Severity == Severity.Stop);
        FillLimit unnamed = CylinderFill.Limit(FiftyLiters with { Content = Kilograms(1) }, Simple(), Today);
        Assert.Single(unnamed.Findings, f => f.Subject == FindingSubject.Mixing && f.Severity == Severity.Warning);
        Assert.DoesNotContain(CylinderFill.Limit(FiftyLiters with { Refrigerant = " r-TEST " }, Simple(), Today).Findings, f => f.Subject == FindingSubject.Mixing);
    }

    [Fact]
    public void Requalification_OverdueStops()
    {
        RecoveryCylinder due = FiftyLiters with { RequalificationDue = new DateTime(2026, 4, 30, 23, 0, 0) };
        Finding stop = Assert.Single(CylinderFill.Limit(due, Simple(), Today).Findings, f => f.Severity == Severity.Stop);
        Assert.Equal("49 CFR 173.301(a)(6)", stop.Source);
        Assert.Contains("2026-04-30", stop.Message, StringComparison.Ordinal);

        FillLimit sameDay = CylinderFill.Limit(due, Simple(), new FillOptions { Today = new DateTime(2026, 4, 30, 1, 0, 0) });
        Assert.DoesNotContain(sameDay.Findings, f => f.Subject == FindingSubject.CylinderFitness);
        Assert.Contains(CylinderFill.Limit(due, Simple()).Findings, f => f.Severity == Severity.Note && f.Message.Contains("not checked", StringComparison.Ordinal));
        Assert.Contains(
            CylinderFill.Limit(FiftyLiters with { RequalificationDue = null }, Simple(), Today).Findings,
            f => f.Severity == Severity.Note && f.Message.Contains("not given", StringComparison.Ordinal));
    }

    [Fact]
    public void Marks_AreHeldAgainstTheCylinder()
    {
        RecoveryCylinder disposable = FiftyLiters with { Specification = CylinderSpecification.FromMark("DOT 39 400") };
        Assert.Contains(CylinderFill.Limit(disposable, Simple(), Today).Findings, f => f.Severity == Severity.Stop && f.Message.Contains("non-refillable", StringComparison.Ordinal));
        RecoveryCylinder odd = FiftyLiters with { ServicePressure = Pascals(350 * Psi) };
        Assert.Contains(CylinderFill.Limit(odd, Simple(), Today).Findings, f => f.Severity == Severity.Caution && f.Message.Contains("350 psi", StringComparison.Ordinal));
        FillLimit unmarked = CylinderFill.Limit(FiftyLiters with { Specification = null }, Simple(), Today);
        Assert.Contains(unmarked.Findings, f => f.Subject == FindingSubject.CylinderFitness && f.Message.Contains("specification", StringComparison.Ordinal));
        Assert.Contains(unmarked.NotApplied, skipped => skipped.Kind == FillRuleKind.TestPressureAt65C);
        FillLimit clean = CylinderFill.Limit(FiftyLiters, Simple(), Today);
        Finding only = Assert.Single(clean.Findings);
        Assert.Equal(FindingSubject.Safety, only.Subject);
    }

    [Fact]
    public void EstimatedProperties_AreCalledOut()
    {
        Fluid estimated = Fluid.FromModel(new SimpleFluid { ModelQuality = ModelQuality.Estimated });
        Assert.Contains(CylinderFill.Limit(FiftyLiters, estimated, Today).Findings, f => f.Subject == FindingSubject.Estimate);
    }

    [Fact]
    public void AFluidWhoseEquationEndsBelowARule_SkipsItAndSaysSo()
    {
        // No equation above 320 K: what is left is 80 % at 25 °C and the pressure at 21 °C.
        Fluid cold = Fluid.FromModel(new SimpleFluid { Highest = 320, Critical = 320 });
        FillLimit limit = CylinderFill.Limit(FiftyLiters, cold, Today);
        Assert.Equal(FillRuleKind.EightyPercentAt25C, limit.GoverningRule.Kind);
        Assert.Contains(limit.NotApplied, skipped => skipped.Kind == FillRuleKind.PressureAt55C && skipped.Reason.Contains("320", StringComparison.Ordinal));
        Assert.Equal(
            limit.NotApplied.Where(skipped => skipped.IsOutsideEquation).Select(skipped => $"rule = {skipped.Kind}"),
            limit.Findings.Where(f => f.Code == CylinderCodes.RuleOutsideEquation.Id && f.Severity == Severity.Caution).Select(f => f.Values.Single(v => v.Name == "rule").ToString()));
        Assert.DoesNotContain(CylinderFill.Limit(FiftyLiters, Simple(), Today).Findings, f => f.Code == CylinderCodes.RuleOutsideEquation.Id);

        Assert.Equal("PressureAt55C: " + limit.NotApplied.Single(skipped => skipped.Kind == FillRuleKind.PressureAt55C).Reason, limit.NotApplied.Single(skipped => skipped.Kind == FillRuleKind.PressureAt55C).ToString());
        Assert.EndsWith("kg (AHRI Guideline K)", limit.GoverningRule.ToString(), StringComparison.Ordinal);
        Assert.Contains("kg (not a limit)", limit.Rule(FillRuleKind.EightyPercentOfWaterCapacity)!.ToString(), StringComparison.Ordinal);

        // One that begins above 55 °C: only the rules at 60 and 65 °C are left.
        FillLimit warm = CylinderFill.Limit(FiftyLiters, Fluid.FromModel(new SimpleFluid { Lowest = 330 }), Today);
        Assert.Equal(0.05 * 1060 * (1 - 1e-6), MassOf(warm, FillRuleKind.NotLiquidFullAt60C), 1e-9);
        Assert.Equal(FillRuleKind.TestPressureAt65C, warm.GoverningRule.Kind);
        Assert.Null(warm.Rule(FillRuleKind.LiquidDensityAt50C));

        Fluid hot = Fluid.FromModel(new SimpleFluid { Lowest = 350 });
        Assert.Throws<PropertyRangeException>(() => CylinderFill.Limit(FiftyLiters, hot, Today));
    }

    [Fact]
    public void APressureAboveTheEquation_IsTakenAsItsEnd()
    {
        SimpleFluid gas = new() { Critical = 290, HighestPressure = 3e6 };
        FillLimit limit = CylinderFill.Limit(FiftyLiters, Fluid.FromModel(gas), Today);
        Assert.Equal(0.05 * gas.VaporDensity(338.15, 3e6), MassOf(limit, FillRuleKind.TestPressureAt65C), 1e-9);
    }

    [Fact]
    public void CylindersNeeded_RoundsUpAndFillsTheLast()
    {
        CylinderCount count = CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(100), Today);
        Assert.Equal(3, count.Count);
        Assert.Equal(48, count.FillEach.Kilograms, 1e-9);
        Assert.Equal(4, count.FillLast.Kilograms, 1e-9);
        Assert.True(count.IsAllowed);
        CylinderCount exact = CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(96), Today);
        Assert.Equal(2, exact.Count);
        Assert.Equal(48, exact.FillLast.Kilograms, 1e-6);
        CylinderCount tiny = CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(1e-12), Today);
        Assert.Equal(1, tiny.Count);
        Assert.Equal(1e-12, tiny.FillLast.Kilograms, 1e-15);
    }

    [Fact]
    public void CylindersNeeded_WithoutRoomOrPermission_SaysSo()
    {
        CylinderCount full = CylinderFill.CylindersNeeded(FiftyLiters with { Content = Kilograms(48), Refrigerant = "R-test" }, Simple(), Kilograms(1), Today);
        Assert.Null(full.Count);
        Assert.False(full.IsAllowed);
        Assert.Equal(0, full.FillLast.Kilograms);
        Assert.Contains(full.Findings, f => f.Subject == FindingSubject.CylinderCapacity && f.Severity == Severity.Stop);
        Assert.False(CylinderFill.CylindersNeeded(FiftyLiters with { Refrigerant = "R-other" }, Simple(), Kilograms(1), Today).IsAllowed);
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(48e6 + 1), Today));
        Assert.Equal(1_000_000, CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(48e6), Today).Count);
    }

    [Fact]
    public void RoomLeft_IsReadFromTheScale()
    {
        Assert.Equal(18, CylinderFill.RoomLeft(FiftyLiters, Simple(), Kilograms(50), Today).Kilograms, 1e-9);
        Assert.Equal(48, CylinderFill.RoomLeft(FiftyLiters, Simple(), Kilograms(20), Today).Kilograms, 1e-9);
        Assert.Equal(0, CylinderFill.RoomLeft(FiftyLiters, Simple(), Kilograms(90), Today).Kilograms);
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(() => CylinderFill.RoomLeft(FiftyLiters, Simple(), Kilograms(19.9), Today));
        Assert.Equal("scaleReading", e.ParamName);
        Assert.Contains("tare", e.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 50)]
    public Property EveryRule_GrowsWithTheVolume() => Prop.ForAll(
        Gen.Choose(1, 1000).Two().ToArbitrary(),
        pair =>
        {
            RecoveryCylinder small = FiftyLiters with { WaterCapacity = Kilograms(Math.Min(pair.Item1, pair.Item2)) };
            RecoveryCylinder large = FiftyLiters with { WaterCapacity = Kilograms(Math.Max(pair.Item1, pair.Item2)) };
            FillLimit a = CylinderFill.Limit(small, Simple("R-22"), Today);
            FillLimit b = CylinderFill.Limit(large, Simple("R-22"), Today);
            return a.Rules.Count == b.Rules.Count && a.Rules.Zip(b.Rules).All(rules => rules.First.Kind == rules.Second.Kind && rules.First.Mass <= rules.Second.Mass);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void HostileNumbers_AreClearErrors(double value)
    {
        Assert.ThrowsAny<ArgumentException>(() => FiftyLiters with { WaterCapacity = Kilograms(value) });
        Assert.ThrowsAny<ArgumentException>(() => FiftyLiters with { TareWeight = Kilograms(value) });
        Assert.ThrowsAny<ArgumentException>(() => FiftyLiters with { ServicePressure = Pascals(value) });
        Assert.ThrowsAny<ArgumentException>(() => RecoveryCylinder.FromTestPressure(Pascals(value), Kilograms(1), Kilograms(1)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.CylindersNeeded(FiftyLiters, Simple(), Kilograms(value)));
        Assert.ThrowsAny<ArgumentException>(() => CylinderFill.RoomLeft(FiftyLiters, Simple(), Kilograms(value)));
        if (value != 0)
        {
            Assert.ThrowsAny<ArgumentException>(() => FiftyLiters with { Content = Kilograms(value) });
            Assert.ThrowsAny<ArgumentException>(() => new FillOptions { OilVolume = new Volume(value, VolumeUnit.CubicMeter) });
        }
    }

    [Fact]
    public void Nulls_AreClearErrors()
    {
        Assert.Throws<ArgumentNullException>(() => CylinderFill.Limit(null!, Simple()));
        Assert.Throws<ArgumentNullException>(() => CylinderFill.Limit(FiftyLiters, null!));
        Assert.Throws<ArgumentNullException>(() => CylinderFill.RoomLeft(null!, Simple(), Kilograms(1)));
        Assert.Throws<ArgumentNullException>(() => FiftyLiters with { Label = null! });
    }
}
