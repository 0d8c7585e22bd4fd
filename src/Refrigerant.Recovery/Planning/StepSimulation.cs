using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A step as a stage of the simulation, from any state.</summary>
internal sealed class StepSimulation(RecoveryJob job)
{
    /// <summary>A wait shorter than this, s, is none.</summary>
    private const double ShortestWait = 1;

    /// <summary>An appliance this near to its surroundings, K, does not change while things are set up.</summary>
    private const double SameTemperature = 0.5;

    /// <summary>The longest that a stage may take, s: 1000 days.</summary>
    private const double Longest = 8.64e7;

    /// <summary>However wrong a gauge, the pull ends at no less than this share of its target.</summary>
    private const double LeastTarget = 0.2;

    /// <summary>Where the air is thin a sweep still goes down to this share of it.</summary>
    private const double MostSwept = 0.9;

    /// <summary>What flashing liquid of the refrigerant is like: one table for all stages.</summary>
    private readonly FlashTable _flash = new(job.Appliance.Fluid.Model);

    /// <summary>A stage goes on that often where its steps ran out.</summary>
    private const int MostParts = 4;

    private static readonly Mass NoLimit = new(1e9, MassUnit.Kilogram);

    /// <summary>Ends what is simulated by an exception.</summary>
    public CancellationToken Cancellation { get; set; }

    /// <summary>Whether the machine runs in a stage.</summary>
    public static bool RunsMachine(StageKind kind) =>
        kind is StageKind.HoseSweep or StageKind.PushPull or StageKind.LiquidRecovery or StageKind.VaporRecovery or StageKind.MachineClearing;

    /// <summary>Whether refrigerant moves to the cylinder in a stage, by itself or by the machine.</summary>
    public static bool MovesRefrigerant(StageKind kind) =>
        kind is StageKind.Equalize or StageKind.PushPull or StageKind.LiquidRecovery or StageKind.VaporRecovery;

    /// <summary>What handling takes, s; zero for what a simulation tells.</summary>
    public static double Handling(StageKind kind, JobTimes times) => kind switch
    {
        StageKind.SetUp => times.SetUp.Seconds,
        StageKind.HoseChange => times.HoseChange.Seconds,
        StageKind.CylinderChange => times.CylinderChange.Seconds,
        StageKind.Close => times.Close.Seconds,
        StageKind.Hold => times.Hold.Seconds,
        _ => 0,
    };

    /// <summary>Simulates a step; null for one that moves nothing and takes no simulation.</summary>
    /// <param name="step">The step.</param>
    /// <param name="from">Where it starts.</param>
    /// <param name="limit">Most that the connected cylinder may hold.</param>
    public StageResult? Run(PlanStep step, SimulationState from, Mass? limit)
    {
        StageResult? result = RunOnce(step, from, limit);
        if (result?.End != StageEnd.StepLimit)
        {
            return result;
        }

        // A hand on the valve that follows a small surface needs many steps: on from where they ran out.
        var parts = new List<StageResult> { result };
        double longest = step.Duration?.Seconds ?? Longest;
        while (result is { End: StageEnd.StepLimit } && parts.Count < MostParts)
        {
            double left = longest - parts.Sum(part => part.Duration.Seconds);
            result = RunOnce(step with { Duration = new Duration(Math.Max(ShortestWait, left), DurationUnit.Second) }, result.After, limit)!;
            parts.Add(result);
        }

        return StageResults.Join(parts, parts[parts.Count - 1].End);
    }

    private StageResult? RunOnce(PlanStep step, SimulationState from, Mass? limit)
    {
        try
        {
            return step.Kind switch
            {
                StageKind.Equalize or StageKind.PushPull or StageKind.LiquidRecovery or StageKind.VaporRecovery => from.Cylinder is CylinderState cylinder
                    ? Moving(step, from, cylinder.Cylinder, limit)
                    : null,
                StageKind.Hold or StageKind.Rest or StageKind.Warm or StageKind.SetUp or StageKind.HoseChange or StageKind.CylinderChange => Waiting(step, from),
                _ => null,
            };
        }
        catch (PropertyRangeException)
        {
            return Ended(from);
        }
        catch (ConvergenceException)
        {
            return Ended(from);
        }
    }

