using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A plan in the making: it asks the strategy for the next step, carries it out, and books what moved.</summary>
internal sealed partial class PlanRun
{
    /// <summary>Pressure that comes to a level may exceed it by rounding only.</summary>
    internal const double LevelTolerance = 1e-6;

    /// <summary>A mass that differs by this share is the same, to rounding.</summary>
    private const double Rounding = 1e-12;

    /// <summary>A strategy that never ends is stopped after this many steps, and four for each cylinder.</summary>
    private const int MostSteps = 200;

    /// <summary>An oil change takes an hour, s: common practice, no source.</summary>
    private const double OpenTime = 3600;

    private readonly IRecoveryStrategy _strategy;
    private readonly StepSimulation _simulation;
    private readonly List<PlannedStage> _stages = [];
    private readonly CylinderStanding[] _cylinders;
    private readonly List<(PlanStep Step, SimulationState From, StageResult? Result)> _previews = [];
    private int _connected = -1;
    private AmountOfSubstance _air;

    public PlanRun(RecoveryJob job, IRecoveryStrategy strategy)
    {
        JobChecks.Check(job);
        _strategy = strategy;
        Ambient = new Temperature(job.Appliance.SurroundingsKelvin, TemperatureUnit.Kelvin);
        State = new SimulationState(JobChecks.Start(job));
        Requirement = EvacuationRequirement.For(
            job.Appliance.Fluid,
            job.Appliance.Charge,
            job.EffectiveEvacuation);
        Job = job;
        _simulation = new StepSimulation(job);
        _cylinders = [.. job.Cylinders.Select(cylinder => new CylinderStanding(
            cylinder, CylinderFill.Limit(cylinder, job.Appliance.Fluid, new FillOptions { Today = job.Day, Rules = Requirement.Rules.Fill }), CylinderFitness.For(job, cylinder), job.ScaleError))];
        foreach (CylinderStanding cylinder in _cylinders)
        {
            JobChecks.Fits(job, cylinder);
        }

        Start = State.Appliance;
        VesselPoint start = State.Appliance.Vessel;
        double density = State.Appliance.HasLiquid && start.Vapor.Phase != Phase.Undefined ? start.Vapor.Density : start.Bulk.Density;
        Pace = job.Machine.Displacement.CubicMetersPerSecond * job.Machine.VolumetricEfficiency * density;
        Machine = MachineChange.For(this);
        PressureInThisAir = WarmPressure(State.Appliance);
        StartsAboveCutout = PressureInThisAir > job.Machine.HighPressureCutout;
        LeadsToPort = job.Appliance.Sections.Count > 1 ? SectionReach.To(job.Appliance, job.Appliance.VaporPortSection) : [true];
        LeftByShare = Requirement.RequiredRecovery is Ratio share ? ((1 - share.DecimalFractions) * Job.Appliance.Charge.Kilograms) - KeptByHoses() : -1;
        NeedsNothing = Requirement.Kind == LevelKind.GaugePressure && job.Evacuation is { Purpose: OpeningPurpose.OilChange, OwnLevel: null } && StaysAtLevel();
    }

    /// <summary>The highest pressure in the appliance, as it stands or once it is as warm as the air around it.</summary>
    public Pressure PressureInThisAir { get; }

    /// <summary>Whether the appliance stands above the machine's high-pressure cut-out, or comes to it by warming: the machine must not be connected.</summary>
    public bool StartsAboveCutout { get; }

    /// <summary>Whether the appliance stands at the level of an oil change already, liquid or not, and stays there: nothing is to be recovered.</summary>
    public bool NeedsNothing { get; }

    /// <summary>The job, its hold no shorter than the rule of the place asks for.</summary>
    public RecoveryJob Job { get; }

    public EvacuationRequirement Requirement { get; }

    public SimulationState State { get; private set; }

    /// <summary>The appliance before the job.</summary>
    public ApplianceState Start { get; }

    public Temperature Ambient { get; }

    /// <summary>s.</summary>
    public double Clock { get; private set; }

    /// <summary>kg/s.</summary>
    public double Pace { get; }

    public IReadOnlyList<CylinderStanding> Cylinders => _cylinders;

    public CylinderStanding? Connected => _connected >= 0 ? _cylinders[_connected] : null;

