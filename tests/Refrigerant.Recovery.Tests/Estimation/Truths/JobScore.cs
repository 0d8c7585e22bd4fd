using System;
using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>An estimator run over a simulated job, compared with the truth at a quarter, half, three quarters, nine tenths and the end of the time.</summary>
public static class JobScore
{
    public static readonly double[] Shares = [0.25, 0.5, 0.75, 0.9, 0.995];

    /// <summary>Runs the job; null at a share that no reading fell on.</summary>
    public static ScorePoint?[] Run(SimulatedJob job, MonitorOptions? options = null)
    {
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), options ?? job.Told.Options());
        var points = new ScorePoint?[Shares.Length];
        int next = 0;
        foreach (TruthSample sample in job.Log.Samples)
        {
            estimator.Add(Reading(in sample));
            for (int i = 0; i < 20 && estimator.Work(); i++)
            {
            }

            while (next < Shares.Length && sample.Time >= Shares[next] * job.Log.EndTime)
            {
                estimator.Read(out RawEstimate estimate);
                points[next] = Compare(job, in sample, in estimate);
                next++;
            }
        }

        return points;
    }

    public static RawReading Reading(in TruthSample sample) => new(sample.Time)
    {
        SuctionGaugePressure = sample.Gauge,
        GrossWeight = sample.Gross,
        AirTemperature = sample.Air,
        IsMachineRunning = sample.IsRunning,
        IsValveOpen = sample.IsValveOpen,
    };

    private static ScorePoint Compare(SimulatedJob job, in TruthSample sample, in RawEstimate estimate)
    {
        double toGo = job.Log.EndTime - sample.Time;
        return new ScorePoint(
            estimate.Remaining.Contains(sample.Left),
            Math.Abs(estimate.Remaining.Best - sample.Left) / job.Charge,
            (estimate.Remaining.High - estimate.Remaining.Low) / job.Charge,
            estimate.HasTimeToLevel ? Math.Abs(estimate.TimeToLevel.Best - toGo) / job.Log.EndTime : double.NaN,
            estimate.HasTimeToLevel && estimate.TimeToLevel.Contains(toGo),
            sample.Left / job.Charge,
            estimate.Remaining.Low / job.Charge,
            estimate.Remaining.Best / job.Charge,
            estimate.Remaining.High / job.Charge);
    }
}
