using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;
using static Refrigerant.Recovery.Planning.HookupItem;
using static Refrigerant.Recovery.Planning.HookupPort;
using static Refrigerant.Recovery.Planning.HookupPosition;

namespace Refrigerant.Recovery.Planning;

/// <summary>The hookup of each kind of stage: common practice, no source.</summary>
internal static class Hookups
{
    /// <summary>Readings of the scale that are worth writing down.</summary>
    private const int MostReadings = 8;

    /// <summary>So long before a cylinder is full its filling is slowed down, s. Our choice.</summary>
    private const double SlowDown = 60;

    /// <summary>A gauge that comes to this share of a pressure shows it.</summary>
    private const double EvenEnough = 0.99;

    /// <param name="step">The step.</param>
    /// <param name="run">The plan so far, before this stage.</param>
    /// <param name="result">What was simulated; null for nothing.</param>
    /// <param name="after">What it comes to.</param>
    public static Hookup For(PlanStep step, PlanRun run, StageResult? result, SimulationState after)
    {
        RecoveryJob job = run.Job;
        CylinderStanding? cylinder = run.Connected;
        StageKind? moved = run.Stages.LastOrDefault(stage => StepSimulation.MovesRefrigerant(stage.Kind))?.Kind;
        return new Hookup(
            Lines(step.Kind == StageKind.CylinderChange ? moved ?? step.Kind : step.Kind, job, cylinder is null),
            [.. step.Kind == StageKind.MachineClearing && cylinder is null ? ClearingFirst(job) : Settings(step, job, moved), .. Heat(step, job)],
            [.. Watches(step, run, result, after)],
            Readings(step.Kind, result, cylinder));
    }

    private static IReadOnlyList<HookupLine> Lines(StageKind kind, RecoveryJob job, bool isBefore)
    {
        HoseSet hoses = job.Hoses;
        HookupLine vapor = new(ApplianceVapor, MachineInlet, hoses.VaporSide);
        HookupLine outlet = new(MachineOutlet, CylinderLiquid, hoses.Discharge);
        bool second = hoses.SecondVaporSide.Count > 0;
        HookupLine[] suction = second ? [vapor, new HookupLine(ApplianceSecondVapor, MachineInlet, hoses.SecondVaporSide)] : [vapor];
        return kind switch
        {
            StageKind.SetUp or StageKind.Close => [],
            StageKind.HoseSweep => [.. suction, .. Liquid(job), new HookupLine(MachineOutlet, HookupPort.Air, [])],
            StageKind.Equalize => [new HookupLine(ApplianceVapor, CylinderVapor, [.. hoses.VaporSide, .. hoses.Discharge])],
            StageKind.PushPull =>
            [
                new HookupLine(ApplianceLiquid, CylinderLiquid, hoses.LiquidSide),
                new HookupLine(CylinderVapor, MachineInlet, hoses.Discharge),
                new HookupLine(MachineOutlet, ApplianceVapor, hoses.VaporSide),
            ],
            StageKind.LiquidRecovery => [new HookupLine(ApplianceLiquid, MachineInlet, hoses.LiquidSide.Count > 0 ? hoses.LiquidSide : hoses.VaporSide), outlet],
            StageKind.OilDrain => [new HookupLine(Nitrogen, MachineOutlet, []), new HookupLine(Nitrogen, MachineInlet, []), new HookupLine(MachineDrain, OilContainer, [])],
            StageKind.OilFill => [new HookupLine(OilMeasure, MachineDrain, [])],
            StageKind.MachineClearing => isBefore ? [new HookupLine(MachineOutlet, LastRefrigerantCylinder, hoses.Discharge)] : [outlet],
            _ => [.. suction, outlet],
        };
    }

    /// <summary>The liquid hose on its way to the machine, to be swept.</summary>
    private static HookupLine[] Liquid(RecoveryJob job) =>
        HasLiquidHose(job) ? [new HookupLine(ApplianceLiquid, MachineInlet, job.Hoses.LiquidSide)] : [];

