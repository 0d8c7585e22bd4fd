using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a vapor recovery says, for ends and figures that are set down by hand.</summary>
public class VaporRuleTests
{
    private static readonly Appliance Plain = Setups.Appliance("R-134a", 2, 20, 20, 50);

    private static readonly RecoveryMachine Machine = Setups.Machine(0.5);

    private static PropertyModel Model => Plain.Fluid.Model;

    /// <summary>Each end has its word, with where it came to and what is left.</summary>
    [Theory]
    [InlineData(StageEnd.CylinderFull, "StageCodes.CylinderFull", Severity.Caution)]
    [InlineData(StageEnd.HighPressureCutout, "StageCodes.HighPressureCutout", Severity.Warning)]
    [InlineData(StageEnd.CylinderPressure, "StageCodes.CylinderPressure", Severity.Warning)]
    [InlineData(StageEnd.ThermalCutout, "StageCodes.ThermalCutout", Severity.Warning)]
    [InlineData(StageEnd.Stalled, "StageCodes.DeepestVacuum", Severity.Warning)]
    [InlineData(StageEnd.LowPressureSwitch, "StageCodes.LowPressureSwitch", Severity.Caution)]
    [InlineData(StageEnd.TimeLimit, "StageCodes.TimeOver", Severity.Warning)]
    [InlineData(StageEnd.PropertyRange, "StageCodes.OutOfRange", Severity.Warning)]
    [InlineData(StageEnd.StepLimit, "StageCodes.StepLimit", Severity.Warning)]
    public void Each_end_has_its_word(StageEnd end, string field, Severity severity)
    {
        FindingCode code = (FindingCode)typeof(StageCodes).GetField(field["StageCodes.".Length..])!.GetValue(null)!;
        SimulationState after = State(Plain, 0.2);
        Finding said = Said(Plain, end, after).Single(finding => StageCodes.All.Contains(Of(finding)) && Of(finding) != StageCodes.ViscosityEstimated);
        Assert.Equal((code.Id, severity), (said.Code, said.Severity));
        Assert.Equal(after.Appliance.Pressure.Pascals, Figure(said, "reached"), 1e-6);
        Assert.Equal(0.2, Figure(said, "left"), 1e-12);
        switch (end)
        {
            case StageEnd.HighPressureCutout:
                Assert.Equal(Machine.HighPressureCutout.Pascals, Figure(said, "cut-out"), 1e-6);
                break;
            case StageEnd.CylinderPressure:
                Assert.Equal(after.Cylinder!.Pressure.Pascals, Figure(said, "cylinder"), 1e-6);
                break;
            case StageEnd.Stalled:
                Assert.Equal(after.Cylinder!.Pressure.Pascals, Figure(said, "discharge"), 1e-6);
                Assert.Equal(after.Cylinder.Pressure.Pascals / Math.Pow(1 + (Machine.VolumetricEfficiency / Machine.ClearanceRatio), Machine.PolytropicExponent), Figure(said, "deepest vacuum"), 1.0);
                break;
            case StageEnd.TimeLimit:
                Assert.Equal(333, Figure(said, "time"));
                break;
            case StageEnd.PropertyRange:
                Assert.Equal(293.15, Figure(said, "temperature"), 1e-9);
                break;
        }
    }

    /// <summary>A pull that comes to its pressure is told nothing of it, but that it is over liquid where it is.</summary>
    [Fact]
    public void Cold_liquid_below_the_pressure_is_told()
    {
        Assert.DoesNotContain(Said(Plain, StageEnd.TargetReached, State(Plain, 0.2)), finding => finding.Severity > Severity.Note);
        Finding cold = Said(Plain, StageEnd.TargetReached, State(Plain, 1, 250)).Single(finding => finding.Severity > Severity.Note);
        Assert.Equal(StageCodes.OverColdLiquid.Id, cold.Code);
        Assert.Equal(250, Figure(cold, "temperature"), 1e-9);
        Assert.Equal(State(Plain, 1, 250).Appliance.LiquidMass.Kilograms, Figure(cold, "liquid"), 1e-9);
        Assert.DoesNotContain(Said(Plain, StageEnd.CylinderFull, State(Plain, 1, 250)), finding => finding.Code == StageCodes.OverColdLiquid.Id);
    }

