using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Soak;

/// <summary>
/// Random plans of all refrigerants on every core for some minutes; each job has a seed of its own, by which a failure is found again. Allowed outcomes: a plan that breaks none of <see cref="PlanInvariants"/> and whose documents are read back as written, or an error for a job that cannot be.
/// A <see cref="ConvergenceException"/> is documented, but counted and listed.
/// </summary>
internal static class RandomPlans
{
    /// <summary>Memory may be this much more than after the first minute, when the tables of all refrigerants in use exist.</summary>
    private const long Growth = 8 * 1024 * 1024;

    private static readonly IReadOnlyList<Fluid> All = [.. Fluid.All];

    private static readonly RecordFacts Facts = new() { Company = "Example Cooling", Location = "12 Sample Street", Date = new DateTime(2026, 11, 25) };

    /// <summary>A plan that takes longer is a time-out, s.</summary>
    private const double Longest = 30;

    public static int Run(int minutes, int first)
    {
        long plans = 0;
        int next = first - 1;
        double slowest = 0;
        long refused = 0;
        var failures = new ConcurrentDictionary<string, (int Times, int Seed)>(StringComparer.Ordinal);
        var ends = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        long atFirst = Memory();
        long atLast = atFirst;
        Report(0, 0, 0, atFirst);
        for (int minute = 1; minute <= minutes; minute++)
        {
            var watch = Stopwatch.StartNew();
            Parallel.For(0, Environment.ProcessorCount, _ =>
            {
                while (watch.Elapsed.TotalSeconds < 60)
                {
                    var one = Stopwatch.StartNew();
                    int seed = Interlocked.Increment(ref next);
                    Interlocked.Add(ref plans, Try(seed, failures, ends, ref refused));
                    if (one.Elapsed.TotalSeconds > Longest)
                    {
                        Count(failures, $"a plan took {one.Elapsed.TotalSeconds:F0} s", seed);
                    }

                    lock (failures)
                    {
                        slowest = Math.Max(slowest, one.Elapsed.TotalSeconds);
                    }
                }
            });
            atLast = Memory();
            atFirst = minute == 1 ? atLast : atFirst;
            Report(minute, plans, refused, atLast);
        }

        foreach (KeyValuePair<string, (int Times, int Seed)> failure in failures.OrderByDescending(f => f.Value.Times).Take(40))
        {
            Console.WriteLine($"  {failure.Value.Times} x {failure.Key}, the last of seed {failure.Value.Seed}");
        }

        Console.WriteLine("ends of stages: " + string.Join(", ", ends.OrderByDescending(e => e.Value).Select(e => FormattableString.Invariant($"{e.Key} {e.Value:N0}"))));
        bool grows = atLast - atFirst > Growth;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{plans:N0} plans and {refused:N0} jobs turned down, {failures.Values.Sum(f => f.Times)} failures; the slowest took {slowest:F1} s; memory {(grows ? "grows" : "does not grow")} from the first minute to the last"));
        return grows || !failures.IsEmpty ? 1 : 0;
    }

    /// <summary>The plan of one seed, to look at.</summary>
    public static int Show(int seed)
    {
        RecoveryJob job = RandomJobs.Next(new Random(seed), All[seed % All.Count]);
        Console.WriteLine(RecoveryJobJson.Write(job));
        var watch = Stopwatch.StartNew();
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{plan}, planned in {watch.Elapsed.TotalSeconds:F2} s"));
        foreach (PlannedStage stage in plan.Stages)
        {
            Console.WriteLine($"  {stage}; {stage.Result}");
        }

        foreach (string line in plan.Findings.Select(finding => $"  [{finding.Code}] {finding}").Concat(PlanInvariants.Broken(plan).Select(broken => "broken: " + broken)))
        {
            Console.WriteLine(line);
        }

        return 0;
    }

    private static int Try(int seed, ConcurrentDictionary<string, (int Times, int Seed)> failures, ConcurrentDictionary<string, int> ends, ref long refused)
    {
        RecoveryJob job = RandomJobs.Next(new Random(seed), All[seed % All.Count]);
        RecoveryPlan plan;
        try
        {
            plan = RecoveryPlanner.Plan(job);
        }
        catch (ImpossibleJobException)
        {
            Interlocked.Increment(ref refused);
            return 0;
        }
        catch (PropertyRangeException)
        {
            Interlocked.Increment(ref refused);
            return 0;
        }
#pragma warning disable CA1031 // Every other exception is what this run looks for.
        catch (Exception e)
        {
            Count(failures, $"{job.Appliance.Fluid}: {e.GetType().Name} {e.Message}", seed);
            return 0;
        }

        foreach (string broken in PlanInvariants.Broken(plan))
        {
            Count(failures, $"{job.Appliance.Fluid}: {broken}", seed);
        }

        foreach (PlannedStage stage in plan.Stages)
        {
            if (stage.Result is StageResult result)
            {
                ends.AddOrUpdate($"{stage.Kind} {result.End}", 1, (_, n) => n + 1);
                if (result.End == StageEnd.StepLimit)
                {
                    Count(failures, $"{job.Appliance.Fluid}: {stage.Kind} met the bound on steps", seed);
                }
            }
        }

        try
        {
            string json = RecoveryPlanJson.Write(plan, course: true);
            string record = RecoveryRecordJson.Write(RecoveryRecord.From(plan, Facts));
            if (RecoveryPlanJson.Write(RecoveryPlanJson.Read(json)) != json || RecoveryRecordJson.Write(RecoveryRecordJson.Read(record)) != record)
            {
                Count(failures, $"{job.Appliance.Fluid}: a document differs when it is read and written again", seed);
            }
        }
        catch (Exception e)
#pragma warning restore CA1031
        {
            Count(failures, $"{job.Appliance.Fluid}: writing the plan, {e.GetType().Name} {e.Message}", seed);
        }

        return 1;
    }

    private static void Count(ConcurrentDictionary<string, (int Times, int Seed)> failures, string what, int seed) =>
        failures.AddOrUpdate(what, (1, seed), (_, known) => (known.Times + 1, seed));

    private static long Memory()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        return GC.GetTotalMemory(forceFullCollection: true);
    }

    private static void Report(int minute, long plans, long refused, long memory) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"minute {minute,3}: {plans,8:N0} plans, {refused,7:N0} turned down, {memory / 1048576.0,7:F1} MiB managed, {Environment.WorkingSet / 1048576.0,7:F0} MiB working set"));
}
