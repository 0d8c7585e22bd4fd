using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>Readings a minute apart, as they are written down by hand: what goes wrong between two of them must not pass for an empty appliance.</summary>
public class SparseReadingsTests
{
    private const double Minute = 60;

    /// <summary>A valve is shut for ten minutes with most of the charge still there. It is named within three readings, the range holds what is left meanwhile, and afterwards.</summary>
    [Fact]
    public void A_shut_valve_is_named_and_what_is_left_stays_within_the_range()
    {
        SimulatedJob clean = SimulatedJob.Draw("second", Shut);
        double at = 0.4 * clean.Log.EndTime;
        SimulatedJob job = SimulatedJob.Draw("second", Shut, new Fault(FaultKind.Valve, at, 0, at + 600));
        RecoveryEstimator estimator = Estimator(job);
        int named = 0, out_ = 0, after = 0;
        foreach (TruthSample sample in EveryMinute(job.Log))
        {
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            bool isShut = sample.Time >= at + (3 * Minute) && sample.Time < at + 600;
            named += isShut && estimate.Has(JobCondition.ValveClosed) ? 1 : 0;
            after += sample.Time > at + 600 + (3 * Minute) && estimate.Has(JobCondition.ValveClosed) ? 1 : 0;
            out_ += sample.Time > at && estimate.Remaining.High < sample.Left ? 1 : 0;
        }

        Assert.InRange(named, 6, 8);
        Assert.Equal(0, after);
        Assert.Equal(0, out_);
    }

    /// <summary>The machine stands and nobody says so: the gauge rises over the liquid, the scale stands. It is named within four readings, and forgotten when it runs again.</summary>
    [Fact]
    public void A_machine_that_stands_is_named_under_a_rising_gauge()
    {
        SimulatedJob clean = SimulatedJob.Draw("second", Stands);
        double at = 0.4 * clean.Log.EndTime;
        SimulatedJob job = SimulatedJob.Draw("second", Stands, new Fault(FaultKind.Rest, at, 600, at + 600));
        RecoveryEstimator estimator = Estimator(job);
        int named = 0, after = 0, under = 0;
        foreach (TruthSample sample in EveryMinute(job.Log))
        {
            estimator.Add(JobScore.Reading(in sample) with { IsMachineRunning = true });
            estimator.Read(out RawEstimate estimate);
            bool stands = sample.Time >= at + (5 * Minute) && sample.Time < at + 600;
            named += stands && estimate.Has(JobCondition.MachineUnderperforming) ? 1 : 0;
            under += stands && estimate.Remaining.High < sample.Left ? 1 : 0;
            after += sample.Time > at + 600 + (3 * Minute) && estimate.Has(JobCondition.MachineUnderperforming) ? 1 : 0;
        }

        Assert.InRange(named, 4, 6);
        Assert.Equal(0, under);
        Assert.Equal(0, after);
    }

    /// <summary>A gauge in psi that is taken for kPa, read every two seconds while the machine runs from the start: left out within half a minute, and its low pressure is not taken for liquid that moves.</summary>
    [Theory]
    [InlineData("first", 700_002)]
    [InlineData("second", 700_003)]
    [InlineData("third", 700_001)]
    public void Psi_for_kPa_is_found_while_the_machine_runs(string kind, int seed)
    {
        SimulatedJob job = SimulatedJob.Draw(kind, seed);
        RecoveryEstimator estimator = Estimator(job);
        for (int i = 0; i <= 30; i += 2)
        {
            TruthSample sample = job.Log.Samples[i];
            estimator.Add(JobScore.Reading(in sample) with { SuctionGaugePressure = sample.Gauge / 6.894757 });
            estimator.Read(out RawEstimate during);
            Assert.False(during.Has(JobCondition.LiquidTransfer));
        }

        estimator.Read(out RawEstimate estimate);
        Assert.True(estimate.Has(JobCondition.GaugeInconsistent));
        Assert.True((estimate.NotUsed & UnusedReadings.GaugeInconsistent) != 0);
    }

    /// <summary>Jobs of 19 and of 25 minutes, with liquid at two fifths of them.</summary>
    private const int Shut = 700_000;

    private const int Stands = 700_014;

    private static IEnumerable<TruthSample> EveryMinute(TruthLog log)
    {
        double next = 0;
        foreach (TruthSample sample in log.Samples)
        {
            if (sample.Time >= next)
            {
                next = sample.Time + Minute;
                yield return sample;
            }
        }
    }

    private static RecoveryEstimator Estimator(SimulatedJob job) =>
        new(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = EstimationProfile.Controller });
}
