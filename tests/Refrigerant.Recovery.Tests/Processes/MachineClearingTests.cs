using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a machine and its discharge hose hold, and what is left when it has emptied itself: closed forms for a machine without clearance or leakage.</summary>
public class MachineClearingTests
{
    private static readonly Fluid Fluid = Fluid.Get("R-134a");

    private static readonly Temperature Air = Temperature.FromDegreesCelsius(25);

    private static readonly SaturationState Saturation = Fluid.SaturationAt(Air);

    private static readonly HoseSet Hoses = Setups.Hoses(4, 9);

    /// <summary>1.5 L inside.</summary>
    private static readonly RecoveryMachine Machine = Setups.Ideal(0.5) with { InternalVolume = Volume.FromLiters(1.5) };

    private static double Hose => Math.PI / 4 * 0.009 * 0.009 * 4;

    private static double Density(double kilopascals) => Fluid.StateAt(Air, Pressure.FromKilopascals(kilopascals)).Density.KilogramsPerCubicMeter;

    private static MachineClearing At(double cylinder, double target = 50, RecoveryMachine? machine = null) =>
        MachineClearing.Estimate(Fluid, machine ?? Machine, Hoses, Air, Pressure.FromKilopascals(cylinder), Pressure.FromKilopascals(target));

    /// <summary>Against a cylinder well below saturation nothing condenses: gas at its pressure fills hose and machine, and is drawn down in V/S·ln(p/p′).</summary>
    [Fact]
    public void Where_nothing_condenses_gas_is_drawn_down()
    {
        MachineClearing clearing = At(200);
        Assert.Equal((Hose + 1.5e-3) * Density(200), clearing.HeldBefore.Kilograms, 1e-6);
        Assert.Equal((Hose * Density(200)) + (1.5e-3 * Density(50)), clearing.Trapped.Kilograms, 1e-6);
        Assert.Equal(50, clearing.FinalPressure.Kilopascals, 1e-9);
        Assert.Equal(1.5e-3 / 0.5e-3 * Math.Log(200.0 / 50), clearing.Duration.Seconds, 1e-3);
    }

    /// <summary>Against a cylinder at saturation the discharge side is full of liquid: the hose and, by our choice, a third of the machine. It boils off at the machine's pace first.</summary>
    [Fact]
    public void Where_gas_condenses_a_third_of_the_machine_is_liquid()
    {
        double liquid = Saturation.Bubble.Density.KilogramsPerCubicMeter, vapor = Saturation.Dew.Density.KilogramsPerCubicMeter, pressure = Saturation.Dew.Pressure.Kilopascals;
        MachineClearing clearing = At(1.1 * pressure);
        Assert.Equal((Hose * liquid) + (0.5e-3 * liquid) + (1e-3 * vapor), clearing.HeldBefore.Kilograms, 1e-3);
        Assert.Equal((Hose * vapor) + (1.5e-3 * Density(50)), clearing.Trapped.Kilograms, 1e-5);
        double boiling = 0.5e-3 * liquid / (0.5e-3 * vapor);
        Assert.Equal(boiling + (3 * Math.Log(pressure / 50)), clearing.Duration.Seconds, 0.01);
    }

    /// <summary>Nine tenths of saturation: from there on what is compressed condenses (our choice).</summary>
    [Theory]
    [InlineData(0.89, false)]
    [InlineData(0.91, true)]
    public void Gas_condenses_from_nine_tenths_of_saturation_on(double share, bool condenses)
    {
        double pressure = share * Saturation.Dew.Pressure.Kilopascals;
        Assert.Equal(condenses, At(pressure).HeldBefore.Kilograms > 3 * (Hose + 1.5e-3) * Density(pressure));
    }

    /// <summary>A machine with clearance draws no deeper than p/(1 + 1/c)^n; it is let run to a quarter above that, and takes longer than one without.</summary>
    [Fact]
    public void Clearance_bounds_what_it_draws_itself_down_to()
    {
        RecoveryMachine real = Machine with { ClearanceRatio = 0.08, PolytropicExponent = 1.15 };
        double deepest = 400 / Math.Pow(1 + (1 / 0.08), 1.15);
        MachineClearing clearing = At(400, 5, real);
        Assert.Equal(1.25 * deepest, clearing.FinalPressure.Kilopascals, 1e-3);
        Assert.True(clearing.Duration.Seconds > 3 * Math.Log(400 / (1.25 * deepest)));

        // dp/dt = −S·η(p)/V·p: by the trapezoidal rule of many steps.
        double seconds = 0;
        const int Steps = 200_000;
        double from = Math.Log(1.25 * deepest), to = Math.Log(400);
        for (int i = 0; i < Steps; i++)
        {
            double pressure = Math.Exp(from + ((to - from) * (i + 0.5) / Steps));
            seconds += 3 * (to - from) / Steps / (1 - (0.08 * (Math.Pow(400 / pressure, 1 / 1.15) - 1)));
        }

        Assert.Equal(seconds, clearing.Duration.Seconds, 2e-3 * seconds);
        Assert.Equal(100, At(400, 100, real).FinalPressure.Kilopascals, 1e-9);
        Assert.Equal(80, At(80, 100, real).FinalPressure.Kilopascals, 1e-6);
    }

    /// <summary>More hose, more machine, more pressure: more is held. What stays is never more than what was held.</summary>
    [Fact]
    public void What_stays_is_no_more_than_what_was_held()
    {
        double[] pressures = [60, 200, 400, 600, 700, 900];
        MachineClearing[] clearings = [.. pressures.Select(pressure => At(pressure))];
        Assert.All(clearings, clearing => Assert.True(clearing.Trapped <= clearing.HeldBefore));
        Assert.Equal(clearings.Select(clearing => clearing.HeldBefore).Order(), clearings.Select(clearing => clearing.HeldBefore));
        Assert.True(At(200, machine: Machine with { InternalVolume = Volume.FromLiters(3) }).HeldBefore > At(200).HeldBefore);
        Assert.Equal(2 * At(200).Duration.Seconds, At(200, machine: Machine with { InternalVolume = Volume.FromLiters(3) }).Duration.Seconds, 1e-6);
    }

    /// <summary>A cylinder against which the machine moves nothing at that temperature is refused with the pressure up to which it does.</summary>
    [Fact]
    public void A_cylinder_that_the_machine_cannot_work_against_is_refused()
    {
        RecoveryMachine weak = Machine with { ClearanceRatio = 0.5, PolytropicExponent = 1 };
        double most = 3 * Saturation.Dew.Pressure.Kilopascals;
        Assert.True(At(0.98 * most, machine: weak).Duration.Seconds > 0);
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => At(1.02 * most, machine: weak));
        Assert.Equal("cylinderPressure", error.ParamName);
    }
}
