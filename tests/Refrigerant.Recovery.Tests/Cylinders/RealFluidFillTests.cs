using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

/// <summary>The limits with real refrigerants: published examples, and what must hold for every one of them.</summary>
public sealed class RealFluidFillTests
{
    public static TheoryData<string> AllDesignations => [.. Fluid.All.Select(fluid => fluid.Designation)];

    private static Mass Pounds(double value) => new(value, MassUnit.Pound);

    private static Mass Kilograms(double value) => new(value, MassUnit.Kilogram);

    private static RecoveryCylinder Cylinder(double waterPounds, double tarePounds, string mark = "DOT-4BA400") =>
        RecoveryCylinder.FromMark(mark, Pounds(waterPounds), Pounds(tarePounds));

    private static double Rule(FillLimit limit, FillRuleKind kind) => limit.Rule(kind)!.Mass.Kilograms;

    [Fact]
    public void R22_PublishedExample()
    {
        // AHRI Guideline K example as reported by achrnews 111771: WC 1000 lb, TW 380 lb, specific gravity 1.197 at 77 °F: 957.60 lb net and
        // 1337.60 lb gross. The equation of state gives 1190.7/997.94 = 1.193: 0.3 % less, hence the tolerance.
        FillLimit limit = CylinderFill.Limit(Cylinder(1000, 380), Fluid.Get("R-22"));
        FillRule guideline = limit.Rule(FillRuleKind.EightyPercentAt25C)!;
        Assert.Equal(957.60, guideline.Mass.Pounds, 957.60 * 0.004);
        Assert.Equal(0.8 * 1000 * 1.193, guideline.Mass.Pounds, 0.8);
        Assert.Equal(FillRuleKind.EightyPercentAt25C, limit.GoverningRule.Kind);
        Assert.Equal(1337.60, limit.MaximumGrossWeight.Pounds, 957.60 * 0.004);

        // The old rule of the same article: 800 lb net.
        Assert.Equal(800, limit.Rule(FillRuleKind.EightyPercentOfWaterCapacity)!.Mass.Pounds, 1e-9);
    }

    [Fact]
    public void OldRule_PublishedExample()
    {
        // acservicetech, recovery-bottle: WC 47.6 lb, TW 27.5 lb, no specific gravity: 38.1 lb, 65.6 lb gross; the scale at 47.6 lb leaves 18 lb.
        RecoveryCylinder cylinder = Cylinder(47.6, 27.5);
        Mass old = CylinderFill.Limit(cylinder, Fluid.Get("R-134a")).Rule(FillRuleKind.EightyPercentOfWaterCapacity)!.Mass;
        Assert.Equal(38.1, old.Pounds, 0.05);
        Assert.Equal(65.6, (old + cylinder.TareWeight).Pounds, 0.05);
        Assert.Equal(18, (old - cylinder.WeighedAt(Pounds(47.6)).Content).Pounds, 0.05);
    }

    [Fact]
    public void FillingFactor_PublishedExample()
    {
        // blog.dufrio.com.br: R-22 filling factor 1.03 kg/l; in 10 l that is 8.49 l of liquid at 20 °C and 9.1 l at 40 °C.
        RecoveryCylinder tenLiters = RecoveryCylinder.FromTestPressure(new Pressure(48, PressureUnit.Bar), Kilograms(9.97943), Kilograms(8));
        Assert.Equal(10, tenLiters.InternalVolume.Liters, 0.001);
        Assert.Equal(10.3, Rule(CylinderFill.Limit(tenLiters, Fluid.Get("R-22")), FillRuleKind.LiquidDensityAt50C), 0.03);
        CylinderHeatCurve curve = CylinderFill.HeatCurve(
            tenLiters, Fluid.Get("R-22"), Kilograms(10.3), new Temperature(20, TemperatureUnit.DegreeCelsius), new Temperature(40, TemperatureUnit.DegreeCelsius), 1);

        // The example counts no vapor: 1.5 l of it weigh some 60 g at 20 °C and 100 g at 40 °C, 0.5 to 0.9 % of the filling.
        Assert.Equal(0.849, curve.Points[0].LiquidFill!.Value.DecimalFractions, 0.005);
        Assert.Equal(0.910, curve.Points[1].LiquidFill!.Value.DecimalFractions, 0.009);
        double vapor20 = 10 * (1 - curve.Points[0].LiquidFill!.Value.DecimalFractions) * Fluid.Get("R-22").SaturationAt(curve.Points[0].Temperature).Dew.Density.KilogramsPerLiter;
        Assert.Equal(0.849, curve.Points[0].LiquidFill!.Value.DecimalFractions * 10.3 / (10.3 - vapor20), 0.003);
    }

