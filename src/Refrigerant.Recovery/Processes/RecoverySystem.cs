using System;
using System.Linq;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// The balances of a vapor recovery or of a hold: appliance, suction line, machine, receiving cylinder; plain SI doubles.
/// </summary>
/// <remarks>
/// Appliance: dm/dt = ṁ_oil − ṁ, dU/dt = ṁ_oil·u_oil − ṁ·h_vapor + Q. Cylinder: dm/dt = ṁ, dU/dt = ṁ·h_machine outlet + Q. What flows
/// out, the heat and the work are integrated beside them, so that the balances close to rounding.
/// </remarks>
internal sealed class RecoverySystem : OdeSystem
{
    public const int Mass = 0, Energy = 1, Metal = 2, Water = 3, Dissolved = 4, CylinderMass = 5, CylinderEnergy = 6, CylinderWall = 7;
    public const int Out = 8, EnergyOut = 9, HeatIn = 10, Work = 11, CondenserHeat = 12, CylinderHeat = 13, FreeOut = 14;
    public const int TargetEvent = 0, LiquidGoneEvent = 1, CylinderFullEvent = 2, SwitchEvent = 3, CutoutEvent = 4, FreezingEvent = 5, StallEvent = 6;

    /// <summary>Freezing point of water, K.</summary>
    public const double FreezingPoint = 273.15;

    private const int Controlled = 8;

    /// <summary>Throttling to keep clear of freezing begins this far above it, K, and is complete at half of it.</summary>
    private const double ThrottleBand = 1;

    /// <summary>Where emptying the appliance at the present rate would take longer than this, s, the machine has stalled.</summary>
    private const double StallTime = 864_000;

    /// <summary>Components smaller than this share of their initial size need no relative accuracy.</summary>
    private const double SmallShare = 1e-4;

    private readonly ApplianceVessel _vessel;
    private readonly SuctionLine? _suction;
    private readonly MachineProcess? _machine;
    private readonly CylinderProcess? _cylinder;
    private readonly OilRelease? _oil;
    private readonly double _viscosity;
    private readonly double _exponent;
    private readonly double[] _scale = new double[Controlled];
    private readonly double[] _evaluated;
    private readonly TrajectoryRecorder _recorder;
    private bool _hasEvaluated;
    private bool _validEvaluation;

    public RecoverySystem(
        ApplianceVessel vessel, ThermalNetwork network, SuctionLine? suction, MachineProcess? machine, CylinderProcess? cylinder, OilRelease? oil, double viscosity, double exponent, double[] initial, TrajectoryRecorder recorder)
    {
        _vessel = vessel;
        _evaluated = new double[Dimension];
        Network = network;
        _suction = suction;
        _machine = machine;
        _cylinder = cylinder;
        _oil = oil;
        _viscosity = viscosity;
        _exponent = exponent;
        _recorder = recorder;
        for (int i = 0; i < Controlled; i++)
        {
            _scale[i] = initial[i] == 0 ? 1 : SmallShare * Math.Abs(initial[i]);
        }

        _scale[Energy] = Math.Max(_scale[Energy], SmallShare * initial[Mass] * EnergyScale);
        _scale[CylinderEnergy] = Math.Max(_scale[CylinderEnergy], 1e-2 * initial[Mass] * EnergyScale);
        _scale[CylinderMass] = Math.Max(_scale[CylinderMass], 0.1 * initial[Mass]);
        _scale[Dissolved] = Math.Max(_scale[Dissolved], SmallShare * initial[Mass]);
    }

    /// <summary>Size of specific energies of refrigerants, J/kg.</summary>
    public static double EnergyScale => 2e5;

    /// <summary>Target pressure, Pa; zero for none.</summary>
    public double TargetPressure { get; init; }

    /// <summary>Rising pressure at which a hold ends, Pa; zero for none.</summary>
    public double EndPressure { get; init; }

    /// <summary>Limit of the cylinder, kg.</summary>
    public double CylinderLimit { get; init; } = double.PositiveInfinity;

