using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

/// <summary>Listed filling figures of three sets of rules against the equations of state that they were drawn up from, and against a second entry of the same tables.</summary>
public sealed class ListedFillingTests
{
    /// <summary>UN number, and test pressures in bar (UN Model Regulations, dangerous goods list and P200 table 2, from memory).</summary>
    private static readonly Dictionary<string, (int Number, double[] Bars)> UnitedNations = new()
    {
        ["R-12"] = (1028, [16]),
        ["R-13"] = (1022, [100, 120, 190, 250]),
        ["R-13B1"] = (1009, [42, 120, 250]),
        ["R-14"] = (1982, [200, 300]),
        ["R-21"] = (1029, [10]),
        ["R-22"] = (1018, [27]),
        ["R-23"] = (1984, [190, 250]),
        ["R-32"] = (3252, [48]),
        ["R-41"] = (2454, [300]),
        ["R-114"] = (1958, [10]),
        ["R-115"] = (1020, [25]),
        ["R-116"] = (2193, [200]),
        ["R-124"] = (1021, [11]),
        ["R-125"] = (3220, [35, 49]),
        ["R-134a"] = (3159, [18]),
        ["R-142b"] = (2517, [10]),
        ["R-143a"] = (2035, [35]),
        ["R-152a"] = (1030, [16]),
        ["R-161"] = (2453, [30]),
        ["R-170"] = (1035, [95, 120, 300]),
        ["R-218"] = (2424, [25]),
        ["R-227ea"] = (3296, [13]),
        ["R-C318"] = (1976, [11]),
        ["R-404A"] = (3337, [36]),
        ["R-407A"] = (3338, [32]),
        ["R-407B"] = (3339, [33]),
        ["R-407C"] = (3340, [30]),
        ["R-500"] = (2602, [22]),
        ["R-502"] = (1973, [31]),
        ["R-503"] = (2599, [31, 42, 100]),
        ["R-290"] = (1978, [23]),
        ["R-600"] = (1011, [10]),
        ["R-600a"] = (1969, [10]),
        ["R-1270"] = (1077, [27]),
        ["R-E170"] = (1033, [18]),
        ["R-717"] = (1005, [29]),
        ["R-744"] = (1013, [190, 250]),
    };

    /// <summary>Filling ratios of gases under high pressure, which no single density gives (the same table, from memory).</summary>
    private static readonly Dictionary<(string Designation, double Bar), double> HighPressure = new()
    {
        [("R-13", 100)] = 0.83,
        [("R-13", 120)] = 0.90,
        [("R-13", 190)] = 1.04,
        [("R-13", 250)] = 1.11,
        [("R-14", 200)] = 0.71,
        [("R-14", 300)] = 0.90,
        [("R-23", 190)] = 0.88,
        [("R-23", 250)] = 0.96,
        [("R-41", 300)] = 0.63,
        [("R-116", 200)] = 1.13,
        [("R-125", 35)] = 0.87,
        [("R-170", 95)] = 0.25,
        [("R-170", 120)] = 0.30,
        [("R-170", 300)] = 0.40,
        [("R-503", 31)] = 0.12,
        [("R-503", 42)] = 0.17,
        [("R-503", 100)] = 0.64,
        [("R-744", 190)] = 0.68,
        [("R-744", 250)] = 0.76,
        [("R-13B1", 42)] = 1.13,
        [("R-13B1", 120)] = 1.44,
        [("R-13B1", 250)] = 1.60,
    };

    public static TheoryData<string> Listed => [.. UnitedNations.Keys];

    private static IEnumerable<ListedFillingRatio> Rows(string designation) => ListedFillingRatio.All.Where(row => row.Designation == designation);

    /// <summary>The figure is told with the UN number that is on the cylinder's label and with the test pressure that is stamped on it.</summary>
    [Theory]
    [MemberData(nameof(Listed))]
    public void A_listed_ratio_is_told_with_its_number_and_test_pressures(string designation)
    {
        (int number, double[] bars) = UnitedNations[designation];
        Assert.Equal(bars, Rows(designation).Select(row => row.TestPressureBar));
        Assert.All(Rows(designation), row => Assert.Contains(FormattableString.Invariant($"(UN {number}) at {row.TestPressureBar} bar"), row.Figure.Rule, StringComparison.Ordinal));
    }

