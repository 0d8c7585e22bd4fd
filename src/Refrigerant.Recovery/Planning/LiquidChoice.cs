using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>The liquid: by push-pull where it pays, through the machine where machine and ports allow, or not at all.</summary>
internal static class LiquidChoice
{
    /// <summary>Liquid below which push-pull does not pay: 10 lb (trade education; 15 lb is in circulation too).</summary>
    private const double LeastPushed = 10 * 0.45359237;

    /// <summary>Liquid below which drawing it through the machine is not worth a word, kg. Our choice.</summary>
    private const double LeastDrawn = 0.5;

    /// <summary>A way that comes to less than this share of the liquid in reach is none.</summary>
    private const double LeastShare = 0.2;

    /// <summary>The next step on the liquid; null where vapor is to be drawn, or was.</summary>
    public static PlanStep? Next(PlanSituation now)
    {
        if (now.Connected is null || now.Stages.Any(stage => stage.Kind is StageKind.VaporRecovery or StageKind.Close or StageKind.Hold))
        {
            return null;
        }

        PlannedStage last = now.Stages[now.Stages.Count - 1];
        PlannedStage? drawn = now.Stages.LastOrDefault(stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery);
        if (drawn is null)
        {
            return First(now, last);
        }

        bool goesOn = drawn.Result?.End == StageEnd.CylinderFull && Reach(now) >= (drawn.Kind == StageKind.PushPull ? LeastPushed : LeastDrawn);
        if (last == drawn)
        {
            return drawn.Result?.End != StageEnd.CylinderFull ? drawn.Kind == StageKind.PushPull ? new PlanStep(StageKind.HoseChange) : null
                : now.NextCylinder is not CylinderStanding next ? null
                : goesOn || drawn.Kind != StageKind.PushPull ? new PlanStep(StageKind.CylinderChange) { Cylinder = next.Cylinder }
                : new PlanStep(StageKind.HoseChange);
        }

        return !goesOn || now.Stages.Any(stage => stage.Kind == StageKind.HoseChange) ? null
            : last.Kind == StageKind.CylinderChange && drawn.Kind == StageKind.PushPull && CanEqualize(now) ? new PlanStep(StageKind.Equalize)
            : last.Kind is StageKind.CylinderChange or StageKind.Equalize ? Step(drawn.Kind)
            : null;
    }

    /// <summary>Why push-pull is not used: null where it is.</summary>
    public static string? WhyNoPush(RecoveryJob job, IReadOnlyList<PlannedStage> stages) =>
        job.PushPull == PushPullUse.Never || stages.Any(stage => stage.Kind == StageKind.PushPull) ? null
        : !job.Appliance.LiquidReachable ? "no port below the liquid was given"
        : job.Hoses.LiquidSide.Count == 0 ? "there is no liquid hose"
        : stages.Any(stage => stage.Kind == StageKind.LiquidRecovery) ? "drawing the liquid through the machine ends sooner"
        : "there is too little liquid for it to pay (10 to 15 lb)";

    private static PlanStep? First(PlanSituation now, PlannedStage last)
    {
        if (!now.Job.Appliance.LiquidReachable || Reach(now) < LeastDrawn)
        {
            return null;
        }

        StageKind? kind = last.Kind == StageKind.Equalize ? StageKind.PushPull : Choose(now);
        return kind is null ? null
            : kind == StageKind.PushPull && last.Kind != StageKind.Equalize && CanEqualize(now) ? new PlanStep(StageKind.Equalize)
            : Step(kind.Value);
    }

    private static StageKind? Choose(PlanSituation now)
    {
        RecoveryJob job = now.Job;
        bool push = job.Hoses.LiquidSide.Count > 0 && job.PushPull switch
        {
            PushPullUse.Never => false,
            PushPullUse.Always => true,
            _ => Reach(now) >= LeastPushed,
        };
        SimulationState from = now.State;
        if (push && CanEqualize(now) && now.Preview(new PlanStep(StageKind.Equalize)) is { } even)
        {
            from = even.After;
        }

        double pushed = push ? TimeFor(now, Step(StageKind.PushPull), from, job.Times.HoseChange.Seconds) : double.PositiveInfinity;
        double drawn = job.Machine.TakesLiquid ? TimeFor(now, Step(StageKind.LiquidRecovery), now.State, 0) : double.PositiveInfinity;
        if (job.PushPull == PushPullUse.Always && !double.IsPositiveInfinity(pushed))
        {
            return StageKind.PushPull;
        }

        double sooner = Math.Min(pushed, drawn);
        if (double.IsPositiveInfinity(sooner))
        {
            return null;
        }

        // No vapor recovery is faster than the machine's pace at the start.
        return Reach(now) / sooner < now.Pace ? null : pushed <= drawn ? StageKind.PushPull : StageKind.LiquidRecovery;
    }

    /// <summary>Time to take the liquid in reach this way, s; infinite where it does not get far.</summary>
    private static double TimeFor(PlanSituation now, PlanStep step, SimulationState from, double handling)
    {
        StageResult? seen = now.Preview(step, from);
        double reach = Reach(now);
        double moved = seen?.RecoveredMass.Kilograms ?? 0;
        bool far = moved > LeastShare * reach || (seen?.End == StageEnd.CylinderFull && moved > 0);
        return far ? handling + (seen!.Duration.Seconds * reach / moved) : double.PositiveInfinity;
    }

    /// <summary>Liquid that a port below it reaches, kg.</summary>
    private static double Reach(PlanSituation now) => now.State.Appliance.LiquidMass.Kilograms - now.Job.Appliance.LiquidHeel.Kilograms;

    private static bool CanEqualize(PlanSituation now) =>
        now.State.Cylinder is CylinderState cylinder && cylinder.Pressure.Pascals < 0.95 * now.State.Appliance.Pressure.Pascals;

    private static PlanStep Step(StageKind kind) => new(kind) { IsThrottled = kind == StageKind.LiquidRecovery };
}