    [Fact]
    public void TheRefrigerantInTheCylinder_IsKnownByAnySpelling()
    {
        RecoveryCylinder cylinder = Cylinder(47.6, 27.5) with { Refrigerant = "r 134A" };
        Assert.DoesNotContain(CylinderFill.Limit(cylinder, Fluid.Get("R-134a")).Findings, finding => finding.Subject == FindingSubject.Mixing);
        Finding stop = Assert.Single(CylinderFill.Limit(cylinder, Fluid.Get("R-12")).Findings, finding => finding.Subject == FindingSubject.Mixing);
        Assert.Contains("R-134a", stop.Message, StringComparison.Ordinal);
    }

    // Computed from the reference equations by an independent solver: liquid-full limit at 55 °C in percent of WC, 0.95·ρ'(50 °C) in kg/m³,
    // and how full 80 % at 77 °F becomes at 55 °C, printed to one decimal.
    [Theory]
    [InlineData("R-12", 119.4, 1152.4, 88.1)]
    [InlineData("R-22", 105.9, 1028.2, 90.1)]
    [InlineData("R-32", 81.0, 797.3, 95.1)]
    [InlineData("R-123", 138.7, 1327.9, 84.6)]
    [InlineData("R-125", 94.7, 951.0, 100.6)]
    [InlineData("R-134a", 108.1, 1047.2, 89.5)]
    [InlineData("R-143a", 77.0, 762.8, 96.8)]
    [InlineData("R-227ea", 124.7, 1207.9, 89.2)]
    [InlineData("R-290", 44.0, 426.4, 89.8)]
    [InlineData("R-1234yf", 96.8, 940.4, 90.4)]
    [InlineData("R-1234ze(E)", 105.6, 1020.1, 88.3)]
    [InlineData("R-507A", 85.8, 852.8, 97.9)]
    public void Rules_AgreeWithTheComputedComparison(string designation, double percentOfWater, double at50, double percentFull)
    {
        FillLimit limit = CylinderFill.Limit(Cylinder(100, 50), Fluid.Get(designation));
        double full = limit.Rule(FillRuleKind.NotLiquidFullAt55C)!.Mass.Pounds;
        double guideline = limit.Rule(FillRuleKind.EightyPercentAt25C)!.Mass.Pounds;
        Assert.Equal(percentOfWater, full, 0.06);
        Assert.Equal(at50, Rule(limit, FillRuleKind.LiquidDensityAt50C) / limit.Cylinder.InternalVolume.CubicMeters, at50 * 1e-4);
        Assert.Equal(percentFull, 100 * guideline / full, 0.06);
    }

    // The same comparison for blends, there from pseudo-pure equations: the multi-fluid model differs by some tenths of a percent.
    [Theory]
    [InlineData("R-404A", 86.2, 854.1, 97.1)]
    [InlineData("R-407C", 98.6, 963.3, 92.5)]
    [InlineData("R-410A", 86.7, 861.6, 97.9)]
    public void Rules_OfBlends_AgreeWithTheComputedComparison(string designation, double percentOfWater, double at50, double percentFull)
    {
        FillLimit limit = CylinderFill.Limit(Cylinder(100, 50), Fluid.Get(designation));
        double full = limit.Rule(FillRuleKind.NotLiquidFullAt55C)!.Mass.Pounds;
        Assert.Equal(percentOfWater, full, percentOfWater * 0.005);
        Assert.Equal(at50, Rule(limit, FillRuleKind.LiquidDensityAt50C) / limit.Cylinder.InternalVolume.CubicMeters, at50 * 0.005);
        Assert.Equal(percentFull, 100 * limit.Rule(FillRuleKind.EightyPercentAt25C)!.Mass.Pounds / full, 0.5);
    }

