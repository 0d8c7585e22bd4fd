using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A closed vessel, an ideal machine, no metal, heat through one resistance: dm/dt = −S·ρ″, dU/dt = −S·ρ″·h″ + G·(T_air − T), with fixed steps. Time to the target and mass
/// left; once as anybody runs it, once with a tight tolerance. The hose is so wide that it takes a few parts in 1e8 of the pressure.
/// </summary>
public class ReferenceCaseTests
{
    private const double Displacement = 0.5e-3;
    private const double Air = 303.15;

    [Theory]
    [InlineData("R-134a", 5, 20, 297.15, 40, 60e3, 0.25)]
    [InlineData("R-22", 3, 30, 297.15, 150, 101_325, 0.25)]
    [InlineData("R-123", 8, 30, 297.15, 60, 20e3, 1)]
    [InlineData("R-290", 1.5, 20, 297.15, 80, 90e3, 0.2)]
    [InlineData("R-744", 3, 20, 283.15, 300, 800e3, 0.1)]
    [InlineData("R-32", 2, 20, 297.15, 100, 101_325, 0.2)]
    [InlineData("R-410A", 3, 20, 297.15, 100, 101_325, 0.4)]
    [InlineData("R-407C", 3, 20, 297.15, 100, 101_325, 0.4)]
    public void Closed_vessel_ideal_machine_and_heat(string fluid, double charge, double liters, double start, double conductance, double target, double step)
    {
        double volume = liters * 1e-3;
        Appliance appliance = new()
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(charge),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromKelvins(start),
            Surroundings = Temperature.FromKelvins(Air),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / conductance),
            MetalMass = Mass.Zero,
        };
        PropertyModel model = appliance.Fluid.Model;
        double[] y = [charge, charge * model.VesselAtTemperature(start, charge / volume).Bulk.InternalEnergy];
        VesselPoint At(double[] state) => model.VesselAtEnergy(state[0] / volume, state[1] / state[0]);
        double seconds = FixedStep.Until(
            y,
            step,
            1e5,
            (state, slope) =>
            {
                VesselPoint vessel = At(state);
                StatePoint vapor = vessel.Vapor;
                slope[0] = -Displacement * vapor.Density;
                slope[1] = (slope[0] * vapor.Enthalpy) + (conductance * (Air - vessel.Bulk.Temperature));
            },
            state => At(state).Bulk.Pressure - target);

        StageResult Run(double tolerance) => VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.Ideal(VolumeFlow.FromCubicMetersPerSecond(Displacement)) with { HighPressureCutout = Pressure.FromMegapascals(20) },
            new HoseSet { VaporSide = [Setups.Hose(0.01, 300)] },
            Setups.Cylinder(100, 10) with { ServicePressure = Pressure.FromMegapascals(16) },
            new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(target), RelativeTolerance = tolerance, MaximumSteps = 100_000 });

        StageResult usual = Run(StageOptions.DefaultTolerance);
        StageResult tight = Run(1e-10);
        Assert.Equal(StageEnd.TargetReached, usual.End);
        Assert.Equal(seconds, usual.Duration.Seconds, 1e-4 * seconds);
        Assert.Equal(y[0], usual.RemainingMass.Kilograms, 1e-4 * y[0]);
        Assert.Equal(seconds, tight.Duration.Seconds, 1e-6 * seconds);
        Assert.Equal(y[0], tight.RemainingMass.Kilograms, 1e-6 * y[0]);
        Assert.True(seconds > 60 && y[0] < charge && Math.Abs(At(y).Bulk.Temperature - start) > 1, $"{seconds} s, {y[0]} kg");
    }
}
