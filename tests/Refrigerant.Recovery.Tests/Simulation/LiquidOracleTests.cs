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
/// Liquid through the machine, ṁ = S·η·ρ(p_s, h) with what the hose lets flash through to p_s, p_s at most half the appliance's pressure, the mixture compressed and condensed; and vapor first,
/// through both hoses by itself. Fixed steps.
/// </summary>
public class LiquidOracleTests
{
    private const double Start = 297.15;
    private const double Air = 300.15;

    // Displacement L/s, hose m and mm, rated kg/s or none: limited by the machine, by the hose, by its rating.
    [Theory]
    [InlineData("R-134a", 12, 0.3, 3, 8, 0, 0.4)]
    [InlineData("R-134a", 12, 0.8, 4, 2.5, 0, 0.4)]
    [InlineData("R-22", 12, 0.8, 3, 8, 0.03, 0.4)]
    [InlineData("R-410A", 10, 0.4, 3, 8, 0, 2)]
    public void Down_to_the_heel(string fluid, double charge, double displacement, double meters, double millimeters, double rated, double step)
    {
        double heel = 0.5 * charge;
        Appliance appliance = Setups.Appliance(fluid, charge, 20, Start - 273.15, 60) with
        {
            Surroundings = Temperature.FromKelvins(Air),
            MetalMass = Mass.FromKilograms(15),
            MetalResistance = Setups.Conductance(300),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(heel),
        };
        RecoveryMachine machine = Setups.Machine(displacement) with { LiquidRate = rated > 0 ? MassFlow.FromKilogramsPerSecond(rated) : null };
        RecoveryCylinder cylinder = Setups.Cylinder(30, 4) with { ServicePressure = Pressure.FromMegapascals(6) };
        Hose hose = Setups.Hose(meters, millimeters);
        StageResult result = LiquidRecovery.Simulate(
            appliance,
            machine,
            new HoseSet { VaporSide = [hose], LiquidSide = [hose] },
            cylinder,
            new LiquidRecoveryOptions { RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.LiquidGone, result.End);

        PropertyModel model = appliance.Fluid.Model;
        double viscosity = model.ViscosityAtSaturation(Start).Liquid;
        var metal = new OracleMetal(15 * 480, 60, 300);
        var line = new OracleLine([], (meters, 1e-3 * millimeters));
        var compressor = new OracleMachine(model, new OracleGas(model, Start), null, 1e-3 * displacement);
        var receiver = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 18);
        VesselPoint before = model.VesselAtTemperature(Start, charge / 0.02);
        double[] y = [charge, charge * before.Bulk.InternalEnergy, .. metal.Initial(before.LiquidVolumeFraction, Start), .. receiver.Initial(4, Air)];
        VesselPoint At(double[] state) => model.VesselAtEnergy(state[0] / 0.02, state[1] / state[0]);
        bool throttled = false, limited = false, atRating = false;
        double seconds = FixedStep.Until(
            y,
            step,
            1e4,
            (state, d) =>
            {
                VesselPoint vessel = At(state);
                double pressure = vessel.Bulk.Pressure;
                double h = vessel.Liquid.Enthalpy;
                double discharge = receiver.At(state, 5).Bulk.Pressure;
                double bubble = line.Bubble(model, h).Pressure;
                double Drawn(double p) => 1e-3 * displacement * compressor.Efficiency(discharge / p) * OracleLine.Density(model, p, h, bubble);
                double suction = 0.5 * pressure;
                double flow = Drawn(suction);
                double passed = line.Liquid(model, pressure, h, viscosity, suction);
                throttled |= flow <= passed;
                if (flow > passed)
                {
                    limited = true;
                    suction = FixedStep.Root(0.05 * pressure, suction, 1e-12, p => Drawn(p) - line.Liquid(model, pressure, h, viscosity, p));
                    flow = Drawn(suction);
                }

                double density = OracleLine.Density(model, suction, h, bubble);
                atRating |= rated > 0 && flow > rated;
                flow = rated > 0 ? Math.Min(rated, flow) : flow;
                double hot = h + compressor.Work(suction, density, discharge);
                metal.Slope(state, d, 2, vessel.Bulk.Temperature, vessel.Bulk.Temperature, vessel.LiquidVolumeFraction, Air);
                d[0] = -flow;
                d[1] = (-flow * h) + metal.ToLiquid + metal.ToVapor;
                receiver.Slope(state, d, 5, Air);
                d[5] += flow;
                d[6] += (flow * hot) - compressor.Condensed(hot, flow, discharge, Air);
            },
            state => (state[0] * (1 - At(state).Bulk.VaporFraction)) - heel);
        Assert.Equal(seconds, result.Duration.Seconds, 2e-6 * seconds);
        Assert.Equal(y[0], result.RemainingMass.Kilograms, 2e-6 * charge);
        Assert.Equal(At(y).Bulk.Temperature, result.Appliance.Temperature.Kelvins, 1e-6 * Start);
        Assert.Equal(receiver.At(y, 5).Bulk.Pressure, result.Cylinder!.Pressure.Pascals, 5e-6 * result.Cylinder.Pressure.Pascals);
        Assert.Equal((millimeters > 5, millimeters < 5, rated > 0), (throttled, limited, atRating));
    }

