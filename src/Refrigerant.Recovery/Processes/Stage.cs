using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>One stage on its way: the vessels it starts from, the network that it runs, what it watches, and the result.</summary>
internal sealed class Stage
{
    /// <summary>Pressure that a cylinder may see over its marked service pressure (49 CFR 173.301 and 173.304a at 55 °C, from memory).</summary>
    private const double ServiceShare = 1.25;

    private readonly Appliance _appliance;
    private readonly StageOptions _options;
    private readonly TrajectoryRecorder _recorder = new();
    private readonly FillLimit? _fill;
    private Network _network = null!;
    private double[] _state = [];
    private MachineLink? _machine;
    private double _hottestEnthalpy;
    private double _hottestPressure;
    private Watch? _freezing;
    private Watch? _dry;
    private bool _stands;

    /// <param name="appliance">The appliance.</param>
    /// <param name="cylinder">The cylinder; null where none takes part.</param>
    /// <param name="options">Start, inputs and limits.</param>
    public Stage(Appliance appliance, RecoveryCylinder? cylinder, StageOptions options)
    {
        _appliance = appliance;
        _options = options;
        Model = appliance.Fluid.Model;
        Surroundings = appliance.SurroundingsKelvin;
        options.Start?.Appliance.RequireOf(appliance, nameof(options.Start));
        SimulationState start = options.Start ?? new SimulationState(ApplianceState.Initial(appliance));
        if (start.Cylinder is null && cylinder is not null)
        {
            start = start with { Cylinder = CylinderState.Around(appliance, cylinder) };
        }

        Before = start;
        StartTemperature = start.Appliance.Vessel.Bulk.Temperature;
        Gas = new GasFacts(Model, StartTemperature);
        Tracked = Content.CanTrack(Model)
            && (options.Composition == CompositionMode.Tracked || start.Appliance.IsTracked || start.Cylinder?.Content.Masses.Length > 1);
        Charge = start.Appliance.Mass.Kilograms;
        Cylinder = start.Cylinder is CylinderState receiving ? CylinderModel.Build(receiving, Model, Tracked, Charge, Surroundings) : null;
        if (start.Cylinder is CylinderState state)
        {
            _fill = options.CylinderLimit is null ? CylinderFill.Limit(state.Cylinder, appliance.Fluid) : null;
            CylinderLimit = (options.CylinderLimit ?? _fill!.MaximumFill).Kilograms;
        }
        else
        {
            CylinderLimit = double.PositiveInfinity;
        }
    }

    public PropertyModel Model { get; }

    public GasFacts Gas { get; }

    /// <summary>What flashing liquid of the refrigerant is like.</summary>
    public FlashTable Flash => field ??= _options.Flash ?? new FlashTable(Model);

    public SimulationState Before { get; }

    public bool Tracked { get; }

    /// <summary>Temperature of the air, K.</summary>
    public double Surroundings { get; }

    public double StartTemperature { get; }

    /// <summary>Refrigerant in the appliance at the start, kg.</summary>
    public double Charge { get; }

    public CylinderModel? Cylinder { get; }

    /// <summary>kg.</summary>
    public double CylinderLimit { get; }

    public StageFigures Figures { get; } = new();

    /// <summary>A machine that stands by, cooling; null where none is known.</summary>
    public RecoveryMachine? Standing { get; set; }

    public double[] Initial { get; private set; } = [];

    public double[] State => _state;

    public Network Network => _network;

    /// <summary>The appliance's vessels at equilibrium.</summary>
    public ApplianceModel BuildAppliance() => ApplianceModel.Build(_appliance, Before.Appliance, Tracked, Gas);

