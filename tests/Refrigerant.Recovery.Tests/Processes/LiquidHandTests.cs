using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Liquid through the machine: what stops it, and a hand on the inlet that keeps clear of that.</summary>
public class LiquidHandTests
{
    private static readonly Appliance Unit = Setups.Appliance("R-134a", 20, 40, 20, 50) with { LiquidReachable = true };

    private static readonly Appliance Hot = Unit with { Temperature = Temperature.FromDegreesCelsius(38), Surroundings = Temperature.FromDegreesCelsius(30) };

    /// <summary>Far throttled: the compressor works hard, and no condenser takes that away.</summary>
    private static readonly LiquidRecoveryOptions Roomy = new() { CylinderLimit = Mass.FromKilograms(27), SuctionShare = Ratio.FromPercent(10) };

    private static readonly RecoveryMachine Weak = Setups.Machine(0.5) with { Condenser = new Condenser { RatedDuty = Power.Zero } };

    /// <summary>The hand is off a band away from the limit, shut half a band away, and half way in between lets half through.</summary>
    [Fact]
    public void A_hand_shuts_between_a_band_and_half_of_it()
    {
        double Share(double margin) => new Governor(() => margin, 4).Share();
        Assert.Equal([0, 0, 0, 0.5, 1, 1], new[] { -3, 0, 2, 3, 4, 100.0 }.Select(Share));
        double[] between = [.. Enumerable.Range(0, 21).Select(i => Share(2 + (0.1 * i)))];
        Assert.Equal(between.Order(), between);
        Assert.Equal(between.Length, between.Distinct().Count());
        Assert.All(Enumerable.Range(0, 21), i => Assert.Equal(1, between[i] + between[20 - i], 1e-12));
    }

    /// <summary>
    /// Without a hand the cut-out stops it where it is set, or the cylinder at 1.25 times its service pressure, gauge (49 CFR 173.301, from memory), whichever is lower; with one it stays 2 to 4 % below, and goes on.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Below_what_machine_and_cylinder_stand_it_is_throttled(bool isMachine)
    {
        RecoveryCylinder strong = Setups.Cylinder(30, 2) with { ServicePressure = Pressure.FromKilopascals(3000) };
        double highest = Draw(Hot, Weak, Roomy, strong).Trajectory.Max(point => point.DischargePressure.Kilopascals);
        double limit = 0.95 * highest;
        RecoveryMachine machine = Weak with { HighPressureCutout = Pressure.FromKilopascals(isMachine ? limit : 3000) };
        RecoveryCylinder cylinder = strong with { ServicePressure = Pressure.FromKilopascals(isMachine ? 3000 : (limit - 101.325) / 1.25) };
        StageResult free = Draw(Hot, machine, Roomy, cylinder);
        Assert.Equal(isMachine ? StageEnd.HighPressureCutout : StageEnd.CylinderPressure, free.End);
        Assert.Equal(limit, free.Cylinder!.Pressure.Kilopascals, 0.01);
        Assert.Equal(limit, free.Trajectory[^1].DischargePressure.Kilopascals, 0.01);
        Assert.Equal(Severity.Warning, free.Findings.Single(finding => finding.Code == "liquid-ends-early").Severity);
        StageResult hand = Draw(Hot, machine, Roomy with { KeepBelowCutout = true }, cylinder);
        Assert.InRange(hand.Trajectory.Max(point => point.DischargePressure.Kilopascals), 0.96 * limit, 0.98 * limit);
        Assert.True(hand.RecoveredMass > free.RecoveredMass);
    }

    /// <summary>Four hundredths below the limit the hand comes to the valve (our choice): where the pressure stays further below, it is as if there were none.</summary>
    [Theory]
    [InlineData(0.958, false)]
    [InlineData(0.962, true)]
    public void The_hand_comes_four_hundredths_below_the_limit(double share, bool comes)
    {
        RecoveryCylinder strong = Setups.Cylinder(30, 2) with { ServicePressure = Pressure.FromKilopascals(3000) };
        StageResult free = Draw(Hot, Weak, Roomy, strong);
        double limit = free.Trajectory.Max(point => point.DischargePressure.Kilopascals) / share;
        StageResult hand = Draw(Hot, Weak with { HighPressureCutout = Pressure.FromKilopascals(limit) }, Roomy with { KeepBelowCutout = true }, strong);
        Assert.Equal(free.End, hand.End);
        Assert.Equal(comes, hand.Duration.Seconds > free.Duration.Seconds + 1e-6);
    }