    public IReadOnlyList<PlannedStage> Stages => _stages;

    /// <summary>Labels of cylinders in the order in which they were connected.</summary>
    public List<string> Used { get; } = [];

    /// <summary>Whether the caller's own strategy decides.</summary>
    public bool HasOwnStrategy => _strategy is not StandardStrategy;

    /// <summary>Whether the strategy was stopped by the bound on steps.</summary>
    public bool RanOutOfSteps { get; private set; }

    /// <summary>Refrigerant that escaped at connections, kg.</summary>
    public double Released { get; private set; }

    /// <summary>Refrigerant in hoses and machine at the end, kg.</summary>
    public double InHosesAndMachine { get; private set; }

    /// <summary>The air sweep of hoses and machine.</summary>
    public HoseSweepResult? Sweep { get; private set; }

    /// <summary>What the machine's past means for this job.</summary>
    public MachineChange Machine { get; }

    /// <summary>The absolute pressure to go for.</summary>
    public Pressure Goal => Requirement.Kind == LevelKind.GaugePressure || Job.Evacuation?.OwnLevel is not null
        ? Requirement.RequiredPressure
        : new Pressure(Math.Min(Requirement.RequiredPressure.Pascals, Job.Barometer.Pressure.Pascals), PressureUnit.Pascal);

    public double Delivered => _cylinders.Sum(cylinder => cylinder.Kilograms);

    /// <summary>Of that, what came into the cylinders, and neither stays in hoses and machine nor escapes, kg.</summary>
    public double InCylinders => Delivered - InHosesAndMachine - Released;

    public void Run(CancellationToken cancellation, IProgress<double>? progress)
    {
        _simulation.Cancellation = cancellation;
        if (StartsAboveCutout || NeedsNothing)
        {
            progress?.Report(1);
            return;
        }

        int most = MostSteps + (4 * _cylinders.Length);
        double charge = Job.Appliance.Charge.Kilograms;
        double told = 0;
        for (int i = 0; i < most; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            bool isClosed = _stages.Count > 0 && _stages[_stages.Count - 1].Kind == StageKind.Close;
            if (isClosed || _strategy.Next(new PlanSituation(this)) is not PlanStep step)
            {
                Stop(progress);
                return;
            }

            Carry(step);
            double share = Math.Min(1, Math.Max(told, 1 - (State.Appliance.Mass.Kilograms / charge)));
            progress?.Report(told = share);
        }

        RanOutOfSteps = true;
        Stop(progress);
    }

    private void Stop(IProgress<double>? progress)
    {
        if (_stages.Count > 0 && _stages[_stages.Count - 1].Kind != StageKind.Close)
        {
            Keep();
        }

        progress?.Report(1);
    }

    /// <summary>Whether the technician's gauge shows what is gone for, or the share asked for is out, with no liquid left.</summary>
    public bool ShowsGoal(ApplianceState state) =>
        (state.Pressure.Pascals - Job.GaugeError) * ToReference(state.Temperature.Kelvins) <= Goal.Pascals * (1 + LevelTolerance) || IsShareRecovered(state);

    /// <summary>Whether the share that a rule asks for is in the cylinder, what hoses and machine will keep left out.</summary>
    public bool IsShareRecovered(ApplianceState state) => state.Mass.Kilograms <= LeftByShare;

    /// <summary>A part of the appliance each: whether refrigerant comes from it to the vapor port.</summary>
    public IReadOnlyList<bool> LeadsToPort { get; }

    /// <summary>What may be left in the appliance where the share that a rule asks for is in the cylinder, kg; less than none where no rule asks for one.</summary>
    public double LeftByShare { get; }

    /// <summary>By how much the pressure of vapor at a temperature, K, counts for more, because the place has the level hold at a higher one: p ∝ T. 1 where it does not.</summary>
    public double ToReference(double kelvins) => Requirement.ReferenceTemperature is Temperature reference ? Math.Max(1, reference.Kelvins / kelvins) : 1;

    /// <summary>Whether the required level is reached, whatever a gauge shows.</summary>
    public bool IsAtLevel(ApplianceState state) => state.Pressure.Pascals * ToReference(state.Temperature.Kelvins) <= Requirement.RequiredPressure.Pascals * (1 + LevelTolerance);