    /// <summary>Puts vessels and links together and writes the start.</summary>
    public void Connect(Vessel[] vessels, Link[] links, Action<double[]> initialize)
    {
        _network = new Network(vessels, links) { Inputs = _options.Inputs };
        _state = new double[_network.Dimension];
        initialize(_state);
        Cylinder?.Initialize(_state);
        foreach (Link link in links)
        {
            if (link is MachineLink machine)
            {
                _machine = machine;
                machine.Compressor.Initialize(_state, Before.MachineTemperature?.Kelvins ?? Surroundings);
            }
        }
    }

    /// <summary>Ends the stage, or only notes the moment, where a value falls to zero.</summary>
    public Watch Watch(StageEnd end, Func<double> value, bool stops = true)
    {
        var watch = new Watch(end, value, stops);
        _network.Watch(watch);
        return watch;
    }

    /// <summary>Highest absolute pressure that the cylinder is built to see at work, Pa.</summary>
    public double HighestCylinderPressure => Before.Cylinder is CylinderState state
        ? (ServiceShare * state.Cylinder.ServicePressure.Pascals) + Air
        : double.PositiveInfinity;

    /// <summary>The vessels with that of the cylinder, where one takes part.</summary>
    public Vessel[] WithCylinder(IEnumerable<Vessel> vessels) => Cylinder is null ? [.. vessels] : [.. vessels, Cylinder.Vessel];

    /// <summary>What no stage may go past: the cylinder's limit and pressure, the appliance's design pressure.</summary>
    /// <param name="pushed">Highest pressure in the appliance, Pa, where the stage can raise it; null where it cannot.</param>
    public void WatchLimits(Func<double>? pushed)
    {
        if (Cylinder is CylinderModel cylinder)
        {
            Vessel vessel = cylinder.Vessel;
            Watch(StageEnd.CylinderFull, () => CylinderLimit - vessel.Mass);
            double most = HighestCylinderPressure;
            Watch(StageEnd.CylinderPressure, () => most - vessel.Pressure);
        }

        if (pushed is not null && HighestAppliancePressure is double limit)
        {
            Watch(StageEnd.DesignPressure, () => limit - pushed());
        }
    }

    /// <summary>Highest absolute pressure that the appliance is built for, Pa; null where it is not known.</summary>
    public double? HighestAppliancePressure => DesignGauge + Air;

    /// <summary>What the appliance is built for, gauge, Pa; null where it is not known.</summary>
    public double? DesignGauge => _appliance.DesignGaugePressure?.Pascals;

    /// <summary>The air at the place, Pa.</summary>
    public double Air => _options.Barometer.Pressure.Pascals;

    /// <summary>The machine's switches and the freezing of tubes.</summary>
    public void WatchMachine(RecoveryMachine machine, MachineLink link)
    {
        double cutout = machine.HighPressureCutout.Pascals;
        Watch(StageEnd.HighPressureCutout, () => cutout - link.DischargePressure);
        if (machine.ThermalCutout is Temperature hottest)
        {
            double limit = hottest.Kelvins;
            Watch(StageEnd.ThermalCutout, () => limit - link.Compressor.DischargeTemperature);
        }
    }

    /// <summary>Notes, or ends at, the freezing of water in tubes.</summary>
    public void WatchFreezing(MetalShell shell, Func<double> coldest, bool stops)
    {
        if (shell.HasWater)
        {
            _freezing = Watch(StageEnd.Freezing, () => coldest() - MetalShell.FreezingPoint, stops);
        }
    }

    /// <summary>Notes when the last liquid is gone.</summary>
    public void WatchLiquid(Func<double> margin) => _dry = Watch(StageEnd.LiquidGone, margin, stops: false);