    [Theory]
    [InlineData("R-134a", 0.5)]
    [InlineData("R-32", 0.5)]
    [InlineData("R-407C", 0.5)]
    public void Vapor_first_until_the_pressures_are_equal(string fluid, double content)
    {
        const double Charge = 14;
        Appliance appliance = Setups.Appliance(fluid, Charge, 30, Start - 273.15, 60) with
        {
            Surroundings = Temperature.FromKelvins(Air),
            MetalMass = Mass.FromKilograms(15),
            MetalResistance = Setups.Conductance(300),
        };
        RecoveryCylinder cylinder = Setups.Cylinder(26, content) with { ServicePressure = Pressure.FromMegapascals(6) };
        StageResult result = Equalization.Simulate(
            appliance,
            new HoseSet { VaporSide = [Setups.Hose(2, 5, Fitting.CoreDepressor())], Discharge = [Setups.Hose(3, 6)] },
            cylinder,
            new EqualizationOptions { RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.TargetReached, result.End);

        PropertyModel model = appliance.Fluid.Model;
        var gas = new OracleGas(model, Start);
        var metal = new OracleMetal(15 * 480, 60, 300);
        var line = new OracleLine([0.1], (3, 0.006), (2, 0.005));
        var receiver = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 0.6 * 26);
        VesselPoint before = model.VesselAtTemperature(Start, Charge / 0.03);
        double[] y = [Charge, Charge * before.Bulk.InternalEnergy, .. metal.Initial(before.LiquidVolumeFraction, Start), .. receiver.Initial(content, Air)];
        VesselPoint At(double[] state) => model.VesselAtEnergy(state[0] / 0.03, state[1] / state[0]);
        double seconds = FixedStep.Until(
            y,
            0.25,
            1e4,
            (state, d) =>
            {
                VesselPoint vessel = At(state);
                double flow = line.Between(vessel.Bulk.Pressure, vessel.Vapor.Density, gas.IdealExponent, gas.Viscosity, receiver.At(state, 5).Bulk.Pressure);
                metal.Slope(state, d, 2, vessel.Bulk.Temperature, vessel.Bulk.Temperature, vessel.LiquidVolumeFraction, Air);
                d[0] = -flow;
                d[1] = (-flow * vessel.Vapor.Enthalpy) + metal.ToLiquid + metal.ToVapor;
                receiver.Slope(state, d, 5, Air);
                d[5] += flow;
                d[6] += flow * vessel.Vapor.Enthalpy;
            },
            state => Math.Min((0.98 * At(state).Bulk.Pressure) - receiver.At(state, 5).Bulk.Pressure, state[0] - (0.85 * Charge)));
        Assert.Equal(seconds, result.Duration.Seconds, 3e-6 * seconds);
        Assert.Equal(y[0], result.RemainingMass.Kilograms, 2e-6 * Charge);
        Assert.Equal(At(y).Bulk.Temperature, result.Appliance.Temperature.Kelvins, 2e-6 * Start);
        Assert.Equal(receiver.At(y, 5).Bulk.Pressure, result.Cylinder!.Pressure.Pascals, 5e-6 * result.Cylinder.Pressure.Pascals);
    }

    /// <summary>dp/dt = −S·η(p_discharge/p)·p/V of air, with leakage, against a discharge pressure that is not the air's.</summary>
    [Fact]
    public void A_sweep_with_leakage_against_a_raised_pressure()
    {
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(
            VolumeFlow.FromLitersPerSecond(0.3), clearanceRatio: 0.03, polytropicExponent: 1.2, volumetricEfficiency: 0.9, internalVolume: Volume.FromLiters(2), leakageTerm: 0.01);
        HoseSweepResult result = HoseSweep.Simulate(
            new HoseSet { VaporSide = [Setups.Hose(3, 10)], LiquidSide = [Setups.Hose(4, 8)], Discharge = [Setups.Hose(2, 6)] },
            machine,
            new HoseSweepOptions
            {
                StartPressure = Pressure.FromPascals(95e3),
                TargetPressure = Pressure.FromPascals(20e3),
                DischargePressure = Pressure.FromPascals(150e3),
                Temperature = Temperature.FromKelvins(290),
            });
        double drawn = Math.PI / 4 * ((3 * 1e-4) + (4 * 0.64e-4));
        double behind = (Math.PI / 4 * 2 * 0.36e-4) + 1e-3;
        double volume = drawn + 1e-3;
        double[] y = [95e3];
        double seconds = FixedStep.Until(
            y,
            0.01,
            1e3,
            (p, d) => d[0] = -0.3e-3 * (0.9 - (0.01 * 150e3 / p[0]) - (0.03 * (Math.Pow(150e3 / p[0], 1 / 1.2) - 1))) * p[0] / volume,
            p => p[0] - 20e3);
        Assert.Equal(seconds, result.Duration.Seconds, 1e-6 * seconds);
        Assert.Equal(volume + behind, result.SweptVolume.CubicMeters, 1e-9);
        Assert.Equal(((20e3 * volume) + (95e3 * behind)) / (8.31446261815324 * 290), result.AirLeft.Moles, 1e-9);
    }
}