    /// <summary>What a step would come to from a state, simulated once; why it is done makes no difference to it.</summary>
    public StageResult? Preview(PlanStep step, SimulationState from)
    {
        PlanStep bare = Bare(step);
        foreach ((PlanStep tried, SimulationState start, StageResult? known) in _previews)
        {
            if (ReferenceEquals(start, from) && tried == bare)
            {
                return known;
            }
        }

        StageResult? result = _simulation.Run(step, from, LimitOf(from.Cylinder));
        _previews.Add((bare, from, result));
        return result;
    }

    /// <summary>Whether one job, planned to its end in the usual way, ends no later than another; one that reaches its level is before one that does not.</summary>
    public bool EndsSooner(RecoveryJob one, RecoveryJob other)
    {
        PlanRun first = new(one, StandardStrategy.Instance), second = new(other, StandardStrategy.Instance);
        first.Run(_simulation.Cancellation, null);
        second.Run(_simulation.Cancellation, null);
        bool reached = Verdicts.For(first).IsReached;
        return reached == Verdicts.For(second).IsReached ? first.Clock <= second.Clock : reached;
    }

    /// <summary>Notes what a step comes to, where it was simulated in parts.</summary>
    public void Remember(PlanStep step, SimulationState from, StageResult result) => _previews.Insert(0, (Bare(step), from, result));

    private static PlanStep Bare(PlanStep step) => step with { Reason = StepReason.Usual, Saves = Duration.Zero };

    /// <summary>A cylinder as it stands now: cooled since it was seen last, with the air of the sweep where it is the first.</summary>
    public CylinderState StateOf(CylinderStanding cylinder)
    {
        if (cylinder.State is CylinderState left)
        {
            double since = Clock - cylinder.LeftAt;
            var waiting = new PlanStep(StageKind.Rest) { Duration = new Duration(since, DurationUnit.Second) };
            return _simulation.Run(waiting, State with { Cylinder = left }, null)?.Cylinder ?? left;
        }

        return CylinderState.Around(Job.Appliance, cylinder.Cylinder, _air);
    }

    /// <summary>The appliance as it stands, shut for a time; null where that could not be computed.</summary>
    public StageResult? Shut(Duration time) => _simulation.Run(new PlanStep(StageKind.Hold) { Duration = time }, State, null);

    private bool StaysAtLevel()
    {
        if (!IsAtLevel(State.Appliance))
        {
            return false;
        }

        var open = new PlanStep(StageKind.Hold) { Duration = new Duration(Math.Max(OpenTime, Job.Times.Hold.Seconds), DurationUnit.Second) };
        return _simulation.Run(open, State, null) is { End: StageEnd.TimeOver } after && IsAtLevel(after.Appliance);
    }

    private Pressure WarmPressure(ApplianceState start)
    {
        double most = start.HighestPressure.Pascals;
        foreach (SectionState part in start.Parts)
        {
            if (Ambient.Kelvins > part.Vessel.Bulk.Temperature && Job.Appliance.Fluid.Model.TryVesselAtTemperature(Ambient.Kelvins, part.Kilograms / part.Volume, out VesselPoint warm))
            {
                most = Math.Max(most, warm.Bulk.Pressure);
            }
        }

        return new Pressure(most, PressureUnit.Pascal);
    }

    private Mass? LimitOf(CylinderState? state)
    {
        if (state is null)
        {
            return null;
        }

        double limit = _cylinders.First(cylinder => cylinder.Cylinder.Label == state.Cylinder.Label).Limit.MaximumFill.Kilograms;
        const double least = 0.2;
        return new Mass(Math.Max(least * limit, limit + Job.ScaleError), MassUnit.Kilogram);
    }

