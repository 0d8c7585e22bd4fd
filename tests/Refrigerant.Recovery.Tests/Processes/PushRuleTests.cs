using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a push-pull says, for ends and figures that are set down by hand.</summary>
public class PushRuleTests
{
    /// <summary>Below 15 lb of liquid it hardly pays, below 10 lb it does not: common practice, no source.</summary>
    [Theory]
    [InlineData(9.9, Severity.Caution)]
    [InlineData(10.1, Severity.Note)]
    [InlineData(14.9, Severity.Note)]
    [InlineData(15.1, null)]
    public void Little_liquid_hardly_pays(double pounds, Severity? severity)
    {
        Finding? said = Said(Holding(pounds * 0.45359237), StageEnd.LiquidGone).SingleOrDefault(finding => finding.Code == StageCodes.PushHardlyPays.Id);
        Assert.Equal(severity, said?.Severity);
        Assert.Equal(severity is null ? 0 : pounds * 0.45359237, said?.Values[0].InternationalValue ?? 0, 1e-4);
    }

    /// <summary>Hoses below four fifths of the machine's pace, and a cylinder more than 2 % below the saturation of the liquid, more than 10 % a caution: our choices.</summary>
    [Fact]
    public void Slow_hoses_and_flashing_are_told_from_their_limits_on()
    {
        Appliance appliance = Holding(20);
        Assert.Equal(0.79, Figure(appliance, figures => (figures.Passed, figures.FreeFlow) = (0.79, 1), PlanCodes.HosesSlow).Share);
        Assert.Null(Figure(appliance, figures => (figures.Passed, figures.FreeFlow) = (0.81, 1), PlanCodes.HosesSlow).Share);
        Assert.Equal((null, null), Figure(appliance, figures => figures.DeepestFlashing = 0.019, StageCodes.LiquidFlashes));
        Assert.Equal((0.021, Severity.Note), Figure(appliance, figures => figures.DeepestFlashing = 0.021, StageCodes.LiquidFlashes));
        Assert.Equal((0.099, Severity.Note), Figure(appliance, figures => figures.DeepestFlashing = 0.099, StageCodes.LiquidFlashes));
        Assert.Equal((0.101, Severity.Caution), Figure(appliance, figures => figures.DeepestFlashing = 0.101, StageCodes.LiquidFlashes));
    }

    /// <summary>Each end has its word; liquid down to its heel needs none.</summary>
    [Theory]
    [InlineData(StageEnd.CylinderFull, "SiphonsAtLimit")]
    [InlineData(StageEnd.PropertyRange, "FlashesInCylinder")]
    [InlineData(StageEnd.DesignPressure, "DesignPressure")]
    [InlineData(StageEnd.Stalled, "PushEndsEarly")]
    [InlineData(StageEnd.TimeLimit, "PushEndsEarly")]
    [InlineData(StageEnd.LiquidGone, null)]
    public void Each_end_has_its_word(StageEnd end, string? field)
    {
        Appliance appliance = Holding(20) with { DesignGaugePressure = Pressure.FromPascals(2e6) };
        Finding[] said = [.. Said(appliance, end, figures => figures.LiquidMoved = 7)];
        Assert.Equal(field is null ? [] : [((FindingCode)typeof(StageCodes).GetField(field)!.GetValue(null)!).Id], said.Select(finding => finding.Code));
        Assert.All(said, finding => Assert.Equal(Severity.Warning, finding.Severity));
        if (end == StageEnd.CylinderFull)
        {
            Assert.Equal(7, said[0].Values[0].InternationalValue!.Value, 1e-12);
        }

        if (end == StageEnd.DesignPressure)
        {
            Assert.Equal(2e6 + 101_325, said[0].Values[0].InternationalValue!.Value, 1.0);
        }
    }

    /// <summary>Liquid of more than a hundredth of the charge in a part that the port does not reach stays there: our choice.</summary>
    [Theory]
    [InlineData(0.19, 0)]
    [InlineData(0.21, 1)]
    public void Liquid_that_the_port_does_not_reach_is_told(double kilograms, int told)
    {
        Appliance split = Holding(20);
        split = split with
        {
            Charge = Mass.FromKilograms(20),
            Sections =
            [
                new ApplianceSection { Name = "a", InternalVolume = split.InternalVolume * 0.5, Charge = Mass.FromKilograms(10) },
                new ApplianceSection { Name = "b", InternalVolume = split.InternalVolume * 0.5, Charge = Mass.FromKilograms(10) },
            ],
            Connections = [new SectionConnection { From = "a", To = "b", FlowCoefficient = 1 }],
            LiquidPort = "a",
        };
        var model = split.Fluid.Model;
        double volume = split.InternalVolume.CubicMeters / 2;
        var at = model.SaturationAtTemperature(260);
        double all = kilograms + (at.Dew.Density * (volume - (kilograms / at.Bubble.Density)));
        SectionState Part(string name, double mass) => SectionState.AtRest(name, model, volume, mass, 260, 260, 260, 0);
        var findings = new List<Finding>();
        SectionFindings.Add(findings, split, new ApplianceState(split, [Part("a", 3), Part("b", all)], 0));
        Assert.Equal(told, findings.Count);
        if (told > 0)
        {
            Assert.Equal(kilograms, findings[0].Values.Single(value => value.Name == "liquid").InternationalValue!.Value, 1e-6);
            Assert.Equal("b", findings[0].Values.Single(value => value.Name == "section").ToText(DisplayUnits.International));
        }
    }

