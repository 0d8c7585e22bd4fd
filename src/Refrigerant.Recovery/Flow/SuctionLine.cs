using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>The suction line and the machine solved together: what flows when the one delivers what the other draws.</summary>
/// <remarks>
/// <para>
/// Line: see <see cref="VaporLine"/>. Machine: G = a·η(r/x)·x·T/T_s with a = S/A·√(ρ1/p1), r = discharge over inlet pressure, x = suction over
/// inlet pressure, η as of <see cref="RecoveryMachine"/>, T_s as of <see cref="SuctionWarming"/>. Where the line chokes the machine sees the
/// lower pressure at which it draws just the choked flow.
/// </para>
/// <para>
/// While the discharge pressure is below the appliance's, gas also passes the machine's check valves freely: the suction pressure is never above
/// the discharge pressure, and what the line lets through at that pressure flows, displacement included.
/// </para>
/// <para>One instance serves one simulation: it remembers its last solution as the next guess.</para>
/// </remarks>
internal sealed class SuctionLine
{
    /// <summary>Below this efficiency at the inlet pressure the machine draws nothing.</summary>
    private const double NoFlow = 1e-12;

    private const int MaximumIterations = 30;
    private const double Tolerance = 1e-13;

    private readonly Line? _line;
    private readonly ParallelLines? _branches;
    private readonly VaporLine? _passing;
    private readonly double _displacement;
    private readonly double _clearance;
    private readonly double _leakage;
    private readonly double _inverseExponent;
    private readonly double _peak;
    private WarmRoot _root = new(1, 2);
    private double _densityRatio = 1;
    private Question _asked;

    /// <summary>A machine behind a line; without a line it sees the inlet state.</summary>
    public SuctionLine(Line? line, RecoveryMachine machine)
    {
        _line = line;
        _passing = line is null || !machine.GasPassesThrough ? null : new VaporLine(line);
        _displacement = machine.Displacement.CubicMetersPerSecond;
        _clearance = machine.ClearanceRatio;
        _leakage = machine.LeakageTerm;
        _inverseExponent = 1 / machine.PolytropicExponent;
        _peak = machine.VolumetricEfficiency;
    }

    /// <summary>A machine behind lines side by side, one or more.</summary>
    public SuctionLine(IReadOnlyList<Line> branches, RecoveryMachine machine)
        : this(branches[0], machine)
    {
        if (branches.Count > 1)
        {
            _branches = new ParallelLines(branches);
        }
    }

    /// <summary>A machine behind hoses, the second vapor side beside the first; without hoses it sees the inlet state.</summary>
    public static SuctionLine Of(HoseSet? hoses, RecoveryMachine machine) => hoses is null ? new SuctionLine((Line?)null, machine)
        : hoses.SecondVaporSide.Count == 0 ? new SuctionLine(new Line(hoses.VaporSide), machine)
        : new SuctionLine([new Line(hoses.VaporSide), new Line(hoses.SecondVaporSide)], machine);

    /// <summary>Mass flow, kg/s.</summary>
    public double MassFlow { get; private set; }

    /// <summary>Pressure at the machine's inlet, Pa.</summary>
    public double SuctionPressure { get; private set; }

    /// <summary>Temperature at the compressor's cylinder, K; zero where no warming was asked for.</summary>
    public double SuctionTemperature { get; private set; }

    /// <summary>Volumetric efficiency at the solution.</summary>
    public double Efficiency { get; private set; }

    /// <summary>Whether the line is choked.</summary>
    public bool IsChoked { get; private set; }

    /// <summary>Whether gas passes the machine by itself.</summary>
    public bool IsPassing { get; private set; }

    /// <summary>Flow over what the machine would draw without the line, 0 to 1; more where gas passes it by itself.</summary>
    public double LineShare { get; private set; }

    /// <summary>Solves for an inlet state (absolute pressure, density, ratio of heat capacities κ, viscosity) and a discharge pressure.</summary>
    /// <exception cref="ConvergenceException">A value is no number, or no balance was found.</exception>
    public void Solve(double pressure, double density, double exponent, double viscosity, double dischargePressure) =>
        Solve(pressure, density, exponent, viscosity, dischargePressure, default);

