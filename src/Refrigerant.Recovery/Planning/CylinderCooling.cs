using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>What cools a cylinder: what is at hand, and what is in use.</summary>
internal static class CylinderCooling
{
    /// <summary>A bath against still air; a fan against still air: common practice, no source.</summary>
    private const double Bath = 50;
    private const double Fan = 3;

    /// <summary>The cooling in use since the connected cylinder was connected.</summary>
    public static SimulationInputs Of(IReadOnlyList<PlannedStage> stages)
    {
        for (int i = stages.Count - 1; i >= 0 && stages[i].Kind is not (StageKind.CylinderChange or StageKind.SetUp); i--)
        {
            if (Cools(stages[i].Step.Inputs))
            {
                return CylinderOnly(stages[i].Step.Inputs);
            }
        }

        return default;
    }

    /// <summary>The best cooling at hand: a bath no warmer than the air, else a fan; that in use where neither is there.</summary>
    public static SimulationInputs Best(RecoveryJob job, SimulationInputs inUse)
    {
        SiteAids aids = job.Aids;
        double bath = Math.Min(aids.WaterBath?.Kelvins ?? double.PositiveInfinity, aids.HasIce ? MeltingIce : double.PositiveInfinity);
        return bath <= job.Appliance.SurroundingsKelvin ? new SimulationInputs { CylinderFactor = Bath, CylinderSurroundings = bath }
            : aids.HasCylinderFan ? new SimulationInputs { CylinderFactor = Fan }
            : inUse;
    }

    /// <summary>Whether anything but still air cools the cylinder.</summary>
    public static bool Cools(in SimulationInputs inputs) => inputs.CylinderFactor > 1;

    /// <summary>Temperature that a cylinder can come to, K.</summary>
    public static double Coldest(RecoveryJob job, in SimulationInputs inputs) => inputs.CylinderSurroundings ?? job.Appliance.SurroundingsKelvin;

    /// <summary>The absolute pressure at which machine or cylinder must stop, Pa.</summary>
    public static double Limit(RecoveryJob job, RecoveryCylinder cylinder) =>
        Math.Min(job.Machine.HighPressureCutout.Pascals, FillFigures.HighestGaugePressure(cylinder) + job.Barometer.Pressure.Pascals);

    private const double MeltingIce = 273.15;

    private static SimulationInputs CylinderOnly(in SimulationInputs inputs) =>
        new() { CylinderFactor = inputs.CylinderFactor, CylinderSurroundings = inputs.CylinderSurroundings };
}
