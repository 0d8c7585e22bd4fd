using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Liquid that may flash on its way through a line: throttles at its inlet, then pipe; plain SI doubles.</summary>
/// <remarks>
/// <para>
/// Pipe: homogeneous equilibrium at constant enthalpy, −dp·(1 + G²·dv/dp) = f·G²·v·dz/(2·D) (Levy and others; ASME J. Fluids Eng. 83, 619). Divided by
/// v and integrated: ∫ρ·dp = ṁ²·(R/2 + ln(v2/v1)/A²), R = Σ K/A² with friction, A the smallest cross-section. It chokes where 1 + G²·dv/dp = 0, which
/// is where the flow is largest over the end pressure. The friction factor is that of the liquid.
/// </para>
/// <para>
/// Throttle: ṁ = Av·√(ρ·Δp), Δp at most F_L²·(p − F_F·p_v), F_F = 0.96 − 0.28·√(p_v/p_c) (IEC 60534-2-1, liquid that flashes); behind an earlier
/// throttle p_v is the pressure itself once it flashes.
/// </para>
/// <para>
/// The rise counts at the inlet, as a column of what enters. One instance serves one simulation: it remembers its last solution and its table.
/// </para>
/// </remarks>
internal sealed class FlashingLine
{
    private readonly Line _line;
    private readonly FlashTable _table;
    private readonly double _criticalPressure;
    private WarmRoot _root = new(0.3, 1);
    private WarmRoot _choking = new(0.5, 1);
    private (double Pressure, double Enthalpy, double Viscosity, double Outlet) _asked;
    private double _flow;
    private bool _choked;

    public FlashingLine(Line line, PropertyModel model)
        : this(line, new FlashTable(model), model.CriticalPressure)
    {
    }

    /// <summary>With a table that lines of one refrigerant may share within a simulation.</summary>
    public FlashingLine(Line line, FlashTable table, double criticalPressure)
    {
        _line = line;
        _table = table;
        _criticalPressure = criticalPressure;
    }

    /// <summary>Mass flow of liquid from an inlet state to an outlet pressure, kg/s; zero where nothing drives it.</summary>
    /// <param name="pressure">Absolute pressure at the inlet, at or above the bubble pressure of <paramref name="enthalpy"/> (lower ones count as two phases), Pa.</param>
    /// <param name="enthalpy">Specific enthalpy of what enters, J/kg.</param>
    /// <param name="viscosity">Dynamic viscosity of the liquid, Pa·s.</param>
    /// <param name="outletPressure">Absolute pressure at the outlet, Pa.</param>
    /// <param name="choked">Whether a throttle or the pipe is choked.</param>
    /// <exception cref="PropertyRangeException">No liquid of that enthalpy is in the range of the equation.</exception>
    /// <exception cref="ConvergenceException">A value is no number, or no flow was found.</exception>
    public double MassFlow(double pressure, double enthalpy, double viscosity, double outletPressure, out bool choked)
    {
        choked = false;
        if (!(pressure > 0 && viscosity > 0 && outletPressure > double.NegativeInfinity && pressure + viscosity < double.PositiveInfinity))
        {
            throw new ConvergenceException(
                $"No flow for {Require.Text(pressure)} Pa, {Require.Text(viscosity)} Pa·s to {Require.Text(outletPressure)} Pa.", 0);
        }

        // A Jacobian by differences asks the same for every state that is none of its ends.
        _table.Prepare(enthalpy);
        (double, double, double, double) asked = (pressure, enthalpy, viscosity, outletPressure);
        if (asked != _asked)
        {
            _asked = default;
            _flow = Find(pressure, viscosity, outletPressure, out _choked);
            _asked = asked;
        }

        choked = _choked;
        return _flow;
    }

