using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What to watch in each kind of stage, and what it shows when it is time to act.</summary>
internal static class HookupWatches
{
    /// <summary>So long before a cylinder is full its filling is slowed down, s. Our choice.</summary>
    private const double SlowDown = 60;

    /// <summary>A gauge that comes to this share of a pressure shows it.</summary>
    private const double EvenEnough = 0.99;

    /// <param name="step">The step.</param>
    /// <param name="run">The plan so far, before this stage.</param>
    /// <param name="result">What was simulated; null for nothing.</param>
    /// <param name="after">What it comes to.</param>
    public static IEnumerable<StageWatch> For(PlanStep step, PlanRun run, StageResult? result, SimulationState after)
    {
        RecoveryJob job = run.Job;
        CylinderStanding? cylinder = run.Connected;
        Pressure goal = run.Goal;
        FindingValue Gauge(string name, Pressure absolute) => FindingValue.GaugePressure(name, job.Barometer.ToGauge(absolute), RoundingMode.Down);
        if (step.AppliancePressure is Pressure level && step.Kind == StageKind.VaporRecovery)
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, Gauge("appliance", level), "on the appliance's gauge; shut the inlet, stop");
        }

        foreach (StageWatch floor in Floors(step, job, result))
        {
            yield return floor;
        }

        if (step.IsThrottled && step.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery && cylinder is not null)
        {
            yield return new StageWatch(WatchedBy.CylinderGauge, OutletLimit("not above", job, cylinder), "not above that at the machine's outlet: throttle the inlet");
        }

        if (step.Kind == StageKind.HoseSweep)
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, Gauge("hoses", job.SweepPressure), "on the gauge; then shut the vent");
        }

        if (step.Kind is StageKind.PushPull)
        {
            yield return new StageWatch(WatchedBy.SightGlass, null, "the sight glass or hose runs vapor, the gauges part: shut the liquid valve first");
            if (job.Appliance.DesignGaugePressure is Pressure design)
            {
                yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("throttle", PushPull.DesignShare * design, RoundingMode.Down), "nine tenths of what the appliance is built for: throttle the machine's inlet there, never the outlet of a machine that runs");
            }
        }

        if (step.Kind == StageKind.LiquidRecovery)
        {
            yield return new StageWatch(WatchedBy.Scale, null, "the scale slows and the suction falls: open the vapor side too");
        }

        if (step.CylinderPressure is Pressure cool && (step.Kind != StageKind.Equalize || after.Cylinder is not CylinderState evened || evened.Pressure.Pascals > EvenEnough * cool.Pascals))
        {
            yield return new StageWatch(WatchedBy.CylinderGauge, Gauge("cylinder", cool), step.Kind == StageKind.Equalize ? step.Reason == StepReason.VaporFirst ? "on the cylinder's gauge: enough for liquid; shut port and cylinder before a hose is moved" : "on the cylinder's gauge: even enough; shut port and cylinder before a hose is moved" : "on the cylinder's gauge: cool enough");
        }

        if (cylinder is not null && StepSimulation.MovesRefrigerant(step.Kind))
        {
            if (SlowDownAt(result, cylinder) is Mass slow)
            {
                yield return new StageWatch(WatchedBy.Scale, FindingValue.Mass("slow down at", slow, RoundingMode.Down), "a minute before it is full at this pace: slow down, a hand on the cylinder's valve");
            }

            yield return new StageWatch(
                WatchedBy.Scale, FindingValue.Mass("gross", cylinder.Limit.MaximumGrossWeight, RoundingMode.Down), "most that the scale may show: shut the cylinder there");
        }

        if (cylinder is not null && step.Kind == StageKind.MachineClearing)
        {
            yield return new StageWatch(
                WatchedBy.Scale, FindingValue.Mass("gross", cylinder.Limit.MaximumGrossWeight, RoundingMode.Down), "most that the scale may show: stop there, and clear the rest into another cylinder");
        }

        if (step.Kind == StageKind.Equalize && result is not null && after.Cylinder is CylinderState even && !(step.CylinderPressure is Pressure stop && even.Pressure.Pascals > EvenEnough * stop.Pascals))
        {
            yield return new StageWatch(WatchedBy.Scale, FindingValue.Mass("gross", even.GrossWeight), "on the scale, which comes to rest: even enough; shut port and cylinder before a hose is moved");
        }

        if (step.Kind == StageKind.VaporRecovery && run.Requirement.RequiredRecovery is not null && run.IsShareRecovered(after.Appliance) && after.Cylinder is CylinderState filled)
        {
            yield return new StageWatch(WatchedBy.Scale, FindingValue.Mass("share", filled.GrossWeight, RoundingMode.Up), "on the scale: the share that the rule asks for is out; stop");
        }

        if (Stops(job, result, cylinder) is StageWatch stops)
        {
            yield return stops;
        }

        if (step.Kind == StageKind.VaporRecovery && result?.End == StageEnd.Stalled)
        {
            yield return new StageWatch(WatchedBy.Machine, null, "the gauge stands still: stop");
        }

        if (step.Kind == StageKind.Hold)
        {
            double cold = run.ToReference(after.Appliance.Temperature.Kelvins);
            yield return new StageWatch(
                WatchedBy.ApplianceGauge, Gauge("level", new Pressure(goal.Pascals / cold, PressureUnit.Pascal)), cold > 1 ? "it may not come above that meanwhile: the level, at what is left as cold as it is" : "it may not come above the level meanwhile");
        }

        if (Clock(step, result) is StageWatch clock)
        {
            yield return clock;
        }
    }

    /// <summary>Pressures that the appliance may not fall below while there is liquid.</summary>
    private static IEnumerable<StageWatch> Floors(PlanStep step, RecoveryJob job, StageResult? result)
    {
        if (step.Reason == StepReason.KeepLiquid && step.LowestPressure is Pressure floor)
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(floor), RoundingMode.Up), "not below that while there is liquid: throttle the inlet");
        }

        if (step.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery && job.KeepsTubes && AtFreezing(job) is Pressure ice && (result is null || result.Before.Appliance.HasLiquid))
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(ice), RoundingMode.Up), "not long below that while there is liquid: the refrigerant is at the freezing point of water there");
        }

        if (step.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery && step.Reason != StepReason.KeepLiquid && DryIce.CanForm(job.Appliance.Fluid) && result is { Before.Appliance.HasLiquid: true })
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(DryIce.TriplePressure(job.Appliance.Fluid)), RoundingMode.Up), "not below that while there is liquid: it turns to dry ice there");
        }
    }

    /// <summary>How long the stage takes; null where something else ends it.</summary>
    private static StageWatch? Clock(PlanStep step, StageResult? result)
    {
        if ((step.Duration is null || step.CylinderPressure is not null) && step.Kind != StageKind.Hold)
        {
            return null;
        }

        Duration time = step.Duration ?? result?.Duration ?? Duration.Zero;
        string what = step.Kind == StageKind.Hold ? "watch the gauge"
            : step.Kind is StageKind.Rest or StageKind.Warm ? "then go on"
            : step.Reason == StepReason.UntilChange ? "then change over: another cylinder lets the machine go on faster"
            : step.Reason == StepReason.GiveUp ? "stop then: it crawls"
            : "then stop";
        return new StageWatch(WatchedBy.Clock, FindingValue.Duration("time", time), what);
    }

    /// <summary>The limit that stops machine or cylinder; null where none does.</summary>
    private static StageWatch? Stops(RecoveryJob job, StageResult? result, CylinderStanding? cylinder) => result?.End switch
    {
        StageEnd.HighPressureCutout => new StageWatch(
            WatchedBy.Machine, FindingValue.GaugePressure("cut-out", job.Barometer.ToGauge(job.Machine.HighPressureCutout), RoundingMode.Down), "there the machine's high-pressure cut-out stops it"),
        StageEnd.ThermalCutout when job.Machine.ThermalCutout is Temperature hot => new StageWatch(
            WatchedBy.Machine, FindingValue.Temperature("cut-out", hot, RoundingMode.Down), "there the machine's thermal cut-out stops it"),
        StageEnd.CylinderPressure when cylinder is not null => new StageWatch(
            WatchedBy.CylinderGauge, OutletLimit("limit", job, cylinder), "most that the cylinder may stand at: stop there"),
        _ => null,
    };

    /// <summary>What a gauge at the outlet shows where machine or cylinder must stop.</summary>
    private static FindingValue OutletLimit(string name, RecoveryJob job, CylinderStanding cylinder) =>
        FindingValue.GaugePressure(name, job.Barometer.ToGauge(new Pressure(CylinderCooling.Limit(job, cylinder.Cylinder), PressureUnit.Pascal)), RoundingMode.Down);

    /// <summary>What the scale shows a minute before a cylinder is full, half-way where it fills in less than two; null where it does not come to be full.</summary>
    private static Mass? SlowDownAt(StageResult? result, CylinderStanding cylinder)
    {
        if (result is not { End: StageEnd.CylinderFull, Trajectory.Count: > 1 })
        {
            return null;
        }

        double time = result.Duration.Seconds - Math.Min(SlowDown, result.Duration.Seconds / 2);
        return new Mass(cylinder.Cylinder.TareWeight.Kilograms + CylinderReadings.Content(result.Trajectory, time), MassUnit.Kilogram);
    }

    /// <summary>What liquid has at 0 °C; null where that is outside its range.</summary>
    private static Pressure? AtFreezing(RecoveryJob job) =>
        job.Appliance.Fluid.Model.TrySaturationAtTemperature(MetalShell.FreezingPoint, out Fluids.SaturationPoint saturation) ? new Pressure(saturation.Bubble.Pressure, PressureUnit.Pascal) : null;
}
