using System;
using System.Linq;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// Hoses in a row behind valves at their inlet, written out again from docs/models.md: entrance 0.5, exit 1, friction by Churchill; valves by IEC 60534-2-1; vapor isothermal,
/// liquid that flashes in homogeneous equilibrium at constant enthalpy. No rise.
/// </summary>
internal sealed class OracleLine
{
    private const double Roughness = 1e-5;

    // Gauss–Legendre, 8 nodes.
    private static readonly double[] Node = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] Weight = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    private readonly (double Length, double Bore)[] _hoses;
    private readonly double[] _valves;
    private double _bubbleTemperature = double.NaN;

    /// <param name="flowCoefficients">Cv of valves.</param>
    /// <param name="hoses">Length and bore, m.</param>
    public OracleLine(double[] flowCoefficients, params (double Length, double Bore)[] hoses)
    {
        _hoses = hoses;
        _valves = [.. flowCoefficients.Select(cv => 2.4015e-5 * cv)];
        Area = Circle(hoses.Min(hose => hose.Bore));
        Conductance = hoses.Sum(hose => 8 * Math.PI * (hose.Bore + 0.008) * hose.Length);
    }

    public double Area { get; }

    /// <summary>To the air, 8 W/(m²·K) over walls of 4 mm.</summary>
    public double Conductance { get; }

    /// <summary>Whether the last liquid flow was choked.</summary>
    public bool Choked { get; private set; }

    /// <summary>Whether a vapor flow gets through to an outlet pressure.</summary>
    public bool Passes(double flow, double pressure, double density, double kappa, double viscosity, double outlet)
    {
        double p = pressure;
        double rho = density;
        foreach (double valve in _valves)
        {
            double limit = Math.Min(5.0 / 3, Math.Max(1, kappa)) / 1.4 * 0.72;
            if (flow >= valve * 2 / 3 * Math.Sqrt(limit * p * rho))
            {
                return false;
            }

            double head = p * rho;
            double x = FixedStep.Bisect(0, limit, z => valve * (1 - (z / (3 * limit))) * Math.Sqrt(z * head) < flow);
            p *= 1 - x;
            rho *= 1 - x;
        }

        double end = Math.Max(outlet, flow / Area * Math.Sqrt(p / rho));
        return end < p && flow * flow * (Resistance(flow, viscosity) + (2 * Math.Log(p / end) / (Area * Area))) < rho / p * (p - end) * (p + end);
    }

    /// <summary>The vapor flow to an outlet pressure.</summary>
    public double Vapor(double pressure, double density, double kappa, double viscosity, double outlet) =>
        FixedStep.Bisect(0, Area * Math.Sqrt(pressure * density), flow => Passes(flow, pressure, density, kappa, viscosity, outlet));

    /// <summary>The vapor flow between vessels, in proportion to a difference small against a thousandth of the pressure: ṁ(Δ')·Δp/Δ', Δ' = √(Δp² + (1e-3·p)²).</summary>
    public double Between(double pressure, double density, double kappa, double viscosity, double outlet)
    {
        double drop = pressure - outlet;
        double counted = Math.Sqrt((drop * drop) + (1e-6 * pressure * pressure));
        return drop / counted * Vapor(pressure, density, kappa, viscosity, pressure - counted);
    }

    /// <summary>The flow of liquid of an enthalpy to an outlet pressure: ∫ρ·dp = ṁ²·(R/2 + ln(v2/v1)/A²), largest over the end pressure.</summary>
    public double Liquid(PropertyModel model, double pressure, double enthalpy, double viscosity, double outlet)
    {
        StatePoint bubble = Bubble(model, enthalpy);
        double inlet = Density(model, pressure, enthalpy, bubble.Pressure);
        double Missing(double flow)
        {
            double p = pressure;
            foreach (double valve in _valves)
            {
                double boiling = Math.Min(p, bubble.Pressure);
                double most = 0.81 * (p - ((0.96 - (0.28 * Math.Sqrt(boiling / model.CriticalPressure))) * boiling));
                double drop = flow * flow / (valve * valve * Density(model, p, enthalpy, bubble.Pressure));
                if (drop >= most)
                {
                    return double.MaxValue;
                }

                p -= drop;
            }

            if (p <= outlet)
            {
                return double.MaxValue;
            }

            double g = flow / Area;
            double Softness(double at)
            {
                double step = 1e-5 * at;
                return ((1 / Density(model, at - step, enthalpy, bubble.Pressure)) - (1 / Density(model, at + step, enthalpy, bubble.Pressure))) / (2 * step);
            }

            double end = outlet;
            Choked = false;
            double from = Math.Min(p, bubble.Pressure);
            if (outlet < from && g * g * Softness(outlet) > 1)
            {
                Choked = true;
                end = g * g * Softness(from * (1 - 3e-5)) > 1
                    ? from
                    : FixedStep.Root(outlet, from * (1 - 3e-5), 1e-11, at => -Math.Log(g * g * Softness(at)));
            }

            double stretch = Math.Log(Density(model, p, enthalpy, bubble.Pressure) / Density(model, end, enthalpy, bubble.Pressure));
            return (flow * flow * ((0.5 * Resistance(flow, viscosity)) + (stretch / (Area * Area)))) - Impulse(model, p, end, enthalpy, bubble.Pressure);
        }

        double high = Math.Sqrt(2 * inlet * (pressure - outlet) / Resistance(1e3, viscosity));
        double unit = inlet * (pressure - outlet);
        return FixedStep.Root(0, high, 1e-12, flow => Math.Min(1, Missing(flow) / unit));
    }

    /// <summary>R of the pipe, valves not counted, 1/m⁴.</summary>
    private double Resistance(double flow, double viscosity)
    {
        double sum = (0.5 / Square(Circle(_hoses[0].Bore))) + (1 / Square(Circle(_hoses[^1].Bore)));
        foreach ((double length, double bore) in _hoses)
        {
            double reynolds = Math.Max(1e-9, flow * bore / (Circle(bore) * viscosity));
            double a = Math.Pow(2.457 * Math.Log(1 / (Math.Pow(7 / reynolds, 0.9) + (0.27 * Roughness / bore))), 16);
            double b = Math.Pow(37530 / reynolds, 16);
            sum += 8 * Math.Pow(Math.Pow(8 / reynolds, 12) + Math.Pow(a + b, -1.5), 1.0 / 12) * length / bore / Square(Circle(bore));
        }

        return sum;
    }

    /// <summary>∫ρ·dp at constant enthalpy from the end to the inlet pressure: liquid, then two phases in τ = ln(1 + 100·ln(p_b/p)).</summary>
    private static double Impulse(PropertyModel model, double inlet, double end, double enthalpy, double bubble)
    {
        double sum = 0;
        double liquidEnd = Math.Max(end, Math.Min(inlet, bubble));
        if (inlet > liquidEnd)
        {
            double middle = 0.5 * (inlet + liquidEnd);
            double ends = Density(model, inlet, enthalpy, bubble) + Density(model, liquidEnd, enthalpy, bubble);
            sum += (inlet - liquidEnd) / 6 * (ends + (4 * Density(model, middle, enthalpy, bubble)));
        }

        double from = Math.Log(1 + (100 * Math.Log(bubble / Math.Min(bubble, inlet))));
        double to = Math.Log(1 + (100 * Math.Log(bubble / Math.Min(bubble, end))));
        for (int i = 0; i < Node.Length && to > from; i++)
        {
            for (int sign = -1; sign <= 1; sign += 2)
            {
                double tau = (0.5 * (from + to)) + (0.5 * sign * Node[i] * (to - from));
                double p = bubble * Math.Exp(-0.01 * (Math.Exp(tau) - 1));
                sum += 0.5 * (to - from) * Weight[i] * Density(model, p, enthalpy, bubble) * p * 0.01 * Math.Exp(tau);
            }
        }

        return sum;
    }

    public static double Density(PropertyModel model, double pressure, double enthalpy, double bubble)
    {
        if (pressure >= bubble || model.Composition.Count > 1)
        {
            return model.StateAtEnthalpy(pressure, enthalpy).Density;
        }

        SaturationPoint saturation = model.SaturationAtPressure(pressure);
        double x = (enthalpy - saturation.Bubble.Enthalpy) / (saturation.Dew.Enthalpy - saturation.Bubble.Enthalpy);
        return 1 / (((1 - x) / saturation.Bubble.Density) + (x / saturation.Dew.Density));
    }

    /// <summary>The bubble point of an enthalpy, by secants from the last one.</summary>
    public StatePoint Bubble(PropertyModel model, double enthalpy)
    {
        double t = double.IsNaN(_bubbleTemperature) ? 0.75 * model.CriticalTemperature : _bubbleTemperature;
        double slope = 1300;
        double last = 0;
        double lastValue = 0;
        for (int i = 0; i < 100; i++)
        {
            StatePoint point = model.SaturationAtTemperature(t).Bubble;
            double value = point.Enthalpy - enthalpy;
            if (i > 0 && t != last)
            {
                slope = (value - lastValue) / (t - last);
            }

            if (Math.Abs(value / slope) < 1e-11 * t)
            {
                _bubbleTemperature = t;
                return point;
            }

            last = t;
            lastValue = value;
            t -= Math.Max(-20, Math.Min(20, value / slope));
        }

        throw new InvalidOperationException("No bubble point.");
    }

    private static double Circle(double bore) => Math.PI / 4 * bore * bore;

    private static double Square(double x) => x * x;
}
