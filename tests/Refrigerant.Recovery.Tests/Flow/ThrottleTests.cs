using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.Tests.Flow;

/// <summary>Throttles in a vapor line against IEC 60534-2-1 and the isothermal pipe, both written out again here and solved by bisection.</summary>
public class ThrottleTests(ITestOutputHelper output)
{
    private const double Pressure = 6e5;
    private const double Density = 28;
    private const double Kappa = 1.12;
    private const double Viscosity = 1.2e-5;

    /// <summary>Av of Cv = 1, m²: (3.785411784e-3/60 m³/s)·√(999.0 kg/m³/6894.757 Pa), rounded as Fitting has it.</summary>
    private const double PerCoefficient = 2.4015e-5;

    [Theory]
    [InlineData(0.3, 0.72, 0.05)]
    [InlineData(0.3, 0.72, 0.5)]
    [InlineData(0.3, 0.72, 0.57)]
    [InlineData(0.3, 0.72, 0.9)]
    [InlineData(2, 0.42, 0.3)]
    [InlineData(2, 0.42, 1)]
    public void A_throttle_alone_passes_what_the_standard_says(double cv, double xt, double drop)
    {
        // The pipe is a millimeter of 0.3 m bore: it does not count.
        var line = new VaporLine(new Line([Hose(1e-3, 0.3, Fitting.FromFlowCoefficient("valve", cv) with { PressureDifferentialRatioFactor = xt })]));
        double limit = Kappa / 1.4 * xt;
        double x = Math.Min(drop, limit);
        double expected = PerCoefficient * cv * (1 - (x / (3 * limit))) * Math.Sqrt(x * Pressure * Density);
        Assert.Equal(expected, line.MassFlow(Pressure, Density, Kappa, Viscosity, (1 - drop) * Pressure, out bool choked), 1e-5 * expected);
        Assert.Equal(drop >= limit, choked);
    }

    [Theory]
    [InlineData(0.999)]
    [InlineData(0.9)]
    [InlineData(0.6)]
    [InlineData(0.35)]
    [InlineData(0.1)]
    [InlineData(0)]
    public void Throttles_and_pipe_in_series(double ratio)
    {
        foreach ((double first, double second, double meters, double bore) in new[]
        {
            (0.3, 1.5, 1.5, 0.006), (0.3, 0.3, 0.2, 0.01), (3.0, 0.2, 5, 0.005), (5.0, 8.0, 10, 0.004), (0.05, 5, 1, 0.008),
        })
        {
            var line = new VaporLine(new Line([Hose(meters, bore, Fitting.FromFlowCoefficient("a", first), Fitting.FromFlowCoefficient("b", second))]));
            double expected = ByBisection([first, second], meters, bore, ratio, out bool chokes);
            double flow = line.MassFlow(Pressure, Density, Kappa, Viscosity, ratio * Pressure, out bool choked);
            Assert.Equal(expected, flow, 1e-9 * expected);
            Assert.Equal(chokes, choked);
            Assert.Equal(flow, line.MassFlow(Pressure, Density, Kappa, Viscosity, ratio * Pressure, out _), 1e-9 * flow);
        }
    }

    /// <summary>
    /// What a friction line of the same loss would pass through a core that is choked: 16 to 39 % more than the core can. The standard's own
    /// choked flow is not exceeded any more.
    /// </summary>
    [Theory]
    [InlineData(0.3, 1.5, 0.0079)]
    [InlineData(0.3, 1.0, 0.0111)]
    [InlineData(0.1, 1.5, 0.0048)]
    public void A_choked_core_passes_no_more_than_it_can(double cv, double meters, double bore)
    {
        var line = new VaporLine(new Line([Hose(meters, bore, Fitting.FromFlowCoefficient("core", cv))]));
        double flow = line.MassFlow(Pressure, Density, Kappa, Viscosity, 0.02 * Pressure, out bool choked);
        double most = PerCoefficient * cv * 2 / 3 * Math.Sqrt(Kappa / 1.4 * 0.72 * Pressure * Density);
        double friction = AsFriction(cv, meters, bore);
        Assert.True(choked);
        Assert.True(flow <= most * (1 + 1e-9), $"{flow} of {most} kg/s");
        Assert.True(friction > 1.1 * flow, $"as friction {friction}, as throttle {flow} kg/s: {100 * ((friction / flow) - 1):F0} % more");
        output.WriteLine($"Cv {cv}, {meters} m of {1e3 * bore} mm: as friction {100 * ((friction / flow) - 1):F1} % more");
    }

    [Property(MaxTest = 3000)]
    public Property The_flow_never_rises_with_the_outlet_pressure_nor_jumps() => Prop.ForAll(
        Gen.Choose(0, 1000).Select(i => i / 1000.0).Four().ToArbitrary(),
        t =>
        {
            var line = new VaporLine(new Line([Hose(0.3 + (5 * t.Item1), 0.004 + (0.01 * t.Item2), Fitting.FromFlowCoefficient("core", 0.05 + (2 * t.Item3)))]));
            double outlet = 0.9999 * t.Item4;
            double a = line.MassFlow(Pressure, Density, Kappa, Viscosity, outlet * Pressure, out _);
            double b = line.MassFlow(Pressure, Density, Kappa, Viscosity, (outlet + 1e-7) * Pressure, out _);
            double c = line.MassFlow(Pressure, Density, Kappa, Viscosity, (outlet + 1e-4) * Pressure, out _);
            return a > 0 && b <= a * (1 + 1e-9) && c <= a * (1 + 1e-9) && a - b < 1e-2 * a;
        });

