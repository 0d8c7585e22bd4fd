using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A plan in the making: the clock, the appliance, the cylinders, and the stages so far.</summary>
internal sealed class PlanRun
{
    /// <summary>
    /// Each pull goes this far below the required level, so that vapor that warms in the hold does not lift the pressure above it again:
    /// common practice, no source.
    /// </summary>
    private const double PullBelow = 0.95;

    /// <summary>The pressure that follows a pull may exceed the level by rounding only.</summary>
    private const double LevelTolerance = 1e-6;

    /// <summary>A hold shorter than this, s, is none.</summary>
    private const double ShortestHold = 1;

    /// <summary>Liquid below which push-pull does not pay: 10 lb (trade education; 15 lb is in circulation too).</summary>
    private const double LeastLiquid = 10 * 0.45359237;

    /// <summary>Where the air is thin a sweep still goes down to this share of it.</summary>
    private const double MostSwept = 0.9;

    /// <summary>Where warming vapor lifts the pressure, the next pull goes down to no less than this share of the goal.</summary>
    private const double DeepestShare = 0.6;

    /// <summary>Nor nearer than this to the machine's deepest vacuum, where it crawls.</summary>
    private const double NearDeepest = 1.1;

    /// <summary>However wrong a gauge, the pull ends at no less than this share of its target.</summary>
    private const double LeastTarget = 0.2;

    private readonly List<PlannedStage> _stages = [];
    private readonly Temperature _ambient;
    private int _current = -1;
    private double _clock;
    private AmountOfSubstance _air;
    private Temperature? _machine;

    public PlanRun(RecoveryJob job)
    {
        Job = job;
        _ambient = new Temperature(job.Appliance.SurroundingsKelvin, TemperatureUnit.Kelvin);
        State = ApplianceState.Initial(job.Appliance);
        Requirement = EvacuationRequirement.For(
            job.Appliance.Fluid,
            job.Appliance.Charge,
            (job.Evacuation ?? new EvacuationOptions()) with
            {
                Barometer = job.Barometer,
                MachineManufactured = job.Machine.ManufactureDate ?? job.Evacuation?.MachineManufactured,
            });
        Cylinders = CylinderTracker.InOrderOfUse(job, _ambient);
    }

    public RecoveryJob Job { get; }

    public EvacuationRequirement Requirement { get; }

    public ApplianceState State { get; private set; }

    public IReadOnlyList<CylinderTracker> Cylinders { get; }

    public IReadOnlyList<PlannedStage> Stages => _stages;

    /// <summary>Whether the level was reached and held.</summary>
    public bool IsLevelReached { get; private set; }

    /// <summary>Whether the cylinders on hand ran out.</summary>
    public bool IsOutOfCylinders { get; private set; }

    /// <summary>Whether the level was reached but did not hold within the pulls allowed.</summary>
    public bool DidNotHold { get; private set; }

    /// <summary>Refrigerant that escaped at connections, kg.</summary>
    public double Released { get; private set; }

    /// <summary>Refrigerant in hoses and machine at the end, kg.</summary>
    public double InHosesAndMachine { get; private set; }

    /// <summary>The clearing of the machine; null where it was not asked for.</summary>
    public MachineClearing? Clearing { get; private set; }

    /// <summary>The air sweep of hoses and machine.</summary>
    public HoseSweepResult? Sweep { get; private set; }

    /// <summary>
    /// The level to reach, Pa: the required one, and never above the air at the place, or refrigerant would blow out when it is opened.
    /// </summary>
    public double Goal => Math.Min(Requirement.RequiredPressure.Pascals, Job.Barometer.Pressure.Pascals);

    /// <summary>Whether the required level is reached.</summary>
    private bool IsAtLevel => State.Pressure.Pascals <= Requirement.RequiredPressure.Pascals * (1 + LevelTolerance) || IsShareRecovered;

    /// <summary>Whether the technician's gauge shows what is gone for.</summary>
    private bool ShowsLevel => State.Pressure.Pascals - Job.GaugeError <= Goal * (1 + LevelTolerance) || IsShareRecovered;

    private bool IsShareRecovered =>
        Requirement.RequiredRecovery is Ratio share
        && 1 - (State.Mass.Kilograms / Job.Appliance.Charge.Kilograms) >= share.DecimalFractions;

