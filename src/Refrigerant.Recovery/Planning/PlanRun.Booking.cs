using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>What handling takes, and what it costs in refrigerant.</summary>
internal sealed partial class PlanRun
{
    /// <summary>The vessel that stands for the cylinder in the transfers of a stage.</summary>
    private const string CylinderVessel = "cylinder";

    /// <summary>The clearing of the machine; null until it is done.</summary>
    public MachineClearing? Clearing { get; private set; }

    private static double Received(StageResult result)
    {
        double sum = 0;
        foreach (Transfer transfer in result.Transfers)
        {
            sum += transfer.To == CylinderVessel ? transfer.Mass.Kilograms : 0;
            sum -= transfer.From == CylinderVessel ? transfer.Mass.Kilograms : 0;
        }

        return sum;
    }

    /// <summary>How long a step takes, s: handling takes its time even where the appliance comes to a limit meanwhile.</summary>
    private double Taken(PlanStep step, StageResult? result) => result is null ? Seconds(step)
        : step.Kind is StageKind.SetUp or StageKind.HoseChange or StageKind.CylinderChange ? Math.Max(Seconds(step), result.Duration.Seconds)
        : result.Duration.Seconds;

    /// <summary>What handling takes where no simulation tells, s.</summary>
    private double Seconds(PlanStep step) => step.Duration?.Seconds ?? StepSimulation.Handling(step.Kind, Job.Times);

    private MachineClearing Clear()
    {
        if (Connected?.State is not CylinderState cylinder)
        {
            // Before the job: into a cylinder of the machine's last refrigerant.
            return Machine.Change!.Clearing;
        }

        return Clearing = MachineClearing.Estimate(Job.Appliance.Fluid, Job.Machine, Job.Hoses, Ambient, cylinder.Pressure, Job.SweepPressure);
    }

    /// <summary>What machine and hoses keep when the job is over, whether they are taken off or not.</summary>
    private void Keep()
    {
        if (Connected?.State is not CylinderState cylinder)
        {
            return;
        }

        MachineClearing cleared = Clearing
            ?? MachineClearing.Estimate(Job.Appliance.Fluid, Job.Machine, Job.Hoses, Ambient, cylinder.Pressure, Job.SweepPressure);
        double machine = (Clearing is null ? cleared.HeldBefore : cleared.Trapped).Kilograms;
        ApplianceState appliance = State.Appliance;
        StatePoint vapor = appliance.HasLiquid && appliance.Vessel.Vapor.Phase != Phase.Undefined ? appliance.Vessel.Vapor : appliance.Vessel.Bulk;

        // More cannot be held than was taken out.
        InHosesAndMachine = Math.Min(machine + (HoseSet.VolumeOf(Job.Hoses.VaporSide) * vapor.Density), HalfOfDelivered());
    }

    /// <summary>Books what escapes at connections, never more than a small share of what was delivered.</summary>
    private void Release(int connections, bool liquid)
    {
        if (Connected?.State is CylinderState cylinder)
        {
            StatePoint phase = liquid && cylinder.Vessel.Liquid.Phase != Phase.Undefined ? cylinder.Vessel.Liquid : cylinder.Vessel.Vapor;
            double density = phase.Phase == Phase.Undefined ? cylinder.Vessel.Bulk.Density : phase.Density;
            Released = Math.Min(Released + (connections * Job.LossPerConnection.CubicMeters * density), HalfOfDelivered());
        }
    }

    private double HalfOfDelivered() => 0.5 * Math.Max(0, Delivered);
}
