using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>
/// The usual way: sweep, vapor first, liquid by push-pull or through the machine where that pays, then one pull until a hold would pass, and the hold. It rests and cools,
/// throttles or changes the cylinder where a limit is near, and gives up where a person would.
/// </summary>
/// <remarks>It has no state: each step follows from the stages so far and from what the simulation shows ahead.</remarks>
public sealed class StandardStrategy : IRecoveryStrategy
{
    /// <summary>Rests that are made before the plan gives up on a cylinder that is too hot.</summary>
    private const int MostRests = 12;

    /// <summary>A rest in a bath is over within half an hour, one in air within an hour: common practice, no source.</summary>
    private const double BathRest = 1800;
    private const double AirRest = 3600;

    /// <summary>A rest goes down to this share of the limit, where the surroundings are cold enough.</summary>
    private const double RestShare = 0.75;

    /// <summary>A cylinder at this share of the pressure against which the level is in reach is cool enough.</summary>
    private const double NearLimit = 0.97;

    /// <summary>And no nearer to the pressure at the temperature of what cools than this.</summary>
    private const double NearSurroundings = 1.05;

    /// <summary>Efficiency that is so small a share of the best is that near the deepest vacuum. Our choice.</summary>
    internal const double NearDeepest = 0.2;

    /// <summary>A stage that moves less than this share of the charge, or lowers the pressure by less, is no progress.</summary>
    private const double Progress = 1e-4;

    /// <summary>A rest for a hot machine pays where the pull after it moves this share of the charge. Our choice.</summary>
    private const double LeastAfterRest = 0.02;

    /// <summary>Bound on vapor recoveries.</summary>
    private const int MostVaporStages = 60;

    private const double ShortestHold = 1;

    /// <summary>The one instance that is needed.</summary>
    public static StandardStrategy Instance { get; } = new();

    /// <inheritdoc/>
    public PlanStep? Next(PlanSituation now)
    {
        Numerics.Require.NotNull(now, nameof(now));
        return Beginning(now) ?? LiquidChoice.Next(now) ?? (IsFinishing(now) ? Finish(now) : Vapor(now) ?? Finish(now));
    }

    private static PlanStep? Beginning(PlanSituation now)
    {
        IReadOnlyList<PlannedStage> stages = now.Stages;
        bool Done(StageKind kind) => stages.Any(stage => stage.Kind == kind);
        if (Done(StageKind.HoseSweep))
        {
            return null;
        }

        if (now.NextCylinder is null && now.Connected is null)
        {
            return null;
        }

        MachineChange machine = now.Machine;
        if (!Done(StageKind.SetUp))
        {
            return machine.ClearsFirst && !Done(StageKind.MachineClearing) ? new PlanStep(StageKind.MachineClearing)
                : machine.ChangesOil && !Done(StageKind.OilDrain) ? new PlanStep(StageKind.OilDrain)
                : machine.ChangesOil && !Done(StageKind.OilFill) ? new PlanStep(StageKind.OilFill)
                : new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder };
        }