    public void Run()
    {
        SweepHoses();
        if (!NextCylinder())
        {
            return;
        }

        if (UsesPushPull())
        {
            PushLiquid();
        }

        if (!IsOutOfCylinders)
        {
            Pull();
        }

        IsLevelReached = IsAtLevel;
        Finish();
    }

    private void SweepHoses()
    {
        double air = Job.Barometer.Pressure.Pascals;
        Sweep = HoseSweep.Simulate(
            Job.Hoses,
            Job.Machine,
            new HoseSweepOptions
            {
                StartPressure = Job.Barometer.Pressure,
                TargetPressure = new Pressure(Math.Min(Job.SweepPressure.Pascals, MostSwept * air), PressureUnit.Pascal),
                Temperature = _ambient,
            });
        _air = Sweep.AirLeft;
        Add(StageKind.HoseSweep, Sweep.Duration.Seconds, 0, State, null);
    }

    private bool UsesPushPull() =>
        Job.Appliance.LiquidReachable
        && Job.Hoses.LiquidSide.Count > 0
        && Job.PushPull switch
        {
            PushPullUse.Never => false,
            PushPullUse.Always => State.LiquidMass.Kilograms > Job.Appliance.LiquidHeel.Kilograms,
            _ => State.LiquidMass.Kilograms - Job.Appliance.LiquidHeel.Kilograms >= LeastLiquid,
        };

    private void PushLiquid()
    {
        do
        {
            CylinderTracker cylinder = Cylinders[_current];
            StageResult vapor = Equalization.Simulate(
                Job.Appliance, Job.Hoses, cylinder.Cylinder, new EqualizeOptions { Start = At(cylinder), CylinderLimit = LimitOf(cylinder) });
            cylinder.Update(vapor.Cylinder);
            Add(StageKind.Equalize, vapor.Duration.Seconds, vapor.RecoveredMass.Kilograms, vapor.Appliance, vapor);
            StageResult result = PushPull.Simulate(
                Job.Appliance,
                Job.Machine,
                Job.Hoses,
                cylinder.Cylinder,
                new PushPullOptions { Start = At(cylinder), CylinderLimit = LimitOf(cylinder) });
            cylinder.Update(result.Cylinder);
            Add(StageKind.PushPull, result.Duration.Seconds, result.RecoveredMass.Kilograms, result.Appliance, result);
            if (result.End != StageEnd.CylinderFull)
            {
                break;
            }
        }
        while (NextCylinder() && UsesPushPull());

        Release(2, Job.Appliance.Fluid.Model, liquid: true);
        Add(StageKind.HoseChange, Job.Times.HoseChange.Seconds, 0, State, null);
    }

    /// <summary>Pulls and holds until the level holds, each pull deeper where warming vapor lifted the pressure above it again.</summary>
    private void Pull()
    {
        double target = PullBelow * Goal;
        for (int pull = 0; pull < Job.MaximumPulls; pull++)
        {
            bool goesOn = PullOnce(target);
            if (!goesOn && !IsAtLevel)
            {
                return;
            }

            if (Job.Times.Hold.Seconds < ShortestHold)
            {
                return;
            }

            StageResult hold = Hold.Simulate(Job.Appliance, new HoldOptions { Start = At(Cylinders[_current]), Duration = Job.Times.Hold });
            Cylinders[_current].Update(hold.Cylinder);
            Add(StageKind.Hold, hold.Duration.Seconds, 0, hold.Appliance, hold);
            if (ShowsLevel || !goesOn)
            {
                return;
            }

            if (!State.HasLiquid)
            {
                double reach = NearDeepest * Job.Machine.DeepestVacuum(Cylinders[_current].State!.Pressure).Pascals;
                double deeper = Math.Max(PullBelow * target * Goal / State.Pressure.Pascals, Math.Max(DeepestShare * Goal, reach));
                target = Math.Min(target, deeper);
            }
        }

        DidNotHold = !IsAtLevel;
    }

