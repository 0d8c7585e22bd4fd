using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Limits in which the dynamic models have closed forms: constant efficiency, no hose drop, isothermal.</summary>
public class ClosedFormTests
{
    private const double Displacement = 0.5e-3;
    private static readonly Pressure Receiver = Pressure.FromKilopascals(700);

    // A conductance of 5e5 W/K holds boiling liquid within 6 mK of its surroundings, 1e4 W/K does as much for gas.
    [Theory]
    [InlineData("R-134a", 10, 50)]
    [InlineData("R-22", 4, 30)]
    [InlineData("R-290", 1, 20)]
    public void While_liquid_boils_the_time_is_the_mass_over_the_saturated_flow(string fluid, double charge, double liters)
    {
        StatePoint saturation = Fluid.Get(fluid).Model.SaturationAtTemperature(297.15).Dew;
        StageResult result = Run(Setups.Appliance(fluid, charge, liters, 24, 5e5), 0.97 * saturation.Pressure);
        double density = saturation.Density;
        double expected = (charge - (density * liters * 1e-3)) / (density * Displacement);
        Assert.Equal(expected, result.LiquidGoneAfter!.Value.Seconds, 1e-3 * expected);
    }

    [Theory]
    [InlineData("R-134a", 50)]
    [InlineData("R-22", 30)]
    [InlineData("R-290", 20)]
    public void Vapor_alone_falls_as_volume_over_displacement_times_the_logarithm_of_the_densities(string fluid, double liters)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        double start = 0.999 * model.SaturationAtTemperature(297.15).Dew.Density;
        StageResult result = Run(Setups.Appliance(fluid, start * liters * 1e-3, liters, 24, 1e4), 5e4);
        double end = model.StateAt(297.15, 5e4).Density;
        double expected = liters * 1e-3 / Displacement * Math.Log(start / end);
        Assert.Equal(expected, result.Duration.Seconds, 1e-3 * expected);
        double rate = Displacement * (start - end) / Math.Log(start / end);
        Assert.Equal(rate, result.RecoveredMass.Kilograms / result.Duration.Seconds, 1e-3 * rate);
    }

    // Worked figures of pump-down at constant volume speed, V = 1 m³ and 0.1 m³/s (Engineering ToolBox, vacuum evacuation time):
    // 1000 to 500 mbar 6.9 s, to 100 mbar 23 s, to 10 mbar 46 s. Here half of the machine's volume is on the suction side, at half the speed.
    [Theory]
    [InlineData(500, 6.9)]
    [InlineData(100, 23)]
    [InlineData(10, 46)]
    public void A_sweep_without_clearance_is_a_pump_down(double millibar, double seconds)
    {
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(0.1 / 2), clearanceRatio: 0) with
        {
            InternalVolume = Volume.FromCubicMeters(1),
        };
        HoseSet hoses = new() { VaporSide = [Setups.Hose(0.001, 0.5)] };
        HoseSweepResult result = HoseSweep.Simulate(hoses, machine, new HoseSweepOptions
        {
            StartPressure = Pressure.FromMillibars(1000),
            TargetPressure = Pressure.FromMillibars(millibar),
        });
        Assert.Equal(seconds, result.Duration.Seconds, 0.06 + (0.002 * seconds));
        Assert.Equal(10 * Math.Log(1000 / millibar), result.Duration.Seconds, 1e-5);
    }

    [Fact]
    public void A_sweep_with_clearance_agrees_with_numerical_integration()
    {
        RecoveryMachine machine = Setups.Machine(0.3);
        HoseSet hoses = Setups.Hoses();
        double target = 12e3;
        HoseSweepResult result = HoseSweep.Simulate(hoses, machine, new HoseSweepOptions { TargetPressure = Pressure.FromPascals(target) });
        const int Intervals = 20_000;
        double span = Math.Log(101_325 / target);
        double sum = 0;
        for (int i = 0; i < Intervals; i++)
        {
            double pressure = 101_325 * Math.Exp(-span * (i + 0.5) / Intervals);
            sum += span / Intervals / machine.EfficiencyAt(101_325 / pressure);
        }

        // All hoses but those behind the outlet, and half of the machine's liter.
        double hose = Math.PI / 4 * 0.01 * 0.01 * 3;
        double expected = sum * ((2 * hose) + (1e-3 / 2)) / 0.3e-3;
        Assert.Equal((3 * hose) + 1e-3, result.SweptVolume.CubicMeters, 1e-9);
        Assert.Equal(expected, result.Duration.Seconds, 1e-6 * expected);
    }

    // Without leakage, with z = r^(1/n) and R = 1 + η0/c: t = V/S·n/(c·R)·ln[z2·(R − z1)/(z1·(R − z2))].
    [Theory]
    [InlineData(4)]
    [InlineData(1.1)]
    [InlineData(1.01)]
    [InlineData(1.001)]
    [InlineData(1.00001)]
    public void A_sweep_to_next_to_the_deepest_vacuum_takes_the_time_of_the_closed_form(double timesDeepest)
    {
        RecoveryMachine machine = Setups.Machine(0.5) with { ClearanceRatio = 0.04 };
        HoseSet hoses = new() { VaporSide = [Setups.Hose(2, 9)], Discharge = [Setups.Hose(1, 8)] };
        const double Start = 101_325;
        double ceiling = 1 + (machine.VolumetricEfficiency / machine.ClearanceRatio);
        double deepest = Start * Math.Pow(ceiling, -machine.PolytropicExponent);
        double target = timesDeepest * deepest;
        double z = Math.Pow(Start / target, 1 / machine.PolytropicExponent);
        double volume = (Math.PI / 4 * 0.009 * 0.009 * 2) + 0.5e-3;
        double expected = volume / 0.5e-3 * machine.PolytropicExponent / (machine.ClearanceRatio * ceiling) * Math.Log(z * (ceiling - 1) / (ceiling - z));
        HoseSweepResult result = HoseSweep.Simulate(hoses, machine, new HoseSweepOptions
        {
            StartPressure = Pressure.FromPascals(Start),
            TargetPressure = Pressure.FromPascals(target),
        });
        Assert.Equal(StageEnd.TargetReached, result.End);
        Assert.Equal(expected, result.Duration.Seconds, 1e-6 * expected);
    }

    [Fact]
    public void A_sweep_below_the_deepest_vacuum_says_that_it_does_not_get_there()
    {
        HoseSweepResult result = HoseSweep.Simulate(
            Setups.Hoses(), Setups.Machine(0.3), new HoseSweepOptions { TargetPressure = Pressure.FromPascals(100) });
        Assert.Equal(StageEnd.Stalled, result.End);
        Assert.True(result.Pressure.Pascals > 100);
        Assert.True(result.Duration.Seconds < 1e4);
    }

    // Half-inch hoses, two of 10 ft and one of 20 ft, to 15 inHg in some 10 s; some 80 lb/min of R-22 liquid by push-pull; some 2 lb/min
    // of vapor on average down to 15 inHg (common practice, no source: orders of magnitude). One displacement, each within 2.5 times,
    // with an appliance that heat reaches well (400 W/K).
    [Fact]
    public void One_displacement_explains_the_orders_of_magnitude_of_the_trade()
    {
        RecoveryMachine machine = Setups.Machine(0.27);
        var hoses = new HoseSet
        {
            VaporSide = [Setups.Hose(3.048, 10.5)],
            LiquidSide = [Setups.Hose(6.096, 10.5)],
            Discharge = [Setups.Hose(3.048, 10.5)],
        };

        // All three hoses are swept, so none is behind the outlet then.
        HoseSet swept = hoses with { VaporSide = [.. hoses.VaporSide, .. hoses.Discharge], Discharge = [] };
        Pressure vacuum = Pressure.FromPascals(101_325 - (15 * 3386.389));
        double sweep = HoseSweep.Simulate(swept, machine, new HoseSweepOptions { TargetPressure = vacuum }).Duration.Seconds;
        Appliance appliance = Setups.Appliance("R-22", 45, 80, 24, 400) with { LiquidReachable = true };
        RecoveryCylinder cylinder = Setups.Cylinder(60, 3);
        double liquid = PushPull.Simulate(appliance, machine, hoses, cylinder, new PushPullOptions()).AverageRate.KilogramsPerSecond * 60 / 0.45359237;
        StageResult pull = VaporRecovery.Simulate(
            appliance with { Charge = Mass.FromKilograms(30) }, machine, hoses, cylinder, new VaporRecoveryOptions { TargetPressure = vacuum });
        double vapor = pull.RecoveredMass.Kilograms / pull.Duration.Seconds * 60 / 0.45359237;
        Assert.Equal(StageEnd.TargetReached, pull.End);
        Assert.InRange(sweep, 10 / 2.5, 10 * 2.5);
        Assert.InRange(liquid, 80 / 2.5, 80 * 2.5);
        Assert.InRange(vapor, 2 / 2.5, 2 * 2.5);
    }

    private static StageResult Run(Appliance appliance, double target)
    {
        // Isothermal means stiff: many short steps.
        StageResult result = Setups.WithoutHoses(
            appliance, Setups.Ideal(1e3 * Displacement), new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(target), ReceiverPressure = Receiver, MaximumSteps = 200_000 });
        Assert.Equal(StageEnd.TargetReached, result.End);
        return result;
    }
}