    private double Find(double pressure, double viscosity, double outletPressure, out bool choked)
    {
        choked = false;
        double density = _table.Density(pressure);
        double start = pressure - (density * LiquidLine.Gravity * _line.Rise);
        double outlet = Math.Max(outletPressure, _table.LowestPressure);
        if (!(start > outlet))
        {
            return 0;
        }

        // No more flows than friction alone would let through of liquid, were there no flashing and no laminar part: the scale of flows.
        double scale = Math.Sqrt(2 * _table.Density(start) * (start - outlet) / _line.Resistance(1e3, viscosity));
        var imbalance = new Imbalance(this, start, outlet, viscosity, scale);
        double flow = scale * _root.Find(ref imbalance, 0, 1.001);
        choked = imbalance.IsChoked;
        return flow;
    }

    /// <summary>What is missing in the balance: below zero where more would flow, above where it cannot be as much.</summary>
    private double Missing(double flow, double start, double outlet, double viscosity, out bool choked)
    {
        double pressure = start;
        double throttle = -1;
        for (int i = 0; i < _line.ThrottleCount; i++)
        {
            double vapor = Math.Min(pressure, _table.BubblePressure);
            double recovery = _line.ThrottleRecovery(i);
            double most = recovery * recovery * (pressure - ((0.96 - (0.28 * Math.Sqrt(vapor / _criticalPressure))) * vapor));
            double drop = flow * flow / (_line.ThrottleArea(i) * _line.ThrottleArea(i) * _table.Density(pressure));
            throttle = Math.Max(throttle, (drop / most) - 1);
            pressure = Math.Max(_table.LowestPressure, pressure - Math.Min(drop, most));
        }

        double half = 0.5 * _line.PipeResistance(flow, viscosity) * flow * flow;
        double accelerating = flow * flow / (_line.MinimumArea * _line.MinimumArea);
        double end = Math.Min(pressure, outlet);
        choked = false;
        double impulse;
        double logarithm;
        if (end >= _table.BubblePressure)
        {
            impulse = _table.LiquidImpulse(pressure) - _table.LiquidImpulse(end);
            logarithm = _table.LiquidLogVolume(end) - _table.LiquidLogVolume(pressure);
        }
        else
        {
            double from = pressure >= _table.BubblePressure ? 0 : _table.Depth(pressure);
            double deepest = _table.Depth(end);
            double to = Math.Max(from, ChokingDepth(accelerating, deepest));
            choked = to < deepest;
            (double toImpulse, double toLogarithm) = _table.At(to);
            (double fromImpulse, double fromLogarithm) = pressure >= _table.BubblePressure
                ? (-_table.LiquidImpulse(pressure), _table.LiquidLogVolume(pressure))
                : _table.At(from);
            impulse = toImpulse - fromImpulse;
            logarithm = toLogarithm - fromLogarithm;
        }

        // An outlet above what the throttles leave: the flow is too large by what is missing.
        double beyond = Math.Max(0, outlet - pressure) * _table.Density(pressure);
        double unit = (start - outlet) * _table.Density(start);
        double pipe = (half + (accelerating * logarithm) - impulse + beyond) / unit;
        choked |= throttle > pipe;
        return Math.Max(pipe, throttle);
    }

    /// <summary>τ at which the pipe chokes, G²·(−dv/dp) = 1; the deepest where it does not come to that.</summary>
    private double ChokingDepth(double massVelocitySquared, double deepest)
    {
        double needed = -Math.Log(massVelocitySquared);
        if (!(_table.LogSofteningAt(deepest) > needed))
        {
            return deepest;
        }

        if (_table.LogSofteningAtBubble >= needed)
        {
            return 0;
        }

        var sonic = new Sonic(_table, needed);
        return _choking.Find(ref sonic, 0, deepest);
    }

    private readonly struct Sonic(FlashTable table, double needed) : IScalarFunction
    {
        public double Value(double x) => table.LogSofteningAt(x) - needed;
    }

    private struct Imbalance(FlashingLine owner, double start, double outlet, double viscosity, double scale) : IScalarFunction
    {
        private bool _choked;

        public readonly bool IsChoked => _choked;

        public double Value(double x) => owner.Missing(x * scale, start, outlet, viscosity, out _choked);
    }
}
