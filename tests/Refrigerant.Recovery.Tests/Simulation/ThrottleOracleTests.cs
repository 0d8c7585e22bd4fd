using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A hand on the inlet valve: the share 3s² − 2s³ of the flow, s from 0 at half a band clear of the limit to 1 at a band. Above freezing (band 1 K) of tubes with moving water, above a pressure (3 %),
/// below the cylinder's (4 %). Fixed steps.
/// </summary>
public class ThrottleOracleTests
{
    private const double Start = 283.15;
    private const double Air = 293.15;
    private const double Liters = 60;
    private const double Charge = 15;

    [Theory]
    [InlineData(true, 0, 300)]
    [InlineData(false, 180e3, 1200)]
    public void The_pull_is_throttled(bool freezing, double floor, double seconds)
    {
        const double WaterResistance = 1.0 / 900;
        Appliance appliance = Setups.Appliance("R-134a", Charge, Liters, Start - 273.15, 40) with
        {
            Surroundings = Temperature.FromKelvins(Air),
            MetalMass = Mass.FromKilograms(30),
            MetalResistance = Setups.Conductance(800),
            Water = TubeWater.Moving(MassFlow.FromKilogramsPerSecond(0.15), Temperature.FromKelvins(281), ThermalResistance.FromSquareMeterKelvinsPerWatt(WaterResistance)),
        };
        RecoveryCylinder cylinder = Setups.Cylinder(30, 4) with { ServicePressure = Pressure.FromMegapascals(6) };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            Setups.Machine(1.5),
            Setups.Hoses(3, 12),
            cylinder,
            new VaporRecoveryOptions
            {
                KeepAboveFreezing = freezing,
                LowestPressure = floor > 0 ? Pressure.FromPascals(floor) : null,
                MaximumDuration = Duration.FromSeconds(seconds),
                RelativeTolerance = 1e-9,
                MaximumSteps = 100_000,
            });
        Assert.Equal(StageEnd.TimeLimit, result.End);

        PropertyModel model = appliance.Fluid.Model;
        double flowing = 0.15 * 4190;
        var metal = new OracleMetal(30 * 480, 40, 800) { Water = flowing * (1 - Math.Exp(-1 / WaterResistance / flowing)), WaterTemperature = 281 };
        var machine = new OracleMachine(model, new OracleGas(model, Start), new OracleLine([], (3, 0.012)), 1.5e-3);
        var receiver = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 18);
        double volume = 1e-3 * Liters;
        VesselPoint before = model.VesselAtTemperature(Start, Charge / volume);
        double[] y = [Charge, Charge * before.Bulk.InternalEnergy, .. metal.Initial(before.LiquidVolumeFraction, Start), Air, .. receiver.Initial(4, Air)];
        double opening = 1;
        FixedStep.Integrate(y, seconds, 2000, (state, d) =>
        {
            VesselPoint vessel = model.VesselAtEnergy(state[0] / volume, state[1] / state[0]);
            double t = vessel.Bulk.Temperature;
            double clear = freezing ? metal.Coldest(state, 2) - 273.15 : (vessel.Bulk.Pressure - floor) / (0.03 * floor);
            double s = Math.Min(1, Math.Max(0, (2 * clear) - 1));
            opening = s * s * (3 - (2 * s));
            machine.Solve(vessel.Vapor, vessel.Bulk.Pressure, receiver.At(state, 6).Bulk.Pressure, state[5], Air, opening);
            metal.Slope(state, d, 2, t, t, vessel.LiquidVolumeFraction, Air);
            d[0] = -machine.Flow;
            d[1] = (-machine.Flow * vessel.Vapor.Enthalpy) + metal.ToLiquid + metal.ToVapor;
            d[5] = machine.BodySlope;
            receiver.Slope(state, d, 6, Air);
            d[6] += machine.Flow;
            d[7] += machine.Flow * machine.Outlet;
        });
        VesselPoint end = model.VesselAtEnergy(y[0] / volume, y[1] / y[0]);
        Assert.Equal(y[0], result.RemainingMass.Kilograms, 2e-6 * Charge);
        Assert.Equal(end.Bulk.Temperature, result.Appliance.Temperature.Kelvins, 2e-6 * Start);
        Assert.Equal(y[5], result.After.MachineTemperature!.Value.Kelvins, 2e-6 * Start);
        Assert.Equal(receiver.At(y, 6).Bulk.Pressure, result.Cylinder!.Pressure.Pascals, 5e-6 * end.Bulk.Pressure);
        Assert.InRange(opening, 0.01, 0.9);
        Assert.True(freezing ? result.ColdestSurface.Kelvins > 273.6 : result.Trajectory.Min(point => point.AppliancePressure.Pascals) > 1.01 * floor);
    }
}
