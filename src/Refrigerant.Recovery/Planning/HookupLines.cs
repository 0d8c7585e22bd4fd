using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using static Refrigerant.Recovery.Planning.HookupPort;

namespace Refrigerant.Recovery.Planning;

/// <summary>From which port to which the hoses go in each kind of stage: common practice, no source.</summary>
internal static class HookupLines
{
    /// <param name="kind">The kind of stage.</param>
    /// <param name="job">The job.</param>
    /// <param name="isBefore">Whether no cylinder is connected yet.</param>
    public static IReadOnlyList<HookupLine> For(StageKind kind, RecoveryJob job, bool isBefore)
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
        job.HasLiquidHose ? [new HookupLine(ApplianceLiquid, MachineInlet, job.Hoses.LiquidSide)] : [];
}
