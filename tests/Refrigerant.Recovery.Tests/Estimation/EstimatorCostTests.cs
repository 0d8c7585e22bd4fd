using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>What the estimator allocates. Times come from the benchmarks.</summary>
public class EstimatorCostTests
{
    [Theory]
    [InlineData(EstimationProfile.Controller, 64)]
    [InlineData(EstimationProfile.Full, 2048)]
    public void Nothing_is_allocated_after_the_start_and_little_before(EstimationProfile profile, int kibibytes)
    {
        SimulatedJob job = SimulatedJob.Draw("second", 1004);

        // Without cylinders: the rules for their limits make texts that nobody keeps.
        RecoveryJob planned = job.Told.Job() with { Cylinders = [] };
        MonitorOptions options = job.Told.Options() with { Profile = profile };
        Instruments instruments = job.Told.Instruments();
        _ = new RecoveryEstimator(planned, instruments, options);
        long least = long.MaxValue;
        for (int i = 0; i < 3; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            var estimator = new RecoveryEstimator(planned, instruments, options);
            long made = GC.GetAllocatedBytesForCurrentThread() - before;
            Run(estimator, job.Log, 20);
            before = GC.GetAllocatedBytesForCurrentThread();
            Run(estimator, job.Log, int.MaxValue);

            // What the runtime makes for itself on this thread, beside a thousand other tests, it makes once; what a job makes, in every run of it.
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
            Assert.InRange(made, 0, kibibytes * 1024L);
        }

        Assert.Equal(0, least);
    }

    private static void Run(RecoveryEstimator estimator, TruthLog log, int samples)
    {
        for (int i = 0; i < Math.Min(samples, log.Samples.Count); i++)
        {
            TruthSample sample = log.Samples[i];
            RawReading reading = JobScore.Reading(in sample);
            estimator.Add(in reading);
            while (estimator.Work())
            {
                // All that waits.
            }

            estimator.Read(out _);
        }
    }
}