    /// <summary>Of the parts that the gauge does not show, those that stand a twentieth above it are told; their liquid is not told as cold liquid in reach.</summary>
    [Theory]
    [InlineData(1.04, false)]
    [InlineData(1.06, true)]
    public void A_part_above_the_gauge_is_told(double share, bool isTold)
    {
        Appliance split = Plain with
        {
            Sections =
            [
                new ApplianceSection { Name = "near", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(1) },
                new ApplianceSection { Name = "far", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(1) },
            ],
            Connections = [new SectionConnection { From = "near", To = "far", FlowCoefficient = 1 }],
            VaporPort = "near",
        };
        double Vapor(double pascals) => 0.01 * Model.StateAt(293.15, pascals).Density;
        SectionState At(string name, double kilograms, double kelvins) => SectionState.AtRest(name, Model, 0.01, kilograms, kelvins, kelvins, kelvins, 0);
        var state = new SimulationState(new ApplianceState(split, [At("near", Vapor(1e5), 293.15), At("far", Vapor(share * 1e5), 293.15)], 0));
        Finding? hidden = Said(split, StageEnd.TargetReached, state).SingleOrDefault(finding => finding.Code == PlanCodes.HiddenSection.Id);
        Assert.Equal(isTold, hidden is not null);
        if (hidden is not null)
        {
            Assert.Equal((1e5, share * 1e5), (Math.Round(Figure(hidden, "gauge"), 3), Math.Round(Figure(hidden, "pressure"), 3)));
            Assert.Equal(Vapor(share * 1e5), Figure(hidden, "mass"), 1e-9);
            var wet = new SimulationState(new ApplianceState(split, [At("near", Vapor(1e5), 293.15), At("far", 0.5, 280)], 0));
            Assert.DoesNotContain(Said(split, StageEnd.TargetReached, wet), finding => finding.Code == StageCodes.OverColdLiquid.Id);
            var open = new SimulationState(new ApplianceState(split, [At("near", 0.5, 280), At("far", 0.3, 280)], 0));
            Finding cold = Said(split, StageEnd.TargetReached, open).Single(finding => finding.Code == StageCodes.OverColdLiquid.Id);
            Assert.Equal(open.Appliance.LiquidMass.Kilograms, Figure(cold, "liquid"), 1e-9);
        }
    }

