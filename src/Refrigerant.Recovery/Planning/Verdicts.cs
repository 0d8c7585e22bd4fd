using System;
using System.Linq;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The verdict on a plan, from what its stages came to, whatever strategy chose them.</summary>
internal static class Verdicts
{
    private const double ShortestHold = 1;

    /// <summary>A part at this many times the level stands above it.</summary>
    private const double AboveLevel = 1.05;

    /// <summary>Metal within this of 0 °C, K, is what throttles a pull that is kept above freezing.</summary>
    private const double NearFreezing = 2;

    public static LevelVerdict For(PlanRun run)
    {
        ApplianceState end = run.State.Appliance;
        Duration held = HeldFor(run);
        LevelOutcome outcome = Outcome(run, end, held);
        bool reached = outcome is LevelOutcome.ReachedAndHeld or LevelOutcome.Reached or LevelOutcome.NothingToRecover || (outcome == LevelOutcome.ShareRecovered && !end.HasLiquid);
        return new LevelVerdict(
            outcome,
            reached ? LevelObstacle.None : Obstacle(run, end),
            held,
            end.Pressure,
            end.LiquidMass,
            new Ratio(run.InCylinders / run.Job.Appliance.Charge.Kilograms, RatioUnit.DecimalFraction),
            run.IsAtLevel(end));
    }

    private static LevelOutcome Outcome(PlanRun run, ApplianceState end, Duration held)
    {
        if (run.NeedsNothing)
        {
            return LevelOutcome.NothingToRecover;
        }

        bool asked = run.Job.Times.Hold.Seconds >= ShortestHold;
        bool atLevel = run.IsAtLevel(end) && run.Stages.Count > 0;
        if (atLevel && IsHidden(run, end))
        {
            return LevelOutcome.NotReached;
        }

        if (atLevel && end.HasLiquid)
        {
            return LevelOutcome.ReachedOverLiquid;
        }

        if (atLevel && (!asked || held.Seconds >= run.Job.Times.Hold.Seconds * (1 - 1e-9)))
        {
            return asked ? LevelOutcome.ReachedAndHeld : LevelOutcome.Reached;
        }

        if (run.IsShareRecovered(end))
        {
            return LevelOutcome.ShareRecovered;
        }

        bool wasThere = run.Stages.Any(stage => stage.Kind == StageKind.VaporRecovery && run.IsAtLevel(stage.After));
        return !wasThere ? LevelOutcome.NotReached
            : end.HasLiquid ? LevelOutcome.ReachedOverLiquid
            : LevelOutcome.ReachedNotHeld;
    }

    /// <summary>Whether a part that the gauge does not see stands above the level.</summary>
    public static bool IsHidden(PlanRun run, ApplianceState end) => IsAbove(run, end, _ => true);

    /// <summary>Whether a part that the gauge does not see, one of those that count, stands above the level.</summary>
    public static bool IsAbove(PlanRun run, ApplianceState state, Func<int, bool> counts) => state.Parts.Count > 1
        && state.Sections.Where((_, i) => i != run.Job.Appliance.VaporPortSection && counts(i)).Any(section => section.Pressure.Pascals > AboveLevel * run.Requirement.RequiredPressure.Pascals);

    /// <summary>The hold after the last pull, where the pressure stayed at the level.</summary>
    private static Duration HeldFor(PlanRun run)
    {
        PlannedStage? hold = run.Stages.LastOrDefault(stage => stage.Kind is StageKind.Hold or StageKind.VaporRecovery or StageKind.PushPull or StageKind.LiquidRecovery);
        return hold is { Kind: StageKind.Hold } && run.IsAtLevel(hold.After) && !hold.After.HasLiquid ? hold.Duration : Duration.Zero;
    }

    private static LevelObstacle Obstacle(PlanRun run, ApplianceState end)
    {
        if (run.StartsAboveCutout)
        {
            return LevelObstacle.ApplianceAboveCutout;
        }

        if (run.RanOutOfSteps)
        {
            return LevelObstacle.TooManyPulls;
        }

        if (run.Job.Cylinders.Count == 0)
        {
            return LevelObstacle.NoCylinder;
        }

        if (run.Stages.Count == 0)
        {
            return run.Cylinders.Any(cylinder => cylinder.IsUsable) ? LevelObstacle.StoppedByStrategy
                : run.Cylinders.Any(cylinder => cylinder.MayBeFilled) ? LevelObstacle.CylindersFull
                : LevelObstacle.NoFitCylinder;
        }

        if (run.IsAtLevel(end) && IsHidden(run, end))
        {
            return LevelObstacle.HiddenSection;
        }

        PlannedStage? last = run.Stages.LastOrDefault(stage => stage.Result is not null && StepSimulation.RunsMachine(stage.Kind));
        bool freezes = run.Job.KeepAboveFreezing && run.Job.Appliance.Water is not null && end.MetalTemperature.Kelvins < MetalShell.FreezingPoint + NearFreezing;
        if (freezes && last?.Result?.End is not (StageEnd.CylinderFull or StageEnd.HighPressureCutout or StageEnd.CylinderPressure or StageEnd.StepLimit or StageEnd.PropertyRange))
        {
            return LevelObstacle.Freezing;
        }

        if (last?.Step.Reason == StepReason.GiveUp)
        {
            return end.HasLiquid ? LevelObstacle.Heat : run.Job.Appliance.Oil is not null ? LevelObstacle.Oil : LevelObstacle.DeepestVacuum;
        }

        return last?.Result?.End switch
        {
            StageEnd.CylinderFull => LevelObstacle.CylindersFull,
            StageEnd.HighPressureCutout => LevelObstacle.HighPressureCutout,
            StageEnd.CylinderPressure => LevelObstacle.CylinderPressure,
            StageEnd.ThermalCutout => LevelObstacle.ThermalCutout,
            StageEnd.LowPressureSwitch => LevelObstacle.LowPressureSwitch,
            StageEnd.PropertyRange => last.Result.CylinderOutOfRange ? LevelObstacle.CylinderPropertyRange : LevelObstacle.PropertyRange,
            StageEnd.StepLimit => LevelObstacle.NotComputed,
            StageEnd.Stalled => LevelObstacle.DeepestVacuum,
            _ => run.HasOwnStrategy ? LevelObstacle.StoppedByStrategy
                : end.HasLiquid ? LevelObstacle.Heat : run.Job.Appliance.Oil is not null ? LevelObstacle.Oil : LevelObstacle.TooManyPulls,
        };
    }
}
