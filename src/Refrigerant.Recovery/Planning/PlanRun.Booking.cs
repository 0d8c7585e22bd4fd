using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What handling takes, and what it costs in refrigerant.</summary>
internal sealed partial class PlanRun
{
    /// <summary>The vessel that stands for the cylinder in the transfers of a stage.</summary>
    private const string CylinderVessel = "cylinder";

    /// <summary>Connections that are opened in a job of one cylinder.</summary>
    private const int MostConnections = 4;

    /// <summary>Share of the charge that machine and hoses are taken to keep at most.</summary>
    private const double MostKept = 0.05;

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

    /// <summary>
    /// Whether the connected cylinder is at its limit, by the scale or by the books: the machine is not cleared into it, since what machine and hoses hold would take it past the limit.
    /// </summary>
    public bool IsAtLimit => Connected is CylinderStanding cylinder && (!cylinder.IsUsable
        || (_stages.LastOrDefault(stage => StepSimulation.MovesRefrigerant(stage.Kind)) is { Result.End: StageEnd.CylinderFull } last && last.Cylinder == cylinder.Cylinder.Label));

    /// <summary>The kind of stage that the hoses are connected for; null for none yet.</summary>
    public StageKind? Hooked => _stages.LastOrDefault(stage => StepSimulation.MovesRefrigerant(stage.Kind) || stage.Kind == StageKind.HoseChange)?.Kind is StageKind kind
        ? kind == StageKind.HoseChange ? StageKind.VaporRecovery : kind
        : null;

    /// <summary>Whether the machine drew refrigerant and was not cleared since.</summary>
    public bool MachineHoldsLiquid => Clearing is null && _stages.Any(stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery or StageKind.VaporRecovery);

    private MachineClearing Clear()
    {
        if (Connected?.State is not CylinderState cylinder)
        {
            // Before the job: into a cylinder of the machine's last refrigerant.
            return Machine.Change!.Clearing;
        }

        if (IsAtLimit)
        {
            throw new InvalidOperationException($"The strategy clears the machine into \"{cylinder.Cylinder.Label}\", which is at its limit: connect another cylinder, or leave the machine as it is.");
        }

        return Clearing = ClearingAgainst(cylinder.Pressure);
    }

    private MachineClearing ClearingAgainst(Pressure cylinder) =>
        MachineClearing.Estimate(Job.Appliance.Fluid, Job.Machine, Job.Hoses, Ambient, cylinder, Job.SweepPressure);

    /// <summary>What the machine, cleared or not, and vapor of a density in the suction hoses come to, kg.</summary>
    private double InMachineAndHoses(MachineClearing clearing, bool isCleared, double density) =>
        (isCleared ? clearing.Trapped : Hooked == StageKind.PushPull ? clearing.HeldAsVapor : clearing.HeldBefore).Kilograms + (HoseSet.VolumeOf(Job.Hoses.VaporSide) * density);

    /// <summary>What machine and hoses keep when the job is over, whether they are taken off or not.</summary>
    private void Keep()
    {
        if (Connected?.State is not CylinderState cylinder)
        {
            return;
        }

        ApplianceState appliance = State.Appliance;
        StatePoint vapor = appliance.HasLiquid && appliance.Vessel.Vapor.Phase != Phase.Undefined ? appliance.Vessel.Vapor : appliance.Vessel.Bulk;

        // More cannot be held than was taken out.
        InHosesAndMachine = Math.Min(InMachineAndHoses(Clearing ?? ClearingAgainst(cylinder.Pressure), Clearing is not null, vapor.Density), HalfOfDelivered());
    }

    /// <summary>About what machine and hoses keep, kg, seen from the start: the cylinder as warm as the air, vapor of its pressure in the suction hoses.</summary>
    private double KeptByHoses()
    {
        if (!Job.Appliance.Fluid.Model.TrySaturationAtTemperature(Ambient.Kelvins, out SaturationPoint at))
        {
            return 0;
        }

        double vapor = at.Dew.Density * Job.Barometer.Pressure.Pascals / at.Dew.Pressure;
        double kept = InMachineAndHoses(ClearingAgainst(new Pressure(at.Bubble.Pressure, PressureUnit.Pascal)), Job.ClearMachine, vapor) + (MostConnections * Job.LossPerConnection.CubicMeters * at.Dew.Density);
        return Math.Min(kept, MostKept * Job.Appliance.Charge.Kilograms);
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