    /// <summary>Water behind a surface that comes to 0 °C freezes: when, and how cold it came.</summary>
    [Fact]
    public void Water_that_freezes_is_told_with_its_time()
    {
        Appliance wet = Plain with { Water = TubeWater.Standing(Mass.FromKilograms(5), Temperature.FromKelvins(280), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)) };
        Finding? Frost(Appliance appliance, double coldest, double at) =>
            Said(appliance, StageEnd.TargetReached, State(appliance, 0.2), new StageFigures { Coldest = coldest, FreezingAt = at }).SingleOrDefault(finding => finding.Code == PlanCodes.TubesFreeze.Id);
        Assert.Null(Frost(wet, 273.16, double.NaN));
        Assert.Null(Frost(Plain, 270, 50));
        Finding frost = Frost(wet, 270, 50)!;
        Assert.Equal((50.0, 270.0, 273.15), (Figure(frost, "after"), Figure(frost, "coldest"), Figure(frost, "freezing")));
        Assert.Equal(0, Figure(Frost(wet, 273.15, double.NaN)!, "after"));
    }

    /// <summary>Discharge above 121 °C (250 °F) is near, above 149 °C (300 °F) beyond what oil stands: common practice, no source.</summary>
    [Theory]
    [InlineData(120.9, null)]
    [InlineData(121.1, Severity.Note)]
    [InlineData(148.9, Severity.Note)]
    [InlineData(149.1, Severity.Caution)]
    public void Hot_discharge_is_told(double celsius, Severity? severity)
    {
        Finding? hot = Said(Plain, StageEnd.TargetReached, State(Plain, 0.2), new StageFigures { HottestDischarge = celsius + 273.15 }).SingleOrDefault(finding => finding.Code == PlanCodes.MachineHot.Id);
        Assert.Equal(severity, hot?.Severity);
        if (hot is not null)
        {
            Assert.Equal((celsius + 273.15, 422.15), (Figure(hot, "discharge"), Math.Round(Figure(hot, "oil stands"), 9)));
            Assert.Contains(severity == Severity.Caution ? "beyond" : "close to", hot.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(0.79, true)]
    [InlineData(0.81, false)]
    public void Slow_hoses_are_told(double share, bool isTold)
    {
        Finding? slow = Said(Plain, StageEnd.TargetReached, State(Plain, 0.2), new StageFigures { Passed = share, FreeFlow = 1, WasChoked = true }).SingleOrDefault(finding => finding.Code == PlanCodes.HosesSlow.Id);
        Assert.Equal(isTold ? share : null, slow?.Values[0].InternationalValue);
        Assert.Equal(isTold, slow?.Message.Contains("choked", StringComparison.Ordinal) ?? false);
    }

    /// <summary>What stands in for heat that was not given, what oil holds, and a viscosity that is estimated.</summary>
    [Fact]
    public void What_is_assumed_is_told()
    {
        Appliance assumed = Setups.Appliance("R-134a", 2, 20, 20, null);
        Finding heat = Said(assumed, StageEnd.TargetReached, State(assumed, 0.2)).Single(finding => finding.Code == PlanCodes.HeatAssumed.Id);
        Assert.Equal(assumed.OuterConductance, Figure(heat, "conductance in W/K"), 1e-12);
        Assert.DoesNotContain(Said(Plain, StageEnd.TargetReached, State(Plain, 0.2)), finding => finding.Code == PlanCodes.HeatAssumed.Id || finding.Code == PlanCodes.OilHolds.Id);
        Appliance oily = Plain with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.5), Kind = OilKind.PolyolEster } };
        var held = new SimulationState(ApplianceState.FromMeasured(oily, Mass.FromKilograms(0.5), Temperature.FromKelvins(293.15), dissolved: Mass.FromKilograms(0.1)));
        Assert.Equal(0.1, Figure(Said(oily, StageEnd.TargetReached, held).Single(finding => finding.Code == PlanCodes.OilHolds.Id), "dissolved"), 1e-12);
        foreach (string fluid in new[] { "R-134a", "R-13I1", "R-1233zd(E)", "R-744" })
        {
            Appliance appliance = Setups.Appliance(fluid, 0.5, 20, 20, 50);
            SaturationViscosity at = appliance.Fluid.Model.ViscosityAtSaturation(Math.Min(0.9 * appliance.Fluid.Model.CriticalTemperature, 293.15));
            Finding? told = Said(appliance, StageEnd.TargetReached, State(appliance, 0.1)).SingleOrDefault(finding => finding.Code == StageCodes.ViscosityEstimated.Id);
            Assert.Equal(at.IsEstimate ? at.Vapor * 1e6 : null, told?.Values.Single(value => value.Name == "vapor in µPa·s").InternationalValue);
        }
    }

    /// <summary>Whose content left its range, and what becomes of carbon dioxide: dry ice while there is liquid, in the cylinder too.</summary>
    [Fact]
    public void What_leaves_its_range_is_told_from_dry_ice()
    {
        var cylinder = new StageFigures { CylinderOutOfRange = true };
        Finding content = Said(Plain, StageEnd.PropertyRange, State(Plain, 0.2), cylinder).Single(finding => finding.Severity == Severity.Warning);
        Assert.Equal(StageCodes.CylinderOutOfRange.Id, content.Code);
        Assert.Equal(300, Figure(content, "cylinder"), 1e-9);
        Assert.DoesNotContain("dry ice", content.Message, StringComparison.Ordinal);
        Appliance carbon = Setups.Appliance("R-744", 8, 20, 10, 50);
        Assert.Contains("dry ice", Said(carbon, StageEnd.PropertyRange, State(carbon, 4, 230), cylinder).Single(finding => finding.Severity == Severity.Warning).Message, StringComparison.Ordinal);
        Finding ice = Said(carbon, StageEnd.PropertyRange, State(carbon, 4, 230)).Single(finding => finding.Severity == Severity.Warning);
        Assert.Equal(StageCodes.DryIce.Id, ice.Code);

        // Triple point 216.592 K, 517.95 kPa (Span and Wagner 1996, J. Phys. Chem. Ref. Data 25, 1509).
        Assert.Equal(517_950, Figure(ice, "triple point, pressure"), 100.0);
        Assert.Equal(216.592, Figure(ice, "triple point"), 0.01);
        Assert.Equal(StageCodes.OutOfRange.Id, Said(carbon, StageEnd.PropertyRange, State(carbon, 0.1, 230)).Single(finding => finding.Severity == Severity.Warning).Code);
        Assert.Equal(StageCodes.OutOfRange.Id, Said(Plain, StageEnd.PropertyRange, State(Plain, 1, 230)).Single(finding => finding.Severity == Severity.Warning).Code);
    }

    /// <summary>A hand comes to the inlet four hundredths below the limit of cylinder and machine, and three hundredths above a lowest pressure (our choices): further away it is as if there were none.</summary>
    [Theory]
    [InlineData(0.958, 1.032, false)]
    [InlineData(0.962, 1.028, true)]
    public void The_hand_comes_near_a_limit(double share, double above, bool comes)
    {
        Appliance gas = Setups.Appliance("R-134a", 0.5, 20, 20, 50);
        RecoveryCylinder cylinder = Setups.Cylinder(21.6, 5) with { Refrigerant = "R-134a" };
        var options = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(200) };
        RecoveryMachine machine = Machine with { Condenser = new Condenser { RatedDuty = Power.Zero } };
        StageResult Pull(RecoveryMachine with, VaporRecoveryOptions how) => VaporRecovery.Simulate(gas, with, Setups.Hoses(), cylinder, how);
        StageResult free = Pull(machine, options);
        double limit = free.Cylinder!.Pressure.Pascals / share;
        Assert.True(free.Trajectory.All(point => point.DischargePascals <= free.Cylinder.Pressure.Pascals + 1));
        StageResult below = Pull(machine with { HighPressureCutout = Pressure.FromPascals(limit) }, options with { KeepBelowCutout = true });
        StageResult floor = Pull(machine, options with { LowestPressure = Pressure.FromKilopascals(200 / above) });
        foreach (StageResult hand in new[] { below, floor })
        {
            Assert.Equal(StageEnd.TargetReached, hand.End);
            Assert.Equal(comes, hand.Duration.Seconds > free.Duration.Seconds * (1 + 1e-9));
        }
    }

    private static FindingCode Of(Finding finding) => FindingCodes.All.Single(code => code.Id == finding.Code);

    private static double Figure(Finding finding, string name) => finding.Values.First(value => value.Name == name).InternationalValue!.Value;

    private static List<Finding> Said(Appliance appliance, StageEnd end, SimulationState after, StageFigures? figures = null)
    {
        var findings = new List<Finding>();
        VaporRecoveryFindings.Add(findings, appliance, Machine, new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(333) }, end, figures ?? new StageFigures(), after);
        return findings;
    }

    private static SimulationState State(Appliance appliance, double kilograms, double kelvins = 293.15) => new(ApplianceState.FromMeasured(appliance, Mass.FromKilograms(kilograms), Temperature.FromKelvins(kelvins)))
    {
        Cylinder = CylinderState.Initial(Setups.Cylinder(21.6, 2), appliance.Fluid, Temperature.FromKelvins(300)),
    };
}
