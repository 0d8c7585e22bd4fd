using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using MathNet.Numerics.Statistics;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Residuals;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>
/// A plan with its inputs taken as ranges: a low-discrepancy sample of whole plans, their median and 5 to 95 % range, and which input matters
/// most. Immutable.
/// </summary>
public sealed class PlanUncertainty
{
    private const double LowQuantile = 0.05;
    private const double HighQuantile = 0.95;

    private PlanUncertainty(DurationRange duration, MassRange remaining, MassRange recovered, double reached, IReadOnlyList<InputInfluence> influences, int samples, int impossible)
    {
        TotalDuration = duration;
        Remaining = remaining;
        Recovered = recovered;
        LevelReached = new Ratio(reached, RatioUnit.DecimalFraction);
        Influences = influences;
        Samples = samples;
        Impossible = impossible;
    }

    /// <summary>Time on site.</summary>
    public DurationRange TotalDuration { get; }

    /// <summary>Refrigerant left in the appliance: 5 %, median and 95 % of the sample.</summary>
    public MassRange Remaining { get; }

    /// <summary>Refrigerant in cylinders: 5 %, median and 95 % of the sample.</summary>
    public MassRange Recovered { get; }

    /// <summary>Share of the sample in which the level is reached.</summary>
    public Ratio LevelReached { get; }

    /// <summary>The inputs by their influence on the time on site, strongest first.</summary>
    public IReadOnlyList<InputInfluence> Influences { get; }

    /// <summary>Number of plans made.</summary>
    public int Samples { get; }

    /// <summary>Number of samples that cannot be: the charge would not fit the volume, the oil hold more than the charge, a state leave its equation. They are in no range.</summary>
    public int Impossible { get; }

    /// <summary>Makes the sample of plans, in parallel.</summary>
    /// <param name="job">The job.</param>
    /// <param name="options">Tolerances, number of samples, seed, threads; null for the defaults.</param>
    /// <param name="cancellation">Cancels the run.</param>
    /// <param name="progress">Told the share of plans done, rising to 1, from any thread but one call at a time; what it throws comes through; null for nobody.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The job itself is not possible (see <see cref="RecoveryPlanner"/>), or no sample of it is.</exception>
    /// <exception cref="Fluids.PropertyRangeException">A starting state of the job itself is outside the range of the refrigerant's equation.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <example>
    /// <code>
    /// UncertaintyOptions options = new() { Samples = 64 };
    /// PlanUncertainty range = PlanUncertainty.Run(job, options);
    /// Console.WriteLine(range.TotalDuration); // 71 min (67 to 75 min)
    /// </code>
    /// </example>
    public static PlanUncertainty Run(RecoveryJob job, UncertaintyOptions? options = null, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        UncertaintyOptions how = options ?? new UncertaintyOptions();
        _ = RecoveryPlanner.Plan(Require.NotNull(job, nameof(job)), StandardStrategy.Instance, cancellation);
        var sampler = new JobSampler(job, how.Tolerances, how.Seed);
        var outcomes = new Outcome?[how.Samples];
        ParallelRun.For(how.Samples, how.MaximumThreads, index => outcomes[index] = Evaluate(sampler, index, cancellation), cancellation, progress);
        return Summary(sampler, outcomes);
    }

    /// <summary>Range of time, of what remains, and the strongest input, culture-invariant.</summary>
    public override string ToString() => $"{TotalDuration}; {Remaining} left{(Influences.Count > 0 ? $"; most by {Influences[0].Name}" : string.Empty)}";

    /// <summary>Null where the combination cannot be: the charge would not fit the volume.</summary>
    private static Outcome? Evaluate(JobSampler sampler, int index, CancellationToken cancellation)
    {
        try
        {
            RecoveryPlan plan = RecoveryPlanner.Plan(sampler.Job(index), StandardStrategy.Instance, cancellation);
            return new Outcome(plan.TotalDuration.Seconds, plan.Ledger.InAppliance.Kilograms, plan.Ledger.InCylinders.Kilograms, plan.IsLevelReached);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static PlanUncertainty Summary(JobSampler sampler, Outcome?[] outcomes)
    {
        int[] valid = [.. Enumerable.Range(0, outcomes.Length).Where(index => outcomes[index] is not null)];
        if (valid.Length < 2)
        {
            throw new ImpossibleJobException("Within these tolerances no plan is possible: the charge does not fit the volume.", nameof(RecoveryJob.Appliance));
        }

        double[] times = [.. valid.Select(index => outcomes[index]!.Seconds)];
        double[] left = [.. valid.Select(index => outcomes[index]!.Remaining)];
        double[] recovered = [.. valid.Select(index => outcomes[index]!.Recovered)];
        var influences = new List<InputInfluence>();
        foreach (UncertainInput input in sampler.Inputs)
        {
            double[] values = [.. valid.Select(index => sampler.Offset(index, input))];
            influences.Add(new InputInfluence(input, Rank(values, times), Rank(values, left)));
        }

        return new PlanUncertainty(
            new DurationRange(times.Quantile(LowQuantile), times.Quantile(0.5), times.Quantile(HighQuantile)),
            Range(left),
            Range(recovered),
            valid.Count(index => outcomes[index]!.IsLevelReached) / (double)valid.Length,
            [.. influences.OrderByDescending(influence => Math.Abs(influence.OnDuration))],
            valid.Length,
            outcomes.Length - valid.Length);
    }

    private static MassRange Range(double[] values) =>
        new(values.Quantile(LowQuantile), values.Quantile(0.5), values.Quantile(HighQuantile));

    /// <summary>Spearman's rank correlation; zero where one of the two does not vary.</summary>
    private static double Rank(double[] a, double[] b)
    {
        double rank = Correlation.Spearman(a, b);
        return Require.IsFinite(rank) ? rank : 0;
    }

    private sealed record Outcome(double Seconds, double Remaining, double Recovered, bool IsLevelReached);
}