    /// <summary>A liquefied gas under low pressure: 0.95 of the liquid's density at 50 °C by P200 (3)(c), which older properties put up to 8 % lower than today's.</summary>
    [Theory]
    [MemberData(nameof(Listed))]
    public void A_listed_ratio_is_that_of_the_liquid_at_50_degrees(string designation)
    {
        foreach (ListedFillingRatio row in Rows(designation))
        {
            if (HighPressure.TryGetValue((designation, row.TestPressureBar), out double ratio))
            {
                Assert.Equal(ratio, row.KilogramsPerLiter);
                continue;
            }

            double liquid = Fluid.Get(designation).SaturationAt(new Temperature(50, TemperatureUnit.DegreeCelsius)).Bubble.Density.KilogramsPerLiter;
            Assert.InRange(row.KilogramsPerLiter / (0.95 * liquid), 0.92, 1.03);
        }
    }

    /// <summary>Cylinder Safety Ordinance of Japan, article 22: C = 1.05/specific gravity at 48 °C is the rule for what is not listed; what is listed has nearly the same.</summary>
    [Theory]
    [InlineData("R-290")]
    [InlineData("R-1270")]
    [InlineData("R-600")]
    [InlineData("R-717")]
    [InlineData("R-E170")]
    [InlineData("R-152a")]
    [InlineData("R-32")]
    [InlineData("R-404A")]
    [InlineData("R-1234yf")]
    [InlineData("R-500")]
    [InlineData("R-22")]
    [InlineData("R-1234ze(E)")]
    [InlineData("R-134a")]
    [InlineData("R-502")]
    [InlineData("R-115")]
    [InlineData("R-12")]
    [InlineData("R-114")]
    [InlineData("R-C318")]
    public void A_listed_filling_constant_is_that_of_the_liquid_at_48_degrees(string designation)
    {
        Fluid fluid = Fluid.Get(designation);
        double liquid = fluid.SaturationAt(new Temperature(48, TemperatureUnit.DegreeCelsius)).Bubble.Density.KilogramsPerLiter;
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(new Pressure(60, PressureUnit.Bar), new Mass(50, MassUnit.Kilogram), new Mass(20, MassUnit.Kilogram));
        FillLimit limit = CylinderFill.Limit(cylinder, fluid, new FillOptions { Rules = FillRules.Japan });
        double constant = cylinder.InternalVolume.Liters / limit.Rule(FillRuleKind.ListedFillingConstant)!.Mass.Kilograms;
        Assert.InRange(constant * liquid, 1.00, 1.12);
        Assert.Contains("C = ", limit.GoverningRule.Note, StringComparison.Ordinal);
    }

    /// <summary>The two that have no liquid at 48 °C, one that is not in the catalogue, and the rule for what is not listed: the same ordinance, 1.34, 1.00 and 0.79 L/kg from memory.</summary>
    [Fact]
    public void Gases_under_high_pressure_have_a_constant_of_their_own()
    {
        Assert.Equal(1.34, FillConstantFigures.For("R-744")!.Value.Constant);
        Assert.Equal(1.00, FillConstantFigures.For("R-13")!.Value.Constant);
        Assert.Equal(0.79, FillConstantFigures.For("R-13B1")!.Value.Constant);
        Assert.Null(FillConstantFigures.For("R-227ea"));
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(new Pressure(60, PressureUnit.Bar), new Mass(50, MassUnit.Kilogram), new Mass(20, MassUnit.Kilogram));
        double liquid = Fluid.Get("R-227ea").SaturationAt(new Temperature(48, TemperatureUnit.DegreeCelsius)).Bubble.Density.KilogramsPerLiter;
        Assert.Equal(
            cylinder.InternalVolume.Liters * liquid / 1.05,
            CylinderFill.Limit(cylinder, Fluid.Get("R-227ea"), new FillOptions { Rules = FillRules.Japan }).MaximumFill.Kilograms,
            1e-3);
    }

