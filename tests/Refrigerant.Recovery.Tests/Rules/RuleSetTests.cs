using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>Each place by its own figures, and nothing of one in another's result.</summary>
public class RuleSetTests
{
    private static EvacuationRequirement Level(RuleSet rules, string fluid, double kilograms, EvacuationOptions? options = null) =>
        EvacuationRequirement.For(Fluid.Get(fluid), Mass.FromKilograms(kilograms), (options ?? new EvacuationOptions()) with { Rules = rules });

    // Ordinance 7 of 2014 (Japan), art. 40(i), Annexed Table 1. R-123 has 0.09 MPa at 25 °C, R-134a 0.67, R-32 1.7 and 2.2 at 35 °C, R-23 4.6.
    [Theory]
    [InlineData("R-123", 1, 30)]
    [InlineData("R-123", 100, 30)]
    [InlineData("R-134a", 1.99, 100)]
    [InlineData("R-134a", 2, 90)]
    [InlineData("R-410A", 3, 90)]
    [InlineData("R-410A", 1, 100)]
    [InlineData("R-23", 5, 100)]
    public void Japan_ByPressureAndCharge(string fluid, double kilograms, double kilopascals)
    {
        EvacuationRequirement level = Level(RuleSet.Japan, fluid, kilograms);
        Assert.Equal(kilopascals, level.RequiredPressure.Kilopascals, 1e-9);
        Assert.Equal(LevelKind.AbsolutePressure, level.Kind);
        Assert.NotNull(level.Hold);
    }

    [Fact]
    public void Japan_SaysThatTheNormalTemperatureDecides()
    {
        Assert.Contains(Level(RuleSet.Japan, "R-410A", 3).Findings, finding => finding.Code == "level-normal-temperature");
        EvacuationRequirement warm = Level(RuleSet.Japan, "R-410A", 3, new EvacuationOptions { NormalTemperature = Temperature.FromDegreesCelsius(35) });
        Assert.Equal(100, warm.RequiredPressure.Kilopascals, 1e-9);
        Assert.DoesNotContain(warm.Findings, finding => finding.Code == "level-normal-temperature");
        Assert.DoesNotContain(Level(RuleSet.Japan, "R-134a", 3).Findings, finding => finding.Code == "level-normal-temperature");
    }

    // EN 378-4 and Spain, RD 552/2019, IF-17, 1.8.2.1: 0.6 bar up to 0.2 m³, 0.3 bar above; Spain before service 0.3 bar always.
    [Theory]
    [InlineData("European Union", OpeningPurpose.MajorRepair, 0.2, 60)]
    [InlineData("European Union", OpeningPurpose.Disposal, 0.201, 30)]
    [InlineData("European Union", OpeningPurpose.Disposal, null, 30)]
    [InlineData("Spain", OpeningPurpose.MajorRepair, 0.01, 30)]
    [InlineData("Spain", OpeningPurpose.OilChange, 0.01, 30)]
    [InlineData("Spain", OpeningPurpose.Disposal, 0.2, 60)]
    [InlineData("Spain", OpeningPurpose.Disposal, 0.3, 30)]
    public void Europe_ByVolume(string place, OpeningPurpose purpose, double? cubicMeters, double kilopascals)
    {
        EvacuationRequirement level = Level(RuleSet.Find(place)!, "R-22", 10, new EvacuationOptions
        {
            Purpose = purpose,
            InternalVolume = cubicMeters is double given ? Volume.FromCubicMeters(given) : null,
        });
        Assert.Equal(kilopascals, level.RequiredPressure.Kilopascals, 1e-9);
        Assert.Equal(place == "Spain", level.Source.Contains("RD 552", StringComparison.Ordinal));
        Assert.Equal(place == "Spain", level.Hold!.Figure.Source.Contains("RD 552", StringComparison.Ordinal));
        Assert.Equal(20, level.ReferenceTemperature!.Value.DegreesCelsius, 1e-9);
        Assert.Equal(cubicMeters is null, level.Findings.Any(finding => finding.Code == "level-volume-unknown"));
    }

    [Theory]
    [InlineData("Canada")]
    [InlineData("UN Model Regulations, ADR/RID")]
    public void WithoutAFigure_TheResultSaysSo(string place)
    {
        Barometer high = Barometer.AtElevation(Length.FromMeters(1600));
        EvacuationRequirement level = Level(RuleSet.Find(place)!, "R-22", 100, new EvacuationOptions { Barometer = high });
        Assert.Equal(LevelKind.NoFigure, level.Kind);
        Assert.Equal(high.Pressure.Pascals, level.RequiredPressure.Pascals, 1e-6);
        Assert.Contains(level.Findings, finding => finding.Code == "level-no-figure" && finding.Severity == Severity.Warning);
    }

