using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using static Refrigerant.Recovery.Planning.HookupItem;
using static Refrigerant.Recovery.Planning.HookupPosition;

namespace Refrigerant.Recovery.Planning;

/// <summary>How valves, machine, scale, heaters and fans stand in each kind of stage: common practice, no source.</summary>
internal static class HookupSettings
{
    private const string LiquidFlows = "first: liquid keeps flowing when the machine stops";

    private static readonly HookupSetting OutletOpen = new(MachineOutletValve, Open, "liquid in the hose behind it stays open to the machine's condenser: never shut at both ends");

    /// <param name="step">The step.</param>
    /// <param name="job">The job.</param>
    /// <param name="hoses">How hoses and machine are found.</param>
    public static IEnumerable<HookupSetting> For(PlanStep step, RecoveryJob job, HosesNow hoses) => step.Kind switch
    {
        StageKind.SetUp =>
        [
            new HookupSetting(Machine, Off, "the appliance's compressor locked out, wiring and moving parts safe; what warms it or blows is on a supply of its own"),
            .. Purge(job),
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
            new HookupSetting(FloatSwitch, Bypassed, "only where it would stop the machine: it does not stop the liquid, which siphons on; the scale guards, and someone stays at the liquid valve"),
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
            new HookupSetting(CylinderLiquidValve, Shut, LiquidFlows),
            new HookupSetting(Machine, Off),
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(ApplianceVaporPort, Shut, "before its hose is moved"),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Open, "its hose stays on it and is drawn empty through it later: never shut at both ends"),
            new HookupSetting(HoseValves, Shut, "of the hoses that are moved; low-loss fittings"),
        ],
        StageKind.VaporRecovery =>
        [
            new HookupSetting(ApplianceVaporPort, Open),
            .. SecondPort(job, Open),
            .. LiquidPort(job, Open, "its hose, shut at the cylinder or at the machine, is drawn empty through the appliance"),
            new HookupSetting(CylinderLiquidValve, Open),
            Inlet(step, job),
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
            new HookupSetting(CylinderLiquidValve, Shut, LiquidFlows),
            new HookupSetting(Machine, Off),
            .. hoses.Hooked == StageKind.PushPull ? Array.Empty<HookupSetting>() : [OutletOpen],
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Open, "liquid in its hose stays open to the appliance: never shut at both ends"),
            new HookupSetting(Scale, Read, "full cylinder weighed and labelled, the next one on the scale"),
        ],
        StageKind.MachineClearing =>
        [
            .. LiquidFirst(job, hoses.Hooked),
            new HookupSetting(MachineInletValve, Shut),
            new HookupSetting(Machine, Clearing),
            new HookupSetting(
                CylinderLiquidValve,
                Open,
                hoses.Hooked == StageKind.PushPull ? LiquidFlows + "; open again with the machine's outlet on it, shut at the end" : "shut at the end, with the machine's outlet"),
        ],
        StageKind.OilDrain =>
        [
            new HookupSetting(Machine, Off, "refrigerant out first"),
            new HookupSetting(NitrogenRegulator, Open, "0.7 to 1 bar (10 to 15 psi) on its gauge, never air over hot oil, never more than the container's hose holds; outlet side for the separator, inlet side for the compressor"),
        ],
        StageKind.OilFill =>
        [
            new HookupSetting(Machine, Off, "drawn in by vacuum, separator and compressor each its own volume"),
        ],
        StageKind.Close =>
        [
            .. Stopped(hoses),
            .. hoses.MachineFull && hoses.Hooked != StageKind.PushPull ? new[] { OutletOpen } : [],
            new HookupSetting(CylinderVaporValve, Shut),
            new HookupSetting(ApplianceVaporPort, Shut),
            .. SecondPort(job, Shut),
            .. LiquidPort(job, Shut, hoses.HasLiquid ? "last: what liquid its hose holds goes back through it, or is drawn off, first" : null),
            new HookupSetting(HoseValves, Shut, hoses.HasLiquid || hoses.MachineFull ? "hoses off by low-loss fittings, caps on; none that is full of liquid is shut at both ends" : "hoses off by low-loss fittings, caps on"),
            new HookupSetting(Scale, Read, "label: refrigerant, \"recovered\", weight, date"),
        ],
        _ => [],
    };

    /// <summary>Dry nitrogen through a machine that held what burns or is toxic, before air or anyone comes near it.</summary>
    private static HookupSetting[] Purge(RecoveryJob job)
    {
        if (job.ForeignInMachine is not Fluids.Fluid last)
        {
            return [];
        }

        RefrigerantFacts facts = RefrigerantFacts.For(last);
        string? why = facts.IsFlammable == true ? "which burns: in the open, nothing near that could light it" : facts.IsToxic == true ? "which is toxic: in the open, protection on" : null;
        return why is null ? [] : [new HookupSetting(NitrogenRegulator, Open, $"first: dry nitrogen through the cleared machine, which last held {last.Designation}, {why}")];
    }

    /// <summary>The last cylinder is shut: before the machine stops where liquid flows on by itself, after it where the machine would run against a shut valve.</summary>
    private static IEnumerable<HookupSetting> Stopped(HosesNow hoses)
    {
        HookupSetting[] machine = hoses.MachineFull ? [new HookupSetting(Machine, Off), new HookupSetting(MachineInletValve, Shut)] : [];
        return hoses.HasLiquid ? [new HookupSetting(CylinderLiquidValve, Shut, LiquidFlows), .. machine] : [.. machine, new HookupSetting(CylinderLiquidValve, Shut)];
    }

    /// <summary>What is shut or stays open before the machine is cleared, where liquid flowed last and the hoses are still those for it.</summary>
    private static IEnumerable<HookupSetting> LiquidFirst(RecoveryJob job, StageKind? hooked)
    {
        if (hooked is StageKind.PushPull or StageKind.LiquidRecovery)
        {
            yield return new HookupSetting(CylinderVaporValve, Shut);
            yield return new HookupSetting(ApplianceVaporPort, Shut);
            foreach (HookupSetting port in LiquidPort(job, Open, "liquid in its hose stays open to the appliance: never shut at both ends"))
            {
                yield return port;
            }
        }
    }

    /// <summary>The liquid port, where there is one with a hose on it.</summary>
    private static HookupSetting[] LiquidPort(RecoveryJob job, HookupPosition position, string? why = null) =>
        job.HasLiquidHose ? [new HookupSetting(ApplianceLiquidPort, position, why)] : [];

    /// <summary>The second vapor port, where a hose hangs on it.</summary>
    private static HookupSetting[] SecondPort(RecoveryJob job, HookupPosition position) =>
        job.Hoses.SecondVaporSide.Count > 0 ? [new HookupSetting(ApplianceSecondVaporPort, position)] : [];

    /// <summary>The machine's inlet while it draws vapor: wide open, or throttled and by what gauge.</summary>
    private static HookupSetting Inlet(PlanStep step, RecoveryJob job) =>
        step.Reason == StepReason.KeepLiquid ? new HookupSetting(MachineInletValve, Throttled, "by the appliance's gauge")
        : job.KeepsTubes ? new HookupSetting(MachineInletValve, Throttled, "by the appliance's gauge, so that the tubes do not freeze")
        : step.IsThrottled ? new HookupSetting(MachineInletValve, Throttled, "by the gauge at the outlet")
        : new HookupSetting(MachineInletValve, Open);

    /// <summary>Before the job: what the machine still holds goes into a cylinder of its own, which is not among the job's.</summary>
    public static IEnumerable<HookupSetting> ClearingFirst(RecoveryJob job)
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

    /// <summary>What warms the appliance and cools the cylinder.</summary>
    public static IEnumerable<HookupSetting> Heat(PlanStep step, RecoveryJob job)
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
}