    /// <summary>Low-pressure switch, Pa; zero for none.</summary>
    public double LowPressureSwitch { get; init; }

    /// <summary>High-pressure cut-out, Pa.</summary>
    public double HighPressureCutout { get; init; } = double.PositiveInfinity;

    /// <summary>With vapor only, the fall of pressure below which the machine counts as stalled, Pa/s; zero for the usual criterion.</summary>
    public double SlowestFall { get; init; }

    /// <summary>Fixed discharge pressure where there is no cylinder, Pa.</summary>
    public double ReceiverPressure { get; init; }

    public bool KeepAboveFreezing { get; init; }

    public bool StopAtFreezing { get; init; }

    public ThermalNetwork Network { get; }

    public double LiquidGoneAt { get; private set; } = double.NaN;

    public double FreezingAt { get; private set; } = double.NaN;

    public double Coldest { get; private set; } = double.PositiveInfinity;

    public double HighestRatio { get; private set; }

    /// <summary>The point of the trajectory with the highest pressure ratio while refrigerant flowed.</summary>
    public TrajectoryPoint HottestPoint { get; private set; }

    public bool WasChoked { get; private set; }

    public override int Dimension => FreeOut + 1 + _vessel.StateCount;

    /// <summary>Where the vessel has states of its own they are watched too; the accumulators between have an unbounded scale.</summary>
    public override int ControlledDimension => _vessel.StateCount > 0 ? Dimension : Controlled;

    public override int EventCount => StallEvent + 1;

    public double Pressure => _vessel.Pressure;

    public double Temperature => _vessel.Temperature;

    public bool HasLiquid => _vessel.LiquidMargin > 0;

    private double Discharge { get; set; }

    private double Flow { get; set; }

    private double Suction { get; set; }

    private double FreeFlow { get; set; }

    public override double AbsoluteScale(int index) => index < Controlled ? _scale[index]
        : index <= FreeOut ? double.PositiveInfinity
        : _vessel.AbsoluteScale(index);

    /// <summary>An energy passes through zero, which is only a matter of its reference state: it counts as no smaller than its mass makes it.</summary>
    public override double Size(int index, double[] state) => base.Size(index, state) + index switch
    {
        Energy => EnergyScale * state[Mass],
        CylinderEnergy => EnergyScale * state[CylinderMass],
        _ => 0,
    };

    public override bool Derivatives(double[] state, double[] derivatives)
    {
        if (!Evaluate(state))
        {
            return false;
        }

        double flow = Flow;
        double fromOil = _oil?.Release ?? 0;
        double oilEnergy = fromOil * (_oil?.SpecificEnergy ?? 0);
        derivatives[Mass] = fromOil - flow;
        derivatives[Energy] = oilEnergy - (flow * _vessel.VaporEnthalpy) + Network.HeatToRefrigerant;
        derivatives[Metal] = Network.MetalCapacity > 0
            ? (Network.HeatFromOutside + Network.HeatFromStandingWater - Network.HeatToRefrigerant) / Network.MetalCapacity
            : 0;
        derivatives[Water] = Network.WaterCapacity > 0 ? -Network.HeatFromStandingWater / Network.WaterCapacity : 0;
        derivatives[Dissolved] = -fromOil;
        derivatives[Out] = flow;
        derivatives[EnergyOut] = flow * _vessel.VaporEnthalpy;
        derivatives[HeatIn] = Network.HeatFromOutside;
        derivatives[FreeOut] = FreeFlow;
        _vessel.Derivatives(flow, fromOil, derivatives);
        if (_cylinder is null || _machine is null)
        {
            derivatives[CylinderMass] = 0;
            derivatives[CylinderEnergy] = 0;
            derivatives[CylinderWall] = 0;
            derivatives[Work] = 0;
            derivatives[CondenserHeat] = 0;
            derivatives[CylinderHeat] = 0;
            return true;
        }

        derivatives[CylinderMass] = flow;
        derivatives[CylinderEnergy] = (flow * _machine.OutletEnthalpy) + _cylinder.HeatFromWall;
        derivatives[CylinderWall] = (_cylinder.HeatFromAmbient - _cylinder.HeatFromWall) / _cylinder.WallCapacity;
        derivatives[Work] = _machine.Power;
        derivatives[CondenserHeat] = _machine.CondenserHeat;
        derivatives[CylinderHeat] = _cylinder.HeatFromAmbient;
        return true;
    }

