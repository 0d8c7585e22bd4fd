using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>The machine drawing liquid: it flashes on its way and across the throttled inlet valve, and the compressor moves the mixture.</summary>
/// <remarks>
/// ṁ = S·η·ρ(p_s, h_liquid), the density of the mixture at the suction pressure, together with what the liquid hose lets through to that pressure; at most what the machine
/// is rated for. The inlet is throttled so that the suction pressure is no more than a share of the liquid's saturation pressure: what enters is mostly vapor by volume.
/// The mixture is compressed with the work of its volume, w = κ/(κ − 1)·(p_s/ρ)·(r^((κ−1)/κ) − 1)/η_is.
/// </remarks>
internal sealed class LiquidMachineLink : Link
{
    private readonly FlashingLine _line;
    private readonly FlashTable _table;
    private readonly double _viscosity;
    private readonly RecoveryMachine _machine;
    private readonly Condensation _condensation;
    private readonly GasFacts _gas;
    private readonly double _displacement;
    private readonly double _most;
    private readonly double _surroundings;
    private readonly double _throttle;
    private readonly double _lowestPressure;
    private WarmRoot _root = new(0.5, 1);
    private double _fromOutside;
    private int _outside;

    public LiquidMachineLink(
        Vessel from, Vessel to, Line line, FlashTable table, RecoveryMachine machine, PropertyModel model, GasFacts gas, double throttle, double temperature, double surroundings)
        : base("machine", from, to)
    {
        _table = table;
        _line = new FlashingLine(line, _table, model.CriticalPressure);
        _viscosity = LiquidLink.LiquidViscosity(model, temperature);
        _machine = machine;
        _gas = gas;
        _condensation = new Condensation(model, machine.Condenser);
        _displacement = machine.Displacement.CubicMetersPerSecond;
        _most = machine.LiquidRate?.KilogramsPerSecond ?? double.PositiveInfinity;
        _throttle = throttle;
        _surroundings = surroundings;
        _lowestPressure = model.SaturationAtTemperature(model.Range.MinimumTemperature).Dew.Pressure;
    }

    /// <summary>Pressure at the machine's inlet, Pa.</summary>
    public double SuctionPressure { get; private set; }

    public double DischargePressure { get; private set; }

    /// <summary>Hands on the inlet valve.</summary>
    public Governor[] Governors { get; init; } = [];

    protected override ReadOnlySpan<double> Composition => From!.LiquidComposition;

    public override void AddAccounts(SlotLayout layout, int components)
    {
        base.AddAccounts(layout, components);
        _outside = layout.Account(Name, "work and heat from outside");
    }

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        Vessel from = From!;
        double pressure = from.Pressure;
        double enthalpy = from.LiquidEnthalpy;
        DischargePressure = To!.Pressure;
        double air = inputs.AirTemperature ?? _surroundings;
        double opening = inputs.MachineRunning ? inputs.InletOpening : 0;
        foreach (Governor governor in Governors)
        {
            opening *= governor.Share();
        }

        _table.Prepare(enthalpy);

        // Both sides meet between a throttled inlet and no pressure at all: what the line lets through falls with the suction pressure, what the machine moves rises with it.
        double high = _throttle * pressure;
        double flow = Drawn(high);
        double suction = high;
        double passed = _line.MassFlow(pressure, enthalpy, _viscosity, high, out bool choked);
        if (flow > passed)
        {
            double low = Math.Min(Math.Max(_lowestPressure, _table.LowestPressure), 0.5 * high);

            // What chokes in the line is the same at any lower suction pressure.
            var balance = new Balance(this, pressure, enthalpy, high, flow, choked ? passed : double.NaN);
            suction = balance.Value(low / high) >= 0 ? low : high * _root.Find(ref balance, low / high, 1);
            flow = Math.Min(Drawn(suction), balance.Passed(suction));
        }

        double density = _table.Density(suction);
        Flow = opening * Math.Min(flow, _most);
        SuctionPressure = suction;
        double kappa = _gas.Exponent(suction);
        double share = (kappa - 1) / kappa;
        double ratio = DischargePressure / suction;
        double work = ratio > 1 ? suction / density / share * (Math.Pow(ratio, share) - 1) / _machine.IsentropicEfficiency : 0;
        double hot = enthalpy + work;
        double condensed = _condensation.Heat(hot, Flow, DischargePressure, air);
        EnthalpyOut = enthalpy;
        EnthalpyIn = Flow > 0 ? hot - (condensed / Flow) : hot;
        _fromOutside = (Flow * work) - condensed;
        return true;
    }

    public override void Derive(double[] derivatives)
    {
        base.Derive(derivatives);
        derivatives[_outside] += _fromOutside;
    }

    public override double FromOutside(double[] state) => state[_outside];

    /// <summary>What the machine moves at a suction pressure, kg/s.</summary>
    private double Drawn(double suction) =>
        _displacement * _machine.EfficiencyAt(Math.Max(1, DischargePressure / suction)) * _table.Density(suction);

    /// <summary>What the machine moves beyond what the line lets through, over the suction pressure as a share of the highest.</summary>
    private readonly struct Balance(LiquidMachineLink owner, double pressure, double enthalpy, double high, double scale, double choked) : IScalarFunction
    {
        public double Value(double x) => (owner.Drawn(x * high) - Passed(x * high)) / scale;

        public double Passed(double suction) =>
            double.IsNaN(choked) ? owner._line.MassFlow(pressure, enthalpy, owner._viscosity, suction, out _) : choked;
    }
}
