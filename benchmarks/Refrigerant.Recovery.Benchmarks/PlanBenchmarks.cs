using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Samples.Console;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// Whole plans of the console sample's jobs, and uncertainty runs on one and two threads. To reach: a plan of a pure refrigerant in 2 ms, 256
/// plans in 1 s on two cores, two threads at least 1.8 times one.
/// </summary>
[MemoryDiagnoser]
public class PlanBenchmarks
{
    private readonly RecoveryJob _chiller = ChillerJob.Create();
    private readonly RecoveryJob _rooftop = RooftopJob.Create() with { FollowComposition = false };

    [Benchmark]
    public RecoveryPlan Chiller() => RecoveryPlanner.Plan(_chiller);

    [Benchmark]
    public RecoveryPlan RooftopBlend() => RecoveryPlanner.Plan(_rooftop);

    [Benchmark]
    public PlanUncertainty Uncertainty256OneThread() => PlanUncertainty.Run(_chiller, new UncertaintyOptions { MaximumThreads = 1 });

    [Benchmark]
    public PlanUncertainty Uncertainty256TwoThreads() => PlanUncertainty.Run(_chiller, new UncertaintyOptions { MaximumThreads = 2 });
}
