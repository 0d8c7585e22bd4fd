using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;

namespace Refrigerant.Recovery.Soak;

/// <summary>Estimates against the truth of simulated jobs, as the tables in docs/questions/during-the-job.md. Returns 1 where a stated figure is missed.</summary>
internal static class EstimationTables
{
    /// <summary>Seeds that nothing was tuned on.</summary>
    private const int FirstSeed = 500_000;

    private const int FaultSeed = 700_000;

    /// <summary>How long after it began a fault still counts as found, s.</summary>
    private const double LongestWait = 240;

    /// <summary>Air: shares of the atmosphere at which it stands, the machine's efficiency there, s after which it must be named, s that a tight appliance takes at most, and how often it must be named.</summary>
    private static readonly double[] AirStands = [0.75, 0.8, 0.9];

    private const double Efficiency = 0.75;
    private const double Hour = 3600;
    private const double LongestTight = 1500;
    private const double AirAtLeast = 0.7;

    /// <summary>s between readings.</summary>
    private static readonly int[] Spacings = [5, 15, 60];

    private static readonly string[] Kinds = ["first", "second", "third"];

    private static readonly double[] HoldsAtLeast = [0.88, 0.88, 0.88, 0.82, 0.88];

    private static readonly (FaultKind Kind, double Size, JobCondition Expected, double Within, double AtLeast)[] Faults =
    [
        (FaultKind.Pull, 0.15, JobCondition.ScaleDisturbed, 30, 0.95),
        (FaultKind.Valve, 0, JobCondition.ValveClosed, 20, 0.85),
        (FaultKind.Weak, 0.6, JobCondition.MachineUnderperforming, 240, 0.75),
        (FaultKind.Hose, 30, JobCondition.HoseBlocked, 240, 0.60),
    ];

    /// <param name="jobs">Jobs of each kind.</param>
    /// <param name="part">One of the kinds, "charge", "oil", "filter" for what is told otherwise or the filter alone, "faults", "air", "sparse" for readings far apart; all of them where it is empty.</param>
    /// <param name="seed">Zero, or another first seed.</param>
    public static int Run(int jobs, string part, int seed)
    {
        int first = seed > 0 ? seed : FirstSeed;
        bool all = part.Length == 0;
        bool missed = false;
        foreach (string kind in Kinds)
        {
            if (all || part == kind)
            {
                missed |= Coverage(kind, jobs, first, EstimationProfile.Full, job => job.Told);
            }

            if (all || part == "filter")
            {
                Coverage(kind, jobs, first, EstimationProfile.Controller, job => job.Told);
            }

            if (all || part == "oil")
            {
                missed |= Coverage(kind, jobs, first, EstimationProfile.Full, job => job.Told with { Oil = -1 }, ", oil not told");
            }

            if (all || part == "charge")
            {
                missed |= Coverage(kind, jobs, first, EstimationProfile.Full, ChargeKnown, ", charge told to σ 5 %");
            }
        }

        if (all || part == "faults")
        {
            foreach (string kind in Kinds)
            {
                missed |= FalseAlarms(kind, jobs, seed > 0 ? seed : FaultSeed);
                foreach ((FaultKind fault, double size, JobCondition expected, double within, double atLeast) in Faults)
                {
                    missed |= Detection(kind, jobs, seed > 0 ? seed : FaultSeed, fault, size, expected, within, atLeast);
                }
            }
        }

        if (all || part == "air")
        {
            foreach (double stands in AirStands)
            {
                missed |= Air(jobs, seed > 0 ? seed : FaultSeed, stands);
            }
        }

        if (all || part == "sparse")
        {
            foreach (string kind in Kinds)
            {
                foreach (int seconds in Spacings)
                {
                    Sparse(kind, jobs, seed > 0 ? seed : FaultSeed, seconds);
                }
            }
        }

        return missed ? 1 : 0;
    }

