using System;
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Soak;

/// <summary>Random stages of every kind, three after each other: what <see cref="StageStory"/> says must hold, and how they end.</summary>
internal static class RandomStages
{
    private const int Numbers = 40;
    private const int PerStory = 3;
    private const int Shown = 10;

    public static int Run(int stages)
    {
        var watch = Stopwatch.StartNew();
        var ends = new ConcurrentDictionary<StageEnd, int>();
        var broken = new ConcurrentBag<string>();
        int done = 0;
        Parallel.For(0, (stages + PerStory - 1) / PerStory, seed =>
        {
            var random = new Random(seed);
            var story = new StageStory(new RandomSetup([.. Enumerable.Range(0, Numbers).Select(_ => random.Next(1000))]));
            foreach (StageResult result in story.Results)
            {
                ends.AddOrUpdate(result.End, 1, (_, count) => count + 1);
                Interlocked.Increment(ref done);
            }

            foreach (string what in story.WhatIsBroken)
            {
                broken.Add($"{seed}: {story.Told} {what}");
            }
        });
        Console.WriteLine(FormattableString.Invariant($"{done:N0} stages in {watch.Elapsed.TotalSeconds:F0} s: {string.Join(", ", ends.OrderByDescending(end => end.Value).Select(end => $"{end.Key} {end.Value}"))}"));
        foreach (string what in broken.Take(Shown))
        {
            Console.WriteLine(what);
        }

        Console.WriteLine($"{broken.Count} failures");
        return broken.IsEmpty ? 0 : 1;
    }
}
