using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Isothermal compressible flow in a line, with friction, limited by choking. Plain SI doubles.</summary>
/// <remarks>
/// With x = p2/p1, K = R·A² (A the smallest cross-section) and G = ṁ/(A·√(p1·ρ1)):
/// G² = (1 − x²)/(K − 2·ln x), density proportional to pressure along the line; the flow is largest (choked) where G = x
/// (any gas-dynamics text; Crane TP-410). p1/ρ1 of the real gas stands for R·T.
/// </remarks>
internal static class VaporLine
{
    private const int MaximumIterations = 40;
    private const double Tolerance = 1e-12;

    /// <summary>Share of √(p1·ρ1)·A below which no flow is sought.</summary>
    private const double LeastFlow = 1e-12;

    /// <summary>Mass flow from an inlet state to an outlet pressure, kg/s; zero where the outlet pressure is not below the inlet's.</summary>
    public static double MassFlow(Line line, double pressure, double density, double viscosity, double outletPressure, out bool choked)
    {
        choked = false;
        if (!(outletPressure < pressure))
        {
            return 0;
        }

        double unit = line.MinimumArea * Math.Sqrt(pressure * density);
        var excess = new Excess(line, unit, viscosity, Math.Max(0, outletPressure / pressure));
        double flow = 0.3 * unit;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double change = excess.Value(flow);
            flow += change;
            if (Math.Abs(change) <= Tolerance * flow)
            {
                choked = excess.IsChoked(flow);
                return flow;
            }
        }

        // Where laminar flow turns turbulent the friction rises so steeply that plain iteration swings to and fro: bracket it.
        flow = BracketedRoot.Find(ref excess, LeastFlow * unit, unit, Tolerance * unit);
        choked = excess.IsChoked(flow);
        return flow;
    }

    /// <summary>The pressure ratio at which a line of total loss <paramref name="k"/> chokes: x²·(K − 2·ln x) = 1 − x².</summary>
    public static double CriticalRatio(double k)
    {
        // With z = x^-2 the equation is z − ln z = K + 1, z > 1; Newton from above converges monotonically.
        double z = k + 2 + Math.Log(k + 2);
        for (int i = 0; i < MaximumIterations; i++)
        {
            double step = (z - Math.Log(z) - k - 1) / (1 - (1 / z));
            z -= step;
            if (Math.Abs(step) <= 1e-14 * z)
            {
                break;
            }
        }

        return 1 / Math.Sqrt(z);
    }

    /// <summary>The flow that follows from the friction at a flow, less that flow. Friction depends on the flow as Re^-1 at most (laminar).</summary>
    private readonly struct Excess(Line line, double unit, double viscosity, double ratio) : IScalarFunction
    {
        public double Value(double x)
        {
            double k = Loss(x);
            double critical = CriticalRatio(k);
            double next = ratio <= critical ? critical * unit : unit * Math.Sqrt((1 - (ratio * ratio)) / (k - (2 * Math.Log(ratio))));
            return next - x;
        }

        public bool IsChoked(double flow) => ratio <= CriticalRatio(Loss(flow));

        private double Loss(double flow) => line.Resistance(flow, viscosity) * line.MinimumArea * line.MinimumArea;
    }
}
