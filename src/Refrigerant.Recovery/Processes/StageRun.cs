using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>Runs the balances of a stage and says why they stopped.</summary>
internal static class StageRun
{
    /// <summary>Order in which conditions that hold already at the start are named.</summary>
    private static readonly StageEnd[] Ends =
    [
        StageEnd.TargetReached, StageEnd.LiquidGone, StageEnd.CylinderFull, StageEnd.LowPressureSwitch,
        StageEnd.HighPressureCutout, StageEnd.Freezing, StageEnd.Stalled,
    ];

    /// <summary>Integrates unless an event that ends the stage holds already at the start.</summary>
    public static OdeOutcome Integrate(
        RecoverySystem system, double[] state, double duration, double longestStep, double tolerance, int maximumSteps)
    {
        var values = new double[system.EventCount];
        if (system.Events(state, values))
        {
            for (int i = 0; i < values.Length; i++)
            {
                bool ends = i is not RecoverySystem.LiquidGoneEvent && (i is not RecoverySystem.FreezingEvent || system.StopAtFreezing);
                if (ends && !(values[i] > 0))
                {
                    system.OnStep(0, state);
                    return new OdeOutcome(OdeStopReason.Event, 0, i, 0, 0, 1);
                }
            }
        }

        return new OdeIntegrator(system).Integrate(state, 0, duration, new OdeOptions(tolerance, longestStep, maximumSteps));
    }

    public static StageEnd End(in OdeOutcome outcome) => outcome.Reason switch
    {
        OdeStopReason.Event => Ends[outcome.EventIndex],
        OdeStopReason.EndTime => StageEnd.TimeLimit,
        OdeStopReason.StepLimit => StageEnd.StepLimit,
        OdeStopReason.InvalidState => StageEnd.PropertyRange,
        _ => throw new InvalidOperationException($"Unknown reason {outcome.Reason}."),
    };
}
