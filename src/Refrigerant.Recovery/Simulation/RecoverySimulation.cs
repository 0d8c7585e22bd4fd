using System;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Simulation.Links;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>The engine taken step by step: a simulated appliance, machine and cylinder for a control loop. Plain SI doubles; nothing is allocated by a step.</summary>
/// <remarks>
/// The same vessels, links and balances as every stage. Limits do not stop it: the caller is the controller, and reads them from the properties. Between steps everything
/// stands at the end of the last one. One thread at a time. A simulation is no permit: local codes and licensed practice govern.
/// </remarks>
/// <example>
/// <code>
/// Hose hose = new()
/// {
///     Length = Length.FromFeet(5),
///     InnerDiameter = Length.FromMillimeters(8),
/// };
/// RecoverySimulation simulation = RecoverySimulation.Start(new SimulationSetup
/// {
///     Appliance = new Appliance
///     {
///         Fluid = Fluid.Get("R-134a"),
///         Charge = Mass.FromKilograms(1),
///         InternalVolume = Volume.FromLiters(5),
///         Temperature = Temperature.FromDegreesCelsius(25),
///     },
///     Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
///     Hoses = new HoseSet { VaporSide = [hose] },
///     Cylinder = RecoveryCylinder.FromMark(
///         "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
/// });
/// for (int tick = 0; tick != 600; tick++)
/// {
///     simulation.Step(0.1, SimulationInputs.Running);
/// }
///
/// Console.WriteLine($"{simulation.AppliancePressure / 1000:F0} kPa"); // 201 kPa
/// </code>
/// </example>
public sealed class RecoverySimulation
{
    private const double RelativeTolerance = 1e-5;
    private const int MaximumSteps = 2000;
    private const double LongestStep = 1e6;
    private const double Day = 86_400;

    private readonly Network _network;
    private readonly OdeIntegrator _integrator;
    private readonly ApplianceModel _appliance;
    private readonly CylinderModel _cylinder;
    private readonly MachineLink? _machine;
    private readonly Link? _link;
    private readonly double[] _state;
    private readonly double[] _before;
    private double _firstStep;

    private RecoverySimulation(Network network, ApplianceModel appliance, CylinderModel cylinder, Link? link, double[] state)
    {
        _network = network;
        _integrator = new OdeIntegrator(network);
        _appliance = appliance;
        _cylinder = cylinder;
        _link = link;
        _machine = link as MachineLink;
        _state = state;
        _before = (double[])state.Clone();
    }

    /// <summary>Time since the start, s.</summary>
    public double Time { get; private set; }

    /// <summary>Absolute pressure in the appliance, where vapor is drawn, Pa.</summary>
    public double AppliancePressure => _appliance.Port.Pressure;

    /// <summary>Temperature of the refrigerant there, K.</summary>
    public double ApplianceTemperature => _appliance.Port.Temperature;

    /// <summary>Refrigerant in the appliance, what its oil holds included, kg.</summary>
    public double ApplianceMass => _appliance.VesselMass + _appliance.DissolvedMass;

    /// <summary>Liquid in the appliance, kg.</summary>
    public double LiquidMass => _appliance.LiquidMass;

    /// <summary>Temperature of the coldest surface of the appliance's metal, K.</summary>
    public double ColdestSurface => _appliance.ColdestSurface;

    /// <summary>Absolute pressure at the machine's inlet, Pa; that of the appliance where no machine is connected or it stands still.</summary>
    public double SuctionPressure => _machine is not null && _network.Inputs.MachineRunning ? _machine.SuctionPressure : AppliancePressure;

    /// <summary>Absolute pressure in the cylinder, which is the machine's discharge pressure, Pa.</summary>
    public double CylinderPressure => _cylinder.Vessel.Pressure;

    /// <summary>Temperature of the refrigerant in the cylinder, K.</summary>
    public double CylinderTemperature => _cylinder.Vessel.Temperature;

    /// <summary>Refrigerant in the cylinder, kg.</summary>
    public double CylinderMass => _cylinder.Vessel.Mass;

    /// <summary>Temperature of the gas that leaves the compressor, K; that of the cylinder where no machine is connected.</summary>
    public double DischargeTemperature => _machine?.Compressor.DischargeTemperature ?? CylinderTemperature;

    /// <summary>Flow out of the appliance, kg/s.</summary>
    public double Flow => _link?.Flow ?? 0;