    [Fact]
    public void CallersOwn_IsTheCallers()
    {
        FillRules fill = FillRules.FromCaller("Site 7", Ratio.FromPercent(70), Temperature.FromDegreesCelsius(50), "handbook");
        RuleSet own = RuleSet.FromCaller("Site 7", Pressure.FromKilopascals(20), fill, "handbook");
        EvacuationRequirement level = Level(own, "R-22", 10);
        Assert.Equal((20.0, Evidence.GivenByCaller, "handbook"), (level.RequiredPressure.Kilopascals, level.Rule.Evidence, level.Source));
        FillLimit limit = CylinderFill.Limit(Cylinder("4BA400"), Fluid.Get("R-22"), new FillOptions { Rules = own.Fill });
        double density = Fluid.Get("R-22").SaturationAt(Temperature.FromDegreesCelsius(50)).Bubble.Density.KilogramsPerCubicMeter;
        Assert.Equal(0.7 * density * limit.Cylinder.InternalVolume.CubicMeters, limit.MaximumFill.Kilograms, 1e-9);
        Assert.Equal(Evidence.GivenByCaller, limit.GoverningRule.Figure.Evidence);
        Assert.Throws<ArgumentOutOfRangeException>(() => FillRules.FromCaller("x", Ratio.FromPercent(101), Temperature.FromDegreesCelsius(50), "y"));
    }

    [Fact]
    public void TheDefault_IsTheUnitedStates()
    {
        EvacuationRequirement level = EvacuationRequirement.For(Fluid.Get("R-134a"), Mass.FromPounds(300));
        Assert.Same(RuleSet.UnitedStates, level.Rules);
        Assert.Equal(PressureClass.Medium, level.Class);
        EvacuationRequirement oil = Level(RuleSet.UnitedStates, "R-134a", 100, new EvacuationOptions { Purpose = OpeningPurpose.OilChange });
        Assert.Equal(LevelKind.GaugePressure, oil.Kind);
        Assert.Equal(5, oil.GaugeReading.PoundsForcePerSquareInch, 1e-9);
        Assert.Equal(LevelKind.ShareOrPressure, Level(RuleSet.UnitedStates, "R-134a", 1, new EvacuationOptions { Appliance = ApplianceKind.Small }).Kind);
    }

    // ADR/RID 2025, P200 table 2: R-134a 1.05, R-404A 0.82 kg/l. Cylinder Safety Ordinance, art. 22: C = 0.94 and 1.15 L/kg; R-245fa by the rule.
    [Theory]
    [InlineData("Japan", "R-134a", 1 / 0.94)]
    [InlineData("Japan", "R-404A", 1 / 1.15)]
    public void FillingByConstants(string place, string fluid, double kilogramsPerLiter)
    {
        FillLimit limit = Fill(place, fluid);
        Assert.Equal(kilogramsPerLiter * limit.Cylinder.InternalVolume.Liters, limit.MaximumFill.Kilograms, 1e-6);
    }

    [Fact]
    public void FillingInJapan_SaysWhereLiquidFillsTheCylinder()
    {
        // 0.870 kg/l is more than liquid R-404A weighs at 55 °C, 0.860 kg/l.
        Finding finding = Assert.Single(Fill("Japan", "R-404A").Findings, finding => finding.Code == "cylinder-liquid-full-when-warm");
        Assert.InRange(finding.Value("full at")!.InternationalValue!.Value - 273.15, 50, 55);
        Assert.DoesNotContain(Fill("Japan", "R-134a").Findings, found => found.Code == "cylinder-liquid-full-when-warm");
    }

    [Fact]
    public void FillingByTheUnitedNations_IsTheLeastOfListAndRule()
    {
        FillLimit limit = Fill("UN Model Regulations, ADR/RID", "R-134a");
        double rule = limit.Rule(FillRuleKind.LiquidDensityAt50C)!.Mass.Kilograms;
        Assert.Equal(Math.Min(rule, 1.05 * limit.Cylinder.InternalVolume.Liters), limit.MaximumFill.Kilograms, 1e-9);
        Assert.Equal(0.82 * limit.Cylinder.InternalVolume.Liters, Fill("UN Model Regulations, ADR/RID", "R-404A").Rule(FillRuleKind.ListedFillingRatio)!.Mass.Kilograms, 1e-9);
        Assert.True(Fill("European Union", "R-134a").MaximumFill < limit.MaximumFill);
    }

