using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>A cylinder on the ground under a roof unit: liquid runs there by its own weight, machine or no machine.</summary>
public class SiphonTests
{
    /// <summary>
    /// Torricelli with friction: ρ·g·h − (p_c − p_a) = (1 + f·L/D + ...)·ρ·w²/2 bounds the flow at the start, and the limit of the cylinder stops it. p_c − p_a is 19 kPa here and ρ·g·h 60 kPa.
    /// </summary>
    [Fact]
    public void Liquid_runs_down_into_a_cylinder_of_higher_pressure_while_the_machine_stands()
    {
        Appliance unit = Setups.Appliance("R-134a", 20, 30, 21.85, 40) with { LiquidReachable = true, Surroundings = Temperature.FromKelvins(296), MetalMass = Mass.FromKilograms(40) };
        HoseSet hoses = Setups.Hoses() with { LiquidSide = [Setups.Hose(6, 15) with { Rise = Length.FromMeters(-5) }] };
        RecoveryCylinder cylinder = Setups.Cylinder(40, 5);
        var standing = new SimulationInputs(machineRunning: false);
        StageResult first = PushPull.Simulate(unit, Setups.Machine(0.5), hoses, cylinder, new PushPullOptions { Inputs = standing, MaximumDuration = Duration.FromSeconds(2) });
        Assert.True(first.Before.Cylinder!.Pressure > first.Before.Appliance.Pressure);
        double density = unit.Fluid.Model.SaturationAtTemperature(295).Bubble.Density;
        double head = (density * 9.80665 * 5) - (first.Before.Cylinder.Pressure - first.Before.Appliance.Pressure).Pascals;
        double area = Math.PI / 4 * 0.015 * 0.015;
        double frictionless = area * Math.Sqrt(2 * density * head);
        double moved = first.RecoveredMass.Kilograms;
        Assert.InRange(moved, 0.25 * frictionless * 2, frictionless * 2);

        StageResult long_ = PushPull.Simulate(unit, Setups.Machine(0.5), hoses, Setups.Cylinder(40, 24), new PushPullOptions { Inputs = standing, MaximumDuration = Duration.FromMinutes(20) });
        Assert.Equal(StageEnd.CylinderFull, long_.End);
    }

    /// <summary>With the machine on nothing breaks where the pressures cross.</summary>
    [Fact]
    public void A_falling_hose_is_drained_to_the_heel()
    {
        Appliance unit = Setups.Appliance("R-134a", 20, 30, 21.85, 40) with { LiquidReachable = true, Surroundings = Temperature.FromKelvins(295), MetalMass = Mass.FromKilograms(40) };
        HoseSet hoses = Setups.Hoses(1.5, 8) with { LiquidSide = [Setups.Hose(6, 15) with { Rise = Length.FromMeters(-5) }] };
        StageResult even = Equalization.Simulate(unit, hoses, Setups.Cylinder(40), new EqualizationOptions());
        StageResult push = PushPull.Simulate(unit, Setups.Machine(0.5), hoses, Setups.Cylinder(40), new PushPullOptions { Start = even.After });
        Assert.Equal(StageEnd.LiquidGone, push.End);
        Assert.InRange(push.Closure.Steps, 1, 1000);
    }
}
