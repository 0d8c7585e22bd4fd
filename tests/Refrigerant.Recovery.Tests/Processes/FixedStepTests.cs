using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>The simulations against a fixed-step Runge–Kutta integration of order four that shares no code with the integrator.</summary>
public class FixedStepTests
{
    private const double Tolerance = 1e-6;
    private const double Metal = 30 * 480;
    private const double Outer = 60;
    private const double Inner = 400;
    private const double Surroundings = 303.15;
    private const double Receiver = 9e5;

    // Equations, hose and machine written out again here, with bisection for the suction pressure and the property model's own
    // energy solve. The charge of 0.8 kg is vapor from the start, the others end with liquid.
    [Theory]
    [InlineData("R-134a", 12, 1500, 3000, Inner)]
    [InlineData("R-134a", 0.8, 150, 3000, Inner / 10)]
    [InlineData("R-290", 3, 200, 3000, Inner)]
    public void Pull_with_metal_heat_hose_and_clearance(string fluid, double charge, double seconds, int steps, double inner)
    {
        Appliance appliance = Setups.Appliance(fluid, charge, 40, 24, Outer) with
        {
            Surroundings = Temperature.FromKelvins(Surroundings),
            MetalMass = Mass.FromKilograms(30),
            MetalResistance = Setups.Conductance(Inner),
        };
        VaporRecoveryResult result = VaporRecovery.Run(
            appliance,
            Setups.Machine(0.4),
            new Line([Setups.Hose(4, 7)]),
            null,
            new VaporRecoveryOptions
            {
                ReceiverPressure = Pressure.FromPascals(Receiver),
                MaximumDuration = Duration.FromSeconds(seconds),
                RelativeTolerance = 1e-9,
            });
        Assert.Equal(StageEnd.TimeLimit, result.End);

        PropertyModel model = appliance.Fluid.Model;
        VesselPoint start = model.VesselAtTemperature(297.15, charge / 0.04);
        double[] y = [charge, charge * start.Bulk.InternalEnergy, 297.15];
        double viscosity = model.ViscosityAtSaturation(297.15).Vapor;
        RungeKutta(y, seconds, steps, (state, slope) =>
        {
            VesselPoint vessel = model.VesselAtEnergy(state[0] / 0.04, state[1] / state[0]);
            StatePoint vapor = vessel.Vapor;
            double flow = Flow(vapor.Pressure, vapor.Density, viscosity);
            double heat = inner * (state[2] - vessel.Bulk.Temperature);
            slope[0] = -flow;
            slope[1] = (-flow * vapor.Enthalpy) + heat;
            slope[2] = ((Outer * (Surroundings - state[2])) - heat) / Metal;
        });
        VesselPoint end = model.VesselAtEnergy(y[0] / 0.04, y[1] / y[0]);
        Assert.Equal(y[0], result.RemainingMass.Kilograms, Tolerance * charge);
        Assert.Equal(y[2], result.Appliance.MetalTemperature.Kelvins, Tolerance * y[2]);
        Assert.Equal(end.Bulk.Temperature, result.Appliance.Temperature.Kelvins, Tolerance * end.Bulk.Temperature);
        Assert.Equal(end.Bulk.Pressure, result.Appliance.Pressure.Pascals, 20 * Tolerance * end.Bulk.Pressure);
    }

