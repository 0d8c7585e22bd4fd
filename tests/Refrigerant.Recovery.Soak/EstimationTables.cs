using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
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

    private static readonly string[] Kinds = ["first", "second", "third"];

    private static readonly double[] HoldsAtLeast = [0.88, 0.88, 0.88, 0.82, 0.88];

    private static readonly (FaultKind Kind, double Size, JobCondition Expected, double Within, double AtLeast)[] Faults =
    [
        (FaultKind.Pull, 0.15, JobCondition.ScaleDisturbed, 30, 0.95),
        (FaultKind.Valve, 0, JobCondition.ValveClosed, 20, 0.85),
        (FaultKind.Weak, 0.6, JobCondition.MachineUnderperforming, 240, 0.75),
        (FaultKind.Hose, 30, JobCondition.HoseBlocked, 240, 0.60),
    ];

    public static int Run(int jobs)
    {
        bool missed = false;
        foreach (string kind in Kinds)
        {
            missed |= Coverage(kind, jobs, EstimationProfile.Full, job => job.Told);
            missed |= Coverage(kind, jobs, EstimationProfile.Controller, job => job.Told);
            missed |= Coverage(kind, jobs / 2, EstimationProfile.Full, job => job.Told with { Oil = -1 }, ", oil not told");
            missed |= Coverage(
                kind,
                jobs / 2,
                EstimationProfile.Full,
                job => job.Told with { ChargeTolerance = 0.0866, Charge = job.Charge * (1 + (0.05 * new Draws(job.Seed + 11).Normal())) },
                ", charge told to 5 %");
        }

        foreach (string kind in Kinds.Take(2))
        {
            missed |= FalseAlarms(kind, jobs / 2);
            foreach ((FaultKind fault, double size, JobCondition expected, double within, double atLeast) in Faults)
            {
                missed |= Detection(kind, jobs / 3, fault, size, expected, within, atLeast);
            }
        }

        return missed ? 1 : 0;
    }

    private static bool Coverage(string kind, int jobs, EstimationProfile profile, Func<SimulatedJob, Told> told, string what = "")
    {
        var scores = new ScorePoint?[jobs][];
        for (int i = 0; i < jobs; i++)
        {
            SimulatedJob job = SimulatedJob.Draw(kind, FirstSeed + i);
            scores[i] = job.IsScored ? JobScore.Run(job with { Told = told(job) }, told(job).Options() with { Profile = profile }) : [];
        }

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

    private static bool Detection(string kind, int jobs, FaultKind fault, double size, JobCondition expected, double within, double atLeast)
    {
        var delays = new List<double>();
        int tried = 0;
        for (int i = 0; i < jobs; i++)
        {
            SimulatedJob clean = SimulatedJob.Draw(kind, FaultSeed + i);
            if (!clean.IsScored || clean.Log.EndTime < 200)
            {
                continue;
            }

            tried++;
            double at = 0.4 * clean.Log.EndTime;
            SimulatedJob job = SimulatedJob.Draw(kind, FaultSeed + i, new Fault(fault, at, size));
            if (FirstFault(job, at + LongestWait, out double when) == expected && when >= at)
            {
                delays.Add(when - at);
            }
        }

        double share = delays.Count(d => d <= within) / (double)tried;
        delays.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{kind} kind, {fault}: {100 * share:F0} % of {tried} within {within} s, {100.0 * delays.Count / tried:F0} % within {LongestWait} s, median {(delays.Count > 0 ? delays[delays.Count / 2] : double.NaN):F0} s"));
        return share < atLeast;
    }

    private static bool FalseAlarms(string kind, int jobs)
    {
        int alarms = 0;
        double hours = 0;
        for (int i = 0; i < jobs; i++)
        {
            SimulatedJob job = SimulatedJob.Draw(kind, FaultSeed + i);
            if (job.IsScored)
            {
                alarms += FirstFault(job, double.PositiveInfinity, out double when) is null ? 0 : 1;
                hours += when / 3600;
            }
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind} kind, nothing wrong: {alarms} alarms in {hours:F1} h"));
        return alarms > 0.2 * hours;
    }

    private static JobCondition? FirstFault(SimulatedJob job, double until, out double when)
    {
        MonitorOptions options = job.Told.Options() with { Profile = EstimationProfile.Controller };
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), options);
        when = 0;
        foreach (TruthSample sample in job.Log.Samples)
        {
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            when = sample.Time;
            for (JobCondition condition = JobCondition.MachineUnderperforming; condition <= JobCondition.ForeignGas; condition++)
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