        return new PlanStep(StageKind.HoseSweep);
    }

    private static bool IsFinishing(PlanSituation now) =>
        now.Connected is null || now.Stages.Any(stage => stage.Kind is StageKind.Close || (stage.Kind == StageKind.MachineClearing && stage.Cylinder is not null));

    private static PlanStep? Finish(PlanSituation now)
    {
        if (now.Connected is null || now.Stages[now.Stages.Count - 1].Kind == StageKind.Close)
        {
            return null;
        }

        bool cleared = now.Stages[now.Stages.Count - 1].Kind == StageKind.MachineClearing;
        bool ran = now.Stages.Any(stage => stage.Result is not null && StepSimulation.RunsMachine(stage.Kind));
        return now.Job.ClearMachine && !cleared && ran && !now.IsAtLimit ? new PlanStep(StageKind.MachineClearing) : new PlanStep(StageKind.Close);
    }

    /// <summary>The next pull, hold, rest or change; null where the job is over.</summary>
    private static PlanStep? Vapor(PlanSituation now)
    {
        PlannedStage last = now.Stages[now.Stages.Count - 1];
        StageEnd? end = last.Result?.End;
        if (last.Kind == StageKind.VaporRecovery)
        {
            switch (end)
            {
                case StageEnd.CylinderFull:
                    return Change(now, StepReason.Usual);
                case StageEnd.HighPressureCutout or StageEnd.CylinderPressure or StageEnd.ThermalCutout:
                    return CoolDown(now, end.Value);
            }

            if (now.IsAtGoal && !now.State.Appliance.HasLiquid)
            {
                return NeedsHold(now) ? new PlanStep(StageKind.Hold) : null;
            }

            if (last.Step.Reason == StepReason.UntilChange)
            {
                return Change(now, StepReason.CoolerCylinder);
            }

            if (last.Step.Reason == StepReason.GiveUp)
            {
                return IsNearDeepest(now) ? Deepen(now) : null;
            }

            // It got no deeper: against a cooler or emptier cylinder it does.
            return end == StageEnd.Stalled ? Deepen(now)
                : end is StageEnd.TargetReached or StageEnd.TimeLimit && now.Stages.Count(stage => stage.Kind == StageKind.VaporRecovery) < MostVaporStages ? Pull(now, last)
                : null;
        }

        if (last.Kind == StageKind.Hold && (Held(now) || Pulls(now) >= now.Job.MaximumPulls))
        {
            return null;
        }

        return Pull(now, last);
    }

    private static PlanStep? Pull(PlanSituation now, PlannedStage last)
    {
        if (last.Kind is not (StageKind.Hold or StageKind.Rest or StageKind.Warm) && now.IsAtGoal && !now.State.Appliance.HasLiquid && !NeedsHold(now))
        {
            return null;
        }

        if (!now.Connected!.IsUsable)
        {
            return Change(now, StepReason.Usual);
        }

        PullPlan pull = new LookAhead(now).Best();
        if (pull.IsGood)
        {
            return pull.Step;
        }

        if (last.Kind == StageKind.Hold)
        {
            // The level was reached once; a pull that is known not to make it hold is none.
            return pull.Fate == PullFate.Limited ? CoolDown(now, pull.End) : null;
        }

        bool moves = now.State.Appliance.Mass.Kilograms - pull.After.Appliance.Mass.Kilograms > Progress * now.Job.Appliance.Charge.Kilograms
            || pull.After.Appliance.Pressure.Pascals < (1 - Progress) * now.State.Appliance.Pressure.Pascals;
        bool first = !now.Stages.Any(stage => stage.Kind == StageKind.VaporRecovery);
        return moves || (first && pull.Fate == PullFate.Stuck) ? pull.Step with { Reason = pull.Fate == PullFate.Limited ? StepReason.UntilLimit : pull.Step.Reason }
            : pull.Fate == PullFate.Limited ? CoolDown(now, pull.End)
            : pull.End == StageEnd.Stalled ? Deepen(now)
            : null;
    }

    /// <summary>Change to another cylinder; null where there is none.</summary>
    private static PlanStep? Change(PlanSituation now, StepReason reason) =>
        now.NextCylinder is CylinderStanding next ? new PlanStep(StageKind.CylinderChange) { Cylinder = next.Cylinder, Reason = reason } : null;

    /// <summary>The cylinder or the machine is too hot: a cooler cylinder where that is sooner, else a rest.</summary>
    private static PlanStep? CoolDown(PlanSituation now, StageEnd end)
    {
        int rests = now.Stages.Count(stage => stage.Kind == StageKind.Rest);
        if (end == StageEnd.ThermalCutout && IsHotAgainAtOnce(now, rests))
        {
            return null;
        }

        int changes = now.Stages.Count(stage => stage.Kind == StageKind.CylinderChange && stage.Step.Reason == StepReason.CoolerCylinder);
        SimulationInputs cooling = CylinderCooling.Best(now.Job, CylinderCooling.Of(now.Stages));
        PlanStep? rest = rests < MostRests ? Rest(now, end, cooling) : null;
        double change = now.Job.Times.CylinderChange.Seconds;
        if (end != StageEnd.ThermalCutout && changes < now.Cylinders.Count && now.NextCylinder is CylinderStanding other
            && (rest is null || (rest.Duration?.Seconds ?? 0) > change) && IsCooler(now, other))
        {
            return new PlanStep(StageKind.CylinderChange) { Cylinder = other.Cylinder, Reason = StepReason.CoolerCylinder };
        }

        return rest;
    }

    /// <summary>Whether two rests in a row, or the pull after one, came to next to nothing: nobody waits half an hour for so little.</summary>
    private static bool IsHotAgainAtOnce(PlanSituation now, int rests) => rests >= 2
        && (now.Stages.Reverse().Take(2).All(stage => stage.Kind == StageKind.Rest)
            || (now.Stages.LastOrDefault(stage => stage.Kind == StageKind.VaporRecovery)?.Moved.Kilograms ?? 0) < LeastAfterRest * now.Job.Appliance.Charge.Kilograms);

    private static bool IsCooler(PlanSituation now, CylinderStanding other) =>
        (now.WithCylinder(other).Cylinder?.Pressure.Pascals ?? double.PositiveInfinity) < 0.9 * now.State.Cylinder!.Pressure.Pascals;

    /// <summary>A rest in which something comes of it; null where nothing would.</summary>
    private static PlanStep? Rest(PlanSituation now, StageEnd end, SimulationInputs cooling)
    {
        bool bath = CylinderCooling.Cools(cooling);
        double longest = bath ? BathRest : AirRest;
        var rest = new PlanStep(StageKind.Rest) { Inputs = cooling, Reason = StepReason.Cool, Duration = new Duration(longest, DurationUnit.Second) };
        if (end == StageEnd.ThermalCutout)
        {
            return rest with { Duration = new Duration(BathRest, DurationUnit.Second) };
        }

        CylinderState cylinder = now.State.Cylinder!;
        double target = RestShare * CylinderCooling.Limit(now.Job, cylinder.Cylinder);
        double floor = NearSurroundings * PressureAt(now.Job, CylinderCooling.Coldest(now.Job, cooling)) + cylinder.NonCondensablePressure.Pascals;
        rest = rest with { CylinderPressure = new Pressure(Math.Max(target, floor), PressureUnit.Pascal) };
        StageResult? seen = now.Preview(rest);
        return seen?.Cylinder is CylinderState after && after.Pressure.Pascals < 0.98 * cylinder.Pressure.Pascals
            ? rest with { Duration = seen.Duration }
            : null;
    }

    /// <summary>Whether it is the cylinder's pressure that makes a pull crawl: next to nothing passes a machine this near to its deepest vacuum.</summary>
    private static bool IsNearDeepest(PlanSituation now) => !now.State.Appliance.HasLiquid
        && now.Job.Machine.EfficiencyAt(now.State.Cylinder!.Pressure.Pascals / now.State.Appliance.Pressure.Pascals) < NearDeepest * now.Job.Machine.VolumetricEfficiency;

    /// <summary>The machine got no deeper: a cooler cylinder lets it. Null where nothing is at hand that helps.</summary>
    private static PlanStep? Deepen(PlanSituation now)
    {
        int tries = now.Stages.Count(stage => stage.Kind == StageKind.Rest || stage.Step.Reason == StepReason.CoolerCylinder);
        if (tries > 1 + now.Cylinders.Count)
        {
            return null;
        }

        double pressure = now.State.Cylinder!.Pressure.Pascals;
        double deepest = now.Job.Machine.DeepestVacuum(new Pressure(pressure, PressureUnit.Pascal)).Pascals;
        double most = pressure * now.Goal.Pascals / Math.Max(deepest, Math.Max(now.State.Appliance.HasLiquid ? 0 : now.State.Appliance.Pressure.Pascals, 1e-3 * now.Goal.Pascals));
        SimulationInputs cooling = CylinderCooling.Best(now.Job, CylinderCooling.Of(now.Stages));
        double floor = NearSurroundings * PressureAt(now.Job, CylinderCooling.Coldest(now.Job, cooling)) + now.State.Cylinder.NonCondensablePressure.Pascals;
        double needed = Math.Max(0.9 * most, floor);
        if (needed < Math.Min(pressure, NearLimit * most))
        {
            var rest = new PlanStep(StageKind.Rest)
            {
                Inputs = cooling,
                Reason = StepReason.Cool,
                CylinderPressure = new Pressure(needed, PressureUnit.Pascal),
                Duration = new Duration(Math.Max(AirRest, now.Job.Times.Patience.Seconds), DurationUnit.Second),
            };
            if (now.Preview(rest) is { Cylinder: CylinderState rested } seen && rested.Pressure.Pascals < NearLimit * most)
            {
                return rest with { Duration = seen.Duration };
            }
        }

        return now.NextCylinder is CylinderStanding other && (now.WithCylinder(other).Cylinder?.Pressure.Pascals ?? double.PositiveInfinity) < Math.Min(needed, 0.7 * pressure)
            ? new PlanStep(StageKind.CylinderChange) { Cylinder = other.Cylinder, Reason = StepReason.CoolerCylinder }
            : null;
    }

    private static double PressureAt(RecoveryJob job, double kelvins) =>
        job.Appliance.Fluid.Model.TrySaturationAtTemperature(kelvins, out Fluids.SaturationPoint saturation) ? saturation.Bubble.Pressure : 0;

    private static bool NeedsHold(PlanSituation now) => now.Job.Times.Hold.Seconds >= ShortestHold && !now.IsShare(now.State.Appliance);

    private static bool Held(PlanSituation now) => now.IsAtGoal && !now.State.Appliance.HasLiquid && !now.StandsBehind(now.State.Appliance);

    private static int Pulls(PlanSituation now) => now.Stages.Count(stage => stage.Kind == StageKind.Hold);

    /// <summary>What it is called.</summary>
    public override string ToString() => "standard strategy";
}