    /// <summary>The sweep of hoses and machine.</summary>
    public HoseSweepResult Sweep() => HoseSweep.Simulate(
        job.Hoses,
        job.Machine,
        new HoseSweepOptions
        {
            StartPressure = job.Barometer.Pressure,
            TargetPressure = new Pressure(Math.Min(job.SweepPressure.Pascals, MostSwept * job.Barometer.Pressure.Pascals), PressureUnit.Pascal),
            Temperature = new Temperature(job.Appliance.SurroundingsKelvin, TemperatureUnit.Kelvin),
        });

    private static StageResult Ended(SimulationState at) =>
        new(StageEnd.PropertyRange, 0, at, at, [], new Trajectory([]), new StageFigures { Coldest = at.Appliance.MetalTemperature.Kelvins }, [], default);

    private StageResult Moving(PlanStep step, SimulationState from, RecoveryCylinder cylinder, Mass? limit)
    {
        Duration longest = new(Math.Max(ShortestWait, step.Duration?.Seconds ?? Longest), DurationUnit.Second);
        CompositionMode composition = job.FollowComposition ? CompositionMode.Tracked : CompositionMode.Fixed;
        switch (step.Kind)
        {
            case StageKind.Equalize:
                var even = new EqualizationOptions { Start = from, Barometer = job.Barometer, CylinderLimit = limit, Inputs = step.Inputs, CylinderEndPressure = step.CylinderPressure, Cancellation = Cancellation };
                even = step.Duration is null ? even : even with { MaximumDuration = longest };
                return Equalization.Simulate(job.Appliance, job.Hoses, cylinder, even);
            case StageKind.PushPull:
                var push = new PushPullOptions { Start = from, Barometer = job.Barometer, CylinderLimit = limit, Inputs = step.Inputs, MaximumDuration = longest, Flash = _flash, Cancellation = Cancellation };
                return PushPull.Simulate(job.Appliance, job.Machine, job.Hoses, cylinder, push);
            case StageKind.LiquidRecovery:
                var liquid = new LiquidRecoveryOptions
                {
                    Start = from,
                    Barometer = job.Barometer,
                    CylinderLimit = limit,
                    Inputs = step.Inputs,
                    MaximumDuration = longest,
                    KeepAboveFreezing = job.KeepAboveFreezing,
                    KeepBelowCutout = step.IsThrottled,
                    Flash = _flash,
                    Cancellation = Cancellation,
                };
                return LiquidRecovery.Simulate(job.Appliance, job.Machine, job.Hoses, cylinder, liquid);
            default:
                var vapor = new VaporRecoveryOptions
                {
                    Start = from,
                    Barometer = job.Barometer,
                    CylinderLimit = limit,
                    Inputs = step.Inputs,
                    MaximumDuration = longest,
                    TargetPressure = step.AppliancePressure is Pressure target ? ByGauge(target) : null,
                    KeepAboveFreezing = job.KeepAboveFreezing,
                    KeepBelowCutout = step.IsThrottled,
                    LowestPressure = step.LowestPressure is Pressure lowest ? ByGauge(lowest) : null,
                    Composition = composition,
                    Cancellation = Cancellation,
                };
                return VaporRecovery.Simulate(job.Appliance, job.Machine, job.Hoses, cylinder, vapor);
        }
    }

    private StageResult? Waiting(PlanStep step, SimulationState from)
    {
        double seconds = Math.Min(Longest, step.Duration?.Seconds ?? Handling(step.Kind, job.Times));
        bool atRest = step.Kind == StageKind.SetUp && Math.Abs(from.Appliance.Temperature.Kelvins - job.Appliance.SurroundingsKelvin) < SameTemperature;
        return seconds < ShortestWait || atRest ? null : Hold.Simulate(
            job.Appliance,
            new HoldOptions
            {
                Start = from,
                Barometer = job.Barometer,
                Duration = new Duration(seconds, DurationUnit.Second),
                EndPressure = step.AppliancePressure is Pressure end ? ByGauge(end) : null,
                CylinderEndPressure = step.CylinderPressure,
                Inputs = step.Inputs,
                CylinderLimit = NoLimit,
                Cancellation = Cancellation,
            });
    }

    /// <summary>What is there when a gauge that reads wrong shows a pressure.</summary>
    private Pressure ByGauge(Pressure shown) =>
        new(Math.Max(LeastTarget * shown.Pascals, shown.Pascals + job.GaugeError), PressureUnit.Pascal);
}