    /// <summary>Puts a simulation together.</summary>
    /// <param name="setup">What it is made of.</param>
    /// <exception cref="ArgumentNullException"><paramref name="setup"/> is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance, or the content the cylinder.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static RecoverySimulation Start(SimulationSetup setup)
    {
        _ = Require.NotNull(setup, nameof(setup));
        PropertyModel model = setup.Appliance.Fluid.Model;
        double surroundings = setup.Appliance.SurroundingsKelvin;
        setup.Start?.Appliance.RequireOf(setup.Appliance, nameof(setup.Start));
        SimulationState start = setup.Start ?? new SimulationState(ApplianceState.Initial(setup.Appliance));
        CylinderState receiving = start.Cylinder
            ?? CylinderState.Around(setup.Appliance, setup.Cylinder);
        bool tracked = Content.CanTrack(model)
            && (setup.Composition == CompositionMode.Tracked || start.Appliance.IsTracked || receiving.Content.Masses.Length > 1);
        var gas = new GasFacts(model, start.Appliance.Vessel.Bulk.Temperature);
        ApplianceModel appliance = ApplianceModel.Build(setup.Appliance, start.Appliance, tracked, gas);
        CylinderModel cylinder = CylinderModel.Build(receiving, model, tracked, start.Appliance.Mass.Kilograms, surroundings);
        MachineLink? machine = null;
        Link? link = setup.Hookup switch
        {
            SimulationHookup.VaporRecovery => machine = new MachineLink(
                appliance.Port,
                cylinder.Vessel,
                SuctionLine.Of(setup.Hoses, setup.Machine),
                setup.Machine,
                gas,
                new Condensation(model, setup.Machine.Condenser),
                Equipment.HoseSet.ConductanceOf(setup.Hoses.VaporSide) + Equipment.HoseSet.ConductanceOf(setup.Hoses.SecondVaporSide),
                surroundings),
            SimulationHookup.Equalization => new VaporLink(
                "hoses", appliance.Port, cylinder.Vessel, new Line([.. setup.Hoses.Discharge, .. setup.Hoses.VaporSide]), gas, oneWay: false),
            SimulationHookup.Isolated => null,
            _ => throw new ArgumentOutOfRangeException(nameof(setup), setup.Hookup, "Hookup is none that this version knows."),
        };
        var network = new Network([.. appliance.Vessels, cylinder.Vessel], link is null ? appliance.Connections : [link, .. appliance.Connections]);
        var state = new double[network.Dimension];
        appliance.Initialize(state, start.Appliance);
        cylinder.Initialize(state);
        machine?.Compressor.Initialize(state, start.MachineTemperature?.Kelvins ?? surroundings);
        var simulation = new RecoverySimulation(network, appliance, cylinder, link, state);
        if (!network.Evaluate(state))
        {
            StatePoint bulk = start.Appliance.Vessel.Bulk;
            throw new PropertyRangeException(
                model.Designation, nameof(setup), bulk.Temperature, model.Range.MinimumTemperature, model.Range.MaximumTemperature, "K", model.Source);
        }

        return simulation;
    }

    /// <summary>Goes on for a time with what people do meanwhile.</summary>
    /// <param name="seconds">Length of the step, s, greater than 0 up to a day.</param>
    /// <param name="inputs">Machine, valves, heat, cooling during the step.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside its range.</exception>
    public StepOutcome Step(double seconds, in SimulationInputs inputs)
    {
        if (!(seconds > 0 && seconds <= Day))
        {
            Require.InRange(seconds, double.Epsilon, Day, "s", nameof(seconds));
        }

        if (_network.Inputs != inputs)
        {
            _network.Inputs = inputs;
            _firstStep = 0;
        }

        Array.Copy(_state, _before, _state.Length);
        OdeOutcome outcome = _integrator.Integrate(_state, 0, seconds, new OdeOptions(RelativeTolerance, Math.Min(LongestStep, seconds), MaximumSteps, _firstStep));
        _firstStep = _integrator.NextStep;
        Time += outcome.Time;
        if (!_network.Evaluate(_state))
        {
            Array.Copy(_before, _state, _state.Length);
            _network.Evaluate(_state);
            Time -= outcome.Time;
            return StepOutcome.OutOfRange;
        }

        return outcome.Reason switch
        {
            OdeStopReason.EndTime => StepOutcome.Done,
            OdeStopReason.StepLimit => StepOutcome.StepLimit,
            _ => StepOutcome.OutOfRange,
        };
    }

    /// <summary>Everything as it stands, to start a stage or another simulation from.</summary>
    public SimulationState Snapshot() => new(_appliance.Read(_state))
    {
        Cylinder = _cylinder.Read(_state),
        MachineTemperature = _machine is null || double.IsNaN(_machine.Compressor.BodyTemperature)
            ? null
            : new Temperature(_machine.Compressor.BodyTemperature, TemperatureUnit.Kelvin),
    };

    /// <summary>Time, pressures and what is left.</summary>
    public override string ToString() =>
        $"{Require.Text(Time)} s: {Require.Text(ApplianceMass)} kg left at {Require.Text(AppliancePressure / 1e3)} kPa absolute, cylinder at {Require.Text(CylinderPressure / 1e3)} kPa absolute";
}
