using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Planning;

/// <summary>What would make it faster: the same job with several setups, side by side. Immutable.</summary>
public sealed class SetupComparison
{
    private SetupComparison(RecoveryPlan asItIs, IReadOnlyList<SetupOutcome> outcomes)
    {
        AsItIs = asItIs;
        Outcomes = new ReadOnlyCollection<SetupOutcome>([.. outcomes]);
    }

    /// <summary>The plan for the job as it is.</summary>
    public RecoveryPlan AsItIs { get; }

    /// <summary>The setups: those that reach the level first, then by time.</summary>
    public IReadOnlyList<SetupOutcome> Outcomes { get; }

    /// <summary>Compares the usual variations of a job (see <see cref="Setup.Variations"/>).</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The job is not possible (see <see cref="RecoveryPlanner"/>).</exception>
    /// <example>
    /// <code>
    /// SetupComparison comparison = SetupComparison.Run(job);
    /// Console.WriteLine(comparison.Outcomes.Count); // 9
    /// </code>
    /// </example>
    public static SetupComparison Run(RecoveryJob job) => Run(job, Setup.Variations(job));

    /// <summary>Compares setups of the caller's own.</summary>
    /// <param name="job">The job as it is.</param>
    /// <param name="setups">The setups.</param>
    /// <param name="cancellation">Cancels it.</param>
    /// <param name="progress">Told the share of plans done, rising to 1, one call at a time; what it throws comes through; null for nobody.</param>
    /// <exception cref="ArgumentNullException">Job, setups or one of them is null.</exception>
    /// <exception cref="ArgumentException">The job or a setup is not possible (see <see cref="RecoveryPlanner"/>).</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SetupComparison Run(RecoveryJob job, IEnumerable<Setup> setups, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        Setup[] all = [.. Require.NotNull(setups, nameof(setups)).Select(setup => Require.NotNull(setup, nameof(setups)))];
        RecoveryPlan asItIs = RecoveryPlanner.Plan(job, StandardStrategy.Instance, cancellation);
        var plans = new RecoveryPlan[all.Length];
        ParallelRun.For(all.Length, null, index => plans[index] = Plan(all[index], cancellation), cancellation, progress);
        SetupOutcome[] outcomes =
        [
            .. all.Zip(plans, (setup, plan) => new SetupOutcome(setup.Name, plan, asItIs.TotalDuration))
                .OrderByDescending(outcome => outcome.Plan.IsLevelReached)
                .ThenBy(outcome => outcome.Plan.TotalDuration.Seconds),
        ];
        return new SetupComparison(asItIs, outcomes);
    }

    private static RecoveryPlan Plan(Setup setup, CancellationToken cancellation)
    {
        try
        {
            return RecoveryPlanner.Plan(setup.Job, StandardStrategy.Instance, cancellation);
        }
        catch (ImpossibleJobException e)
        {
            throw new ImpossibleJobException($"setup \"{setup.Name}\": {JobChecks.WithoutParameter(e)}", e.ParamName ?? nameof(setup), e);
        }
    }

    /// <summary>The job as it is, and how many setups stand beside it.</summary>
    public override string ToString() => FormattableString.Invariant($"as it is: {AsItIs.TotalDuration.Minutes:F1} min; {Outcomes.Count} setups");
}