    /// <summary>What the appliance holds along the course of each stage is all that it holds, in oil too: at the start what it held before, in the end what it holds after.</summary>
    [Theory]
    [InlineData("push-pull")]
    [InlineData("liquid")]
    [InlineData("vapor")]
    [InlineData("equalization")]
    public void The_course_tells_all_that_the_appliance_holds(string stage)
    {
        Appliance oily = Setups.Appliance("R-134a", 15, 40, 20, 50) with { LiquidReachable = true, Oil = new ApplianceOil { Mass = Mass.FromKilograms(3), Kind = OilKind.PolyolEster } };
        RecoveryCylinder cylinder = Setups.Cylinder(60, 2);
        var seconds = Duration.FromSeconds(20);
        StageResult result = stage switch
        {
            "push-pull" => PushPull.Simulate(oily, Setups.Machine(0.5), Setups.Hoses(), cylinder, new PushPullOptions { MaximumDuration = seconds }),
            "liquid" => LiquidRecovery.Simulate(oily, Setups.Machine(0.5), Setups.Hoses(), cylinder, new LiquidRecoveryOptions { MaximumDuration = seconds }),
            "vapor" => VaporRecovery.Simulate(oily, Setups.Machine(0.5), Setups.Hoses(), cylinder, new VaporRecoveryOptions { MaximumDuration = seconds }),
            _ => Equalization.Simulate(oily, Setups.Hoses(), cylinder, new EqualizationOptions { MaximumDuration = seconds }),
        };
        Assert.True(result.Before.Appliance.DissolvedMass.Kilograms > 0.1);
        Assert.Equal(15, result.Trajectory[0].ApplianceMass.Kilograms, 0.2);
        Assert.Equal(result.Appliance.Mass.Kilograms, result.Trajectory[^1].ApplianceMass.Kilograms, 1e-6);
        Assert.Equal(result.Cylinder!.Mass.Kilograms, result.Trajectory[^1].CylinderMass.Kilograms, 1e-6);
        Assert.Equal(15 + 2, result.Trajectory[^1].ApplianceMass.Kilograms + result.Trajectory[^1].CylinderMass.Kilograms, 1e-6);
    }

    /// <summary>Where no vapor is drawn through a suction line there is none that holds the machine back.</summary>
    [Fact]
    public void Without_a_suction_line_nothing_is_held_back()
    {
        Appliance unit = Setups.Appliance("R-134a", 15, 40, 20, 50) with { LiquidReachable = true };
        var seconds = Duration.FromSeconds(5);
        StageResult[] stages =
        [
            LiquidRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new LiquidRecoveryOptions { MaximumDuration = seconds }),
            Equalization.Simulate(unit, Setups.Hoses(), Setups.Cylinder(60, 0), new EqualizationOptions { MaximumDuration = seconds }),
            Hold.Simulate(unit, new HoldOptions { Duration = seconds }),
        ];
        Assert.All(stages, stage => Assert.Equal((1.0, 0.0), (stage.SuctionLineShare.DecimalFractions, stage.FreeFlow)));
    }

    private static (double? Share, Severity? Severity) Figure(Appliance appliance, Action<StageFigures> set, FindingCode code)
    {
        Finding? said = Said(appliance, StageEnd.LiquidGone, set).SingleOrDefault(finding => finding.Code == code.Id);
        return (said?.Values[0].InternationalValue, said?.Severity);
    }

    private static List<Finding> Said(Appliance appliance, StageEnd end, Action<StageFigures>? set = null)
    {
        var stage = new Stage(appliance, Setups.Cylinder(60, 2), new PushPullOptions());
        set?.Invoke(stage.Figures);
        var findings = new List<Finding>();
        PushPullFindings.Add(findings, appliance, stage, end, stage.Before.Appliance);
        return findings;
    }

    /// <summary>50 L at 20 °C with so much liquid.</summary>
    private static Appliance Holding(double liquid)
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 50, 20, 50) with { LiquidReachable = true };
        var at = appliance.Fluid.Model.SaturationAtTemperature(293.15);
        return appliance with { Charge = Mass.FromKilograms(liquid + (at.Dew.Density * (0.05 - (liquid / at.Bubble.Density)))) };
    }
}
