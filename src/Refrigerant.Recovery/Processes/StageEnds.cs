using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Processes;

/// <summary>Why a stage ended, in words.</summary>
internal static class StageEnds
{
    public static string Why(StageEnd end) => end switch
    {
        StageEnd.TargetReached => "the pressure asked for is reached",
        StageEnd.LiquidGone => "the liquid in reach is gone",
        StageEnd.CylinderFull => "the cylinder is at its limit",
        StageEnd.LowPressureSwitch => "the low-pressure switch stops the machine",
        StageEnd.HighPressureCutout => "the high-pressure cut-out stops the machine",
        StageEnd.Stalled => "next to nothing flows any more",
        StageEnd.Freezing => "water in the tubes would freeze",
        StageEnd.TimeLimit => "the time allowed is over",
        StageEnd.PropertyRange => "the refrigerant leaves the range of its equation of state",
        StageEnd.StepLimit => "the integration comes to its bound on steps",
        StageEnd.CylinderPressure => "the cylinder is at the pressure it is built to see at work",
        StageEnd.DesignPressure => "the appliance is at the pressure it is built for",
        StageEnd.ThermalCutout => "the thermal cut-out stops the machine",
        StageEnd.TimeOver => "the time asked for is over",
        _ => "there is nothing to do",
    };
}
