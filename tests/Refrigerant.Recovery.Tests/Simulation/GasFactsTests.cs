using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What compression takes of a gas, against the equation of state itself.</summary>
public class GasFactsTests
{
    /// <summary>From saturated vapor at a temperature up to a pressure: the isentropic temperature of the real gas; (κ − 1)/κ in place of m is off by up to 29 K.</summary>
    [Theory]
    [InlineData("R-134a", 280, 1e6)]
    [InlineData("R-1234yf", 280, 1.2e6)]
    [InlineData("R-22", 270, 2e6)]
    [InlineData("R-32", 260, 2.5e6)]
    [InlineData("R-290", 270, 1.8e6)]
    [InlineData("R-717", 260, 1.5e6)]
    [InlineData("R-410A", 265, 2.5e6)]
    [InlineData("R-404A", 265, 2e6)]
    public void Gas_warms_along_an_isentrope_as_the_equation_says(string fluid, double kelvins, double pressure)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        StatePoint dew = model.SaturationAtTemperature(kelvins).Dew;
        double real = model.StateAtEntropy(pressure, dew.Entropy).Temperature;
        double ours = kelvins * Math.Exp(new GasFacts(model, kelvins + 20).IsentropicWarming(dew.Pressure, pressure));
        Assert.Equal(real, ours, 5.0);
    }
}
