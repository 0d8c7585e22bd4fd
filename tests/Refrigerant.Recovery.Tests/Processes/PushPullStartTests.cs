using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Push-pull into a cylinder that is all but evacuated; setups invented.</summary>
public class PushPullStartTests
{
    private static readonly Mass Heel = Mass.FromKilograms(0.5);

    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-407C")]
    [InlineData("R-448A")]
    [InlineData("R-404A")]
    public void An_empty_cylinder_is_filled_down_to_the_heel(string designation)
    {
        StageResult result = PushPull.Simulate(Full(designation), Setups.Machine(0.7), Setups.Hoses(), Setups.Cylinder(60), new PushPullOptions());
        Assert.Equal(StageEnd.LiquidGone, result.End);
        Assert.Equal(Heel.Kilograms, result.Trajectory[^1].LiquidMass.Kilograms, 1e-6);
    }

    [Fact]
    public void Flashing_below_the_equation_says_so_and_vapor_first_cures_it()
    {
        Appliance appliance = Full("R-410A");
        RecoveryMachine machine = Setups.Machine(0.7);
        StageResult result = PushPull.Simulate(appliance, machine, Setups.Hoses(), Setups.Cylinder(60), new PushPullOptions());
        Assert.Equal(StageEnd.PropertyRange, result.End);
        Assert.Contains(result.Findings, finding => finding.Message.Contains("let vapor in first", StringComparison.Ordinal));

        StageResult first = Equalization.Simulate(
            appliance,
            Setups.Hoses(),
            Setups.Cylinder(60),
            new EqualizationOptions());
        StageResult after = PushPull.Simulate(
            appliance,
            machine,
            Setups.Hoses(),
            Setups.Cylinder(60),
            new PushPullOptions { Start = first.After });
        Assert.Equal(StageEnd.LiquidGone, after.End);
    }

    private static Appliance Full(string designation) =>
        Setups.Appliance(designation, 30, 60, 24, null) with { LiquidReachable = true, LiquidHeel = Heel };
}
