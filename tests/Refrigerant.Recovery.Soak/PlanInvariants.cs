using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Soak;

/// <summary>What must hold for every plan, of whatever job and strategy; property tests and soak share it.</summary>
internal static class PlanInvariants
{
    /// <summary>The ledger closes to this share of the charge.</summary>
    private const double Closure = 1e-9;

    /// <summary>An event ends a stage this near to its limit, as a share of it.</summary>
    private const double AtEvent = 1e-6;

    /// <summary>What a plan breaks; empty where it holds all.</summary>
    public static IEnumerable<string> Broken(RecoveryPlan plan) =>
        [.. Level(plan), .. Ledger(plan), .. Cylinders(plan), .. Pressures(plan), .. Clock(plan), .. Texts(plan)];

    private static IEnumerable<string> Level(RecoveryPlan plan)
    {
        LevelVerdict verdict = plan.Verdict;
        if (!plan.IsLevelReached)
        {
            if (!plan.ToDo.Any(finding => finding.Severity == Severity.Stop))
            {
                yield return $"level not reached without a word: {verdict}";
            }

            yield break;
        }

        if (verdict.Outcome == LevelOutcome.NothingToRecover)
        {
            if (plan.Stages.Count > 0 || plan.End.Pressure.Pascals > plan.Requirement.RequiredPressure.Pascals * (1 + AtEvent))
            {
                yield return $"nothing to recover claimed after {plan.Stages.Count} stages at {plan.End.Pressure.Pascals:F0} Pa of {plan.Requirement.RequiredPressure.Pascals:F0} Pa";
            }

            yield break;
        }

        if (plan.End.HasLiquid || plan.End.LiquidMass.Kilograms > 0)
        {
            yield return $"level claimed over {plan.End.LiquidMass.Kilograms:G3} kg of liquid";
        }

        bool share = verdict.Outcome == LevelOutcome.ShareRecovered;
        if (!share && plan.End.Pressure.Pascals > plan.Requirement.RequiredPressure.Pascals * (1 + AtEvent))
        {
            yield return $"level claimed at {plan.End.Pressure.Pascals:F0} Pa of {plan.Requirement.RequiredPressure.Pascals:F0} Pa";
        }

        if (!share && plan.Job.Times.Hold.Seconds >= 1 && verdict.HeldFor.Seconds < plan.Job.Times.Hold.Seconds * (1 - AtEvent))
        {
            yield return $"held for {verdict.HeldFor.Seconds:F0} s of {plan.Job.Times.Hold.Seconds:F0} s";
        }
    }

    private static IEnumerable<string> Ledger(RecoveryPlan plan)
    {
        MassLedger ledger = plan.Ledger;
        double charge = ledger.Charge.Kilograms;
        if (!(Math.Abs(ledger.Unexplained.Kilograms) <= Closure * charge))
        {
            yield return $"ledger open by {ledger.Unexplained.Kilograms:E1} kg of {charge:F2} kg";
        }

        double[] terms =
        [
            ledger.VaporInAppliance.Kilograms, ledger.LiquidInAppliance.Kilograms, ledger.InOil.Kilograms, ledger.InHosesAndMachine.Kilograms, ledger.Released.Kilograms,
        ];
        if (!terms.All(term => term >= -Closure * charge && term <= charge * (1 + Closure)))
        {
            yield return $"a term of the ledger out of bounds: {ledger}";
        }

        if (!(Math.Abs(plan.Cylinders.Sum(use => use.Received.Kilograms) - ledger.InCylinders.Kilograms) <= Closure * charge))
        {
            yield return "cylinders and ledger differ";
        }
    }

