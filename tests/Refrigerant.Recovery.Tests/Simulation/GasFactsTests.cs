using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What compression takes of a gas, against the equation of state itself.</summary>
public class GasFactsTests
{
    /// <summary>
    /// What leaves a compressor of isentropic efficiency 0.65, against T(p, h + w/η) of the equation itself: the rise over η, a usual shortcut, is 11 to 48 K too high.
    /// </summary>
    [Theory]
    [InlineData("R-134a", 298, 1e5, 7e5)]
    [InlineData("R-22", 300, 2e5, 15e5)]
    [InlineData("R-290", 295, 1.5e5, 10e5)]
    [InlineData("R-744", 288, 10e5, 60e5)]
    [InlineData("R-410A", 295, 3e5, 20e5)]
    [InlineData("R-717", 290, 2e5, 12e5)]
    [InlineData("R-32", 285, 4e5, 20e5)]
    [InlineData("R-1234yf", 290, 1.5e5, 8e5)]
    [InlineData("R-404A", 280, 2e5, 16e5)]
    [InlineData("R-123", 300, 3e4, 15e4)]
    public void Gas_leaves_the_compressor_as_hot_as_the_equation_says(string fluid, double kelvins, double suction, double discharge)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        StatePoint inlet = model.StateAt(kelvins, suction);
        double work = (model.StateAtEntropy(discharge, inlet.Entropy).Enthalpy - inlet.Enthalpy) / 0.65;
        double real = model.StateAtEnthalpy(discharge, inlet.Enthalpy + work).Temperature;
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { IsentropicEfficiency = 0.65, Body = null };
        var compressor = new Compressor(machine, new GasFacts(model, kelvins));
        compressor.Solve(suction, inlet.Density, kelvins, inlet.Enthalpy, 1e-3, discharge, 0, 295, true);
        Assert.Equal(real, compressor.DischargeTemperature, 3.5);
    }

    /// <summary>Facts of a gas do not jump where it starts at the critical temperature.</summary>
    [Theory]
    [InlineData("R-744")]
    [InlineData("R-134a")]
    [InlineData("R-410A")]
    public void Facts_are_continuous_at_the_critical_temperature(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        double critical = model.CriticalTemperature;
        double pressure = 0.5 * model.CriticalPressure;
        GasFacts below = new(model, critical - 0.5), above = new(model, critical + 0.5);
        Assert.Equal(1, above.Exponent(pressure) / below.Exponent(pressure), 0.01);
        Assert.Equal(1, above.HeatCapacity(pressure) / below.HeatCapacity(pressure), 0.01);
        Assert.Equal(below.AfterWork(critical, pressure, 2 * pressure, 4e4), above.AfterWork(critical, pressure, 2 * pressure, 4e4), 1.0);
        Assert.Equal(critical, above.AfterWork(critical, pressure, pressure, 0), 0.01);
    }
}
