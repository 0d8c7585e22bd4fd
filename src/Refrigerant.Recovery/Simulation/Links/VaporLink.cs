using System;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>A run of hoses and valves through which vapor flows by itself from the higher pressure to the lower, its enthalpy unchanged.</summary>
/// <remarks>
/// Close to equal pressures a valve's flow turns laminar (IEC 60534-2-1): with Δ' = √(Δp² + (1e-3·p)²) the flow is ṁ(Δ')·Δp/Δ', in proportion to a small difference, where the root alone
/// would have an infinite slope and no integration would settle. At a difference of 2 % the flow is less by 0.06 %. The 1e-3 is common practice, no source: below what gauges show.
/// </remarks>
internal sealed class VaporLink : Link
{
    /// <summary>Share of the pressure below which a difference counts as small.</summary>
    private const double SmallShare = 1e-3;

    private readonly VaporLine _line;
    private readonly VaporLine? _back;
    private readonly double _exponent;
    private readonly double _viscosity;
    private bool _isForward = true;

    /// <param name="name">Its name.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">The other.</param>
    /// <param name="line">Hoses, valves, fittings.</param>
    /// <param name="gas">What the gas is like.</param>
    /// <param name="oneWay">Whether a check valve lets it flow from the first end to the second only.</param>
    public VaporLink(string name, Vessel from, Vessel to, Line line, GasFacts gas, bool oneWay)
        : base(name, from, to)
    {
        _line = new VaporLine(line);
        _back = oneWay ? null : new VaporLine(line);
        _exponent = gas.IdealExponent;
        _viscosity = gas.Viscosity;
    }

    /// <summary>Share of full opening, 0 to 1.</summary>
    public double Opening { get; set; } = 1;

    /// <summary>Whether it is choked.</summary>
    public bool IsChoked { get; private set; }

    protected override ReadOnlySpan<double> Composition => (_isForward ? From! : To!).VaporComposition;

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        double difference = From!.Pressure - To!.Pressure;
        _isForward = difference >= 0 || _back is null;
        Vessel source = _isForward ? From : To;
        Vessel sink = _isForward ? To : From;
        bool choked = false;
        double flow = 0;
        if (difference != 0 && (difference > 0 || _back is not null) && Opening > 0)
        {
            double pressure = source.Pressure;
            double drop = pressure - sink.Pressure;
            double counted = Math.Sqrt((drop * drop) + (SmallShare * pressure * SmallShare * pressure));
            flow = Opening * drop / counted
                * (_isForward ? _line : _back!).MassFlow(pressure, source.VaporDensity, _exponent, _viscosity, Math.Max(0, pressure - counted), out choked);
        }

        IsChoked = choked;
        Flow = _isForward ? flow : -flow;
        EnthalpyOut = source.VaporEnthalpy;
        EnthalpyIn = source.VaporEnthalpy;
        return true;
    }
}
