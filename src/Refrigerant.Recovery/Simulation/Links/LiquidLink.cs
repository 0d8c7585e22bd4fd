using System;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>A liquid hose from a pool to a cylinder: driven by the pressure above the pool, flashing where the pressure on the way falls below saturation.</summary>
internal sealed class LiquidLink : Link
{
    private readonly LiquidPool _pool;
    private readonly Line _line;
    private readonly double _viscosity;

    public LiquidLink(LiquidPool pool, Vessel to, Line line, PropertyModel model)
        : base("liquid hose", pool, to)
    {
        _pool = pool;
        _line = line;
        _viscosity = model.ViscosityAtSaturation(Math.Min(0.98 * model.Range.MaximumSaturationTemperature, pool.Temperature)).Liquid;
    }

    /// <summary>Whether it flashes and chokes.</summary>
    public bool IsChoked { get; private set; }

    protected override ReadOnlySpan<double> Composition => _pool.LiquidComposition;

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        double above = _pool.PressureAbove;
        double below = To!.Pressure;
        IsChoked = false;
        Flow = 0;
        if (above > below && inputs.LiquidOpening > 0)
        {
            double drive = Math.Min(above - below, above - (0.9 * _pool.Saturation.Bubble.Pressure));
            Flow = inputs.LiquidOpening * LiquidLine.MassFlow(_line, drive, _pool.LiquidDensity, _viscosity);
        }

        EnthalpyOut = _pool.LiquidEnthalpy;
        EnthalpyIn = EnthalpyOut;
        return true;
    }
}