    /// <summary>49 CFR 173.304a(a)(2): percent of the water capacity from which service pressure on; R-152a and R-1132a from memory. Half a pound per square inch is forgiven, as marks are rounded, no more.</summary>
    [Theory]
    [InlineData("R-12", 119, 225)]
    [InlineData("R-13", 100, 1800)]
    [InlineData("R-13B1", 124, 400)]
    [InlineData("R-22", 105, 240)]
    [InlineData("R-115", 110, 225)]
    [InlineData("R-142b", 100, 150)]
    [InlineData("R-152a", 79, 150)]
    [InlineData("R-717", 54, 480)]
    [InlineData("R-744", 68, 1800)]
    [InlineData("R-1132a", 73, 2200)]
    public void A_cylinder_below_the_listed_service_pressure_is_refused(string designation, double percent, int psi)
    {
        FillLimit at = Limit(psi), below = Limit(psi - 0.52);
        FillRule rule = at.Rule(FillRuleKind.ListedFillingDensity)!;
        Assert.Equal(percent / 100 * at.Cylinder.WaterCapacity.Kilograms, rule.Mass.Kilograms, 1e-3);
        Assert.DoesNotContain(at.Findings, finding => finding.Code == CylinderCodes.BelowListedPressure.Id);
        Assert.DoesNotContain(Limit(psi - 0.48).Findings, finding => finding.Code == CylinderCodes.BelowListedPressure.Id);
        Assert.Single(below.Findings, finding => finding.Code == CylinderCodes.BelowListedPressure.Id && finding.Severity == Severity.Stop);

        FillLimit Limit(double service) => CylinderFill.Limit(
            RecoveryCylinder.FromMark("3AA" + psi, new Mass(50, MassUnit.Kilogram), new Mass(30, MassUnit.Kilogram)) with { ServicePressure = new Pressure(service, PressureUnit.PoundForcePerSquareInch) },
            Fluid.FromModel(new SimpleFluid(designation)));
    }

    /// <summary>Where a density is listed it is no more than what keeps the cylinder from being full of liquid at 54 °C (130 °F), for which it was drawn up.</summary>
    [Theory]
    [InlineData("R-12")]
    [InlineData("R-22")]
    [InlineData("R-115")]
    [InlineData("R-142b")]
    [InlineData("R-152a")]
    [InlineData("R-717")]
    public void A_listed_density_is_just_below_that_of_the_liquid_at_130_degrees(string designation)
    {
        double liquid = Fluid.Get(designation).SaturationAt(new Temperature(130, TemperatureUnit.DegreeFahrenheit)).Bubble.Density.KilogramsPerCubicMeter;
        foreach (ListedFillingDensity row in ListedFillingDensity.All.Where(row => row.Designation == designation))
        {
            Assert.InRange(row.Percent / 100 * RecoveryCylinder.WaterDensity / liquid, 0.9, 1.02);
        }
    }

    /// <summary>A tare of less than 0.28 or more than 1.2 times the water capacity is no cylinder for refrigerants but a mark that was read in other units; a steel bottle for high pressure is as heavy.</summary>
    [Theory]
    [InlineData(400, 0.27, true)]
    [InlineData(400, 0.29, false)]
    [InlineData(400, 1.19, false)]
    [InlineData(400, 1.21, true)]
    [InlineData(600, 1.21, true)]
    [InlineData(620, 1.21, false)]
    [InlineData(1800, 0.27, true)]
    public void Marks_that_do_not_go_together_are_pointed_out(double psi, double tare, bool odd) => Assert.Equal(
        odd,
        CylinderFill.Limit(
            RecoveryCylinder.FromMark("3AA2400", new Mass(50, MassUnit.Kilogram), new Mass(50 * tare, MassUnit.Kilogram)) with { ServicePressure = new Pressure(psi, PressureUnit.PoundForcePerSquareInch) },
            Fluid.Get("R-134a")).Findings.Any(finding => finding.Code == CylinderCodes.MarksOdd.Id));

    /// <summary>The rules that a place has are those that a limit applies or says why it does not.</summary>
    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-744")]
    [InlineData("R-717")]
    public void A_limit_goes_through_the_rules_of_its_place(string designation)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("3AA1800", new Mass(50, MassUnit.Kilogram), new Mass(30, MassUnit.Kilogram));
        foreach (FillRules place in new[] { FillRules.UnitedStates, FillRules.UnitedNations, FillRules.EuropeanUnion, FillRules.Japan })
        {
            FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get(designation), new FillOptions { Rules = place });
            Assert.Equal(place.Kinds.Order(), limit.Rules.Select(rule => rule.Kind).Concat(limit.NotApplied.Select(rule => rule.Kind)).Where(kind => kind != FillRuleKind.LibraryBound).Distinct().Order());
        }

        Assert.Empty(FillRules.Canada.Kinds);
    }
}
