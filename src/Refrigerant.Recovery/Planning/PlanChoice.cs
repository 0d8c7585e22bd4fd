using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The best plan within what is in the van. Immutable.</summary>
public sealed class PlanChoice
{
    /// <summary>Share of a pull by the machine that counts as people's work.</summary>
    private const double Attended = 0.1;

    /// <summary>Time to take valve cores out under pressure and put them back, s: common practice, no source.</summary>
    private const double CoreTime = 240;

    /// <summary>Time to connect a second machine, s: common practice, no source.</summary>
    private const double SecondMachineTime = 180;

    private PlanChoice(PlanObjective objective, IReadOnlyList<SetupOutcome> outcomes)
    {
        Objective = objective;
        Outcomes = new ReadOnlyCollection<SetupOutcome>([.. outcomes]);
    }

    /// <summary>What it is best at.</summary>
    public PlanObjective Objective { get; }

    /// <summary>The best setup and its plan.</summary>
    public SetupOutcome Best => Outcomes[0];

    /// <summary>All setups, the best first: those that reach the level, then by the objective.</summary>
    public IReadOnlyList<SetupOutcome> Outcomes { get; }

    /// <summary>Plans the job with every combination of what is in the van and picks the best.</summary>
    /// <param name="job">The job as it is.</param>
    /// <param name="van">What is in the van.</param>
    /// <param name="objective">What the plan is to be best at.</param>
    /// <param name="cancellation">Cancels it.</param>
    /// <param name="progress">Told the share of plans done, rising to 1, one call at a time; what it throws comes through; null for nobody.</param>
    /// <exception cref="ArgumentNullException">Job or van is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No such objective.</exception>
    /// <exception cref="ArgumentException">Job and van have cylinders of the same label, or the job cannot be (see <see cref="RecoveryPlanner"/>).</exception>
    /// <exception cref="Fluids.PropertyRangeException">A starting state is outside the range of the refrigerant's equation.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static PlanChoice Find(
        RecoveryJob job, Van van, PlanObjective objective = PlanObjective.TimeOnSite, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        _ = Require.NotNull(job, nameof(job));
        _ = Require.NotNull(van, nameof(van));
        Require.Defined(objective, nameof(objective));
        Setup[] setups = [.. Combinations(job, van)];
        var plans = new RecoveryPlan[setups.Length];
        ParallelRun.For(
            setups.Length, null, index => plans[index] = RecoveryPlanner.Plan(setups[index].Job, StandardStrategy.Instance, cancellation), cancellation, progress);
        Duration asItIs = plans[0].TotalDuration;
        SetupOutcome[] outcomes =
        [
            .. setups.Zip(plans, (setup, plan) => new SetupOutcome(setup.Name, plan, asItIs))
                .OrderByDescending(outcome => outcome.Plan.IsLevelReached)
                .ThenBy(outcome => outcome.Plan.IsLevelReached ? Cost(outcome.Plan, objective) : outcome.Plan.Ledger.InAppliance.Kilograms),
        ];
        return new PlanChoice(objective, outcomes);
    }

    /// <summary>Time of people's work in a plan: handling and push-pull, and a tenth of what the machine does by itself.</summary>
    /// <param name="plan">The plan.</param>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public static Duration PeopleTime(RecoveryPlan plan) => new(
        Require.NotNull(plan, nameof(plan)).Stages.Sum(stage => stage.Duration.Seconds * (IsAttended(stage.Kind) ? 1 : Attended)), DurationUnit.Second);

    /// <summary>The best setup, culture-invariant.</summary>
    public override string ToString() => $"{Objective}: {Best}";

    private static bool IsAttended(StageKind kind) =>
        kind is not (StageKind.VaporRecovery or StageKind.LiquidRecovery or StageKind.Rest or StageKind.Warm or StageKind.Hold or StageKind.MachineClearing);

    private static double Cost(RecoveryPlan plan, PlanObjective objective) => objective switch
    {
        PlanObjective.TimeOnSite => plan.TotalDuration.Seconds,
        PlanObjective.PeopleHours => PeopleTime(plan).Seconds,
        _ => plan.Ledger.Charge.Kilograms - plan.Ledger.InCylinders.Kilograms,
    };

    private static IEnumerable<Setup> Combinations(RecoveryJob job, Van van)
    {
        RecoveryJob stocked = job with { Cylinders = [.. job.Cylinders, .. van.Cylinders] };
        var hoses = new List<(string Name, HoseSet Set, double Time)> { ("hoses as they are", job.Hoses, 0) };
        hoses.AddRange(van.Hoses.Select((set, i) => (FormattableString.Invariant($"hoses {i + 1} of the van"), set, 0.0)));
        if (van.HasCoreTool)
        {
            hoses.AddRange(hoses.Where(choice => HasCores(choice.Set)).Select(choice => (choice.Name + " without cores", WithoutCores(choice.Set), CoreTime)).ToArray());
        }

        var machines = new List<(string Name, RecoveryMachine Machine)> { ("machine as it is", job.Machine) };
        machines.AddRange(van.Machines.Select((machine, i) => (FormattableString.Invariant($"machine {i + 1} of the van"), machine)));
        var aids = new List<(string Name, SiteAids Aids)> { ("no other help", job.Aids) };
        if (van.Aids != SiteAids.None)
        {
            aids.Add(("what cools and warms in the van", van.Aids));
        }

        var pairs = new HashSet<(string Hoses, string Aids)>();
        foreach ((string hoseName, HoseSet set, double time) in hoses)
        {
            foreach ((string machineName, RecoveryMachine machine) in machines)
            {
                foreach ((string aidName, SiteAids help) in aids)
                {
                    yield return new Setup($"{hoseName}, {machineName}, {aidName}", stocked with { Hoses = set, Machine = machine, Aids = help, Times = Longer(stocked.Times, time) });
                    if (van.Machines.Contains(machine) && job.Machine == machine && set.SecondVaporSide.Count == 0 && pairs.Add((hoseName, aidName)))
                    {
                        yield return new Setup(
                            $"{hoseName}, two machines side by side with a run of hoses each, {aidName}",
                            stocked with { Hoses = set with { SecondVaporSide = set.VaporSide }, Machine = machine.SideBySide(2), Aids = help, Times = Longer(stocked.Times, time + SecondMachineTime) });
                    }
                }
            }
        }
    }

    private static JobTimes Longer(JobTimes times, double seconds) =>
        seconds > 0 ? times with { SetUp = new Duration(Math.Min(86_400, times.SetUp.Seconds + seconds), DurationUnit.Second) } : times;

    private static bool HasCores(HoseSet set) => set.VaporSide.Concat(set.SecondVaporSide).Concat(set.LiquidSide).Any(hose => hose.Fittings.Any(fitting => fitting.IsCore));

    private static HoseSet WithoutCores(HoseSet set)
    {
        IReadOnlyList<Hose> Open(IReadOnlyList<Hose> hoses) => [.. hoses.Select(hose => hose with { Fittings = [.. hose.Fittings.Where(fitting => !fitting.IsCore)] })];
        return set with { VaporSide = Open(set.VaporSide), SecondVaporSide = Open(set.SecondVaporSide), LiquidSide = Open(set.LiquidSide) };
    }
}