    /// <summary>The same with suction gas that warms on its way.</summary>
    /// <exception cref="ConvergenceException">A value is no number, or no balance was found.</exception>
    public void Solve(double pressure, double density, double exponent, double viscosity, double dischargePressure, in SuctionWarming warming)
    {
        if (!(pressure > 0 && density > 0 && viscosity > 0 && dischargePressure >= 0 && pressure + density + viscosity + dischargePressure < double.PositiveInfinity))
        {
            throw new ConvergenceException(
                $"No suction balance for {Require.Text(pressure)} Pa, {Require.Text(density)} kg/m³, {Require.Text(viscosity)} Pa·s against {Require.Text(dischargePressure)} Pa.", 0);
        }

        // A Jacobian by differences asks the same for every state that is none of its ends.
        var asked = new Question(pressure, density, exponent, viscosity, dischargePressure, warming);
        if (asked == _asked)
        {
            return;
        }

        _asked = default;
        double ratio = dischargePressure / pressure;
        double free = EfficiencyAt(ratio);
        IsChoked = false;
        IsPassing = false;
        LineShare = 1;
        double x = 1;
        if (!(free > NoFlow))
        {
            MassFlow = 0;
            Efficiency = 0;
        }
        else if (_line is null)
        {
            double drawn = _displacement * free * density;
            MassFlow = Warmed(drawn, 1, warming);
            Efficiency = free;
        }
        else
        {
            x = Balance(pressure, density, exponent, viscosity, dischargePressure, warming);
            LineShare = MassFlow / (_displacement * free * density * _densityRatio);
        }

        SuctionPressure = x * pressure;
        SuctionTemperature = warming.TemperatureAt(MassFlow);
        _asked = asked;
    }

    private double EfficiencyAt(double ratio)
    {
        double r = ratio <= 1 ? 1 : ratio;
        double expansion = r == 1 ? 1 : Math.Pow(r, _inverseExponent);
        return Math.Max(0, _peak - (_leakage * r) - (_clearance * (expansion - 1)));
    }

    /// <summary>Suction over inlet pressure; sets flow, efficiency and what limits them.</summary>
    private double Balance(double pressure, double density, double exponent, double viscosity, double dischargePressure, in SuctionWarming warming)
    {
        double unit = VaporLine.Unit(_line!, pressure, density);
        var balance = new Imbalance(this, pressure, density, exponent, viscosity, dischargePressure / pressure, unit, warming);
        double ratio = dischargePressure / pressure;
        if (_passing is not null && ratio < 1 && !(balance.Value(ratio) >= 0))
        {
            IsPassing = true;
            Efficiency = EfficiencyAt(1);
            MassFlow = _branches is null
                ? _passing.MassFlow(pressure, density, exponent, viscosity, dischargePressure, out bool choked)
                : _branches.MassFlow(pressure, density, exponent, viscosity, dischargePressure, out choked);
            IsChoked = choked;
            _densityRatio = warming.Counts ? warming.Temperature / warming.TemperatureAt(MassFlow) : 1;
            return ratio;
        }

        double x = _root.Find(ref balance, 0, 1);
        IsChoked = balance.IsChoked;
        Efficiency = EfficiencyAt(ratio / x);
        MassFlow = Warmed(_displacement * Efficiency * density * x, 1, warming);
        return x;
    }

    /// <summary>The flow ṁ = drawn·T/T_s(ṁ) of gas that warms; flows in multiples of <paramref name="unit"/>, kg/s.</summary>
    private double Warmed(double drawn, double unit, in SuctionWarming warming)
    {
        if (!warming.Counts || !(drawn > 0))
        {
            _densityRatio = 1;
            return drawn;
        }

        double rate = warming.Conductance / (unit * warming.HeatCapacity);
        double flow = drawn * _densityRatio;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double share = Math.Exp(-rate / flow);
            double temperature = warming.AirTemperature + ((warming.Temperature - warming.AirTemperature) * share);
            double density = warming.Temperature / temperature;
            double slope = (warming.Temperature - warming.AirTemperature) * share * rate / (flow * flow);
            double change = ((drawn * density) - flow) / (1 + (drawn * density * slope / temperature));
            flow += change;
            if (Math.Abs(change) <= Tolerance * flow)
            {
                _densityRatio = flow / drawn;
                return flow;
            }
        }

        throw new ConvergenceException($"Temperature of warming suction gas not found for {Require.Text(drawn * unit)} kg/s.", MaximumIterations);
    }

    private readonly record struct Question(double Pressure, double Density, double Exponent, double Viscosity, double Discharge, SuctionWarming Warming);

    private struct Imbalance(
        SuctionLine owner, double pressure, double density, double exponent, double viscosity, double ratio, double unit, SuctionWarming warming) : IScalarFunction
    {
        private readonly double _perUnit = owner._displacement * density / unit;
        private readonly double _factor = VaporLine.Factor(exponent);
        private bool _choked;

        public readonly bool IsChoked => _choked;

        public double Value(double x)
        {
            if (x <= 0)
            {
                return -1;
            }

            double g = owner.Warmed(_perUnit * owner.EfficiencyAt(ratio / x) * x, unit, warming);
            return owner._branches is null
                ? VaporLine.Missing(owner._line!, g, unit, _factor, viscosity, x, out _choked)
                : g - (owner._branches.MassFlow(pressure, density, exponent, viscosity, x * pressure, out _choked) / unit);
        }
    }
}
