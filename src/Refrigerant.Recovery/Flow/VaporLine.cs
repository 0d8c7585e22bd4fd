using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Isothermal compressible flow in a line: throttles that choke where they are, then pipe with friction. Plain SI doubles.</summary>
/// <remarks>
/// <para>
/// Pipe, with x = p2/p1, K = R·A² (A the smallest cross-section) and G = ṁ/(A·√(p1·ρ1)): G² = (1 − x²)/(K − 2·ln x), density proportional to
/// pressure along the line; the flow is largest (choked) where G = x (any gas-dynamics text; Crane TP-410). p1/ρ1 of the real gas stands for R·T.
/// </para>
/// <para>
/// Throttle (IEC 60534-2-1): ṁ = Av·Y·√(x·p·ρ), x = Δp/p, Y = 1 − x/(3·X), x at most X = Fγ·x_T, Fγ = κ/1.4. With u = x/X that is
/// u·(1 − u/3)² = q, q = ṁ²/(Av²·X·p·ρ), whose root is u = 4·sin²(asin(1.5·√q)/3); it chokes at q = 4/9.
/// </para>
/// <para>
/// All parts in series see the same flow; the flow is where the last pressure is the outlet's, or where one of them chokes. One instance serves
/// one simulation: it remembers its last solution as the next guess.
/// </para>
/// </remarks>
internal sealed class VaporLine
{
    /// <summary>κ of the air that x_T is measured with.</summary>
    private const double Air = 1.4;

    /// <summary>The factor holds for κ of ideal gases, which lie between these; a real gas near saturation has none that would mean more.</summary>
    private const double LeastExponent = 1;
    private const double GreatestExponent = 5.0 / 3;

    /// <summary>A throttle takes no more than this share of its inlet pressure.</summary>
    private const double GreatestDrop = 0.99;

    private readonly Line _line;
    private WarmRoot _root = new(0.3, 2);

    public VaporLine(Line line) => _line = line;

    /// <summary>Mass flow from an inlet state to an outlet pressure, kg/s; zero where the outlet pressure is not below the inlet's.</summary>
    /// <param name="pressure">Absolute pressure at the inlet, Pa.</param>
    /// <param name="density">Density there, kg/m³.</param>
    /// <param name="exponent">Ratio of the heat capacities of the ideal gas κ.</param>
    /// <param name="viscosity">Dynamic viscosity, Pa·s.</param>
    /// <param name="outletPressure">Absolute pressure at the outlet, Pa.</param>
    /// <param name="choked">Whether a throttle or the pipe is choked.</param>
    /// <exception cref="ConvergenceException">A value is no number, or no flow was found.</exception>
    public double MassFlow(double pressure, double density, double exponent, double viscosity, double outletPressure, out bool choked)
    {
        choked = false;
        if (!(pressure > 0 && density > 0 && viscosity > 0 && outletPressure > double.NegativeInfinity && pressure + density + viscosity < double.PositiveInfinity))
        {
            throw new ConvergenceException(
                $"No flow for {Require.Text(pressure)} Pa, {Require.Text(density)} kg/m³, {Require.Text(viscosity)} Pa·s to {Require.Text(outletPressure)} Pa.", 0);
        }

        if (outletPressure >= pressure)
        {
            return 0;
        }

        double unit = Unit(_line, pressure, density);
        var imbalance = new Imbalance(_line, unit, Factor(exponent), viscosity, Math.Max(0, outletPressure / pressure));
        double g = _root.Find(ref imbalance, 0, 1);
        choked = imbalance.IsChoked;
        return g * unit;
    }

    /// <summary>A·√(p1·ρ1): what flows count in, kg/s.</summary>
    internal static double Unit(Line line, double pressure, double density) => line.MinimumArea * Math.Sqrt(pressure * density);

    /// <summary>Fγ.</summary>
    internal static double Factor(double exponent) => Math.Min(GreatestExponent, Math.Max(LeastExponent, exponent)) / Air;

    /// <summary>What is missing in the balance of a line: below zero where more would flow, above where it cannot be as much.</summary>
    /// <param name="line">The line.</param>
    /// <param name="g">ṁ/(A·√(p1·ρ1)).</param>
    /// <param name="unit">A·√(p1·ρ1), kg/s.</param>
    /// <param name="factor">Fγ.</param>
    /// <param name="viscosity">Dynamic viscosity, Pa·s.</param>
    /// <param name="outlet">Outlet over inlet pressure.</param>
    /// <param name="choked">Whether a throttle or the pipe is choked, if this is the solution.</param>
    internal static double Missing(Line line, double g, double unit, double factor, double viscosity, double outlet, out bool choked)
    {
        double pressure = 1;
        double throttle = -1;
        for (int i = 0; i < line.ThrottleCount; i++)
        {
            double limit = Math.Min(GreatestDrop, factor * line.ThrottleRatio(i));
            double s = g * line.MinimumArea / (line.ThrottleArea(i) * pressure);
            double q = s * s / limit;
            double sine = 1.5 * Math.Sqrt(q);
            double root = sine < 1 ? Math.Sin(Math.Asin(sine) / 3) : 0.5;
            throttle = Math.Max(throttle, (sine * sine) - 1);
            pressure *= 1 - (limit * 4 * root * root);
        }

        // The pipe's end cannot be below g, where it chokes.
        double end = Math.Max(outlet, g);
        double expansion = g > 0 && end < pressure ? -2 * Math.Log(end / pressure) : 0;
        double pipe = (g * g * (line.PipeLoss(g * unit, viscosity) + expansion)) + ((end - pressure) * (end + pressure));
        choked = g >= outlet || throttle > pipe;
        return Math.Max(pipe, throttle);
    }

    private struct Imbalance(Line line, double unit, double factor, double viscosity, double outlet) : IScalarFunction
    {
        private bool _choked;

        public readonly bool IsChoked => _choked;

        public double Value(double x) => Missing(line, x, unit, factor, viscosity, outlet, out _choked);
    }
}