    public override bool Events(double[] state, double[] values)
    {
        if (!Evaluate(state))
        {
            return false;
        }

        values[TargetEvent] = EndPressure > 0 ? EndPressure - _vessel.Pressure : _vessel.Pressure - TargetPressure;
        values[LiquidGoneEvent] = _vessel.LiquidMargin;
        values[CylinderFullEvent] = double.IsPositiveInfinity(CylinderLimit) ? 1 : CylinderLimit - state[CylinderMass];
        values[SwitchEvent] = Suction - LowPressureSwitch;
        values[CutoutEvent] = double.IsPositiveInfinity(HighPressureCutout) ? 1 : HighPressureCutout - Discharge;
        values[FreezingEvent] = Network.HasWater ? Network.MetalTemperature - FreezingPoint : 1;
        double share = _suction is null ? 0 : _suction.MassFlow / state[Mass];
        values[StallEvent] = _suction is null ? 1
            : SlowestFall > 0 && !HasLiquid ? (share * _vessel.Pressure / SlowestFall) - 1
            : (share * StallTime) - 1;
        return true;
    }

    public override EventAction OnEvent(int index, double time, double[] state)
    {
        switch (index)
        {
            case LiquidGoneEvent:
                LiquidGoneAt = time;
                Network.IsDry = true;
                _hasEvaluated = false;
                return EventAction.Resume;
            case FreezingEvent:
                FreezingAt = time;
                return StopAtFreezing ? EventAction.Stop : EventAction.Resume;
            default:
                return EventAction.Stop;
        }
    }

    public override void OnStep(double time, double[] state)
    {
        if (!Evaluate(state))
        {
            return;
        }

        Coldest = Math.Min(Coldest, Network.MetalTemperature);
        WasChoked |= _suction is { IsChoked: true };
        var point = new TrajectoryPoint
        {
            Seconds = time,
            AppliancePascals = _vessel.Pressure,
            SuctionPascals = Suction,
            DischargePascals = Discharge,
            ApplianceKelvins = _vessel.Temperature,
            MetalKelvins = Network.MetalTemperature,
            CylinderKelvins = _cylinder?.Temperature ?? _vessel.Temperature,
            ApplianceKilograms = state[Mass] + state[Dissolved],
            LiquidKilograms = state[Mass] * (1 - _vessel.VaporFraction),
            CylinderKilograms = state[CylinderMass],
            KilogramsPerSecond = Flow,
            Content = _vessel.Content,
        };
        _recorder.Add(point);
        if (Flow > 0 && Discharge / Suction > HighestRatio)
        {
            HighestRatio = Discharge / Suction;
            HottestPoint = point;
        }
    }

    /// <summary>The state vector of a start.</summary>
    public static double[] InitialState(ApplianceState start, ApplianceVessel vessel, CylinderState? receiving)
    {
        var state = new double[FreeOut + 1 + vessel.StateCount];
        vessel.Initialize(state);
        state[Mass] = start.Kilograms;
        state[Energy] = start.Joules;
        state[Metal] = start.MetalKelvins;
        state[Water] = start.WaterKelvins;
        state[Dissolved] = start.DissolvedKilograms;
        if (receiving is not null)
        {
            state[CylinderMass] = receiving.Kilograms;
            state[CylinderEnergy] = receiving.Joules;
            state[CylinderWall] = receiving.WallKelvins;
        }

        return state;
    }

