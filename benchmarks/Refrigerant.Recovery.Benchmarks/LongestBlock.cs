using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// The longest call of the estimator, and the longest one-second block where all work that waits is done in it, over whole simulated jobs, clean ones and ones in which something goes wrong. Each job is run many times, and of each of its calls the
/// shortest time counts: what else the machine did meanwhile drops out, what the call itself takes stays.
/// </summary>
internal static class LongestBlock
{
    private const int Rounds = 12;

    private static readonly (string Kind, int Seed, Fault? Fault)[] Jobs =
    [
        ("first", 1001, null),
        ("second", 1001, null),
        ("third", 1001, null),
        ("second", 1001, new Fault(FaultKind.Pull, 200, 0.15)),
        ("second", 1001, new Fault(FaultKind.Valve, 200, 0)),
        ("second", 1001, new Fault(FaultKind.Hose, 200, 30)),
    ];

    /// <summary>Runs it; returns 0.</summary>
    public static int Run()
    {
        Console.WriteLine("| job | profile | mean of a block, all its slices done, µs | longest Add, µs | longest Work, µs | longest block, µs |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (EstimationProfile profile in new[] { EstimationProfile.Controller, EstimationProfile.Full })
        {
            foreach ((string kind, int seed, Fault? fault) in Jobs)
            {
                Print(SimulatedJob.Draw(kind, seed, fault), profile, fault, false);
            }

            // The scale shows the same from a fifth of the job on: it is found a minute later, and the filters go back.
            Print(SimulatedJob.Draw("second", 1001), profile, null, true);
        }

        return 0;
    }

    private static void Print(SimulatedJob job, EstimationProfile profile, Fault? fault, bool sticks)
    {
        RawReading[] readings = [.. Readings(job, sticks)];
        var calls = new double[readings.Length];
        var blocks = new double[readings.Length];
        var slices = new List<double>();
        Array.Fill(calls, double.PositiveInfinity);
        Array.Fill(blocks, double.PositiveInfinity);
        for (int round = 0; round < Rounds; round++)
        {
            var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = profile });
            int slice = 0;
            for (int i = 0; i < readings.Length; i++)
            {
                long start = Stopwatch.GetTimestamp();
                estimator.Add(in readings[i]);
                double added = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                double all = added;
                bool more = true;
                for (int k = 0; k < 20 && more; k++)
                {
                    start = Stopwatch.GetTimestamp();
                    more = estimator.Work();
                    double took = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                    all += took;
                    if (slice == slices.Count)
                    {
                        slices.Add(took);
                    }

                    slices[slice] = Math.Min(slices[slice], took);
                    slice++;
                }

                calls[i] = Math.Min(calls[i], added);
                blocks[i] = Math.Min(blocks[i], all);
            }
        }

        string what = sticks ? "scale sticks" : fault is null ? "clean" : fault.Kind.ToString().ToLowerInvariant();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {job.Kind} kind, {what} | {profile} | {blocks.Average():F0} | {calls.Max():F0} | {slices.Max():F0} | {blocks.Max():F0} |"));
    }

    private static IEnumerable<RawReading> Readings(SimulatedJob job, bool sticks)
    {
        double from = 0.2 * job.Log.EndTime;
        double shown = double.NaN;
        foreach (TruthSample sample in job.Log.Samples)
        {
            RawReading reading = JobScore.Reading(in sample);
            if (sticks && sample.Time >= from)
            {
                shown = double.IsNaN(shown) ? sample.Gross : shown;
                reading = reading with { GrossWeight = shown };
            }

            yield return reading;
        }
    }
}
