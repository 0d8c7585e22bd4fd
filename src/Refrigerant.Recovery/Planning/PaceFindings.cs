using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What sets the pace of a pull, and would make it shorter: hoses, heat, water in the tubes; and a job longer than a shift.</summary>
internal static class PaceFindings
{
    /// <summary>Below this share of the machine's own pace the hoses are worth a word.</summary>
    private const double SlowLine = 0.8;

    /// <summary>A flow of less than this share of the usual pace, from liquid that much colder than the air, waits for heat. Our choice.</summary>
    private const double SlowShare = 0.3;
    private const double MuchColder = 10;

    /// <summary>Metal within this of 0 °C, K, is what throttles a pull that is kept above freezing.</summary>
    private const double NearFreezing = 2;

    private const double Hour = 3600;

    /// <summary>Heat that saves less than this share of a pull is not worth a word. Our choice.</summary>
    private const double WorthWarming = 0.1;

    /// <summary>A shift: common practice, no source.</summary>
    private const double Shift = 8 * Hour;

    /// <summary>Nothing that waits for heat: whatever else takes time counts for more.</summary>
    private static readonly (Finding? Word, double Waited) NoWait = (null, double.PositiveInfinity);

    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        if (run.Clock > Shift)
        {
            yield return new Finding(
                PlanCodes.LongerThanShift,
                Severity.Warning,
                Sources.CommonPractice,
                $"It takes {FindingValue.Seconds("on site", run.Clock)} on site, longer than {FindingValue.Seconds("shift", Shift)}: plan for more than one shift, and do not leave the machine running alone.",
                $"Where it is stopped, shut the appliance and the cylinder: what warms overnight brings the pressure back, and is pulled in the morning.");
        }

        if (Throttled(run) is Finding throttled)
        {
            yield return throttled;
            yield break;
        }

        (Finding? heat, double waited) = Verdicts.For(run).IsReached ? Heat(run) : NoWait;
        if (Hoses(run, waited) is Finding hoses)
        {
            yield return hoses;
        }

