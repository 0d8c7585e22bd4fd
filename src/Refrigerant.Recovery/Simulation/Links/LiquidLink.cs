using System;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>A liquid hose from a pool to a cylinder: driven by the pressure above the pool, flashing where the pressure on the way falls below saturation.</summary>
internal sealed class LiquidLink : Link
{
    private const double NearEnd = 0.98;

    private readonly LiquidPool _pool;
    private readonly FlashingLine _line;
    private readonly double _viscosity;

    public LiquidLink(LiquidPool pool, EquilibriumVessel to, Line line, PropertyModel model, FlashTable table)
        : base("liquid hose", pool, to)
    {
        _pool = pool;
        _line = new FlashingLine(line, table, model.CriticalPressure);
        _viscosity = LiquidViscosity(model, pool.Temperature);
    }

    /// <summary>Whether it flashes and chokes.</summary>
    public bool IsChoked { get; private set; }

    protected override ReadOnlySpan<double> Composition => _pool.LiquidComposition;

    /// <summary>Viscosity of saturated liquid at a temperature, Pa·s; near the critical point that a little below it.</summary>
    public static double LiquidViscosity(PropertyModel model, double temperature) => model.ViscosityAtSaturation(
        Math.Max(model.Range.MinimumTemperature, Math.Min(NearEnd * model.Range.MaximumSaturationTemperature, temperature))).Liquid;

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        double above = _pool.PressureAbove;
        double below = To!.Pressure;
        IsChoked = false;
        Flow = 0;
        if (inputs.LiquidOpening > 0)
        {
            // A hose that falls to the cylinder lets liquid run there by itself: the line knows its rise.
            Flow = inputs.LiquidOpening * _line.MassFlow(above, _pool.LiquidEnthalpy, _viscosity, below, out bool choked);
            IsChoked = choked;
        }

        EnthalpyOut = _pool.LiquidEnthalpy;
        EnthalpyIn = EnthalpyOut;
        return true;
    }
}
