using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Planning;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Many plans at once: each is made, and the share done is told.</summary>
public class ParallelRunTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(null)]
    public void Each_is_done_once_and_the_share_done_rises_evenly_to_all(int? threads)
    {
        int[] done = new int[10];
        var told = new Recorder();
        ParallelRun.For(10, threads, i => Interlocked.Increment(ref done[i]), default, told);
        Assert.All(done, times => Assert.Equal(1, times));
        Assert.Equal(Enumerable.Range(1, 10).Select(i => i / 10.0), told.Values);
    }

    [Fact]
    public void What_one_throws_comes_out_as_it_is() => Assert.Throws<TimeoutException>(() => ParallelRun.For(3, 2, _ => throw new TimeoutException(), default, null));

    [Fact]
    public void It_ends_when_it_is_cancelled()
    {
        using var source = new CancellationTokenSource();
        int begun = 0;
        Assert.Throws<OperationCanceledException>(() => ParallelRun.For(1000, 1, _ =>
        {
            begun++;
            source.Cancel();
        }, source.Token, null));
        Assert.Equal(1, begun);
    }

    private sealed class Recorder : IProgress<double>
    {
        public List<double> Values { get; } = [];

        public void Report(double value) => Values.Add(value);
    }
}
