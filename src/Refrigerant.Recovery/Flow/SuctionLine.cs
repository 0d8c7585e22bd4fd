using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>The suction line and the machine solved together: what flows when the one delivers what the other draws.</summary>
/// <remarks>
/// Line: G² = (1 − x²)/(K − 2·ln x), see <see cref="VaporLine"/>. Machine: G = a·η(r/x)·x with a = S/A·√(ρ1/p1) and r = discharge
/// over inlet pressure. Together h(x) = a²·η²·x²·(K − 2·ln x) + x² − 1 = 0; the line chokes where a·η(r/x) would exceed one, and the
/// machine then sees the lower pressure at which it draws just the choked flow. One instance serves one simulation: it remembers its
/// last solution as the next guess.
/// </remarks>
internal sealed class SuctionLine
{
    private const int MaximumIterations = 80;

    /// <summary>Pressure ratio found to this absolute tolerance; far inside the integrator's.</summary>
    private const double Tolerance = 1e-12;

    /// <summary>A secant step this small, relative to x, is the last one: the next would be smaller by orders of magnitude.</summary>
    private const double LastStep = 1e-7;

    /// <summary>Below this efficiency at the inlet pressure the machine draws nothing.</summary>
    private const double NoFlow = 1e-12;

    private readonly Line? _line;
    private readonly double _displacement;
    private readonly double _clearance;
    private readonly double _inverseExponent;
    private readonly double _peak;
    private double _guess = 1;
    private double _slope = 2;

    /// <summary>A machine behind a line; without a line it sees the inlet state.</summary>
    public SuctionLine(Line? line, RecoveryMachine machine)
    {
        _line = line;
        _displacement = machine.Displacement.CubicMetersPerSecond;
        _clearance = machine.ClearanceRatio;
        _inverseExponent = 1 / machine.PolytropicExponent;
        _peak = machine.VolumetricEfficiency;
    }

    /// <summary>Mass flow, kg/s.</summary>
    public double MassFlow { get; private set; }

    /// <summary>Pressure at the machine's inlet, Pa.</summary>
    public double SuctionPressure { get; private set; }

    /// <summary>Volumetric efficiency at the solution.</summary>
    public double Efficiency { get; private set; }

    /// <summary>Whether the line is choked.</summary>
    public bool IsChoked { get; private set; }

    /// <summary>Flow over what the machine would draw without the line, 0 to 1.</summary>
    public double LineShare { get; private set; }

    /// <summary>Solves for an inlet state (absolute pressure, density, viscosity) and a discharge pressure.</summary>
    public void Solve(double pressure, double density, double viscosity, double dischargePressure)
    {
        double ratio = dischargePressure / pressure;
        double free = EfficiencyAt(ratio);
        IsChoked = false;
        if (!(free > NoFlow))
        {
            MassFlow = 0;
            SuctionPressure = pressure;
            Efficiency = 0;
            LineShare = 1;
            return;
        }

        if (_line is null)
        {
            MassFlow = _displacement * free * density;
            SuctionPressure = pressure;
            Efficiency = free;
            LineShare = 1;
            return;
        }

        double area = _line.MinimumArea;
        double unit = area * Math.Sqrt(pressure * density);
        double a = _displacement / area * Math.Sqrt(density / pressure);
        double x = Balance(_line, a, ratio, unit, viscosity);
        double efficiency = EfficiencyAt(ratio / x);
        if (a * efficiency > 1)
        {
            IsChoked = true;
            double flow = VaporLine.MassFlow(_line, pressure, density, viscosity, 0, out _);
            MassFlow = flow;
            x = DrawnAt(flow / unit / a, ratio);
            efficiency = EfficiencyAt(ratio / x);
        }
        else
        {
            MassFlow = a * efficiency * x * unit;
        }

        _guess = x;
        SuctionPressure = x * pressure;
        Efficiency = efficiency;
        LineShare = MassFlow / (_displacement * free * density);
    }

    private double EfficiencyAt(double ratio)
    {
        double expansion = ratio <= 1 ? 1 : Math.Pow(ratio, _inverseExponent);
        return Math.Max(0, _peak * (1 + _clearance - (_clearance * expansion)));
    }

    /// <summary>Root of h in (0, 1]: bracketed secant from the last solution.</summary>
    private double Balance(Line line, double a, double ratio, double unit, double viscosity)
    {
        double low = 0;
        double high = 1;
        double x = _guess;
        double value = Imbalance(line, a, ratio, unit, viscosity, x);
        double previousX = x;
        double previousValue = value;
        for (int i = 0; i < MaximumIterations; i++)
        {
            if (value > 0)
            {
                high = x;
            }
            else if (value < 0)
            {
                low = x;
            }
            else
            {
                return x;
            }

            // The slope of the last solution starts the secant, at first that of a line that matters little, 2x.
            double slope = i == 0 ? _slope : (value - previousValue) / (x - previousX);
            double next = x - (value / slope);
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - x) <= LastStep * x)
            {
                _slope = slope > 0 ? slope : _slope;
                return next;
            }

            previousX = x;
            previousValue = value;
            x = next;
            value = Imbalance(line, a, ratio, unit, viscosity, x);
        }

        throw new ConvergenceException($"Suction pressure for a pressure ratio of {Require.Text(ratio)} not found.", MaximumIterations);
    }

    private double Imbalance(Line line, double a, double ratio, double unit, double viscosity, double x)
    {
        double flow = a * EfficiencyAt(ratio / x) * x;
        double k = line.Resistance(flow * unit, viscosity) * line.MinimumArea * line.MinimumArea;
        return (flow * flow * (k - (2 * Math.Log(x)))) + (x * x) - 1;
    }

    /// <summary>Where the machine draws the given share: η(r/x)·x = share.</summary>
    private double DrawnAt(double share, double ratio)
    {
        var drawn = new Drawn(this, share, ratio);
        return BracketedRoot.Find(ref drawn, 0, 1, Tolerance);
    }

    private readonly struct Drawn(SuctionLine owner, double share, double ratio) : IScalarFunction
    {
        public double Value(double x) => x <= 0 ? -share : (owner.EfficiencyAt(ratio / x) * x) - share;
    }
}