    /// <summary>A point of the course with nothing between appliance and cylinder; where something is, it adds its own.</summary>
    /// <param name="time">s.</param>
    /// <param name="model">The appliance.</param>
    /// <param name="drawn">The vessel whose temperature and content count; null for that of the vapor port.</param>
    public TrajectoryPoint Point(double time, ApplianceModel model, EquilibriumVessel? drawn = null)
    {
        EquilibriumVessel from = drawn ?? model.Port;
        Vessel? receiver = Cylinder?.Vessel;
        return new TrajectoryPoint
        {
            Seconds = time,
            AppliancePascals = model.Port.Pressure,
            SuctionPascals = model.Port.Pressure,
            DischargePascals = receiver?.Pressure ?? model.Port.Pressure,
            ApplianceKelvins = from.Temperature,
            MetalKelvins = model.ColdestSurface,
            CylinderKelvins = receiver?.Temperature ?? model.Port.Temperature,
            ApplianceKilograms = model.VesselMass + model.DissolvedMass,
            LiquidKilograms = model.LiquidMass,
            CylinderKilograms = receiver?.Mass ?? 0,
            Content = Tracked ? from.Content.Snapshot() : null,
        };
    }

    /// <summary>Integrates; a condition that ends the stage and holds already at the start ends it at once.</summary>
    /// <param name="point">What is recorded at a time.</param>
    /// <param name="longestStep">Longest step, s.</param>
    public OdeOutcome Run(Func<double, TrajectoryPoint> point, double longestStep)
    {
        _network.Stepped = time => Note(point(time));
        Initial = (double[])_state.Clone();
        double duration = _options.MaximumDuration.Seconds;
        _stands = _network.Evaluate(_state);
        if (!_stands)
        {
            return new OdeOutcome(OdeStopReason.InvalidState, 0, -1, 0, 0, 1);
        }

        for (int i = 0; i < _network.Watches.Count; i++)
        {
            if (_network.Watches[i].Stops && !(_network.Watches[i].Value() > 0))
            {
                Note(point(0));
                return new OdeOutcome(OdeStopReason.Event, 0, i, 0, 0, 1);
            }
        }

        double longest = longestStep > 0 ? Math.Min(longestStep, duration) : duration;
        OdeOutcome outcome = new OdeIntegrator(_network).Integrate(
            _state, 0, duration, new OdeOptions(_options.RelativeTolerance, longest, _options.MaximumSteps, cancellation: _options.Cancellation));
        _network.Evaluate(_state);
        return outcome;
    }

    /// <summary>Why it ended.</summary>
    public StageEnd End(in OdeOutcome outcome) => outcome.Reason switch
    {
        OdeStopReason.Event => _network.Watches[outcome.EventIndex].End,
        OdeStopReason.EndTime => StageEnd.TimeLimit,
        OdeStopReason.StepLimit => StageEnd.StepLimit,
        _ => StageEnd.PropertyRange,
    };

    /// <summary>The appliance at the end; as it was where the stage could not begin.</summary>
    public ApplianceState Read(Func<double[], ApplianceState> read) => _stands ? read(_state) : Before.Appliance;

    /// <summary>The result of the stage as it stands.</summary>
    /// <param name="end">Why it ended.</param>
    /// <param name="outcome">How the integration ended.</param>
    /// <param name="appliance">The appliance at the end.</param>
    /// <param name="find">Adds what to know.</param>
    public StageResult Result(StageEnd end, in OdeOutcome outcome, ApplianceState appliance, Action<List<Finding>, SimulationState> find)
    {
        SimulationState after = After(appliance, outcome.Time);
        var findings = new List<Finding>();
        find(findings, after);
        if (_fill is not null && _network.Links.Any(link => ReferenceEquals(link.To, Cylinder!.Vessel)))
        {
            // A limit that nobody gave was computed here: what forbids to fill the cylinder at all is said here too.
            findings.AddRange(_fill.Findings.Where(finding => finding.Severity == Severity.Stop));
        }

        findings.Sort((a, b) => b.Severity.CompareTo(a.Severity));
        return new StageResult(
            end, outcome.Time, Before, after, Transfers(), _recorder.ToTrajectory(), Figures, findings.AsReadOnly(), _network.Balance(Initial, _state, outcome));
    }

