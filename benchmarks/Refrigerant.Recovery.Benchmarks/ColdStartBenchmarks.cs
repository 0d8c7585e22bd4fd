using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Samples.Console;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// The first call of a process, compilation of the code included: each of ten launches measures one call. It needs processes of its own, so it
/// is not run with <c>-i</c> (in process).
/// </summary>
[MemoryDiagnoser]
[SimpleJob(RunStrategy.ColdStart, launchCount: 10, warmupCount: 0, iterationCount: 1, invocationCount: 1)]
public class ColdStartBenchmarks
{
    private static readonly Temperature Warm = new(287.3, TemperatureUnit.Kelvin);

    [Benchmark]
    public SaturationState PureSaturation() => Fluid.Get("R-134a").SaturationAt(Warm);

    [Benchmark]
    public SaturationState BlendSaturation() => Fluid.Get("R-448A").SaturationAt(Warm);

    [Benchmark]
    public RecoveryPlan Plan() => RecoveryPlanner.Plan(ChillerJob.Create());
}
