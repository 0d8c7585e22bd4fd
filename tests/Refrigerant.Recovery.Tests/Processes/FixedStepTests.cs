using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Simulation;
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
    [InlineData("R-134a", 12, 1500, 6000)]
    [InlineData("R-134a", 0.8, 150, 3000)]
    [InlineData("R-290", 3, 200, 3000)]
    public void Pull_with_metal_heat_hose_and_clearance(string fluid, double charge, double seconds, int steps)
    {
        Appliance appliance = Setups.Appliance(fluid, charge, 40, 24, Outer) with
        {
            Surroundings = Temperature.FromKelvins(Surroundings),
            MetalMass = Mass.FromKilograms(30),
            MetalResistance = Setups.Conductance(Inner),
        };
        StageResult result = VaporRecovery.Run(
            appliance,
            Setups.Machine(0.4) with { Body = null },
            new HoseSet { VaporSide = [Setups.Hose(4, 7)] },
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
        double wetted = Within(start.LiquidVolumeFraction);
        double[] y = [charge, charge * start.Bulk.InternalEnergy, Metal * wetted * 297.15, Metal * (1 - wetted) * 297.15, wetted];
        double viscosity = model.ViscosityAtSaturation(297.15).Vapor;
        FixedStep.Integrate(y, seconds, steps, (state, slope) =>
        {
            VesselPoint vessel = model.VesselAtEnergy(state[0] / 0.04, state[1] / state[0]);
            StatePoint vapor = vessel.Vapor;
            double flow = Flow(vapor.Pressure, vapor.Density, viscosity);
            slope[0] = -flow;
            slope[1] = (-flow * vapor.Enthalpy) + MetalHeat(state, slope, 2, vessel.Bulk.Temperature, vessel.LiquidVolumeFraction);
        });
        VesselPoint end = model.VesselAtEnergy(y[0] / 0.04, y[1] / y[0]);
        Assert.Equal(y[0], result.RemainingMass.Kilograms, Tolerance * charge);
        double dry = y[3] / (Metal * (1 - y[4]));
        Assert.Equal(dry, result.Appliance.DryMetalTemperature.Kelvins, Tolerance * dry);
        if (result.Appliance.HasLiquid)
        {
            double wet = y[2] / (Metal * y[4]);
            Assert.Equal(wet, result.Appliance.MetalTemperature.Kelvins, 10 * Tolerance * wet);
        }

        Assert.Equal(end.Bulk.Temperature, result.Appliance.Temperature.Kelvins, Tolerance * end.Bulk.Temperature);
        Assert.Equal(end.Bulk.Pressure, result.Appliance.Pressure.Pascals, 20 * Tolerance * end.Bulk.Pressure);
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
        StageResult result = Hold.Simulate(appliance, new HoldOptions { Duration = Duration.FromMinutes(10), RelativeTolerance = 1e-9 });
        PropertyModel model = appliance.Fluid.Model;
        VesselPoint start = model.VesselAtTemperature(253.15, 60);
        double wetted = Within(start.LiquidVolumeFraction);
        double[] y = [3 * start.Bulk.InternalEnergy, Metal * wetted * 253.15, Metal * (1 - wetted) * 253.15, wetted];
        FixedStep.Integrate(y, 600, 2000, (state, slope) =>
        {
            VesselPoint vessel = model.VesselAtEnergy(60, state[0] / 3);
            slope[0] = MetalHeat(state, slope, 1, vessel.Bulk.Temperature, vessel.LiquidVolumeFraction);
        });
        double pressure = model.VesselAtEnergy(60, y[0] / 3).Bulk.Pressure;
        Assert.Equal(pressure, result.Appliance.Pressure.Pascals, 10 * Tolerance * pressure);
        Assert.Equal(y[1] / (Metal * y[3]), result.Appliance.MetalTemperature.Kelvins, Tolerance * 300);
        Assert.True(result.Appliance.Pressure.Pascals - result.Before.Appliance.Pressure.Pascals > 1e4);
    }

    /// <summary>
    /// Wetted and dry metal: dE_w/dt = f·(G_o·(T_s − T_w) − G·(T_w − T)) + C·df/dt·T*, dE_d/dt alike with 1 − f, G/10 and −C·df/dt·T*, df/dt = (λ − f)/10 s; T* the
    /// temperature of the part that gives metal away. Energies and share stand in the state from a place on; returns the heat to the refrigerant.
    /// </summary>
    private static double MetalHeat(double[] state, double[] slope, int at, double temperature, double level)
    {
        double f = state[at + 2];
        double wet = state[at] / (Metal * f);
        double dry = state[at + 1] / (Metal * (1 - f));
        double change = (Within(level) - f) / 10;
        double moved = Metal * change * (change < 0 ? wet : dry);
        double toLiquid = f * Inner * (wet - temperature);
        double toVapor = (1 - f) * Inner / 10 * (dry - temperature);
        slope[at] = (f * Outer * (Surroundings - wet)) - toLiquid + moved;
        slope[at + 1] = ((1 - f) * Outer * (Surroundings - dry)) - toVapor - moved;
        slope[at + 2] = change;
        return toLiquid + toVapor;
    }

    private static double Within(double level) => Math.Min(0.999, Math.Max(0.001, level));

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
            return FixedStep.Bisect(0, 2 * Math.Max(Drawn(1), area * Math.Sqrt(pressure * density)), flow => Excess(most, flow) > 0);
        }

        return Drawn(FixedStep.Bisect(1e-6, 1, x => Excess(x, Drawn(x)) > 0));
    }
}