    /// <summary>The result of a stage that has nothing to do.</summary>
    public StageResult Nothing() => new(StageEnd.NothingToDo, 0, Before, Before, [], new Trajectory([]), Figures, [], default);

    /// <summary>Takes the figures that come from what was watched and recorded; before findings are drawn from them.</summary>
    public void CloseFigures(double freeFlow)
    {
        Figures.LiquidGoneAt = _dry?.FiredAt ?? double.NaN;
        Figures.FreezingAt = _freezing?.FiredAt ?? double.NaN;
        Figures.CylinderOutOfRange = Cylinder is not null && ReferenceEquals(_network.OutOfRange, Cylinder.Vessel);
        Figures.Passed = _machine?.Passed(_state) ?? 0;
        Figures.FreeFlow = freeFlow;
        if (!double.IsNaN(Figures.HottestDischarge))
        {
            Figures.HottestDischarge = RealGasTemperature() ?? Figures.HottestDischarge;
        }

        if (Tracked && Model is MixtureModel blend)
        {
            FractionationPoint[] points = [.. _recorder.ToTrajectory().Where(p => p.Content is not null).Select(p => new FractionationPoint(p, 0))];
            Figures.Fractionation = points.Length == 0 ? null : new FractionationResult(blend, points);
        }
    }

    private SimulationState After(ApplianceState appliance, double seconds) => new(appliance)
    {
        Cylinder = _stands ? Cylinder?.Read(_state) : Before.Cylinder,
        MachineTemperature = _machine is not null && !double.IsNaN(_machine.Compressor.BodyTemperature) ? new Temperature(_machine.Compressor.BodyTemperature, TemperatureUnit.Kelvin)
            : Before.MachineTemperature is Temperature warm && Standing?.Body is MachineBody body ? new Temperature(body.AfterRest(warm.Kelvins, _options.Inputs.AirTemperature ?? Surroundings, seconds), TemperatureUnit.Kelvin)
            : Before.MachineTemperature,
    };

    private IReadOnlyList<Transfer> Transfers()
    {
        IReadOnlyList<FluidComponent> components = Model.Composition;
        var transfers = new List<Transfer>();
        foreach (Link link in _network.Links)
        {
            (string, double)[] parts = _network.Components == 1 ? [] : [.. components.Select((c, i) => (c.Designation, link.Passed(_state, i)))];
            transfers.Add(new Transfer(
                link.Name, link.From?.Name ?? "outside", link.To?.Name ?? "outside", link.Passed(_state), link.PassedOut(_state), link.PassedIn(_state), Array.AsReadOnly(parts)));
        }

        return transfers.AsReadOnly();
    }

    private void Note(in TrajectoryPoint point)
    {
        _recorder.Add(point);
        Figures.Coldest = Math.Min(Figures.Coldest, point.MetalKelvins);
        if (_machine is MachineLink machine && machine.Flow > 0)
        {
            Figures.WasChoked |= machine.IsChoked;
            double enthalpy = machine.Compressor.HotEnthalpy;
            if (machine.DischargePressure > machine.SuctionPressure && (double.IsNaN(Figures.HottestDischarge) || enthalpy > _hottestEnthalpy))
            {
                // At about one pressure the gas is hottest where its enthalpy is highest; its temperature by constant facts of the gas misses that it cools where it expands before the machine.
                Figures.HottestDischarge = machine.Compressor.DischargeTemperature;
                _hottestEnthalpy = enthalpy;
                _hottestPressure = machine.DischargePressure;
            }
        }
    }

    /// <summary>The real gas's temperature at the hottest moment; null where the equation of state does not reach that far.</summary>
    private double? RealGasTemperature()
    {
        try
        {
            return Model.StateAtEnthalpy(_hottestPressure, _hottestEnthalpy).Temperature;
        }
        catch (PropertyRangeException)
        {
            return null;
        }
        catch (ConvergenceException)
        {
            return null;
        }
    }
}
