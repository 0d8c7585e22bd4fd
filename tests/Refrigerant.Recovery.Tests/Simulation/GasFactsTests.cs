using System;
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

    /// <summary>At saturation of the start they are those of saturated vapor, at no pressure those of the ideal gas: κ = ρ·c²/p and c_p of the equation itself.</summary>
    [Theory]
    [InlineData("R-134a", 290)]
    [InlineData("R-22", 260)]
    [InlineData("R-410A", 300)]
    [InlineData("R-744", 250)]
    public void At_saturation_they_are_those_of_saturated_vapor(string fluid, double kelvins)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        var gas = new GasFacts(model, kelvins);
        StatePoint dew = model.SaturationAtTemperature(kelvins).Dew;
        StateDerivatives real = model.DerivativesAt(kelvins, dew.Density), ideal = model.DerivativesAt(kelvins, 1e-6 * model.CriticalDensity);
        double thin = 1e-6 * model.CriticalDensity * 8.314462618 * kelvins / model.MolarMass;
        Assert.Equal(dew.Density * real.SpeedOfSound * real.SpeedOfSound / dew.Pressure, gas.Exponent(dew.Pressure), 1e-6);
        Assert.Equal(real.IsobaricHeatCapacity, gas.HeatCapacity(dew.Pressure), 1e-6 * real.IsobaricHeatCapacity);
        Assert.Equal(1e-6 * model.CriticalDensity * ideal.SpeedOfSound * ideal.SpeedOfSound / thin, gas.IdealExponent, 1e-4);
        Assert.Equal(gas.IdealExponent, gas.Exponent(0), 1e-12);
        Assert.Equal(ideal.IsobaricHeatCapacity, gas.HeatCapacity(0), 1e-4 * ideal.IsobaricHeatCapacity);
        Assert.Equal(0.5 * (gas.HeatCapacity(0) + gas.HeatCapacity(dew.Pressure)), gas.HeatCapacity(0.5 * dew.Pressure), 1e-9 * real.IsobaricHeatCapacity);
        Assert.Equal(model.ViscosityAtSaturation(kelvins).Vapor, gas.Viscosity, 1e-12);
        Assert.True(gas.Exponent(1e9) > 1 && gas.HeatCapacity(-1e12) > 0);
    }

    /// <summary>Above the critical temperature they are those of saturation at 0.95 of it, less by its third power; viscosity is that at 0.98 of the end of the curve.</summary>
    [Theory]
    [InlineData("R-744", 1.05)]
    [InlineData("R-744", 1.2)]
    [InlineData("R-134a", 1.1)]
    public void Above_the_critical_temperature_they_fade(string fluid, double times)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        var gas = new GasFacts(model, times * model.CriticalTemperature);
        StatePoint dew = model.SaturationAtTemperature(0.95 * model.CriticalTemperature).Dew;
        StateDerivatives real = model.DerivativesAt(dew.Temperature, dew.Density);
        double fading = Math.Pow(times, -3);
        double exponent = dew.Density * real.SpeedOfSound * real.SpeedOfSound / dew.Pressure;
        Assert.Equal(Math.Max(1.0001, gas.IdealExponent + (fading * (exponent - gas.IdealExponent))), gas.Exponent(dew.Pressure), 1e-6);
        Assert.Equal(gas.HeatCapacity(0) + (fading * (real.IsobaricHeatCapacity - gas.HeatCapacity(0))), gas.HeatCapacity(dew.Pressure), 1e-3);
        Assert.Equal(model.ViscosityAtSaturation(0.98 * model.Range.MaximumSaturationTemperature).Vapor, gas.Viscosity, 1e-12);
    }

    /// <summary>T(p2, h1 + w) of thin gas, where its heat capacity counts alone, and at one temperature from thin to denser, where throttling counts alone; that is taken at one pressure for all, and is good to a sixth.</summary>
    [Theory]
    [InlineData("R-134a", 290)]
    [InlineData("R-22", 260)]
    [InlineData("R-744", 280)]
    [InlineData("R-410A", 300)]
    [InlineData("R-744", 330)]
    [InlineData("R-134a", 405)]
    public void Hot_gas_is_as_hot_as_its_enthalpy_says(string fluid, double kelvins)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        var gas = new GasFacts(model, kelvins);
        const double Thin = 1000;
        double superheat = Math.Min(100, model.Range.MaximumTemperature - kelvins - 1);
        double start = model.StateAt(kelvins, Thin).Enthalpy;
        foreach (double share in new[] { 0.2, 0.5, 0.8, 1 })
        {
            double after = kelvins + (share * superheat);
            Assert.Equal(after, gas.AfterWork(kelvins, Thin, Thin, model.StateAt(after, Thin).Enthalpy - start), 0.3);
            Assert.Equal(model.DerivativesAt(after, model.StateAt(after, Thin).Density).IsobaricHeatCapacity, gas.HotHeatCapacity(after, Thin), 0.01 * gas.HotHeatCapacity(after, Thin));
        }

        double hot = kelvins + superheat, dense = 0.05 * model.CriticalPressure;
        StatePoint there = model.StateAt(hot, dense);
        double cooling = (model.StateAt(hot, Thin).Enthalpy - there.Enthalpy) / gas.HotHeatCapacity(hot, dense);
        Assert.InRange(cooling, 0.5, 10);
        Assert.Equal(hot, gas.AfterWork(hot, Thin, dense, there.Enthalpy - model.StateAt(hot, Thin).Enthalpy), cooling / 6);
        Assert.Equal(model.DerivativesAt(hot, there.Density).IsobaricHeatCapacity, gas.HotHeatCapacity(hot, dense), 0.01 * gas.HotHeatCapacity(hot, dense));
    }

    /// <summary>Where the equation ends within 10 K of the start there is no hot gas to look at: heat capacity of the start stands in.</summary>
    [Theory]
    [InlineData(12, false)]
    [InlineData(10.5, true)]
    [InlineData(2, true)]
    public void Near_the_end_of_the_equation_the_start_stands_in(double below, bool isPlain)
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        double start = model.Range.MaximumTemperature - below;
        var gas = new GasFacts(model, start);
        double plain = start + (1e4 / gas.HeatCapacity(2e6));
        Assert.Equal(isPlain, Math.Abs(gas.AfterWork(start, 2e6, 2e6, 1e4) - plain) < 1e-9);
        Assert.Equal(isPlain, gas.HotHeatCapacity(start + 50, 2e6) == gas.HeatCapacity(2e6));
    }
}