    /// <summary>Where a throttle chokes the balance has a kink: the flow there does not depend on what was asked before.</summary>
    [Fact]
    public void Beside_the_kink_of_a_choked_throttle_the_flow_has_no_history()
    {
        Line Built() => new([Hose(0.325, 0.01121, Fitting.FromFlowCoefficient("core", 1.608))]);
        var line = new VaporLine(Built());
        for (double outlet = 0.01; outlet < 0.95; outlet += 0.01)
        {
            double fresh = new VaporLine(Built()).MassFlow(Pressure, Density, Kappa, Viscosity, outlet * Pressure, out _);
            Assert.Equal(fresh, line.MassFlow(Pressure, Density, Kappa, Viscosity, outlet * Pressure, out _), 1e-9 * fresh);
        }
    }

    [Fact]
    public void Equal_lines_side_by_side_pass_twice_as_much()
    {
        Line line = new([Hose(2, 0.007, Fitting.CoreDepressor())]);
        Line other = new([Hose(4, 0.005)]);
        double one = new VaporLine(line).MassFlow(Pressure, Density, Kappa, Viscosity, 4e5, out _);
        double second = new VaporLine(other).MassFlow(Pressure, Density, Kappa, Viscosity, 4e5, out _);
        var both = new ParallelLines([line, line, other]);
        Assert.Equal((2 * one) + second, both.MassFlow(Pressure, Density, Kappa, Viscosity, 4e5, out _), 1e-9 * one);
        Assert.Equal(one, both.FlowIn(1), 1e-9 * one);
    }

    [Theory]
    [InlineData(double.NaN, Density, Kappa, Viscosity, 1e5)]
    [InlineData(Pressure, double.NaN, Kappa, Viscosity, 1e5)]
    [InlineData(Pressure, Density, double.NaN, Viscosity, 1e5)]
    [InlineData(Pressure, Density, Kappa, double.NaN, 1e5)]
    [InlineData(Pressure, Density, Kappa, Viscosity, double.NaN)]
    [InlineData(double.PositiveInfinity, Density, Kappa, Viscosity, 1e5)]
    [InlineData(0, Density, Kappa, Viscosity, 1e5)]
    [InlineData(Pressure, -1, Kappa, Viscosity, 1e5)]
    public void What_is_no_number_has_no_flow(double p, double rho, double kappa, double viscosity, double outlet)
    {
        Line line = new([Hose(2, 0.007, Fitting.CoreDepressor())]);
        Assert.Throws<ConvergenceException>(() => new VaporLine(line).MassFlow(p, rho, kappa, viscosity, outlet, out _));
        var suction = new SuctionLine(line, RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.4)));
        Assert.Throws<ConvergenceException>(() => suction.Solve(p, rho, kappa, viscosity, outlet));
    }

    private static Hose Hose(double meters, double bore, params Fitting[] fittings) => new()
    {
        Length = Length.FromMeters(meters),
        InnerDiameter = Length.FromMeters(bore),
        Fittings = fittings,
    };

    /// <summary>The largest flow whose pressures come out above the outlet's, found from the flow: throttle by throttle, then the pipe.</summary>
    private static double ByBisection(double[] coefficients, double meters, double bore, double outlet, out bool choked)
    {
        double low = 0;
        double high = 1;
        double atLow = 1;
        for (int i = 0; i < 200; i++)
        {
            double flow = 0.5 * (low + high);
            double end = End(flow);
            if (end >= outlet)
            {
                low = flow;
                atLow = end;
            }
            else
            {
                high = flow;
            }
        }

        choked = atLow > outlet + 1e-5;
        return low;

        double End(double flow)
        {
            double pressure = 1;
            foreach (double cv in coefficients)
            {
                double limit = Kappa / 1.4 * 0.72;
                double Through(double x) => PerCoefficient * cv * (1 - (x / (3 * limit))) * Math.Sqrt(x * Pressure * Density) * pressure;
                if (Through(limit) < flow)
                {
                    return -1;
                }

                double x = Bisect(u => Through(u) - flow, 0, limit);
                pressure *= 1 - x;
            }

            double area = Math.PI / 4 * bore * bore;
            double g = flow / (area * pressure * Math.Sqrt(Pressure * Density));
            double k = Loss(flow, meters, bore);
            double Gap(double y) => (g * g * (k - (2 * Math.Log(y)))) + (y * y) - 1;
            return g >= 1 || Gap(g) > 0 ? -1 : pressure * Bisect(Gap, g, 1);
        }
    }

    private static double AsFriction(double cv, double meters, double bore)
    {
        double area = Math.PI / 4 * bore * bore;
        double av = PerCoefficient * cv;
        return Bisect(
            flow =>
            {
                double g = flow / (area * Math.Sqrt(Pressure * Density));
                double k = Loss(flow, meters, bore) + (2 / (av * av) * area * area);
                return g >= 1 ? 1 : (g * g * (k - (2 * Math.Log(g)))) + (g * g) - 1;
            },
            0,
            1);
    }

    private static double Loss(double flow, double meters, double bore)
    {
        double reynolds = Math.Max(1e-9, 4 * flow / (Math.PI * bore * Viscosity));
        double a = Math.Pow(2.457 * Math.Log(1 / (Math.Pow(7 / reynolds, 0.9) + (0.27 * 1e-5 / bore))), 16);
        double b = Math.Pow(37530 / reynolds, 16);
        return (8 * Math.Pow(Math.Pow(8 / reynolds, 12) + Math.Pow(a + b, -1.5), 1.0 / 12) * meters / bore) + 1.5;
    }

    private static double Bisect(Func<double, double> rising, double low, double high)
    {
        for (int i = 0; i < 200; i++)
        {
            double middle = 0.5 * (low + high);
            if (rising(middle) > 0)
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
