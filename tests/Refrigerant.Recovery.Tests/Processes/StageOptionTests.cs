using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a stage is told: nothing that cannot be, each thing told back in words, and freezing noted by every stage but ended only where that was asked for.</summary>
public class StageOptionTests
{
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    private static readonly Dictionary<string, Action<double>> Positive = new()
    {
        ["target of a pull"] = value => _ = new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(value) },
        ["receiver of a pull"] = value => _ = new VaporRecoveryOptions { ReceiverPressure = Pressure.FromPascals(value) },
        ["floor of a pull"] = value => _ = new VaporRecoveryOptions { LowestPressure = Pressure.FromPascals(value) },
        ["limit of a cylinder"] = value => _ = new VaporRecoveryOptions { CylinderLimit = Mass.FromKilograms(value) },
        ["end of a hold"] = value => _ = new HoldOptions { EndPressure = Pressure.FromPascals(value) },
        ["cylinder's end of a hold"] = value => _ = new HoldOptions { CylinderEndPressure = Pressure.FromPascals(value) },
        ["cylinder's end of an equalization"] = value => _ = new EqualizationOptions { CylinderEndPressure = Pressure.FromPascals(value) },
        ["target of a sweep"] = value => _ = new HoseSweepOptions { TargetPressure = Pressure.FromPascals(value) },
        ["start of a sweep"] = value => _ = Sweep() with { StartPressure = Pressure.FromPascals(value) },
        ["discharge of a sweep"] = value => _ = Sweep() with { DischargePressure = Pressure.FromPascals(value) },
        ["volume of a rise"] = value => _ = Rise() with { InternalVolume = Volume.FromCubicMeters(value) },
        ["first pressure of a rise"] = value => _ = Rise() with { FirstPressure = Pressure.FromPascals(value) },
        ["second pressure of a rise"] = value => _ = Rise() with { SecondPressure = Pressure.FromPascals(value) },
        ["first temperature of a rise"] = value => _ = Rise() with { FirstTemperature = Temperature.FromKelvins(value) },
        ["second temperature of a rise"] = value => _ = Rise() with { SecondTemperature = Temperature.FromKelvins(value) },
        ["cylinder of a clearing"] = value => MachineClearing.Estimate(R134a, Setups.Machine(0.5), Setups.Hoses(), Temperature.FromDegreesCelsius(20), Pressure.FromPascals(value), Pressure.FromPascals(5e4)),
        ["target of a clearing"] = value => MachineClearing.Estimate(R134a, Setups.Machine(0.5), Setups.Hoses(), Temperature.FromDegreesCelsius(20), Pressure.FromPascals(5e5), Pressure.FromPascals(value)),
    };

    private static readonly Dictionary<string, StageOptions> Told = new()
    {
        ["to 50 kPa"] = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50) },
        ["not below 60 kPa"] = new VaporRecoveryOptions { LowestPressure = Pressure.FromKilopascals(60) },
        ["against 700 kPa"] = new VaporRecoveryOptions { ReceiverPressure = Pressure.FromKilopascals(700) },
        ["above freezing"] = new VaporRecoveryOptions { KeepAboveFreezing = true },
        ["stops at freezing"] = new VaporRecoveryOptions { StopAtFreezing = true },
        ["below the cut-out"] = new VaporRecoveryOptions { KeepBelowCutout = true },
        ["cylinder to 7 kg"] = new VaporRecoveryOptions { CylinderLimit = Mass.FromKilograms(7) },
        ["from the state given"] = new VaporRecoveryOptions { Start = new SimulationState(ApplianceState.Initial(Setups.Appliance("R-134a", 1, 10, 20, 10))) },
        ["above freezing "] = new LiquidRecoveryOptions { KeepAboveFreezing = true },
        ["below the cut-out "] = new LiquidRecoveryOptions { KeepBelowCutout = true },
        ["30 % of the appliance"] = new LiquidRecoveryOptions { SuctionShare = Ratio.FromPercent(30) },
        ["120 W/K condensing"] = new PushPullOptions { CondensingConductance = 120 },
        ["0.5 m² of liquid"] = new PushPullOptions { LiquidSurface = Area.FromSquareMeters(0.5) },
        ["above the design pressure too"] = new PushPullOptions { KeepBelowDesignPressure = false },
        ["to 80 kPa"] = new HoldOptions { EndPressure = Pressure.FromKilopascals(80) },
        ["until the cylinder is at 900 kPa"] = new HoldOptions { CylinderEndPressure = Pressure.FromKilopascals(900) },
    };

    public static TheoryData<string> Positives => [.. Positive.Keys];

    public static TheoryData<string> Words => [.. Told.Keys];

    [Theory]
    [MemberData(nameof(Positives))]
    public void Only_what_is_above_zero_is_taken(string name)
    {
        Positive[name](300);
        foreach (double value in new[] { 0, -1, double.NaN, double.PositiveInfinity })
        {
            Assert.ThrowsAny<ArgumentException>(() => Positive[name](value));
        }
    }

    [Theory]
    [MemberData(nameof(Words))]
    public void What_is_told_is_told_back(string words)
    {
        StageOptions told = Told[words], untold = (StageOptions)Activator.CreateInstance(told.GetType())!;
        Assert.Contains(words.Trim(), told.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(words.Trim(), untold.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Water that stands in the tubes at 0.2 °C over liquid that boils colder: each stage says that it freezes, and goes on.</summary>
    [Theory]
    [InlineData(StageEnd.TargetReached)]
    [InlineData(StageEnd.LiquidGone)]
    [InlineData(StageEnd.TimeOver)]
    [InlineData(StageEnd.TimeLimit)]
    public void Freezing_does_not_end_what_was_not_told_to(StageEnd end)
    {
        Appliance unit = Setups.Appliance("R-32", 6, 12, 0.2, 5) with
        {
            LiquidReachable = true,
            MetalMass = Mass.FromKilograms(1),
            Surroundings = Temperature.FromDegreesCelsius(-10),
            Water = TubeWater.Standing(Mass.FromKilograms(0.5), Temperature.FromDegreesCelsius(0.2), Setups.Conductance(20)),
        };
        StageResult stage = end switch
        {
            StageEnd.TargetReached => Equalization.Simulate(unit, Setups.Hoses(), Setups.Cylinder(60), new EqualizationOptions()),
            StageEnd.LiquidGone => LiquidRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 1), new LiquidRecoveryOptions()),
            StageEnd.TimeOver => Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromMinutes(30) }),
            _ => VaporRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 1), new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(5) }),
        };
        Assert.True(stage.ColdestSurface.DegreesCelsius < 0, stage.ColdestSurface.ToString());
        Assert.Equal(end, stage.End);
    }

    private static HoseSweepOptions Sweep() => new() { TargetPressure = Pressure.FromKilopascals(50) };

    private static RiseTestReadings Rise() => new()
    {
        Fluid = R134a,
        InternalVolume = Volume.FromLiters(60),
        FirstPressure = Pressure.FromKilopascals(50),
        FirstTemperature = Temperature.FromDegreesCelsius(5),
        SecondPressure = Pressure.FromKilopascals(52),
        SecondTemperature = Temperature.FromDegreesCelsius(15),
    };
}