    /// <summary>What the balances of a run leave unexplained.</summary>
    public static Closure Balance(
        double[] before, double[] after, ThermalNetwork network, CylinderProcess? cylinder, OilRelease? oil, in OdeOutcome outcome)
    {
        double[] change = [.. after.Zip(before, (a, b) => a - b)];
        double charge = before[Mass] + before[Dissolved];
        double mass = Math.Abs(change[Mass] + change[Dissolved] + change[Out]) / charge;
        double stored = change[Energy] + (network.MetalCapacity * change[Metal]) + (network.WaterCapacity * change[Water])
            + ((oil?.SpecificEnergy ?? 0) * change[Dissolved]);
        double energyScale = Math.Abs(before[Energy]) + (charge * EnergyScale);
        double energy = Math.Abs(stored + change[EnergyOut] - change[HeatIn]) / energyScale;
        if (cylinder is not null)
        {
            double received = change[CylinderEnergy] + (cylinder.WallCapacity * change[CylinderWall]) + change[CondenserHeat];
            mass = Math.Max(mass, Math.Abs(change[CylinderMass] - change[Out]) / Math.Max(charge, before[CylinderMass]));
            energy = Math.Max(
                energy,
                Math.Abs(received - change[EnergyOut] - change[Work] - change[CylinderHeat])
                    / Math.Max(energyScale, Math.Abs(before[CylinderEnergy]) + (before[CylinderMass] * EnergyScale)));
        }

        return new Closure(mass, energy, outcome.Steps, outcome.Evaluations);
    }

    /// <summary>Solves the algebra of a state, unless it is the one solved last.</summary>
    private bool Evaluate(double[] state)
    {
        if (_hasEvaluated && SameAsEvaluated(state))
        {
            return _validEvaluation;
        }

        Array.Copy(state, _evaluated, _evaluated.Length);
        _hasEvaluated = true;
        _validEvaluation = TrySolve(state);
        return _validEvaluation;
    }

    private bool SameAsEvaluated(double[] state)
    {
        for (int i = 0; i < Controlled; i++)
        {
            if (state[i] != _evaluated[i])
            {
                return false;
            }
        }

        for (int i = FreeOut + 1; i < _evaluated.Length; i++)
        {
            if (state[i] != _evaluated[i])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A trial step may reach beyond the equation of state; that only means a shorter one.</summary>
    private bool TrySolve(double[] state)
    {
        try
        {
            return Solve(state);
        }
        catch (PropertyRangeException)
        {
            return false;
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }

    private bool Solve(double[] state)
    {
        double mass = state[Mass];
        if (!(mass > 0) || !(state[Dissolved] >= -_scale[Dissolved]) || !_vessel.Solve(state))
        {
            return false;
        }

        if (_cylinder is not null && !_cylinder.Solve(state[CylinderMass], state[CylinderEnergy], state[CylinderWall]))
        {
            return false;
        }

        Network.Solve(_vessel.Temperature, state[Metal], state[Water]);
        _oil?.Solve(_vessel.Pressure, Network.MetalTemperature, state[Dissolved]);
        Discharge = _cylinder?.Pressure ?? ReceiverPressure;
        if (_suction is null)
        {
            Flow = 0;
            FreeFlow = 0;
            Suction = _vessel.Pressure;
            Discharge = _vessel.Pressure;
            return true;
        }

        _suction.Solve(_vessel.Pressure, _vessel.VaporDensity, _exponent, _viscosity, Discharge);
        FreeFlow = _suction.LineShare > 0 ? _suction.MassFlow / _suction.LineShare : 0;
        Flow = _suction.MassFlow * Throttle();
        Suction = _suction.SuctionPressure;
        double suctionDensity = _vessel.VaporDensity * Suction / _vessel.Pressure;
        _machine?.Solve(Suction, suctionDensity, _vessel.VaporEnthalpy, Flow, Discharge, condensing: true);
        return true;
    }

    /// <summary>Share of the flow let through so that the coldest surface stays above freezing: 1 above the band, 0 at half of it, smooth between.</summary>
    private double Throttle()
    {
        if (!KeepAboveFreezing || !Network.HasWater)
        {
            return 1;
        }

        double share = (Network.MetalTemperature - FreezingPoint - (0.5 * ThrottleBand)) / (0.5 * ThrottleBand);
        share = Math.Min(1, Math.Max(0, share));
        return share * share * (3 - (2 * share));
    }
}