    /// <summary>Water in the tubes freezes as the liquid that is left boils; with a hand the surface stays half a kelvin or more above.</summary>
    [Fact]
    public void Above_freezing_it_is_throttled()
    {
        Appliance unit = Setups.Appliance("R-32", 15, 60, 1.5, 5) with
        {
            LiquidReachable = true,
            MetalMass = Mass.FromKilograms(0.5),
            Water = TubeWater.Standing(Mass.FromKilograms(0.5), Temperature.FromDegreesCelsius(1.5), Setups.Conductance(50)),
        };
        var options = new LiquidRecoveryOptions { MaximumDuration = Duration.FromMinutes(20) };
        StageResult free = Draw(unit, Setups.Machine(1), options, Setups.Cylinder(60, 2));
        Assert.True(free.ColdestSurface.DegreesCelsius < -0.1);
        StageResult hand = Draw(unit, Setups.Machine(1), options with { KeepAboveFreezing = true }, Setups.Cylinder(60, 2));
        Assert.InRange(hand.ColdestSurface.DegreesCelsius, 0.5, 1);
        Assert.True(hand.RecoveredMass < free.RecoveredMass);
        StageResult dry = Draw(unit with { Water = null }, Setups.Machine(1), options with { KeepAboveFreezing = true }, Setups.Cylinder(60, 2));
        Assert.True(dry.ColdestSurface.DegreesCelsius < -0.1);
    }

    /// <summary>A low-pressure switch goes by the pressure at the inlet, a share of the appliance's.</summary>
    [Theory]
    [InlineData(0.5, 300, true)]
    [InlineData(0.5, 270, false)]
    [InlineData(0.8, 300, false)]
    public void The_low_pressure_switch_sees_the_throttled_inlet(double share, double kilopascals, bool stops)
    {
        RecoveryMachine machine = Setups.Machine(0.5) with { LowPressureSwitch = Pressure.FromKilopascals(kilopascals) };
        StageResult drawn = Draw(
            Unit, machine, new LiquidRecoveryOptions { SuctionShare = Ratio.FromDecimalFractions(share), MaximumDuration = Duration.FromSeconds(5) }, Setups.Cylinder(60, 2));
        Assert.Equal(572, drawn.Before.Appliance.Pressure.Kilopascals, 1.0);
        Assert.Equal(stops ? StageEnd.LowPressureSwitch : StageEnd.TimeLimit, drawn.End);
        Assert.Equal(share * drawn.Trajectory[0].AppliancePressure.Pascals, drawn.Trajectory[0].SuctionPressure.Pascals, 1);
    }

    /// <summary>What the rating allows is the most that it draws; a machine that stands draws nothing, and that is a stall.</summary>
    [Fact]
    public void No_more_is_drawn_than_the_machine_is_rated_for()
    {
        var options = new LiquidRecoveryOptions { MaximumDuration = Duration.FromSeconds(10) };
        StageResult free = Draw(Unit, Setups.Machine(0.5), options, Setups.Cylinder(60, 2));
        double flow = free.Trajectory[0].Flow.KilogramsPerSecond;
        StageResult rated = Draw(Unit, Setups.Machine(0.5) with { LiquidRate = MassFlow.FromKilogramsPerSecond(0.5 * flow) }, options, Setups.Cylinder(60, 2));
        Assert.Equal(0.5 * flow, rated.Trajectory[0].Flow.KilogramsPerSecond, 1e-9);
        StageResult throttled = Draw(Unit, Setups.Machine(0.5), options with { Inputs = new SimulationInputs(inletOpening: 0.25) }, Setups.Cylinder(60, 2));
        Assert.Equal(0.25 * flow, throttled.Trajectory[0].Flow.KilogramsPerSecond, 1e-9);
        StageResult off = Draw(Unit, Setups.Machine(0.5), options with { Inputs = new SimulationInputs(machineRunning: false) }, Setups.Cylinder(60, 2));
        Assert.Equal((StageEnd.Stalled, 0.0), (off.End, off.RecoveredMass.Kilograms));
    }

    private static StageResult Draw(Appliance unit, RecoveryMachine machine, LiquidRecoveryOptions options, RecoveryCylinder cylinder) =>
        LiquidRecovery.Simulate(unit, machine, Setups.Hoses(), cylinder, options);
}
