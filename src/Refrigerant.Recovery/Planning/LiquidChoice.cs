using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

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

    /// <summary>
    /// Liquid goes into no cylinder whose pressure is below that at this temperature, K: it would flash and chill the steel towards −20 °F, below which carbon steel is not to be used
    /// (vapor first is common practice, no source; the temperature from memory).
    /// </summary>
    private const double ColdestFlash = 253.15;

    /// <summary>Before push-pull the pressures are even enough at this share of the appliance's: the last tenth takes as long as all before.</summary>
    private const double NearlyEven = 0.9;

    /// <summary>Two ways nearer to each other than this share and these seconds are planned to their end before one is taken. Our choice.</summary>
    private const double NearTie = 0.15;
    private const double TieTime = 60;

    /// <summary>A liquid hose that rises by more than this, m, is named as what stands in the way. Our choice.</summary>
    private const double MuchRise = 3;

    /// <summary>A way that takes longer than this, s, bounds no other: 1000 days.</summary>
    private const double LongestLook = 8.64e7;

    /// <summary>A way is looked at for this share of the time that it has; one that goes on so and takes more than that time by this factor is none. Our choice.</summary>
    private const double FirstLook = 0.1;
    private const double FarBehind = 1.2;

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

        bool goesOn = drawn.Result?.End == StageEnd.CylinderFull && Reach(now) >= Least(drawn.Kind);
        if (last == drawn)
        {
            return drawn.Result?.End != StageEnd.CylinderFull ? drawn.Kind == StageKind.PushPull ? new PlanStep(StageKind.HoseChange) : null
                : now.NextCylinder is not CylinderStanding next ? null
                : goesOn || drawn.Kind != StageKind.PushPull ? new PlanStep(StageKind.CylinderChange) { Cylinder = next.Cylinder }
                : new PlanStep(StageKind.HoseChange);
        }

        return !goesOn || now.Stages.Any(stage => stage.Kind == StageKind.HoseChange) ? null
            : last.Kind == StageKind.CylinderChange && Before(now, drawn.Kind) is PlanStep vapor ? vapor
            : last.Kind is StageKind.CylinderChange or StageKind.Equalize ? Step(drawn.Kind)
            : null;
    }

    /// <summary>Why push-pull is not used: null where it is.</summary>
    public static string? WhyNoPush(RecoveryJob job, IReadOnlyList<PlannedStage> stages, double liquid) =>
        job.PushPull == PushPullUse.Never || stages.Any(stage => stage.Kind == StageKind.PushPull) ? null
        : !job.Appliance.LiquidReachable ? "no port below the liquid was given"
        : stages.Any(stage => stage.Kind == StageKind.LiquidRecovery) ? "drawing the liquid through the machine ends sooner"
        : liquid - job.Appliance.LiquidHeel.Kilograms < LeastPushed ? "there is too little liquid for it to pay (5 to 7 kg, 10 to 15 lb)"
        : job.Hoses.LiquidSide.Sum(hose => hose.Rise.Meters) > MuchRise ? "the liquid hose rises so far that little gets up: put the cylinder beside the appliance, or below it"
        : "the vapor is drawn as fast";

    private static PlanStep? First(PlanSituation now, PlannedStage last)
    {
        if (!now.Job.Appliance.LiquidReachable || Reach(now) < LeastDrawn)
        {
            return null;
        }

        // Vapor for a while precedes liquid through the machine, vapor until the pressures are even precedes push-pull.
        StageKind? kind = last.Kind != StageKind.Equalize ? Choose(now) : last.Step.Reason == StepReason.VaporFirst ? StageKind.LiquidRecovery : StageKind.PushPull;
        return kind is null ? null
            : last.Kind != StageKind.Equalize && Before(now, kind.Value) is PlanStep vapor ? vapor
            : Step(kind.Value);
    }

    /// <summary>Vapor into the cylinder before liquid goes there; null where none is needed.</summary>
    private static PlanStep? Before(PlanSituation now, StageKind kind)
    {
        if (!CanEqualize(now))
        {
            return null;
        }

        var even = new PlanStep(StageKind.Equalize) { Reason = kind == StageKind.PushPull ? StepReason.Usual : StepReason.VaporFirst };
        double least = NearlyEven * now.State.Appliance.Pressure.Pascals;
        if (kind != StageKind.PushPull)
        {
            least = now.Job.Appliance.Fluid.Model.TrySaturationAtTemperature(ColdestFlash, out Fluids.SaturationPoint cold) ? Math.Min(least, cold.Bubble.Pressure) : 0;
        }

        return now.State.Cylinder!.Pressure.Pascals >= least ? null : even with { CylinderPressure = new Pressure(least, PressureUnit.Pascal) };
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
        LiquidWay? pushed = push ? WayOf(now, StageKind.PushPull, job.Times.HoseChange.Seconds, double.PositiveInfinity) : null;
        if (job.PushPull == PushPullUse.Always && pushed is not null)
        {
            return StageKind.PushPull;
        }

        double bound = pushed is null ? double.PositiveInfinity : ((1 + NearTie) * pushed.WithVapor) + TieTime;
        LiquidWay? drawn = job.Machine.TakesLiquid ? WayOf(now, StageKind.LiquidRecovery, 0, bound) : null;
        bool isTie = pushed is not null && drawn is not null && pushed.WithVapor < ((1 + NearTie) * drawn.WithVapor) + TieTime;
        LiquidWay? sooner = drawn is null || (isTie ? now.EndsSooner(job with { PushPull = PushPullUse.Always }, job with { PushPull = PushPullUse.Never }) : pushed?.WithVapor <= drawn.WithVapor) ? pushed : drawn;
        return sooner is null || VaporIsAsFast(now, sooner.Seconds) ? null : sooner.Kind;
    }

    /// <summary>Whether as much leaves as vapor in the time in which the liquid in reach leaves as such.</summary>
    private static bool VaporIsAsFast(PlanSituation now, double seconds)
    {
        // No vapor recovery is faster than the machine's pace at the start; hoses may leave it much less.
        double reach = Reach(now);
        if (reach / seconds >= now.Pace)
        {
            return false;
        }

        var pull = new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal, Duration = new Duration(Math.Max(1, Math.Min(8.64e7, seconds)), DurationUnit.Second) };
        StageResult? seen = now.Preview(pull);
        double moved = seen?.RecoveredMass.Kilograms ?? 0;
        return seen?.End switch
        {
            StageEnd.TargetReached => !seen.Appliance.HasLiquid || moved >= reach,
            StageEnd.CylinderFull => moved * seconds >= reach * seen.Duration.Seconds,
            _ => moved >= reach,
        };
    }

    /// <summary>What a way of taking the liquid comes to; null where it does not get far, or takes longer than another.</summary>
    private static LiquidWay? WayOf(PlanSituation now, StageKind kind, double handling, double other)
    {
        StageResult? even = Before(now, kind) is PlanStep vapor ? now.Preview(vapor) : null;
        double before = handling + (even?.Duration.Seconds ?? 0);
        if (before >= other)
        {
            return null;
        }

        SimulationState from = even?.After ?? now.State;
        PlanStep step = Step(kind);
        if (other < LongestLook && IsFarBehind(now, step, from, other - before))
        {
            return null;
        }

        StageResult? seen = now.Preview(other < LongestLook ? step with { Duration = new Duration(Math.Max(1, other - before), DurationUnit.Second) } : step, from);
        if (seen is null or { End: StageEnd.TimeLimit })
        {
            return null;
        }

        now.Remember(step, from, seen);
        double reach = Reach(now);
        double moved = seen.RecoveredMass.Kilograms;
        double taken = moved + (even?.RecoveredMass.Kilograms ?? 0);
        bool isFull = seen.End == StageEnd.CylinderFull;
        if (!(moved > LeastShare * reach || (isFull && moved > 0)))
        {
            return null;
        }

        // With the next cylinder it goes on as before; what it leaves is drawn as vapor, at the machine's pace at best.
        double share = isFull && reach - taken >= Least(kind) ? Math.Max(1, reach / taken) : 1;
        double left = now.State.Appliance.LiquidMass.Kilograms - (share * taken);
        double seconds = handling + ((before - handling + seen.Duration.Seconds) * share);
        return new LiquidWay(kind, seconds, seconds + (Math.Max(0, left) / now.Pace));
    }

    /// <summary>Whether a way that goes on as it begins takes far longer than the time that it has, s.</summary>
    private static bool IsFarBehind(PlanSituation now, PlanStep step, SimulationState from, double most)
    {
        double look = Math.Max(1, FirstLook * most);
        StageResult? begun = now.Preview(step with { Duration = new Duration(look, DurationUnit.Second) }, from);
        return begun is { End: StageEnd.TimeLimit } && begun.RecoveredMass.Kilograms * most * FarBehind < Reach(now) * look;
    }

    private static double Least(StageKind kind) => kind == StageKind.PushPull ? LeastPushed : LeastDrawn;

    /// <summary>Liquid that a port below it reaches, kg.</summary>
    private static double Reach(PlanSituation now) => now.State.Appliance.LiquidMass.Kilograms - now.Job.Appliance.LiquidHeel.Kilograms;

    private static bool CanEqualize(PlanSituation now) =>
        now.State.Cylinder is CylinderState cylinder && cylinder.Pressure.Pascals < NearlyEven * now.State.Appliance.Pressure.Pascals;

    private static PlanStep Step(StageKind kind) => new(kind) { IsThrottled = kind == StageKind.LiquidRecovery };

    /// <summary>A way of taking the liquid.</summary>
    /// <param name="Kind">Push-pull, or through the machine.</param>
    /// <param name="Seconds">Time for the liquid in reach.</param>
    /// <param name="WithVapor">The same with what is left drawn as vapor.</param>
    private sealed record LiquidWay(StageKind Kind, double Seconds, double WithVapor);
}