        if (heat is not null)
        {
            yield return heat;
        }
    }

    /// <summary>Hoses that slow the largest pull; heavier where they cost more than what else does, s: as a rough estimate the share that they hold back, of all its time.</summary>
    private static Finding? Hoses(PlanRun run, double other)
    {
        PlannedStage? slowest = run.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && stage.Result is not null && !stage.Step.IsThrottled && stage.Step.LowestPressure is null && stage.Moved.Kilograms > 0)
            .OrderByDescending(stage => stage.Moved.Kilograms).FirstOrDefault();
        if (slowest is null || run.Job.KeepsTubes || !(slowest.Result!.SuctionLineShare.DecimalFractions < SlowLine))
        {
            return null;
        }

        bool cores = run.Job.Hoses.VaporSide.Any(hose => hose.Fittings.Any(fitting => fitting.IsCore));
        return new Finding(
            PlanCodes.HosesSlow,
            (1 - slowest.Result.SuctionLineShare.DecimalFractions) * slowest.Duration.Seconds > other ? Severity.Caution : Severity.Note,
            "compressible flow with friction (Crane TP-410), valves by IEC 60534-2-1",
            $"The suction hoses let through {FindingValue.Share("share", slowest.Result.SuctionLineShare)} of what the machine could draw: {FindingValue.Text("remedy", cores ? "valve cores taken out, and shorter or wider hoses," : "shorter or wider hoses")} make it faster.");
    }

    /// <summary>A pull that waits for heat: how long, and what would make it shorter.</summary>
    private static (Finding? Word, double Waited) Heat(PlanRun run)
    {
        PlannedStage? slow = run.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && !stage.Step.IsThrottled && stage.Result is { Trajectory.Count: > 1 })
            .OrderByDescending(stage => stage.Duration.Seconds).FirstOrDefault();
        if (slow is null || run.Job.Aids.CanWarm)
        {
            return NoWait;
        }

        double waited = 0, left = 0, coldest = double.PositiveInfinity;
        Trajectory points = slow.Result!.Trajectory;
        for (int i = 1; i < points.Count; i++)
        {
            if (points[i].LiquidKilograms > 0 && points[i].KilogramsPerSecond < SlowShare * run.Pace && points[i].ApplianceKelvins < run.Ambient.Kelvins - MuchColder)
            {
                left = Math.Max(left, points[i - 1].LiquidKilograms);
                waited += points[i].Seconds - points[i - 1].Seconds;
                coldest = Math.Min(coldest, points[i].ApplianceKelvins);
            }
        }

        if (waited < Hour / 2 || !run.Job.Appliance.Fluid.Model.TrySaturationAtTemperature(coldest, out SaturationPoint saturation))
        {
            return NoWait;
        }

        double watts = left * (saturation.Dew.Enthalpy - saturation.Bubble.Enthalpy) / Math.Min(Hour, waited / 2);
        double saved = Saved(run, slow, watts);
        var word = new Finding(
            PlanCodes.HeatSetsPace,
            Severity.Caution,
            "energy balance of the appliance",
            $"For {FindingValue.Duration("waiting", new Duration(waited, DurationUnit.Second))} of the pull liquid boils only as fast as heat comes in, down to {FindingValue.Temperature("coldest", new Temperature(coldest, TemperatureUnit.Kelvin))}.",
            saved < WorthWarming * slow.Duration.Seconds ? null : (FormattableString)$"With {FindingValue.Power("heat", Power.FromWatts(watts))} on the appliance (its own fans, a blanket, warm water; never a flame) it is done {FindingValue.Seconds("saved", saved)} sooner.");
        return (word, waited);
    }

    /// <summary>By how much sooner a pull ends with heat on the appliance, as simulated, s: to where its gauge ends it, or, where the clock does, to where the last liquid is gone. Zero where it does not.</summary>
    private static double Saved(PlanRun run, PlannedStage slow, double watts)
    {
        StageResult cold = slow.Result!;
        if (run.Preview(slow.Step with { Inputs = slow.Step.Inputs with { HeaterPower = watts } }, cold.Before) is not StageResult warm)
        {
            return 0;
        }

        return cold.End == StageEnd.TargetReached ? warm.End == StageEnd.TargetReached ? cold.Duration.Seconds - warm.Duration.Seconds : 0
            : cold.LiquidGoneAfter is Duration late && warm.LiquidGoneAfter is Duration early ? late.Seconds - early.Seconds
            : 0;
    }

    /// <summary>A pull that waits so that water in the tubes does not freeze: how long, and what would make it shorter.</summary>
    private static Finding? Throttled(PlanRun run)
    {
        if (!run.Job.KeepAboveFreezing || run.Job.Appliance.Water is not { } water)
        {
            return null;
        }

        double waited = 0;
        foreach (PlannedStage stage in run.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && stage.Result is not null))
        {
            Trajectory points = stage.Result!.Trajectory;
            for (int i = 1; i < points.Count; i++)
            {
                if (points[i].LiquidKilograms > 0 && points[i].KilogramsPerSecond < SlowShare * run.Pace && points[i].MetalKelvins < MetalShell.FreezingPoint + NearFreezing)
                {
                    waited += points[i].Seconds - points[i - 1].Seconds;
                }
            }
        }

        return waited < Hour ? null : new Finding(
            PlanCodes.WaterSetsPace,
            Severity.Caution,
            Sources.CommonPractice,
            $"It takes so long because of the water in the tubes: for {FindingValue.Duration("waiting", new Duration(waited, DurationUnit.Second))} the inlet is throttled so that it does not freeze.",
            water.IsMoving
                ? (FormattableString)$"Warmer water, more of it, or draining the tubes makes it shorter."
                : (FormattableString)$"Keeping the water moving, or draining the tubes, makes it shorter.");
    }
}
