using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Links;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What a condenser takes of a flow: what it can give up, or what the flow has to give, and never more than either.</summary>
public class CondensationTests
{
    private const double Conductance = 100;
    private const double Air = 300;
    private static readonly PropertyModel Model = Fluid.Get("R-134a").Model;

    /// <summary>Little gas comes out 3 K below its dew point, much of it gives off what the conductance lets through at that difference; a hundred times either way the other counts for nothing (fourth powers).</summary>
    [Theory]
    [InlineData(1e-4, true)]
    [InlineData(1, false)]
    public void The_smaller_of_what_is_needed_and_what_is_possible(double flow, bool isNeeded)
    {
        StatePoint dew = Model.SaturationAtPressure(1e6).Dew;
        double hot = dew.Enthalpy + 3e4;
        double needed = flow * (hot - Model.SaturationAtTemperature(dew.Temperature - 3).Bubble.Enthalpy);
        double possible = Conductance * (dew.Temperature - Air);
        Assert.Equal(isNeeded ? needed : possible, Condenser().Heat(hot, flow, 1e6, Air), 1e-6 * possible);
    }

    /// <summary>Where both are the same it is less than either, by the fourth root of two.</summary>
    [Fact]
    public void Where_both_are_the_same_it_is_a_sixth_less()
    {
        StatePoint dew = Model.SaturationAtPressure(1e6).Dew;
        double hot = dew.Enthalpy + 3e4;
        double possible = Conductance * (dew.Temperature - Air);
        double flow = possible / (hot - Model.SaturationAtTemperature(dew.Temperature - 3).Bubble.Enthalpy);
        Assert.Equal(possible / Math.Pow(2, 0.25), Condenser().Heat(hot, flow, 1e6, Air), 1e-9 * possible);
    }

    /// <summary>It is not cooled below what cools it, however much subcooling is told.</summary>
    [Fact]
    public void No_liquid_leaves_it_colder_than_what_cools_it()
    {
        StatePoint dew = Model.SaturationAtPressure(1e6).Dew;
        const double Little = 1e-5;
        Assert.Equal(
            Little * (dew.Enthalpy - Model.SaturationAtTemperature(dew.Temperature - 2).Bubble.Enthalpy),
            Condenser(subcooling: 20).Heat(dew.Enthalpy, Little, 1e6, dew.Temperature - 2), 1e-6);
    }

    /// <summary>A coolant of its own counts in place of the air, the air where there is none.</summary>
    [Fact]
    public void Water_counts_before_air()
    {
        double dew = Model.SaturationAtPressure(1e6).Dew.Temperature;
        double hot = Model.SaturationAtPressure(1e6).Dew.Enthalpy;
        Assert.Equal(Conductance * (dew - 280), Condenser(coolant: 280).Heat(hot, 10, 1e6, 350), 1e-3);
        Assert.Equal(0, Condenser().Heat(hot, 10, 1e6, 350));
    }

    [Fact]
    public void Nothing_is_condensed_where_nothing_can_be()
    {
        double hot = Model.SaturationAtPressure(1e6).Dew.Enthalpy;
        double lowest = Model.SaturationAtTemperature(Model.Range.MinimumTemperature).Bubble.Pressure;
        Assert.Equal(0, Condenser().Heat(hot, 0, 1e6, Air));
        Assert.Equal(0, Condenser().Heat(hot, -1e-3, 1e6, Air));
        Assert.Equal(0, Condenser(watts: 0).Heat(hot, 1e-3, 1e6, Air));
        Assert.Equal(0, Condenser().Heat(hot, 1e-3, 0.5 * lowest, 160));
        Assert.Equal(0, Condenser().Heat(Model.SaturationAtTemperature(280).Bubble.Enthalpy, 1e-3, 1e6, Air));
    }

    /// <summary>Above the critical point the end of the saturation curve stands in, the same at any pressure.</summary>
    [Fact]
    public void Above_the_critical_point_the_end_of_the_curve_stands_in()
    {
        double end = Model.SaturationAtTemperature(Model.Range.MaximumSaturationTemperature).Dew.Temperature;
        double hot = Model.StateAt(450, 1.5 * Model.CriticalPressure).Enthalpy;
        Assert.Equal(Conductance * (end - Air), Condenser().Heat(hot, 100, 1.5 * Model.CriticalPressure, Air), 1);
    }

    private static Condensation Condenser(double? coolant = null, double subcooling = 3, double watts = 15 * Conductance) => new(Model, new Condenser
    {
        RatedDuty = Power.FromWatts(watts),
        RatedDifference = TemperatureDelta.FromKelvins(15),
        CoolantTemperature = coolant is double kelvins ? Temperature.FromKelvins(kelvins) : null,
        Subcooling = TemperatureDelta.FromKelvins(subcooling),
    });
}