    private void Carry(PlanStep step)
    {
        if (step.Kind == StageKind.CylinderChange || step.Kind == StageKind.SetUp)
        {
            Change(step);
            return;
        }

        if (_connected < 0 && StepSimulation.MovesRefrigerant(step.Kind))
        {
            throw new InvalidOperationException($"The strategy asks for {step.Kind} before a cylinder is connected: connect one by a step of SetUp or CylinderChange.");
        }

        StageResult? result = Preview(step, State);
        double seconds = Taken(step, result);
        switch (step.Kind)
        {
            case StageKind.HoseSweep:
                Sweep = _simulation.Sweep();
                _air = Sweep.AirLeft;
                seconds = Sweep.Duration.Seconds;
                if (State.Cylinder is CylinderState first)
                {
                    State = State with { Cylinder = first.WithGas(first.GasMoles + _air.Moles) };
                    _air = default;
                }

                break;
            case StageKind.MachineClearing:
                seconds = Clear().Duration.Seconds;
                break;
            case StageKind.HoseChange:
                Release(2, liquid: true);
                break;
            case StageKind.OilDrain or StageKind.OilFill:
                seconds = Machine.Seconds(step.Kind, Job.Times);
                break;
            case StageKind.Close:
                Keep();
                Release(3, liquid: false);
                break;
        }

        Add(step, seconds, result);
    }

    /// <summary>Connects a cylinder; the one that was connected is closed and set aside.</summary>
    private void Change(PlanStep step)
    {
        int next = Array.FindIndex(_cylinders, cylinder => cylinder.Cylinder.Label == step.Cylinder?.Label);
        if (next < 0)
        {
            throw new InvalidOperationException($"The strategy connects \"{step.Cylinder?.Label}\", which is not among the cylinders of the job.");
        }

        if (!_cylinders[next].MayBeFilled)
        {
            throw new InvalidOperationException($"The strategy connects \"{step.Cylinder?.Label}\", which must not be filled: {_cylinders[next].Findings.First(finding => finding.Severity == Severity.Stop).Code}.");
        }

        StageResult? result = _simulation.Run(step, State with { Cylinder = null }, null);
        if (_connected >= 0)
        {
            Release(1, liquid: true);
            CylinderStanding left = _cylinders[_connected];
            _cylinders[_connected] = left.With(left.State!, left.Kilograms, Clock);
        }

        string? before = Connected?.Cylinder.Label;
        CylinderState state = StateOf(_cylinders[next]);
        State = (result?.After ?? State) with { Cylinder = null };
        _connected = next;
        _air = default;
        _cylinders[next] = _cylinders[next].With(state, _cylinders[next].Kilograms, Clock);
        if (!Used.Contains(step.Cylinder!.Label))
        {
            Used.Add(step.Cylinder.Label);
        }

        Add(step, Taken(step, result), result, state, before);
    }

    private void Add(PlanStep step, double seconds, StageResult? result, CylinderState? connects = null, string? before = null)
    {
        SimulationState start = result?.Before ?? State;
        SimulationState after = result?.After ?? State;
        CylinderState? standing = connects ?? after.Cylinder ?? State.Cylinder;
        Temperature? machine = MachineAfter(step.Kind, result, seconds);
        if (!ReferenceEquals(standing, after.Cylinder) || machine?.Kelvins != after.MachineTemperature?.Kelvins)
        {
            after = after with { Cylinder = standing, MachineTemperature = machine };
        }

        double moved = start.Appliance.Mass.Kilograms - after.Appliance.Mass.Kilograms;
        moved = Math.Abs(moved) > Rounding * start.Appliance.Mass.Kilograms ? moved : 0;
        double received = result is null ? 0 : Received(result);
        if (_connected >= 0 && after.Cylinder is CylinderState cylinder)
        {
            _cylinders[_connected] = _cylinders[_connected].With(cylinder, _cylinders[_connected].Kilograms + received, Clock + seconds);
        }

        _stages.Add(new PlannedStage(step, Clock, seconds, Connected?.Cylinder.Label, before, moved, after, result, Hookups.For(step, this, result, after)));
        Clock += seconds;
        State = after;
        _previews.RemoveAll(preview => !ReferenceEquals(preview.From, after));
    }

    /// <summary>A machine that stands still cools.</summary>
    private Temperature? MachineAfter(StageKind kind, StageResult? result, double seconds)
    {
        Temperature? now = result?.After.MachineTemperature ?? State.MachineTemperature;
        if (now is not Temperature warm || StepSimulation.RunsMachine(kind) || Job.Machine.Body is not MachineBody body)
        {
            return now;
        }

        return new Temperature(body.AfterRest(warm.Kelvins, Ambient.Kelvins, seconds), TemperatureUnit.Kelvin);
    }
}
