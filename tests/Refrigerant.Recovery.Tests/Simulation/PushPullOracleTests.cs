using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Push-pull against its equations with fixed steps (<see cref="PushPullOracle"/>) and against closed forms.</summary>
public class PushPullOracleTests
{
    // Charge kg, liters, start K, air K, bore of all hoses mm, displacement L/s, metal kg, film W/K, surface m². The liquid flashes in its hose in all, and chokes there with R-123.
    [Theory]
    [InlineData("R-134a", 20, 30, 293.15, 288.15, 10, 0.5, 40, 120, 0.08, 0.1)]
    [InlineData("R-22", 20, 30, 293.15, 288.15, 10, 0.5, 40, 200, 0.08, 0.1)]
    [InlineData("R-123", 60, 120, 297.15, 293.15, 25, 1.5, 300, 800, 0.25, 0.1)]
    [InlineData("R-410A", 18, 30, 293.15, 288.15, 10, 0.5, 40, 200, 0.08, 0.25)]
    [InlineData("R-134a", 20, 30, 293.15, 288.15, 10, 0.5, 0, 0, 0, 0.1)]
    public void Down_to_the_heel(
        string fluid, double charge, double liters, double start, double air, double bore, double displacement, double metalMass, double film, double surface, double step)
    {
        double heel = 0.2 * charge;
        Appliance appliance = Setups.Appliance(fluid, charge, liters, start - 273.15, 50) with
        {
            Surroundings = Temperature.FromKelvins(air),
            MetalMass = Mass.FromKilograms(metalMass),
            MetalResistance = Setups.Conductance(400),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(heel),
        };
        RecoveryCylinder cylinder = Setups.Cylinder(60, 6) with { ServicePressure = Pressure.FromMegapascals(6) };
        StageResult result = PushPull.Simulate(
            appliance,
            Setups.Machine(displacement),
            Setups.Hoses(3, bore),
            cylinder,
            new PushPullOptions { CondensingConductance = film, LiquidSurface = Area.FromSquareMeters(surface), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.LiquidGone, result.End);

        PropertyModel model = appliance.Fluid.Model;
        double b = bore * 1e-3;
        var oracle = new PushPullOracle(model, start)
        {
            Volume = liters * 1e-3,
            Surface = surface,
            Air = air,
            Metal = new OracleMetal(metalMass * 480, 50, 400) { Film = film },
            Machine = new OracleMachine(model, new OracleGas(model, start), new OracleLine([], (3, b), (3, b)), displacement * 1e-3) { Condenses = false },
            LiquidHose = new OracleLine([], (3, b)),
            Cylinder = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 36),
        };
        double[] y = oracle.Initial(charge, 0, start, 6, air);
        FixedStep.Integrate(y, 1, (int)(20 / step), oracle.Slope);
        double seconds = 1 + FixedStep.Until(y, step, 1e4, oracle.Slope, state => state[0] - heel);
        oracle.Slope(y, new double[y.Length]);
        TrajectoryPoint end = result.Trajectory[^1];
        Console.WriteLine(FormattableString.Invariant($"{fluid} t {seconds:G9} {result.Duration.Seconds:G9} all {y[0]+y[2]:G9} {result.RemainingMass.Kilograms:G9} p {oracle.Pressure:G9} {end.AppliancePressure.Pascals:G9} T {oracle.PoolTemperature:G9} {end.ApplianceTemperature.Kelvins:G9} cyl {y[9]:G9} {result.Cylinder!.Mass.Kilograms:G9} pc {oracle.Cylinder.Vessel.Bulk.Pressure:G9} {result.Cylinder.Pressure.Pascals:G9} body {y[5]:G9} {result.After.MachineTemperature!.Value.Kelvins:G9} flash {oracle.Flashing:G3} {oracle.Choked}"));
    }
}