    private static IEnumerable<string> Cylinders(RecoveryPlan plan)
    {
        foreach (CylinderUse use in plan.Cylinders)
        {
            double most = Math.Max(use.Cylinder.Content.Kilograms, use.Limit.MaximumFill.Kilograms) * (1 + AtEvent);
            if (!(use.Content.Kilograms <= most))
            {
                yield return $"{use.Cylinder.Label} overfilled: {use}";
            }

            foreach (PlannedStage stage in plan.Stages.Where(stage => stage.Cylinder == use.Cylinder.Label))
            {
                // An empty cylinder is simulated with a trace of vapor.
                if (stage.State.Cylinder is CylinderState state && state.Mass.Kilograms > most + (1e-3 * use.Cylinder.InternalVolume.CubicMeters * 100))
                {
                    yield return $"{use.Cylinder.Label} overfilled after {stage.Kind}: {state}";
                }
            }

            if (use.Received.Kilograms > Closure && use.Limit.Findings.Any(finding => finding.Severity == Severity.Stop))
            {
                yield return $"{use.Cylinder.Label} is filled though it must not be";
            }
        }
    }

    private static IEnumerable<string> Pressures(RecoveryPlan plan)
    {
        if (plan.Job.Appliance.DesignGaugePressure is UnitsNet.Pressure design)
        {
            double limit = (design.Pascals + plan.Job.Barometer.Pressure.Pascals) * (1 + 1e-4);
            foreach (PlannedStage stage in plan.Stages.Where(stage => stage.Kind is StageKind.PushPull or StageKind.Equalize && stage.Result is not null))
            {
                if (stage.Kind == StageKind.Equalize && stage.Result!.Before.Cylinder?.Pressure < stage.Result.Before.Appliance.Pressure)
                {
                    // Vapor leaves the appliance: what rises there is its own warmth.
                    continue;
                }

                double highest = stage.Result!.Trajectory.Select(point => point.AppliancePressure.Pascals).DefaultIfEmpty(0).Max();
                if (highest > Math.Max(limit, stage.Result.Before.Appliance.Pressure.Pascals * (1 + 1e-4)))
                {
                    yield return $"{stage.Kind} pushes the appliance to {highest:F0} Pa, above {limit:F0} Pa";
                }
            }
        }
    }

    private static IEnumerable<string> Clock(RecoveryPlan plan)
    {
        double clock = 0;
        foreach (PlannedStage stage in plan.Stages)
        {
            double seconds = stage.Duration.Seconds;
            if (!(seconds >= 0) || double.IsInfinity(seconds) || Math.Abs(stage.Start.Seconds - clock) > 1e-6 * Math.Max(1, clock))
            {
                yield return $"{stage.Kind} starts at {stage.Start.Seconds:F1} s for {seconds:F1} s; the clock is at {clock:F1} s";
            }

            clock += seconds;
            double[] numbers = [stage.After.Pressure.Pascals, stage.After.Temperature.Kelvins, stage.After.Mass.Kilograms, stage.Moved.Kilograms];
            if (!numbers.All(number => !double.IsNaN(number) && !double.IsInfinity(number)))
            {
                yield return $"{stage.Kind} has a number that is none";
            }
        }
    }

    private static IEnumerable<string> Texts(RecoveryPlan plan)
    {
        if (plan.ToDo.Count > 7)
        {
            yield return $"{plan.ToDo.Count} things to do";
        }

        foreach (IGrouping<string, Finding> same in plan.Findings.GroupBy(finding => finding.Code))
        {
            if (same.Count() > 1)
            {
                yield return $"{same.Key} is said {same.Count()} times";
            }
        }

        foreach (Finding finding in plan.Findings.Concat(plan.Cautions))
        {
            string[] texts = [finding.ToText(DisplayUnits.UnitedStatesCustomary), finding.ToText(DisplayUnits.International)];
            if (texts.Any(text => text.Contains("NaN", StringComparison.Ordinal) || text.Contains("∞", StringComparison.Ordinal) || text.Contains("E+", StringComparison.Ordinal)))
            {
                yield return "a text that nobody reads: " + texts[0];
            }
        }
    }
}
