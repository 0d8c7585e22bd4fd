using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

/// <summary>Whether a cylinder stands what is filled into it, whatever the rules of the place say of it.</summary>
public class CylinderStrengthTests
{
    /// <summary>R-410A liquid has some 33 bar at 55 °C: no place's rules let it into a cylinder for 17 bar, also where its test pressure was not told.</summary>
    [Theory]
    [InlineData("United States")]
    [InlineData("European Union")]
    [InlineData("Japan")]
    [InlineData("Canada")]
    public void A_weak_cylinder_is_refused_everywhere(string place)
    {
        FillRules rules = FillRules.All.Single(rule => rule.Place == place);
        RecoveryCylinder told = new() { WaterCapacity = Mass.FromKilograms(26), TareWeight = Mass.FromKilograms(14), ServicePressure = Pressure.FromBars(17) };
        Assert.True(IsTooWeak(told, "R-410A", rules));
        Assert.True(IsTooWeak(RecoveryCylinder.FromMark("TC-4BAM17", told.WaterCapacity, told.TareWeight), "R-410A", rules));
        Assert.False(IsTooWeak(told, "R-134a", rules));
        Assert.False(IsTooWeak(told with { ServicePressure = Pressure.FromBars(28) }, "R-410A", rules));
    }

    /// <summary>49 CFR 173.304a lists 240 psi for R-22: what it fills is bound as in any cylinder, by 80 % at 77 °F, though today's equation gives 0.2 % more than 5/4 of it at 55 °C.</summary>
    [Fact]
    public void A_mark_that_the_law_lists_is_filled_with_liquid()
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA240", Mass.FromKilograms(13.6), Mass.FromKilograms(8));
        var r22 = Fluid.Get("R-22");
        FillLimit limit = CylinderFill.Limit(cylinder, r22, new FillOptions());
        Assert.Equal(0.8 * cylinder.InternalVolume.CubicMeters * r22.SaturationAt(Temperature.FromDegreesCelsius(25)).Bubble.Density.KilogramsPerCubicMeter, limit.MaximumFill.Kilograms, 1e-6);
        Assert.Contains(limit.NotApplied, rule => rule.Kind == FillRuleKind.PressureAt55C);
    }

    /// <summary>Carbon dioxide in a bottle for 250 bar is full of liquid in a warm room, as P200 fills it, and stands it; in one filled beyond its pressure the warning stays.</summary>
    [Fact]
    public void A_bottle_for_high_pressure_stands_carbon_dioxide()
    {
        RecoveryCylinder bottle = RecoveryCylinder.FromTestPressure(Pressure.FromBars(250), Mass.FromKilograms(10), Mass.FromKilograms(13));
        FillOptions options = new() { Rules = FillRules.UnitedNations };
        Assert.DoesNotContain(CylinderFill.Limit(bottle, Fluid.Get("R-744"), options).Findings, finding => finding.Code == "cylinder-liquid-full-when-warm");
        RecoveryCylinder weak = bottle with { ServicePressure = Pressure.FromBars(60) };
        Assert.Contains(CylinderFill.Limit(weak, Fluid.Get("R-744"), options).Findings, finding => finding.Code == "cylinder-liquid-full-when-warm");
    }

    /// <summary>47.6 lb of water read as kilograms would overfill by more than twice: that is a warning, and it says so.</summary>
    [Fact]
    public void Pounds_read_as_kilograms_are_a_warning()
    {
        RecoveryCylinder misread = RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(47.6), Mass.FromKilograms(12.5));
        Finding odd = CylinderFill.Limit(misread, Fluid.Get("R-134a"), new FillOptions()).Findings.Single(finding => finding.Code == "cylinder-marks-odd");
        Assert.Equal(Severity.Warning, odd.Severity);
        Assert.DoesNotContain(
            CylinderFill.Limit(misread with { WaterCapacity = Mass.FromPounds(47.6) }, Fluid.Get("R-134a"), new FillOptions()).Findings, finding => finding.Code == "cylinder-marks-odd");
    }

    private static bool IsTooWeak(RecoveryCylinder cylinder, string fluid, FillRules rules) =>
        CylinderFill.Limit(cylinder, Fluid.Get(fluid), new FillOptions { Rules = rules }).Findings.Any(finding => finding is { Code: "cylinder-too-weak", Severity: Severity.Stop });
}