    private static IEnumerable<HookupSetting> Settings(PlanStep step, RecoveryJob job, StageKind? moved) => step.Kind switch
    {
        StageKind.SetUp =>
        [
            new HookupSetting(Machine, Off, "the appliance's compressor locked out, wiring and moving parts safe; what warms it or blows is on a supply of its own"),
            new HookupSetting(Scale, Read, "cylinder on it, first weight written down; a new or empty one evacuated before"),
            new HookupSetting(CylinderLiquidValve, Shut),
            new HookupSetting(CylinderVaporValve, Shut),
        ],
        StageKind.HoseSweep =>
        [
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Shut),
            new HookupSetting(CylinderLiquidValve, Shut),
            new HookupSetting(HoseValves, Open),
            new HookupSetting(MachineInletValve, Open),
            new HookupSetting(MachineVent, Open, "for air only, never for refrigerant"),
            new HookupSetting(Machine, On),
        ],
        StageKind.Equalize =>
        [
            new HookupSetting(ApplianceVaporPort, Open),
            .. SecondPort(job, Shut),
            new HookupSetting(CylinderVaporValve, Open, "slowly: no liquid flashes into an empty cylinder"),
            new HookupSetting(Machine, Off),
        ],
        StageKind.PushPull =>
        [
            new HookupSetting(ApplianceLiquidPort, Open),
            new HookupSetting(ApplianceVaporPort, Open, job.Appliance.Sections.Count > 1 ? "a port on the part with the liquid port: gas that goes in elsewhere does not push" : null),
            .. SecondPort(job, Shut),
            new HookupSetting(CylinderLiquidValve, Open),
            new HookupSetting(CylinderVaporValve, Open),
            new HookupSetting(MachineInletValve, Open),
            new HookupSetting(CondenserFan, Off, "so that the gas arrives hot and pushes"),
            new HookupSetting(FloatSwitch, Bypassed, "it would stop the machine, not the liquid, which siphons on: the scale guards, and someone stays at the liquid valve"),
            new HookupSetting(Machine, On),
        ],
        StageKind.LiquidRecovery =>
        [
            new HookupSetting(ApplianceLiquidPort, Open),
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            new HookupSetting(CylinderLiquidValve, Open),
            new HookupSetting(MachineInletValve, Throttled, "opened by the gauge, not wide"),
            .. Condensing(job),
        ],
        StageKind.HoseChange =>
        [
            new HookupSetting(CylinderLiquidValve, Shut, "first: liquid keeps flowing when the machine stops"),
            new HookupSetting(Machine, Off),
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(HoseValves, Open, "the liquid hose hangs on the appliance and is drawn empty through it; never shut at both ends"),
        ],
        StageKind.VaporRecovery =>
        [
            new HookupSetting(ApplianceVaporPort, Open),
            .. SecondPort(job, Open),
            .. LiquidPort(job, Open, "its hose, shut at the cylinder or at the machine, is drawn empty through the appliance"),
            new HookupSetting(CylinderLiquidValve, Open),
            step.Reason == StepReason.KeepLiquid ? new HookupSetting(MachineInletValve, Throttled, "by the appliance's gauge") : KeepsTubes(job) ? new HookupSetting(MachineInletValve, Throttled, "by the appliance's gauge, so that the tubes do not freeze") : step.IsThrottled ? new HookupSetting(MachineInletValve, Throttled, "by the gauge at the outlet") : new HookupSetting(MachineInletValve, Open),
            .. Condensing(job),
        ],
        StageKind.Hold =>
        [
            new HookupSetting(ApplianceVaporPort, Open, "the gauge sees the appliance, not the hose alone"),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Shut),
            new HookupSetting(MachineInletValve, Shut),
            new HookupSetting(Machine, Off),
            new HookupSetting(CylinderLiquidValve, Shut),
        ],
        StageKind.Rest or StageKind.Warm =>
        [
            new HookupSetting(Machine, Off),
            new HookupSetting(CylinderLiquidValve, Open, "so that the gauge shows the cylinder"),
        ],
        StageKind.CylinderChange =>
        [
            new HookupSetting(CylinderLiquidValve, Shut, "first: liquid keeps flowing when the machine stops"),
            new HookupSetting(Machine, Off),
            .. moved == StageKind.PushPull ? Array.Empty<HookupSetting>() : [new HookupSetting(MachineOutletValve, Open, "liquid in the hose behind it stays open to the machine's condenser: never shut at both ends")],
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Open, "liquid in its hose stays open to the appliance: never shut at both ends"),
            new HookupSetting(Scale, Read, "full cylinder weighed and labelled, the next one on the scale"),
        ],
        StageKind.MachineClearing =>
        [
            new HookupSetting(MachineInletValve, Shut),
            new HookupSetting(Machine, Clearing),
            new HookupSetting(CylinderLiquidValve, Open, "shut at the end, with the machine's outlet"),
        ],
        StageKind.OilDrain =>
        [
            new HookupSetting(Machine, Off, "refrigerant out first"),
            new HookupSetting(NitrogenRegulator, Open, "10 to 15 psi, never air over hot oil, never more than the container's hose holds; outlet side for the separator, inlet side for the compressor"),
        ],
        StageKind.OilFill =>
        [
            new HookupSetting(Machine, Off, "drawn in by vacuum, separator and compressor each its own volume"),
        ],
        StageKind.Close =>
        [
            new HookupSetting(CylinderLiquidValve, Shut),
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Shut, moved is StageKind.PushPull or StageKind.LiquidRecovery ? "last: what liquid its hose holds goes back through it, or is drawn off, first" : null),
            new HookupSetting(HoseValves, Shut, moved is StageKind.PushPull or StageKind.LiquidRecovery ? "hoses off by low-loss fittings, caps on; none that is full of liquid is shut at both ends" : "hoses off by low-loss fittings, caps on"),
            new HookupSetting(Scale, Read, "label: refrigerant, \"recovered\", weight, date"),
        ],
        _ => [],
    };

    private static bool HasLiquidHose(RecoveryJob job) => job.Appliance.LiquidReachable && job.Hoses.LiquidSide.Count > 0;

    private static bool KeepsTubes(RecoveryJob job) => job.KeepAboveFreezing && job.Appliance.Water is not null;

    /// <summary>What liquid has at 0 °C; null where that is outside its range.</summary>
    private static Pressure? AtFreezing(RecoveryJob job) =>
        job.Appliance.Fluid.Model.TrySaturationAtTemperature(MetalShell.FreezingPoint, out Fluids.SaturationPoint saturation) ? new Pressure(saturation.Bubble.Pressure, PressureUnit.Pascal) : null;

    /// <summary>The liquid port, where there is one with a hose on it.</summary>
    private static HookupSetting[] LiquidPort(RecoveryJob job, HookupPosition position, string? why = null) =>
        HasLiquidHose(job) ? [new HookupSetting(ApplianceLiquidPort, position, why)] : [];

    /// <summary>The second vapor port, where a hose hangs on it.</summary>
    private static HookupSetting[] SecondPort(RecoveryJob job, HookupPosition position) =>
        job.Hoses.SecondVaporSide.Count > 0 ? [new HookupSetting(ApplianceSecondVaporPort, position)] : [];

    /// <summary>Before the job: what the machine still holds goes into a cylinder of its own, which is not among the job's.</summary>
    private static IEnumerable<HookupSetting> ClearingFirst(RecoveryJob job)
    {
        string last = job.MachinePast?.Refrigerant?.Designation ?? "its last refrigerant";
        return
        [
            new HookupSetting(Scale, Read, $"a separate cylinder of {last} on it, brought for this; never one of this job's"),
            new HookupSetting(MachineInletValve, Shut),
            new HookupSetting(Machine, Clearing),
            new HookupSetting(CylinderLiquidValve, Open, $"of the cylinder of {last}; shut at the end, with the machine's outlet"),
        ];
    }

    private static IEnumerable<HookupSetting> Condensing(RecoveryJob job)
    {
        yield return new HookupSetting(CondenserFan, On);
        if (job.Machine.Condenser.Cooling == CondenserCooling.Water)
        {
            yield return new HookupSetting(CondenserWater, On);
        }

        if (job.Appliance.Water is not null)
        {
            yield return new HookupSetting(HookupItem.TubeWater, On, job.Appliance.Water.IsMoving ? "kept moving, or it freezes" : "kept moving or drained before: standing water freezes first");
        }

        yield return new HookupSetting(FloatSwitch, Connected);
        yield return new HookupSetting(Machine, On);
    }

    private static IEnumerable<HookupSetting> Heat(PlanStep step, RecoveryJob job)
    {
        SimulationInputs inputs = step.Inputs;
        if (inputs.HeaterPower > 0)
        {
            bool burns = RefrigerantFacts.For(job.Appliance.Fluid).IsFlammable != false;
            yield return new HookupSetting(ApplianceHeater, On, burns ? "never a flame, and nothing that sparks or glows: warm water, or a heater made for what burns" : "never a flame");
        }

        if (inputs.CrankcaseHeaterPower > 0)
        {
            yield return new HookupSetting(CrankcaseHeater, On);
        }

        if (inputs.FanFactor > 1)
        {
            yield return new HookupSetting(ApplianceFans, On);
        }

        if (CylinderCooling.Cools(inputs) || step.Kind == StageKind.Rest)
        {
            HookupPosition stands = inputs.CylinderSurroundings is not double bath ? inputs.CylinderFactor > 1 ? FanStream : Shade
                : bath <= 274 ? IceBath
                : WaterBath;
            yield return new HookupSetting(HookupItem.CylinderCooling, stands, "valve and scale dry, never a flame");
        }
    }

    private static IEnumerable<StageWatch> Watches(PlanStep step, PlanRun run, StageResult? result, SimulationState after)
    {
        RecoveryJob job = run.Job;
        CylinderStanding? cylinder = run.Connected;
        Pressure goal = run.Goal;
        FindingValue Gauge(string name, Pressure absolute) => FindingValue.GaugePressure(name, job.Barometer.ToGauge(absolute), RoundingMode.Down);
        if (step.AppliancePressure is Pressure level && step.Kind == StageKind.VaporRecovery)
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, Gauge("appliance", level), "on the appliance's gauge; shut the inlet, stop");
        }

        if (step.Reason == StepReason.KeepLiquid && step.LowestPressure is Pressure floor)
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(floor), RoundingMode.Up), "not below that while there is liquid: throttle the inlet");
        }

        if (step.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery && KeepsTubes(job) && AtFreezing(job) is Pressure ice && (result is null || result.Before.Appliance.HasLiquid))
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(ice), RoundingMode.Up), "not long below that while there is liquid: the refrigerant is at the freezing point of water there");
        }

        if (step.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery && step.Reason != StepReason.KeepLiquid && DryIce.CanForm(job.Appliance.Fluid) && result is { Before.Appliance.HasLiquid: true })
        {
            yield return new StageWatch(WatchedBy.ApplianceGauge, FindingValue.GaugePressure("not below", job.Barometer.ToGauge(DryIce.TriplePressure(job.Appliance.Fluid)), RoundingMode.Up), "not below that while there is liquid: it turns to dry ice there");
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
            yield return new StageWatch(WatchedBy.CylinderGauge, Gauge("cylinder", cool), step.Kind == StageKind.Equalize ? step.Reason == StepReason.VaporFirst ? "on the cylinder's gauge: enough for liquid" : "on the cylinder's gauge: even enough" : "on the cylinder's gauge: cool enough");
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

        if (step.Kind == StageKind.Equalize && result is not null && after.Cylinder is CylinderState even && !(step.CylinderPressure is Pressure stop && even.Pressure.Pascals > EvenEnough * stop.Pascals))
        {
            yield return new StageWatch(WatchedBy.Scale, FindingValue.Mass("gross", even.GrossWeight), "on the scale, which comes to rest: even enough");
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
            yield return new StageWatch(WatchedBy.ApplianceGauge, Gauge("level", goal), "it may not come above the level meanwhile");
        }

        if ((step.Duration is not null && step.CylinderPressure is null) || step.Kind is StageKind.Hold)
        {
            Duration time = step.Duration ?? result?.Duration ?? Duration.Zero;
            string what = step.Kind == StageKind.Hold ? "watch the gauge"
                : step.Kind is StageKind.Rest or StageKind.Warm ? "then go on"
                : step.Reason == StepReason.UntilChange ? "then change over: another cylinder lets the machine go on faster"
                : step.Reason == StepReason.GiveUp ? "stop then: it crawls"
                : "then stop";
            yield return new StageWatch(WatchedBy.Clock, FindingValue.Duration("time", time), what);
        }
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
        return new Mass(cylinder.Cylinder.TareWeight.Kilograms + CylinderMass(result.Trajectory, time), MassUnit.Kilogram);
    }

    /// <summary>kg in the cylinder at a time, s, between the points of a course.</summary>
    private static double CylinderMass(Trajectory points, double time)
    {
        int at = 0;
        while (at < points.Count - 2 && points[at + 1].Seconds < time)
        {
            at++;
        }

        double span = points[at + 1].Seconds - points[at].Seconds;
        double share = span > 0 ? Math.Min(1, Math.Max(0, (time - points[at].Seconds) / span)) : 0;
        return points[at].CylinderKilograms + (share * (points[at + 1].CylinderKilograms - points[at].CylinderKilograms));
    }

    private static IReadOnlyList<ScaleReading> Readings(StageKind kind, StageResult? result, CylinderStanding? cylinder)
    {
        if (cylinder is null || result is null || result.Trajectory.Count < 2
            || !StepSimulation.MovesRefrigerant(kind))
        {
            return [];
        }

        double end = result.Duration.Seconds;
        double tare = cylinder.Cylinder.TareWeight.Kilograms;
        var readings = new List<ScaleReading>(MostReadings + 1);
        for (int i = 0; i <= MostReadings; i++)
        {
            double time = end * i / MostReadings;
            readings.Add(new ScaleReading(new Duration(time, DurationUnit.Second), new Mass(tare + CylinderMass(result.Trajectory, time), MassUnit.Kilogram)));
        }

        return readings.AsReadOnly();
    }
}
