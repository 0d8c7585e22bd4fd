using System.Collections.Generic;
using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>A whole simulated job through the estimator: time a one-second block is what is printed, over <see cref="Blocks"/>.</summary>
[MemoryDiagnoser]
public class EstimatorBenchmarks
{
    /// <summary>Blocks of the job.</summary>
    private const int Blocks = 560;

    private readonly List<RawReading> _readings = [];
    private SimulatedJob _job = null!;
    private RecoveryEstimator _estimator = null!;

    [Params(EstimationProfile.Controller, EstimationProfile.Full)]
    public EstimationProfile Profile { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _job = SimulatedJob.Draw("second", 1001);
        for (int i = 0; i < Blocks; i++)
        {
            TruthSample sample = _job.Log.Samples[i];
            _readings.Add(JobScore.Reading(in sample));
        }
    }

    [IterationSetup]
    public void Begin() => _estimator = new RecoveryEstimator(_job.Told.Job(), _job.Told.Instruments(), _job.Told.Options() with { Profile = Profile });

    [Benchmark(OperationsPerInvoke = Blocks)]
    public double Block()
    {
        RawEstimate estimate = default;
        foreach (RawReading reading in _readings)
        {
            _estimator.Add(in reading);
            for (int i = 0; i < 20 && _estimator.Work(); i++)
            {
                // At most twenty slices a block.
            }

            _estimator.Read(out estimate);
        }

        return estimate.Remaining.Best;
    }
}