    // hvacrschool.com/tag/recovery: liquid at 130 °F, R-22 66.17 and R-410A 54.70 lb/ft³; water 62.42.
    [Theory]
    [InlineData("R-22", 66.17, 0.003)]
    [InlineData("R-410A", 54.70, 0.01)]
    public void LiquidAt130F_IsThePublishedDensity(string designation, double poundsPerCubicFoot, double tolerance) => Assert.Equal(
        poundsPerCubicFoot,
        Fluid.Get(designation).SaturationAt(new Temperature(130, TemperatureUnit.DegreeFahrenheit)).Bubble.Density.PoundsPerCubicFoot,
        poundsPerCubicFoot * tolerance);

    [Fact]
    public void BlendsThat80PercentAt77FWouldFillAt55C_AreCaught()
    {
        List<string> caught = [];
        foreach (Fluid fluid in Fluid.All.Where(fluid => fluid.IsBlend && fluid.CriticalTemperature.DegreesCelsius > 60))
        {
            RecoveryCylinder cylinder = Cylinder(100, 50, "3AA1800");
            FillLimit limit = CylinderFill.Limit(cylinder, fluid);
            Mass guideline = limit.Rule(FillRuleKind.EightyPercentAt25C)!.Mass;
            if (CylinderFill.LiquidFullTemperature(cylinder, fluid, guideline) is Temperature full && full.DegreesCelsius <= 55)
            {
                caught.Add(fluid.Designation);
                Assert.True(limit.MaximumFill < guideline, fluid.Designation);
            }
        }

        // Half R-32, half R-115, critical temperature 62 °C. Blends rich in R-125 come close: their other components keep them below.
        Assert.Equal(["R-504"], caught);
    }

    [Fact]
    public void R125_FilledTo80PercentAt77F_IsLiquidFullAt55C_AndTheLimitCatchesIt()
    {
        RecoveryCylinder cylinder = Cylinder(100, 50);
        Fluid fluid = Fluid.Get("R-125");
        FillLimit limit = CylinderFill.Limit(cylinder, fluid);
        Mass guideline = limit.Rule(FillRuleKind.EightyPercentAt25C)!.Mass;
        Temperature? full = CylinderFill.LiquidFullTemperature(cylinder, fluid, guideline);
        Assert.InRange(full!.Value.DegreesCelsius, 50, 55);
        Assert.True(limit.MaximumFill < guideline);
        Temperature? safe = CylinderFill.LiquidFullTemperature(cylinder, fluid, limit.MaximumFill);
        Assert.True(safe is null || safe.Value.DegreesCelsius > 55);
        Assert.NotEqual(FillRuleKind.EightyPercentAt25C, limit.GoverningRule.Kind);
    }

    // The rows where the remembered ratio is stricter by more than 2 %, and a few where it is not.
    [Theory]
    [InlineData("R-32", true)]
    [InlineData("R-115", true)]
    [InlineData("R-143a", true)]
    [InlineData("R-218", true)]
    [InlineData("R-404A", true)]
    [InlineData("R-407C", false)]
    [InlineData("R-12", false)]
    [InlineData("R-22", false)]
    [InlineData("R-134a", false)]
    [InlineData("R-152a", false)]
    [InlineData("R-290", false)]
    [InlineData("R-600a", false)]
    [InlineData("R-717", false)]
    [InlineData("R-1270", false)]
    public void ListedRatios_BindWhereTheyAreStricter(string designation, bool binds) => Assert.Equal(
        binds, CylinderFill.Limit(Cylinder(100, 50), Fluid.Get(designation)).Rule(FillRuleKind.ListedFillingRatio)!.IsLimit);

