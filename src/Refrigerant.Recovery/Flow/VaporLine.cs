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
    private const int MaximumIterations = 100;
    private const double Tolerance = 1e-12;

    /// <summary>Mass flow from an inlet state to an outlet pressure, kg/s; zero where the outlet pressure is not below the inlet's.</summary>
    public static double MassFlow(Line line, double pressure, double density, double viscosity, double outletPressure, out bool choked)
    {
        choked = false;
        if (!(outletPressure < pressure))
        {
            return 0;
        }

        double unit = line.MinimumArea * Math.Sqrt(pressure * density);
        double area2 = line.MinimumArea * line.MinimumArea;
        double ratio = Math.Max(0, outletPressure / pressure);
        double flow = 0.3 * unit;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double k = line.Resistance(flow, viscosity) * area2;
            double critical = CriticalRatio(k);
            choked = ratio <= critical;
            double next = choked ? critical * unit : unit * Math.Sqrt((1 - (ratio * ratio)) / (k - (2 * Math.Log(ratio))));

            // Friction depends on the flow as Re^-1 at most (laminar), so that the error at least halves each time.
            double change = Math.Abs(next - flow);
            flow = next;
            if (change <= Tolerance * flow)
            {
                return flow;
            }
        }

        throw new ConvergenceException(
            $"Vapor flow from {Require.Text(pressure)} Pa to {Require.Text(outletPressure)} Pa not found.", MaximumIterations);
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
}
