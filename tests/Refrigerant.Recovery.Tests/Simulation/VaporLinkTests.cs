using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Vapor flows by itself from the higher pressure to the lower, alike either way, and in proportion to what is next to nothing.</summary>
public class VaporLinkTests
{
    private const double Celsius = 20;

    [Fact]
    public void It_flows_alike_either_way()
    {
        (VaporLink there, Vessel a, _) = Between(19, oneWay: false);
        Assert.True(there.Flow > 0);
        Assert.Equal(a.VaporEnthalpy, there.EnthalpyOut);
        Assert.Equal(a.VaporEnthalpy, there.EnthalpyIn);
        (VaporLink back, Vessel from, Vessel to) = Between(19, oneWay: false, reversed: true);
        Assert.True(from.Pressure < to.Pressure);
        Assert.Equal(-there.Flow, back.Flow, 1e-9 * there.Flow);
        Assert.Equal(to.VaporEnthalpy, back.EnthalpyOut);
        Assert.Equal(to.VaporEnthalpy, back.EnthalpyIn);
    }

    /// <summary>A check valve lets it flow one way only.</summary>
    [Fact]
    public void A_check_valve_lets_nothing_back()
    {
        Assert.Equal(Between(19, oneWay: false).Link.Flow, Between(19, oneWay: true).Link.Flow, 1e-12);
        Assert.Equal(0, Between(19, oneWay: true, reversed: true).Link.Flow);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void Part_of_the_opening_lets_part_of_the_flow(double opening) =>
        Assert.Equal(opening * Between(19, oneWay: false).Link.Flow, Between(19, oneWay: false, opening: opening).Link.Flow, 1e-12);

    /// <summary>A difference far below a thousandth is laminar: twice the difference, twice the flow. At 2 % the flow is within a thousandth of what the line passes.</summary>
    [Fact]
    public void A_small_difference_lets_through_in_proportion()
    {
        (VaporLink small, Vessel a, Vessel b) = Between(Celsius - 1e-4, oneWay: false);
        double difference = a.Pressure - b.Pressure;
        Assert.InRange(difference / a.Pressure, 1e-6, 1e-5);
        (VaporLink twice, Vessel c, Vessel d) = Between(Celsius - 2e-4, oneWay: false);
        Assert.Equal((c.Pressure - d.Pressure) / difference, twice.Flow / small.Flow, 1e-4);
        (VaporLink wide, Vessel from, Vessel to) = Between(19.4, oneWay: false);
        Assert.InRange(1 - (to.Pressure / from.Pressure), 0.015, 0.025);
        var gas = new GasFacts(Fluid.Get("R-134a").Model, 273.15 + Celsius);
        double line = new VaporLine(new Line([Setups.Hose(3, 8)])).MassFlow(from.Pressure, from.VaporDensity, gas.IdealExponent, gas.Viscosity, to.Pressure, out _);
        Assert.InRange(wide.Flow / line, 0.999, 1);
    }

    /// <summary>Choked it is said to be; between pressures that are near it is not.</summary>
    [Fact]
    public void It_chokes_into_a_vacuum()
    {
        Assert.False(Between(19, oneWay: false).Link.IsChoked);
        Assert.True(Between(19, oneWay: false, content: 0).Link.IsChoked);
    }

    /// <summary>What flows is of the composition of the vapor that it comes from, either way: each component leaves the one and comes to the other in that share.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(0)]
    public void What_flows_is_the_vapor_of_where_it_comes_from(double celsius)
    {
        Appliance appliance = Setups.Appliance("R-407C", 0.4, 20, Celsius, 50);
        RecoveryCylinder cylinder = Setups.Cylinder(20, 4);
        var stage = new Stage(appliance, cylinder, new EqualizationOptions
        {
            Composition = CompositionMode.Tracked,
            Start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromDegreesCelsius(celsius)) },
        });
        ApplianceModel model = stage.BuildAppliance();
        Vessel gas = model.Port, wet = stage.Cylinder!.Vessel;
        var link = new VaporLink("hoses", gas, wet, new Line([Setups.Hose(3, 8)]), stage.Gas, oneWay: false);
        stage.Connect(stage.WithCylinder(model.Vessels), [link], state => model.Initialize(state, stage.Before.Appliance));
        double[] derivatives = new double[stage.Network.Dimension];
        Assert.True(stage.Network.Derivatives(stage.State, derivatives));
        Assert.Equal(wet.Pressure > gas.Pressure, link.Flow < 0);
        double[] source = (link.Flow < 0 ? wet : gas).VaporComposition.ToArray(), other = (link.Flow < 0 ? gas : wet).VaporComposition.ToArray();
        Assert.True(System.Math.Abs(source[0] - other[0]) > 0.02);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(link.Flow * source[i], -derivatives[gas.First + i], 1e-9 * System.Math.Abs(link.Flow));
            Assert.Equal(link.Flow * source[i], derivatives[wet.First + i], 1e-9 * System.Math.Abs(link.Flow));
        }
    }

    /// <summary>Vapor of saturated liquid at 20 °C and at another temperature, through 3 m of 8 mm.</summary>
    private static (VaporLink Link, Vessel From, Vessel To) Between(double celsius, bool oneWay, bool reversed = false, double opening = 1, double content = 4)
    {
        Appliance appliance = Setups.Appliance("R-134a", 4, 20, Celsius, 50);
        RecoveryCylinder cylinder = Setups.Cylinder(20, content);
        var stage = new Stage(appliance, cylinder, new EqualizationOptions
        {
            Start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromDegreesCelsius(celsius)) },
        });
        ApplianceModel model = stage.BuildAppliance();
        Vessel warm = model.Port, cold = stage.Cylinder!.Vessel;
        var link = new VaporLink("hoses", reversed ? cold : warm, reversed ? warm : cold, new Line([Setups.Hose(3, 8)]), stage.Gas, oneWay) { Opening = opening };
        stage.Connect(stage.WithCylinder(model.Vessels), [link], state => model.Initialize(state, stage.Before.Appliance));
        Assert.True(stage.Network.Evaluate(stage.State));
        return (link, link.From!, link.To!);
    }
}