    [Fact]
    public void FillingWithoutAFigure_IsBoundedAndSaysSo()
    {
        foreach ((string place, string fluid) in new[] { ("Canada", "R-410A"), ("Japan", "R-23") })
        {
            FillLimit limit = Fill(place, fluid);
            Assert.Equal(FillRuleKind.LibraryBound, limit.GoverningRule.Kind);
            Assert.Equal(Evidence.CommonPractice, limit.GoverningRule.Figure.Evidence);
            Assert.Contains(limit.Findings, finding => finding.Code == "cylinder-no-fill-figure" && finding.Severity == Severity.Warning);
        }
    }

    /// <summary>No law of one place is named in the result of another.</summary>
    [Fact]
    public void NothingOfOnePlaceLeaksIntoAnother()
    {
        Dictionary<string, string[]> own = new()
        {
            ["United States"] = ["CFR", "AHRI", "29.9 inHg", "psia at 104"],
            ["UN Model Regulations, ADR/RID"] = ["P200"],
            ["European Union"] = ["EN 378", "IF-17"],
            ["Spain"] = ["RD 552"],
            ["Japan"] = ["Ordinance"],
            ["Canada"] = ["SOR/"],
        };
        Dictionary<string, string[]> shared = new() { ["European Union"] = ["Spain", "UN Model Regulations, ADR/RID"], ["Spain"] = ["European Union", "UN Model Regulations, ADR/RID"] };
        foreach (RuleSet set in RuleSet.All.Where(set => set != RuleSet.UnitedStates))
        {
            string[] foreign = [.. own.Where(pair => pair.Key != set.Place && !shared.GetValueOrDefault(set.Place, []).Contains(pair.Key)).SelectMany(pair => pair.Value)];
            foreach (string fluid in new[] { "R-22", "R-410A", "R-123", "R-744", "R-32" })
            {
                EvacuationRequirement level = Level(set, fluid, 50, new EvacuationOptions { Barometer = Barometer.AtElevation(Length.FromMeters(1000)) });
                FillLimit limit = Fill(set.Place, fluid);
                Assert.Null(level.Class);
                Assert.Null(level.VacuumOnRegulationBasis);
                string[] texts =
                [
                    level.Rule.ToString(), limit.ToString(), .. limit.Rules.Select(rule => rule.ToString()),
                    .. level.Findings.Concat(limit.Findings).Select(finding => finding.Message + finding.Source),
                ];
                Assert.DoesNotContain(texts, text => foreign.Any(mark => text.Contains(mark, StringComparison.Ordinal)));
            }
        }
    }

    [Fact]
    public void WarmingPotentials_AreThoseOfTheLaw()
    {
        // Regulation (EU) 2024/573: HFC by the fourth report, others by the sixth: R-32 675, propane 0.02.
        Assert.Equal(675, RuleSet.EuropeanUnion.WarmingPotential(Fluid.Get("R-32"))!.Value);
        Assert.Equal(0.02, RuleSet.EuropeanUnion.WarmingPotential(Fluid.Get("R-290"))!.Value);
        Assert.Equal(3, RuleSet.UnitedStates.WarmingPotential(Fluid.Get("R-290"))!.Value);
        Assert.Null(RuleSet.Japan.WarmingPotential(Fluid.Get("R-32")));
    }

    [Fact]
    public void Records_HaveFieldsAndSource()
    {
        Assert.Contains(RuleSet.UnitedStates.Records, rule => rule.Years == 3 && rule.Figure.Source == "40 CFR 82.156(a)(3)");
        Assert.Contains(RuleSet.Japan.Records, rule => rule.Years == 5 && rule.Fields.Any(field => field.StartsWith("quantity of each refrigerant", StringComparison.Ordinal)));
        Assert.Empty(RuleSet.UnitedNations.Records);
        Assert.Null(RuleSet.Find("Atlantis"));
    }

    private static FillLimit Fill(string place, string fluid) =>
        CylinderFill.Limit(Cylinder("4BA400"), Fluid.Get(fluid), new FillOptions { Rules = RuleSet.Find(place)!.Fill });

    private static RecoveryCylinder Cylinder(string mark) => RecoveryCylinder.FromMark(mark, Mass.FromKilograms(20), Mass.FromKilograms(12));
}
