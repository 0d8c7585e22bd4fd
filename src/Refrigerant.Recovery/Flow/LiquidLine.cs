using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Liquid in a line: friction by Darcy–Weisbach with Churchill's factor, fittings, static head. Plain SI doubles.</summary>
internal static class LiquidLine
{
    /// <summary>Standard gravity, m/s².</summary>
    public const double Gravity = 9.80665;

    private const int MaximumIterations = 80;
    private const double Tolerance = 1e-12;

    /// <summary>Pressure drop from inlet to outlet at a mass flow, static head included, Pa.</summary>
    public static double Drop(Line line, double massFlow, double density, double viscosity) =>
        (line.Resistance(massFlow, viscosity) * massFlow * massFlow / (2 * density)) + (density * Gravity * line.Rise);

    /// <summary>Mass flow that a pressure difference between inlet and outlet drives, kg/s; zero where the head holds it back.</summary>
    public static double MassFlow(Line line, double difference, double density, double viscosity)
    {
        double available = difference - (density * Gravity * line.Rise);
        if (!(available > 0))
        {
            return 0;
        }

        double flow = Math.Sqrt(2 * density * available / line.Resistance(1e3, viscosity));
        for (int i = 0; i < MaximumIterations; i++)
        {
            double next = Math.Sqrt(2 * density * available / line.Resistance(flow, viscosity));
            double change = Math.Abs(next - flow);
            flow = next;
            if (change <= Tolerance * flow)
            {
                return flow;
            }
        }

        // Where laminar flow turns turbulent plain iteration can swing to and fro; the drop rises with the flow, so a bracket finds it.
        var excess = new Excess(line, available, density, viscosity);
        double upper = flow;
        for (int i = 0; i < MaximumIterations && excess.Value(upper) < 0; i++)
        {
            upper *= 2;
        }

        return BracketedRoot.Find(ref excess, 0, upper, Tolerance * upper);
    }

    /// <summary>The friction at a flow, less the pressure available for it.</summary>
    private readonly struct Excess(Line line, double available, double density, double viscosity) : IScalarFunction
    {
        public double Value(double x) => (line.Resistance(x, viscosity) * x * x / (2 * density)) - available;
    }
}
