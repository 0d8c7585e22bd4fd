using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Doubles;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>A blend runs the same course whether its engine can follow phases from step to step or only answers its port.</summary>
public class PortOnlyBlendTests
{
    private static readonly Fluid Own = Fluid.Get("R-404A");
    private static readonly Fluid Port = Fluid.FromModel(new PortOnly(Own.Model));

    [Theory]
    [InlineData(0.4, 240)]
    [InlineData(3, 60)]
    public void A_pull_down_to_dry_vapor(double kilograms, double seconds) => AreSame(fluid => VaporRecovery.Simulate(
        Unit(fluid, kilograms), Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(10, 0.5), new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(seconds) }));

    [Fact]
    public void Liquid_through_the_machine() => AreSame(fluid => LiquidRecovery.Simulate(
        Unit(fluid, 6) with { LiquidReachable = true, LiquidHeel = Mass.FromKilograms(4) }, Setups.Machine(0.2), Setups.Hoses(), Setups.Cylinder(10, 1), new LiquidRecoveryOptions()));

    /// <summary>Shut in and heated until it is full of liquid.</summary>
    [Fact]
    public void A_vessel_that_comes_to_be_full() => AreSame(fluid => Hold.Simulate(
        Unit(fluid, 10.2), new HoldOptions { Duration = Duration.FromMinutes(2), Inputs = new SimulationInputs(heaterPower: 1500) }));

    private static Appliance Unit(Fluid fluid, double kilograms) => Setups.Appliance("R-404A", kilograms, 10, 20, 50) with { Fluid = fluid };

    private static void AreSame(Func<Fluid, StageResult> run)
    {
        StageResult own = run(Own), port = run(Port);
        Assert.Equal(own.End, port.End);
        Assert.Equal(own.Duration.Seconds, port.Duration.Seconds, 1e-4 * own.Duration.Seconds);
        Assert.Equal(own.RemainingMass.Kilograms, port.RemainingMass.Kilograms, 1e-4 * own.Before.Appliance.Mass.Kilograms);
        Assert.Equal(own.Appliance.LiquidMass.Kilograms, port.Appliance.LiquidMass.Kilograms, 1e-4 * own.Before.Appliance.Mass.Kilograms);
        Assert.Equal(own.Appliance.Temperature.Kelvins, port.Appliance.Temperature.Kelvins, 0.02);
        Assert.Equal(own.Appliance.Pressure.Pascals, port.Appliance.Pressure.Pascals, 1e-3 * own.Appliance.Pressure.Pascals);
        Assert.Equal(own.Cylinder?.Pressure.Pascals ?? 0, port.Cylinder?.Pressure.Pascals ?? 0, 1e-3 * (own.Cylinder?.Pressure.Pascals ?? 1));
        Assert.Equal(own.LiquidGoneAfter?.Seconds ?? -1, port.LiquidGoneAfter?.Seconds ?? -1, 1);
        Assert.Equal(own.Findings.Count, port.Findings.Count);
    }
}