    /// <summary>
    /// Readings so many seconds apart: how often a valve that is shut at two fifths of the time, for ten minutes, is named within half a minute or three readings; how often an estimate meanwhile has less than half of what is left at most and no
    /// fault is named; how often it is named where none is shut, and how often the truth then lies within the range at three quarters of the time.
    /// </summary>
    private static void Sparse(string kind, int jobs, int seed, int seconds)
    {
        int tried = 0, named = 0, lulled = 0, cried = 0, scored = 0, holds = 0;
        Parallel.For(0, jobs, i =>
        {
            SimulatedJob clean = SimulatedJob.Draw(kind, seed + i);
            if (!clean.IsScored || clean.Log.EndTime < 15 * seconds)
            {
                return;
            }

            Interlocked.Increment(ref tried);
            double at = 0.4 * clean.Log.EndTime;
            SimulatedJob shut = SimulatedJob.Draw(kind, seed + i, new Fault(FaultKind.Valve, at, 0, at + 600));
            Watch(shut, seconds, at + 600, at + Math.Max(30, 3.5 * seconds), out bool isNamed, out bool isLulled, out _);
            Watch(clean, seconds, double.PositiveInfinity, double.PositiveInfinity, out bool isCried, out _, out bool? isHeld);
            _ = isNamed ? Interlocked.Increment(ref named) : 0;
            _ = isLulled ? Interlocked.Increment(ref lulled) : 0;
            _ = isCried ? Interlocked.Increment(ref cried) : 0;
            _ = isHeld is not null ? Interlocked.Increment(ref scored) : 0;
            _ = isHeld == true ? Interlocked.Increment(ref holds) : 0;
        });

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{kind} kind, readings {seconds} s apart, {tried} jobs: shut valve named in {100.0 * named / tried:F0} %, less than half of what is left said at most and no fault in {100.0 * lulled / tried:F0} %; no valve shut: named in {100.0 * cried / tried:F0} %, range holds at 75 % in {100.0 * holds / scored:F0} %"));
    }

