using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using UnitsNet;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.Tests.Flow;

/// <summary>A machine behind a line: check valves, warming, leakage, cores.</summary>
public class SuctionLineTests(ITestOutputHelper output)
{
    private const double Pressure = 6e5;
    private const double Density = 28;
    private const double Kappa = 1.12;
    private const double Viscosity = 1.2e-5;

    private static RecoveryMachine Machine => RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));

    [Fact]
    public void Gas_passes_by_itself_while_the_cylinder_is_below_the_appliance()
    {
        Line line = new([Hose(3, 0.008)]);
        var suction = new SuctionLine(line, Machine);
        suction.Solve(Pressure, Density, Kappa, Viscosity, 1e5);
        Assert.True(suction.IsPassing);
        Assert.True(suction.IsChoked);
        Assert.Equal(1e5, suction.SuctionPressure, 1e-6);
        Assert.Equal(new VaporLine(line).MassFlow(Pressure, Density, Kappa, Viscosity, 1e5, out _), suction.MassFlow, 1e-9);
        Assert.True(suction.MassFlow > 0.5e-3 * Density / 6);

        // A large machine behind a thin hose pulls the suction pressure below the discharge pressure all the same.
        var starved = new SuctionLine(new Line([Hose(3, 0.004)]), RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(20)));
        starved.Solve(Pressure, Density, Kappa, Viscosity, 4e5);
        Assert.False(starved.IsPassing);
        Assert.True(starved.SuctionPressure < 4e5);
    }

    [Fact]
    public void The_flow_does_not_jump_where_passing_ends()
    {
        var suction = new SuctionLine(new Line([Hose(3, 0.008)]), Machine);
        double last = double.NaN;
        bool wasPassing = true;
        for (double discharge = 5.5e5; discharge < 7e5; discharge += 100)
        {
            suction.Solve(Pressure, Density, Kappa, Viscosity, discharge);
            Assert.False(suction.MassFlow > last * (1 + 1e-9), $"{suction.MassFlow} after {last} kg/s at {discharge} Pa");
            Assert.True(wasPassing || !suction.IsPassing);
            Assert.False(Math.Abs(suction.MassFlow - last) > 2e-2 * last);
            wasPassing = suction.IsPassing;
            last = suction.MassFlow;
        }

        Assert.False(wasPassing);
    }

    // η = 1.04 − 0.04·r^(1/1.15) is zero at r = 26^1.15 = 42.4.
    [Fact]
    public void A_machine_at_its_limit_draws_nothing()
    {
        var suction = new SuctionLine(new Line([Hose(3, 0.008)]), Machine);
        suction.Solve(Pressure, Density, Kappa, Viscosity, 2 * Pressure);
        Assert.InRange(suction.Efficiency, 0.5, 1);
        suction.Solve(1e5, Density / 6, Kappa, Viscosity, 42 * 1e5);
        Assert.True(suction.MassFlow > 0);
        suction.Solve(1e5, Density / 6, Kappa, Viscosity, 43 * 1e5);
        Assert.Equal((0.0, 0.0, 1e5), (suction.MassFlow, suction.Efficiency, suction.SuctionPressure));
    }

    // GPSA Engineering Data Book (from memory), in per cent: 96 − r − C·(r^(1/k) − 1), by hand.
    [Theory]
    [InlineData(4, 0.04, 1.15, 0.8265)]
    [InlineData(10, 0.05, 1.2, 0.5694)]
    public void Leakage_takes_from_what_a_machine_draws(double ratio, double clearance, double exponent, double efficiency)
    {
        RecoveryMachine leaky = Machine with { VolumetricEfficiency = 0.96, LeakageTerm = 0.01, ClearanceRatio = clearance, PolytropicExponent = exponent };
        var suction = new SuctionLine((Line?)null, leaky);
        suction.Solve(Pressure, Density, Kappa, Viscosity, ratio * Pressure);
        Assert.Equal(0.5e-3 * efficiency * Density, suction.MassFlow, 1e-4 * suction.MassFlow);
    }

    // T_s = T + (T_air − T)·(1 − e^(−UA/(ṁ·cp))), ṁ = S·η·ρ·T/T_s without a line: by bisection.
    [Theory]
    [InlineData(0.5, 3)]
    [InlineData(5, 3)]
    [InlineData(200, 3)]
    [InlineData(5, -40)]
    public void Gas_that_warms_on_its_way_is_thinner(double conductance, double celsius)
    {
        const double Air = 303.15;
        const double Cp = 900;
        double temperature = celsius + 273.15;
        double efficiency = 1.04 - (0.04 * Math.Pow(2, 1 / 1.15));
        double low = 0;
        double high = 0.5e-3 * Density * 2;
        for (int i = 0; i < 100; i++)
        {
            double flow = 0.5 * (low + high);
            double warm = temperature + ((Air - temperature) * (1 - Math.Exp(-conductance / (flow * Cp))));
            if (0.5e-3 * efficiency * Density * temperature / warm > flow)
            {
                low = flow;
            }
            else
            {
                high = flow;
            }
        }

        var suction = new SuctionLine((Line?)null, Machine);
        suction.Solve(Pressure, Density, Kappa, Viscosity, 2 * Pressure, new SuctionWarming(temperature, Air, conductance, Cp));
        Assert.Equal(low, suction.MassFlow, 1e-9 * low);
        Assert.Equal(temperature * 0.5e-3 * efficiency * Density / low, suction.SuctionTemperature, 1e-6);

        // Behind a line: the same drop as cold gas at the same flow, the machine's own balance at the pressure found.
        var behind = new SuctionLine(new Line([Hose(3, 0.006)]), Machine);
        behind.Solve(Pressure, Density, Kappa, Viscosity, 2 * Pressure, new SuctionWarming(temperature, Air, conductance, Cp));
        double passed = new VaporLine(new Line([Hose(3, 0.006)])).MassFlow(Pressure, Density, Kappa, Viscosity, behind.SuctionPressure, out _);
        Assert.Equal(passed, behind.MassFlow, 1e-6 * passed);
        double drawn = 0.5e-3 * Machine.EfficiencyAt(2 * Pressure / behind.SuctionPressure) * Density * behind.SuctionPressure / Pressure * temperature / behind.SuctionTemperature;
        Assert.Equal(drawn, behind.MassFlow, 1e-8 * drawn);
    }

    [Fact]
    public void Two_lines_side_by_side_share_the_flow()
    {
        Line high = new([Hose(3, 0.006, Fitting.CoreDepressor())]);
        Line low = new([Hose(2, 0.008)]);
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(3));
        var suction = new SuctionLine([high, low], machine);
        suction.Solve(Pressure, Density, Kappa, Viscosity, 9e5);
        double first = new VaporLine(high).MassFlow(Pressure, Density, Kappa, Viscosity, suction.SuctionPressure, out _);
        double second = new VaporLine(low).MassFlow(Pressure, Density, Kappa, Viscosity, suction.SuctionPressure, out _);
        Assert.Equal(first + second, suction.MassFlow, 1e-6 * suction.MassFlow);
        double drawn = 3e-3 * machine.EfficiencyAt(9e5 / suction.SuctionPressure) * Density * suction.SuctionPressure / Pressure;
        Assert.Equal(drawn, suction.MassFlow, 1e-8 * drawn);
        var twice = new SuctionLine([low, low], machine);
        twice.Solve(Pressure, Density, Kappa, Viscosity, 9e5);
        var half = new SuctionLine(low, RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(1.5)));
        half.Solve(Pressure, Density, Kappa, Viscosity, 9e5);
        Assert.Equal(2 * half.MassFlow, twice.MassFlow, 1e-7 * twice.MassFlow);
    }

    // Trade press: a core blocks some 90 % of the flow through its port, and taking it out about doubles the speed of a recovery. The open port is a
    // bore of 5 mm with the losses of entrance and exit, Cv 0.94; quarter-inch hoses of 3/16 in to 5/16 in bore, a machine of 0.5 L/s.
    [Theory]
    [InlineData(1.5, 4.8)]
    [InlineData(1.5, 6.3)]
    [InlineData(0.9, 7.9)]
    public void A_core_costs_nine_tenths_at_its_port_and_half_in_the_job(double meters, double millimeters)
    {
        Fitting open = Fitting.FromLossCoefficient("open port", 1.5, Length.FromMillimeters(5));
        Hose wide = Hose(0.001, 0.3);
        double through = new VaporLine(new Line([wide with { Fittings = [Fitting.CoreDepressor()] }])).MassFlow(Pressure, Density, Kappa, Viscosity, 0.95 * Pressure, out _);
        double free = new VaporLine(new Line([wide with { Fittings = [open] }])).MassFlow(Pressure, Density, Kappa, Viscosity, 0.95 * Pressure, out _);
        double with = JobTime(new Line([Hose(meters, millimeters / 1000, Fitting.CoreDepressor())]));
        double without = JobTime(new Line([Hose(meters, millimeters / 1000, open)]));
        output.WriteLine($"{meters} m of {millimeters} mm: the port passes {free / through:F1} times as much without its core, the job takes {with / without:F2} times as long with it");
        Assert.InRange(free / through, 8, 12);
        Assert.InRange(with / without, 1.7, 2.5);
    }

    /// <summary>Time to pull gas at constant temperature from 600 to 50 kPa against 900 kPa, in units of volume: ∫ ρ'·dp/ṁ, by the midpoint rule over ln p.</summary>
    private static double JobTime(Line line)
    {
        var suction = new SuctionLine(line, Machine);
        double sum = 0;
        const int Steps = 200;
        double step = Math.Log(12) / Steps;
        for (int i = 0; i < Steps; i++)
        {
            double pressure = 6e5 * Math.Exp(-(i + 0.5) * step);
            suction.Solve(pressure, Density * pressure / 6e5, Kappa, Viscosity, 9e5);
            sum += step * pressure * Density / 6e5 / suction.MassFlow;
        }

        return sum;
    }

    private static Hose Hose(double meters, double bore, params Fitting[] fittings) => new()
    {
        Length = Length.FromMeters(meters),
        InnerDiameter = Length.FromMeters(bore),
        Fittings = fittings,
    };
}