    [Theory]
    [InlineData("R-744", "3AA1800", FillRuleKind.EightyPercentAt25C)]
    [InlineData("R-23", "3AA1800", FillRuleKind.EightyPercentAt25C)]
    [InlineData("R-116", "3AA1800", null)]
    [InlineData("R-14", "3AA1800", null)]
    [InlineData("R-508B", "3AA1800", null)]
    [InlineData("R-503", "3AA1800", null)]
    public void HighPressureGases_HaveALimitWithinTheirPressures(string designation, string mark, FillRuleKind? expected)
    {
        RecoveryCylinder cylinder = Cylinder(100, 120, mark);
        Fluid fluid = Fluid.Get(designation);
        FillLimit limit = CylinderFill.Limit(cylinder, fluid);
        if (expected is FillRuleKind kind)
        {
            Assert.Equal(kind, limit.GoverningRule.Kind);
        }

        double at55 = CylinderFill.PressureAt(cylinder, fluid, limit.MaximumFill, new Temperature(55, TemperatureUnit.DegreeCelsius)).PoundsForcePerSquareInch;
        Assert.InRange(at55 - 14.696, 100, 1.25 * 1800 * (1 + 1e-9));
        double at65 = CylinderFill.PressureAt(cylinder, fluid, limit.MaximumFill, new Temperature(65, TemperatureUnit.DegreeCelsius)).PoundsForcePerSquareInch;
        Assert.True(at65 - 14.5038 <= 3000 * (1 + 1e-9));
    }

    [Theory]
    [MemberData(nameof(AllDesignations))]
    public void NoAllowedFill_IsEverLiquidFullAt55C(string designation)
    {
        Fluid fluid = Fluid.Get(designation);
        foreach (string mark in (string[])["4BA300", "4BW260", "4BA400", "3AA1800", "3AA2400"])
        {
            RecoveryCylinder cylinder = Cylinder(50, 30, mark);
            FillLimit limit = CylinderFill.Limit(cylinder, fluid);
            Assert.All(limit.Rules, rule => Assert.True(rule.Mass.Kilograms > 0 && double.IsFinite(rule.Mass.Kilograms)));

            // Above its critical temperature a filling is one supercritical phase: there is no liquid, and its pressure is what counts.
            Temperature? full = CylinderFill.LiquidFullTemperature(cylinder, fluid, limit.MaximumFill);
            Assert.True(
                full is null || full.Value.DegreesCelsius > 55 || fluid.CriticalTemperature.DegreesCelsius < 55,
                $"{designation} {mark}: {full} by {limit.GoverningRule}");
            double pressure = CylinderFill.PressureAt(cylinder, fluid, limit.MaximumFill, new Temperature(55, TemperatureUnit.DegreeCelsius)).Pascals;
            Assert.True(pressure - 101_325 <= (1.25 * cylinder.ServicePressure.Pascals) + 1);
        }
    }

    [Property(MaxTest = 200)]
    public Property AddingRefrigerant_NeverLowersThePressure() => Prop.ForAll(
        Gen.Choose(0, Fluid.All.Count - 1).SelectMany(i => Gen.Choose(1, 1000).Two().SelectMany(m => Gen.Choose(0, 65).Select(t => (i, m, t)))).ToArbitrary(),
        sample =>
        {
            Fluid fluid = Fluid.All[sample.i];
            RecoveryCylinder cylinder = Cylinder(50, 30);
            Temperature temperature = new(Math.Max(sample.t, fluid.Model.Range.MinimumTemperature - 273.15 + 1), TemperatureUnit.DegreeCelsius);

            // More than fits as liquid at the equation's lowest temperature is refused.
            PropertyModel model = fluid.Model;
            double densest = Math.Min(
                model.StateAt(temperature.Kelvins, Math.Min(3e7, 0.99 * model.Range.MaximumPressure)).Density,
                model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Density);
            double most = cylinder.InternalVolume.CubicMeters * densest;
            double low = most * 0.001 * Math.Min(sample.m.Item1, sample.m.Item2);
            double high = most * 0.001 * Math.Max(sample.m.Item1, sample.m.Item2);
            double lower = CylinderFill.PressureAt(cylinder, fluid, Kilograms(low), temperature).Pascals;
            double higher = CylinderFill.PressureAt(cylinder, fluid, Kilograms(high), temperature).Pascals;
            return higher >= lower * (1 - 1e-9);
        });
}
