using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>The machine behind its suction line: it draws vapor from one vessel, compresses it, condenses it or not, and delivers it to another.</summary>
/// <remarks>
/// Suction gas warms in the hose from the air and in the machine from its body, each a conductance; together they act as one exchanger against the mean of
/// both temperatures, weighted by conductance. An opening below 1 stands for a throttled inlet: it is the share of the flow, and of the suction pressure, that is left.
/// </remarks>
internal sealed class MachineLink : Link
{
    private readonly SuctionLine _suction;
    private readonly Compressor _compressor;
    private readonly Condensation? _condensation;
    private readonly GasFacts _gas;
    private readonly double _hoseConductance;
    private readonly double _surroundings;
    private readonly double _receiverPressure;
    private double _fromOutside;
    private int _outside;
    private int _free;

    /// <param name="from">Where it draws.</param>
    /// <param name="to">Where it delivers; null for a receiver at a constant pressure.</param>
    /// <param name="suction">Its suction line.</param>
    /// <param name="machine">The machine.</param>
    /// <param name="gas">What the gas is like.</param>
    /// <param name="condensation">Its condenser; null where it is off.</param>
    /// <param name="hoseConductance">Between the air and the gas in the suction hoses, W/K.</param>
    /// <param name="surroundings">Temperature of the air, K.</param>
    /// <param name="receiverPressure">Pressure at the outlet where there is no vessel, Pa.</param>
    public MachineLink(
        Vessel from, Vessel? to, SuctionLine suction, RecoveryMachine machine, GasFacts gas, Condensation? condensation, double hoseConductance, double surroundings, double receiverPressure = 0)
        : base("machine", from, to)
    {
        _suction = suction;
        _compressor = new Compressor(machine, gas);
        _condensation = condensation;
        _gas = gas;
        _hoseConductance = machine.Body is null ? 0 : hoseConductance;
        _surroundings = surroundings;
        _receiverPressure = receiverPressure;
    }

    /// <summary>Hands on the inlet valve.</summary>
    public Governor[] Governors { get; init; } = [];

    public Compressor Compressor => _compressor;

    /// <summary>Pressure at the machine's inlet, Pa.</summary>
    public double SuctionPressure { get; private set; }

    /// <summary>Pressure at its outlet, Pa.</summary>
    public double DischargePressure { get; private set; }

    /// <summary>Flow that it would draw without its suction line, kg/s.</summary>
    public double FreeFlow { get; private set; }

    public bool IsChoked => _suction.IsChoked;

    /// <summary>
    /// Pressure that a low-pressure switch goes by, Pa: that at the inlet; that of the vessel while gas rushes through the machine into a cylinder of less pressure, which lasts seconds
    /// and ends with the inlet above the cylinder.
    /// </summary>
    public double SwitchPressure => _suction.IsPassing ? From!.Pressure : SuctionPressure;

    /// <summary>Share of the flow that hands on the inlet valve let through.</summary>
    public double Opening { get; private set; }

    /// <summary>Volumetric efficiency at the pressures at its ends.</summary>
    public double Efficiency => _suction.Efficiency;

    protected override ReadOnlySpan<double> Composition => From!.VaporComposition;

    public override void AddStates(SlotLayout layout) => _compressor.AddStates(layout, Name);

    public override void AddAccounts(SlotLayout layout, int components)
    {
        base.AddAccounts(layout, components);
        _outside = layout.Account(Name, "work and heat from outside");
        _free = layout.Account(Name, "mass without suction line");
    }

    public override void SetScales(double[] scale) => _compressor.SetScales(scale);

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        Vessel from = From!;
        double pressure = from.Pressure;
        DischargePressure = To?.Pressure ?? _receiverPressure;
        if (!_compressor.Take(state))
        {
            return false;
        }

        double air = inputs.AirTemperature ?? _surroundings;
        double temperature = from.Temperature;
        double body = _compressor.GasConductance;
        double conductance = _hoseConductance + body;
        double around = conductance > 0 ? ((_hoseConductance * air) + (body > 0 ? body * _compressor.BodyTemperature : 0)) / conductance : temperature;
        double heatCapacity = _gas.HeatCapacity(pressure);
        double density = from.VaporDensity;
        Opening = inputs.MachineRunning ? inputs.InletOpening : 0;
        foreach (Governor governor in Governors)
        {
            Opening *= governor.Share();
        }

        _suction.Solve(pressure, density, _gas.IdealExponent, _gas.Viscosity, DischargePressure, new SuctionWarming(temperature, around, conductance, heatCapacity));
        Flow = Opening * _suction.MassFlow;
        FreeFlow = _suction.LineShare > 0 ? _suction.MassFlow / _suction.LineShare : 0;
        SuctionPressure = Math.Max(Opening, 1e-3) * _suction.SuctionPressure;
        double warmed = temperature;
        double toGas = 0;
        double fromBody = 0;
        if (Flow > 0 && conductance > 0)
        {
            double capacityFlow = Flow * heatCapacity;
            double units = conductance / capacityFlow;
            double gain = 1 - Math.Exp(-units);
            warmed = temperature + ((around - temperature) * gain);
            toGas = capacityFlow * (warmed - temperature);
            fromBody = body > 0 ? body * (_compressor.BodyTemperature - temperature) * gain / units : 0;
        }

        double enthalpy = from.VaporEnthalpy + (Flow > 0 ? toGas / Flow : 0);
        double cylinderDensity = density * (SuctionPressure / pressure) * (temperature / warmed);
        _compressor.Solve(SuctionPressure, cylinderDensity, warmed, enthalpy, Flow, DischargePressure, fromBody, air, inputs.MachineRunning);
        double condensed = _condensation?.Heat(_compressor.HotEnthalpy, Flow, DischargePressure, air) ?? 0;
        EnthalpyOut = from.VaporEnthalpy;
        EnthalpyIn = Flow > 0 ? _compressor.HotEnthalpy - (condensed / Flow) : _compressor.HotEnthalpy;
        _fromOutside = _compressor.FromOutside + (toGas - fromBody) - condensed;
        return true;
    }

    public override void Derive(double[] derivatives)
    {
        base.Derive(derivatives);
        _compressor.Derive(derivatives);
        derivatives[_outside] += _fromOutside;
        derivatives[_free] += FreeFlow;
    }

    /// <summary>Mass that it would have drawn without its suction line, kg.</summary>
    public double FreePassed(double[] state) => state[_free];

    public override double Stored(double[] state) => _compressor.Stored(state);

    public override double FromOutside(double[] state) => state[_outside];
}
