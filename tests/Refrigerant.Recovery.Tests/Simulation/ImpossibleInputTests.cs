using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What cannot be is refused where it is given, with parameter, value, range and unit.</summary>
public class ImpossibleInputTests
{
    private static readonly Appliance Plain = Setups.Appliance("R-134a", 5, 20, 20, 50);

    [Fact]
    public void A_restriction_of_zero() => Says<ArgumentOutOfRangeException>(
        () => new SectionConnection { From = "a", To = "b", FlowCoefficient = 0 }, "FlowCoefficient", "0", "1E-06", "10000", "US gal/min");

    [Fact]
    public void A_state_of_nothing() => Assert.Equal("appliance", Assert.Throws<ArgumentNullException>(() => ApplianceState.Initial(null!)).ParamName);

    [Fact]
    public void A_heater_of_negative_watts() => Says<ArgumentOutOfRangeException>(
        () => new SimulationInputs { HeaterPower = -5 }, "HeaterPower", "-5", "0", "10000000", "W");

    [Fact]
    public void A_section_without_volume() => Says<ArgumentOutOfRangeException>(
        () => new ApplianceSection { Name = "a", InternalVolume = Volume.Zero, Charge = Mass.FromKilograms(1) }, "InternalVolume", "0", "1E-06", "m³");

    [Fact]
    public void A_port_that_does_not_exist() => Says<ArgumentException>(
        () => ApplianceState.Initial(Plain with { VaporPort = "nowhere" }), "VaporPort", "nowhere");

    [Fact]
    public void A_mass_that_does_not_fit() => Says<ArgumentException>(
        () => ApplianceState.FromMeasured(Plain, Mass.FromKilograms(30), Temperature.FromDegreesCelsius(20)), "mass", "30 kg", "at most 24.5", "R-134a");

    [Fact]
    public void A_temperature_above_the_equation() => Says<PropertyRangeException>(
        () => ApplianceState.FromMeasured(Plain, Mass.FromKilograms(5), Temperature.FromKelvins(600)), "R-134a", "temperature", "600", "455", "K");

    [Fact]
    public void A_pressure_above_the_equation() => Says<PropertyRangeException>(
        () => ApplianceState.FromMeasured(Plain with { Temperature = Temperature.FromKelvins(450) }, Mass.FromKilograms(29), Temperature.FromKelvins(450)), "R-134a", "1450 kg/m³", "valid from");

    [Fact]
    public void Refrigerant_in_oil_that_is_not_there() => Says<ArgumentException>(
        () => ApplianceState.FromMeasured(Plain, Mass.FromKilograms(1), Temperature.FromKelvins(290), dissolved: Mass.FromKilograms(0.5)), "dissolved", "0.5 kg", "no oil");

    [Fact]
    public void A_state_of_another_refrigerant() => Says<ArgumentException>(
        () => Hold(Plain, Setups.Appliance("R-717", 1, 20, 20, 50)), "Start", "R-717", "R-134a");

    [Fact]
    public void A_state_of_another_volume() => Says<ArgumentException>(
        () => Hold(Plain, Setups.Appliance("R-134a", 50, 100, 20, 50)), "Start", "100 L", "20 L");

    /// <summary>A restriction as narrow as its range allows is one.</summary>
    [Fact]
    public void The_narrowest_restriction_runs()
    {
        Appliance split = Plain with
        {
            Sections =
            [
                new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(12), Charge = Mass.FromKilograms(3) },
                new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(8), Charge = Mass.FromKilograms(2) },
            ],
            Connections = [new SectionConnection { From = "a", To = "b", FlowCoefficient = 1e-6 }],
        };
        Assert.Equal(5, Refrigerant.Recovery.Processes.Hold.Simulate(split, new Refrigerant.Recovery.Processes.HoldOptions()).RemainingMass.Kilograms, 1e-9);
    }

    private static object Hold(Appliance appliance, Appliance other) => Refrigerant.Recovery.Processes.Hold.Simulate(
        appliance, new Refrigerant.Recovery.Processes.HoldOptions { Start = new SimulationState(ApplianceState.Initial(other)) });

    private static void Says<T>(Func<object> make, params string[] parts)
        where T : ArgumentException
    {
        T error = Assert.Throws<T>(make);
        Assert.All(parts, part => Assert.Contains(part, error.Message, StringComparison.Ordinal));
    }
}