    private static void Watch(SimulatedJob job, int seconds, double until, double nameBy, out bool isNamed, out bool isLulled, out bool? isHeld)
    {
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = EstimationProfile.Controller });
        isNamed = isLulled = false;
        isHeld = null;
        for (int i = 0; i < job.Log.Samples.Count && job.Log.Samples[i].Time < until; i += seconds)
        {
            TruthSample sample = job.Log.Samples[i];
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            bool isShut = estimate.Has(JobCondition.ValveClosed);
            bool isSaid = isShut || estimate.Has(JobCondition.HoseBlocked) || estimate.Has(JobCondition.MachineUnderperforming);
            isNamed |= isShut && sample.Time <= nameBy;
            isLulled |= !double.IsPositiveInfinity(until) && sample.Time > nameBy && !isSaid && estimate.Remaining.High < 0.5 * sample.Left;
            if (sample.Time >= 0.75 * job.Log.EndTime)
            {
                isHeld ??= estimate.Remaining.Contains(sample.Left);
            }
        }
    }

    private static Told ChargeKnown(SimulatedJob job) =>
        job.Told with { ChargeTolerance = 0.05 * Math.Sqrt(3), Charge = job.Charge * (1 + (0.05 * new Draws(job.Seed + 11).Normal())) };

    private static bool Coverage(string kind, int jobs, int seed, EstimationProfile profile, Func<SimulatedJob, Told> told, string what = "")
    {
        var scores = new ScorePoint?[jobs][];
        Parallel.For(0, jobs, i =>
        {
            SimulatedJob job = SimulatedJob.Draw(kind, seed + i);
            scores[i] = job.IsScored ? JobScore.Run(job with { Told = told(job) }, told(job).Options() with { Profile = profile }) : [];
        });

        ScorePoint?[][] scored = [.. scores.Where(s => s.Length > 0)];
        bool missed = false;
        Console.WriteLine($"{kind} kind, {(profile == EstimationProfile.Full ? "full profile" : "filter alone")}{what}, {scored.Length} jobs");
        Console.WriteLine("| at | range holds | median error | 90 % of errors below | median width | median error of the time | its range holds |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        for (int k = 0; k < JobScore.Shares.Length; k++)
        {
            ScorePoint[] points = [.. scored.Select(s => s[k]).OfType<ScorePoint>()];
            double holds = points.Average(p => p.Holds ? 1.0 : 0);
            missed |= profile == EstimationProfile.Full && what.Length == 0 && holds < HoldsAtLeast[k];
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {(k == JobScore.Shares.Length - 1 ? "end" : $"{100 * JobScore.Shares[k]:F0} %")} | {100 * holds:F0} % | {Percent(points.Select(p => p.Error), 0.5)} | {Percent(points.Select(p => p.Error), 0.9)} | {Percent(points.Select(p => p.Width), 0.5)} | {Percent(points.Select(p => p.TimeError), 0.5)} | {100 * points.Average(p => p.TimeHolds ? 1.0 : 0):F0} % |"));
        }

        Console.WriteLine();
        return missed;
    }

    private static bool Detection(string kind, int jobs, int seed, FaultKind fault, double size, JobCondition expected, double within, double atLeast)
    {
        var delays = new double?[jobs];
        int tried = 0;
        Parallel.For(0, jobs, i =>
        {
            SimulatedJob clean = SimulatedJob.Draw(kind, seed + i);
            if (!clean.IsScored || clean.Log.EndTime < 200)
            {
                return;
            }

            Interlocked.Increment(ref tried);
            double at = 0.4 * clean.Log.EndTime;
            SimulatedJob job = SimulatedJob.Draw(kind, seed + i, new Fault(fault, at, size));
            if (FirstFault(job, at + LongestWait, out double when) == expected && when >= at)
            {
                delays[i] = when - at;
            }
        });

        double[] sorted = [.. delays.OfType<double>().Order()];
        double share = sorted.Count(d => d <= within) / (double)tried;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{kind} kind, {fault}: {100 * share:F0} % of {tried} within {within} s, {100.0 * sorted.Length / tried:F0} % within {LongestWait} s, median {(sorted.Length > 0 ? sorted[sorted.Length / 2] : double.NaN):F0} s"));
        return share < atLeast;
    }

    /// <summary>
    /// A leak from half of the time on, through which air alone would stand at a share of the atmosphere before the machine: the level is never reached. Named within an hour after the time at which a tight appliance would
    /// have been empty.
    /// </summary>
    private static bool Air(int jobs, int seed, double stands)
    {
        var delays = new double?[jobs];
        var others = new JobCondition?[jobs];
        int tried = 0;
        Parallel.For(0, jobs, i =>
        {
            SimulatedJob clean = SimulatedJob.Draw("first", seed + i);
            if (!clean.IsScored || clean.Log.EndTime > LongestTight)
            {
                return;
            }

            Interlocked.Increment(ref tried);
            double end = clean.Log.EndTime;
            double moles = stands * clean.Told.Atmosphere * Efficiency * clean.Displacement / (8.314 * 290) / (1 - (stands * stands));
            SimulatedJob job = SimulatedJob.Draw("first", seed + i, new Fault(FaultKind.Leak, 0.5 * end, moles) { RestAt = end + Hour, RestTime = 0 });
            others[i] = FirstFault(job, double.PositiveInfinity, out _);
            if (FirstFault(job, double.PositiveInfinity, out double when, JobCondition.ForeignGas) is not null)
            {
                delays[i] = when - end;
            }
        });

        double[] sorted = [.. delays.OfType<double>().Order()];
        string which = string.Join(", ", others.OfType<JobCondition>().Where(c => c != JobCondition.ForeignGas).GroupBy(c => c).Select(g => $"{g.Key} in {g.Count()}"));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"first kind, air that alone stands at {100 * stands:F0} % of the atmosphere: {100.0 * sorted.Length / tried:F0} % of {tried} within an hour, median {(sorted.Length > 0 ? sorted[sorted.Length / 2] : double.NaN):F0} s; said before: {which}"));
        return sorted.Length < AirAtLeast * tried;
    }

    private static bool FalseAlarms(string kind, int jobs, int seed)
    {
        var found = new (JobCondition? Condition, double When, double End)[jobs];
        Parallel.For(0, jobs, i =>
        {
            SimulatedJob job = SimulatedJob.Draw(kind, seed + i);
            if (job.IsScored)
            {
                found[i].Condition = FirstFault(job, double.PositiveInfinity, out found[i].When);
                found[i].End = job.Log.EndTime;
            }
        });

        int alarms = found.Count(f => f.Condition is not null);
        double hours = found.Sum(f => f.When) / 3600;
        string which = string.Join(", ", found.Where(f => f.Condition is not null).Select(f => $"{f.Condition} at {100 * f.When / f.End:F0} %"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind} kind, nothing wrong: {alarms} alarms in {hours:F1} h {which}"));
        return alarms > 0.2 * hours;
    }

    private static JobCondition? FirstFault(SimulatedJob job, double until, out double when, JobCondition first = JobCondition.MachineUnderperforming)
    {
        MonitorOptions options = job.Told.Options() with { Profile = EstimationProfile.Controller };
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), options);
        when = 0;
        foreach (TruthSample sample in job.Log.Samples)
        {
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            when = sample.Time;
            for (JobCondition condition = first; condition <= JobCondition.ForeignGas; condition++)
            {
                if (estimate.Has(condition))
                {
                    return condition;
                }
            }

            if (sample.Time > until)
            {
                break;
            }
        }

        return null;
    }

    private static string Percent(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Where(v => !double.IsNaN(v)).OrderBy(v => v)];
        return sorted.Length == 0 ? "none" : (100 * sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))]).ToString("F1", CultureInfo.InvariantCulture) + " %";
    }
}