    // The same balances, everything on: cylinder, condenser, oil, standing water. Here only the integration is independent.
    [Fact]
    public void Pull_with_cylinder_oil_and_water()
    {
        Appliance appliance = Setups.Appliance("R-134a", 12, 50, 24, 60) with
        {
            MetalMass = Mass.FromKilograms(30),
            Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster },
            Water = TubeWater.Standing(Mass.FromKilograms(15), Temperature.FromDegreesCelsius(24), Setups.Conductance(300)),
        };
        RecoveryCylinder cylinder = Setups.Cylinder(30, 5);
        RecoveryMachine machine = Setups.Machine(0.4);
        const double Seconds = 600;
        VaporRecoveryResult result = VaporRecovery.Simulate(
            appliance, machine, Setups.Hoses(3, 8), cylinder, new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(Seconds), RelativeTolerance = 1e-9 });
        Assert.Equal(StageEnd.TimeLimit, result.End);

        PropertyModel model = appliance.Fluid.Model;
        ApplianceState start = ApplianceState.Initial(appliance);
        CylinderState receiving = CylinderState.Initial(cylinder, appliance.Fluid, appliance.Temperature);
        ApplianceVessel vessel = ApplianceVessel.For(appliance, start, CompositionMode.Fixed);
        double[] y = RecoverySystem.InitialState(start, vessel, receiving);
        OdeSystem system = new RecoverySystem(
            vessel,
            new ThermalNetwork(appliance),
            new SuctionLine(new Line(Setups.Hoses(3, 8).VaporSide), machine),
            new MachineProcess(model, machine, 297.15, 297.15),
            new CylinderProcess(model, cylinder, 297.15, 0),
            new OilRelease(model, appliance.Oil, 297.15),
            model.ViscosityAtSaturation(297.15).Vapor,
            GasExponent.At(model, 297.15),
            y,
            new TrajectoryRecorder());
        RungeKutta(y, Seconds, 1500, (state, slope) => Assert.True(system.Derivatives(state, slope)));
        Assert.Equal(y[RecoverySystem.Out], result.RecoveredMass.Kilograms, Tolerance * 12);
        Assert.Equal(y[RecoverySystem.Dissolved], result.Appliance.DissolvedMass.Kilograms, Tolerance);
        Assert.Equal(y[RecoverySystem.Metal], result.Appliance.MetalTemperature.Kelvins, Tolerance * 300);
        Assert.Equal(y[RecoverySystem.Water], result.Appliance.WaterTemperature.Kelvins, Tolerance * 300);
        Assert.Equal(y[RecoverySystem.CylinderMass], result.Cylinder!.Mass.Kilograms, Tolerance * 12);
        double temperature = model.VesselAtEnergy(
            y[RecoverySystem.CylinderMass] / cylinder.InternalVolume.CubicMeters,
            y[RecoverySystem.CylinderEnergy] / y[RecoverySystem.CylinderMass]).Bulk.Temperature;
        Assert.Equal(temperature, result.Cylinder.Temperature.Kelvins, Tolerance * temperature);
    }

    [Fact]
    public void Hold_with_metal()
    {
        Appliance appliance = Setups.Appliance("R-134a", 3, 50, -20, Outer) with
        {
            Surroundings = Temperature.FromKelvins(Surroundings),
            MetalMass = Mass.FromKilograms(30),
            MetalResistance = Setups.Conductance(Inner),
        };
        HoldResult result = Hold.Simulate(appliance, new HoldOptions { Duration = Duration.FromMinutes(10), RelativeTolerance = 1e-9 });
        PropertyModel model = appliance.Fluid.Model;
        double[] y = [3 * model.VesselAtTemperature(253.15, 60).Bulk.InternalEnergy, 253.15];
        RungeKutta(y, 600, 2000, (state, slope) =>
        {
            double heat = Inner * (state[1] - model.VesselAtEnergy(60, state[0] / 3).Bulk.Temperature);
            slope[0] = heat;
            slope[1] = ((Outer * (Surroundings - state[1])) - heat) / Metal;
        });
        double pressure = model.VesselAtEnergy(60, y[0] / 3).Bulk.Pressure;
        Assert.Equal(pressure, result.Appliance.Pressure.Pascals, 10 * Tolerance * pressure);
        Assert.Equal(y[1], result.Appliance.MetalTemperature.Kelvins, Tolerance * y[1]);
        Assert.True(result.PressureRise.Pascals > 1e4);
    }

    /// <summary>
    /// Hose of 4 m and 7 mm, machine of 0.4 L/s with 4 % clearance and n = 1.15: the pressure at the machine by bisection; its check valves let gas
    /// pass while the receiver is below the appliance.
    /// </summary>
    private static double Flow(double pressure, double density, double viscosity)
    {
        const double Diameter = 0.007;
        double area = Math.PI / 4 * Diameter * Diameter;
        double Drawn(double x) => 0.4e-3 * Math.Max(0, 1.04 - (0.04 * Math.Pow(Math.Max(1, Receiver / (x * pressure)), 1 / 1.15))) * density * x;
        double Excess(double x, double flow)
        {
            double reynolds = Math.Max(1e-9, flow * Diameter / (area * viscosity));
            double a = Math.Pow(2.457 * Math.Log(1 / (Math.Pow(7 / reynolds, 0.9) + (0.27 * 1e-5 / Diameter))), 16);
            double b = Math.Pow(37530 / reynolds, 16);
            double friction = 8 * Math.Pow(Math.Pow(8 / reynolds, 12) + Math.Pow(a + b, -1.5), 1.0 / 12);
            double k = (friction * 4 / Diameter) + 1.5;
            return (area * Math.Sqrt(pressure * density * (1 - (x * x)) / (k - (2 * Math.Log(x))))) - flow;
        }

        double most = Receiver / pressure;
        if (most < 1 && Excess(most, Drawn(most)) > 0)
        {
            return Bisect(0, 2 * Math.Max(Drawn(1), area * Math.Sqrt(pressure * density)), flow => Excess(most, flow) > 0);
        }

        return Drawn(Bisect(1e-6, 1, x => Excess(x, Drawn(x)) > 0));
    }

    private static double Bisect(double low, double high, Func<double, bool> isBelow)
    {
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high);
            if (isBelow(middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }

    private static void RungeKutta(double[] y, double end, int steps, Action<double[], double[]> slope)
    {
        int n = y.Length;
        double h = end / steps;
        double[] k1 = new double[n], k2 = new double[n], k3 = new double[n], k4 = new double[n], probe = new double[n];
        for (int s = 0; s < steps; s++)
        {
            slope(y, k1);
            Move(k1, 0.5);
            slope(probe, k2);
            Move(k2, 0.5);
            slope(probe, k3);
            Move(k3, 1);
            slope(probe, k4);
            for (int i = 0; i < n; i++)
            {
                y[i] += h / 6 * (k1[i] + (2 * k2[i]) + (2 * k3[i]) + k4[i]);
            }
        }

        void Move(double[] k, double share)
        {
            for (int i = 0; i < n; i++)
            {
                probe[i] = y[i] + (share * h * k[i]);
            }
        }
    }
}