    /// <summary>One pull, over as many cylinders as it takes; false where something stops it short of its target.</summary>
    private bool PullOnce(double target)
    {
        while (true)
        {
            CylinderTracker cylinder = Cylinders[_current];
            StageResult result = VaporRecovery.Simulate(
                Job.Appliance,
                Job.Machine,
                Job.Hoses,
                cylinder.Cylinder,
                new VaporRecoveryOptions
                {
                    Start = At(cylinder),
                    CylinderLimit = LimitOf(cylinder),
                    TargetPressure = new Pressure(Math.Max(LeastTarget * target, target + Job.GaugeError), PressureUnit.Pascal),
                    KeepAboveFreezing = Job.KeepAboveFreezing,
                    Composition = Job.FollowComposition ? CompositionMode.Tracked : CompositionMode.Fixed,
                });
            cylinder.Update(result.Cylinder);
            Add(StageKind.VaporRecovery, result.Duration.Seconds, result.RecoveredMass.Kilograms, result.Appliance, result);
            if (result.End is not (StageEnd.CylinderFull or StageEnd.HighPressureCutout))
            {
                return result.End == StageEnd.TargetReached;
            }

            if (!NextCylinder())
            {
                return false;
            }
        }
    }

    private SimulationState At(CylinderTracker cylinder) => new(State) { Cylinder = cylinder.State, MachineTemperature = _machine };

    private Mass LimitOf(CylinderTracker cylinder) =>
        new(Math.Max(LeastTarget * cylinder.Limit.MaximumFill.Kilograms, cylinder.Limit.MaximumFill.Kilograms + Job.ScaleError), MassUnit.Kilogram);

    private bool NextCylinder()
    {
        int next = _current + 1;
        if (next >= Cylinders.Count || !Cylinders[next].IsUsable)
        {
            IsOutOfCylinders = true;
            return false;
        }

        if (_current >= 0)
        {
            Release(1, Job.Appliance.Fluid.Model, liquid: true);
            Add(StageKind.CylinderChange, Job.Times.CylinderChange.Seconds, 0, State, null);
        }

        _current = next;
        Cylinders[next].Connect(_air);
        _air = new AmountOfSubstance(0, AmountOfSubstanceUnit.Mole);
        return true;
    }

    private void Finish()
    {
        PropertyModel model = Job.Appliance.Fluid.Model;
        CylinderState cylinder = Cylinders[_current].State!;
        Clearing = MachineClearing.Estimate(Job.Appliance.Fluid, Job.Machine, Job.Hoses, _ambient, cylinder.Pressure, Job.SweepPressure);
        double machine = (Job.ClearMachine ? Clearing.Trapped : Clearing.HeldBefore).Kilograms;
        double suction = HoseSet.VolumeOf(Job.Hoses.VaporSide) * (State.HasLiquid ? State.Vessel.Vapor : State.Vessel.Bulk).Density;

        // More cannot be held than was taken out.
        InHosesAndMachine = Math.Min(machine + suction, HalfOfDelivered());
        if (Job.ClearMachine)
        {
            Add(StageKind.MachineClearing, Clearing.Duration.Seconds, 0, State, null);
        }
        else
        {
            Clearing = null;
        }

        Release(3, model, liquid: false);
        Add(StageKind.Close, Job.Times.Close.Seconds, 0, State, null);
    }

    /// <summary>Books what escapes at connections, never more than a small share of what was delivered.</summary>
    private void Release(int connections, PropertyModel model, bool liquid)
    {
        CylinderState? cylinder = _current >= 0 ? Cylinders[_current].State : null;
        if (cylinder is null)
        {
            return;
        }

        StatePoint phase = liquid && cylinder.Vessel.Liquid.Phase != Phase.Undefined ? cylinder.Vessel.Liquid : cylinder.Vessel.Vapor;
        double density = phase.Phase == Phase.Undefined ? cylinder.Vessel.Bulk.Density : phase.Density;
        Released = Math.Min(Released + (connections * Job.LossPerConnection.CubicMeters * density), HalfOfDelivered());
    }

    private double HalfOfDelivered() => 0.5 * Math.Max(0, Cylinders.Sum(tracker => tracker.Delivered));

    private void Add(StageKind kind, double seconds, double moved, ApplianceState after, StageResult? result)
    {
        string? label = _current >= 0 ? Cylinders[_current].Cylinder.Label : null;
        _stages.Add(new PlannedStage(kind, _clock, seconds, label, moved, after, result));
        _clock += seconds;
        _machine = result?.After.MachineTemperature ?? _machine;
        State = after;
    }
}
