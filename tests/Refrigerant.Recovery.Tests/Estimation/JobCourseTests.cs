using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>What belongs to a job and is no error: rests, liquid that is pushed first, blends with glide, oil that was not told, a charge known well.</summary>
public class JobCourseTests
{
    private const int Jobs = 10;

    private static readonly double[] HoldsAtLeast = [0.88, 0.88, 0.88, 0.82, 0.88];

    [Fact]
    public void Rests_are_no_error_and_the_ranges_hold()
    {
        Holds([.. Scored("second", 94_000, job => SimulatedJob.Draw("second", job.Seed, new Fault(FaultKind.Rest, 0.3 * job.Log.EndTime, 90)))], job => job.Told);
    }

    [Fact]
    public void Liquid_is_pushed_first_and_the_estimate_takes_over()
    {
        SimulatedJob[] jobs = [.. Scored("second", 94_100, job => SimulatedJob.Draw("second", job.Seed, new Fault(FaultKind.Push, 10, 0.35 * job.Charge)))];
        Holds(jobs, job => job.Told);
        int named = jobs.Count(job => Names(job, JobCondition.LiquidTransfer, 0.5 * job.Log.EndTime, out _));
        Assert.True(named >= Bounds.Least(jobs.Length, 0.85), $"{named} of {jobs.Length}");
    }

    [Theory]
    [InlineData("first", 94_200)]
    [InlineData("second", 94_200)]
    [InlineData("third", 94_200)]
    public void Oil_that_was_not_told_widens_the_range_and_it_holds(string kind, int seed)
    {
        Holds([.. Scored(kind, seed, job => job)], job => job.Told with { Oil = -1 });
    }

    [Theory]
    [InlineData("first", 94_300)]
    [InlineData("second", 94_300)]
    [InlineData("third", 94_300)]
    public void A_charge_known_to_5_percent_is_known_better(string kind, int seed)
    {
        double[] median = [0.05, 0.05, 0.04, 0.02, 0.015];
        ScorePoint?[][] scores = Holds(
            [.. Scored(kind, seed, job => job)],
            job => job.Told with { ChargeTolerance = 0.05 * Math.Sqrt(3), Charge = job.Charge * (1 + (0.05 * new Draws(job.Seed + 11).Normal())) });
        for (int k = 0; k < median.Length; k++)
        {
            ScorePoint[] points = [.. scores.Select(s => s[k]).OfType<ScorePoint>()];
            Assert.True(points.Count(p => p.Error <= median[k]) >= Bounds.Least(points.Length, 0.5), $"{kind} at {JobScore.Shares[k]:P0}");
        }
    }

    /// <summary>Blends with glide as the engine has them: its trajectory with the noise of a gauge of class 1 and a scale of 10 g.</summary>
    [Theory]
    [InlineData(CompositionMode.Fixed)]
    [InlineData(CompositionMode.Tracked)]
    public void Glide_stays_within_the_range(CompositionMode composition)
    {
        int holds = 0;
        int all = 0;
        foreach ((string fluid, int seed) in new[] { ("R-407C", 1), ("R-407C", 2), ("R-448A", 3) })
        {
            SimulatedJob job = OfEngine(fluid, composition, seed);
            foreach (ScorePoint? point in JobScore.Run(job))
            {
                all++;
                holds += point is { Holds: true } ? 1 : 0;
            }
        }

        Assert.Equal(15, all);
        Assert.True(holds >= Bounds.Least(all, 0.86), $"{composition}: holds in {holds} of {all}");
    }

    private static IEnumerable<SimulatedJob> Scored(string kind, int seed, Func<SimulatedJob, SimulatedJob> with)
    {
        for (int count = 0; count < Jobs; seed++)
        {
            SimulatedJob job = SimulatedJob.Draw(kind, seed);
            if (job.IsScored)
            {
                count++;
                yield return with(job);
            }
        }
    }

    private static ScorePoint?[][] Holds(SimulatedJob[] jobs, Func<SimulatedJob, Told> told)
    {
        ScorePoint?[][] scores = [.. jobs.AsParallel().Select(job => JobScore.Run(job with { Told = told(job) }))];
        for (int k = 0; k < JobScore.Shares.Length; k++)
        {
            ScorePoint[] points = [.. scores.Select(s => s[k]).OfType<ScorePoint>()];
            int holds = points.Count(p => p.Holds);
            Assert.True(holds >= Bounds.Least(points.Length, HoldsAtLeast[k]), $"{jobs[0].Kind} at {JobScore.Shares[k]:P0}: the range holds in {holds} of {points.Length} jobs");
        }

        return scores;
    }

    private static bool Names(SimulatedJob job, JobCondition condition, double until, out double when)
    {
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = EstimationProfile.Controller });
        when = 0;
        foreach (TruthSample sample in job.Log.Samples)
        {
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            when = sample.Time;
            if (estimate.Has(condition))
            {
                return true;
            }

            if (sample.Time > until)
            {
                break;
            }
        }

        return false;
    }

    private static SimulatedJob OfEngine(string fluid, CompositionMode composition, int seed)
    {
        var random = new Draws(95_000 + seed);
        double charge = random.LogUniform(2, 8);
        double air = random.Uniform(285, 303);
        var truth = new Told
        {
            Fluid = fluid,
            Charge = charge,
            Volume = charge * 0.0035,
            Temperature = air,
            Outer = 5 * charge,
            Metal = 2500 * charge,
            Displacement = charge * 9e-5,
            HoseResistance = 5e9,
            Oil = 0,
            Level = 95e3,
        };
        RecoveryJob job = truth.Job();
        StageResult stage = VaporRecovery.Simulate(
            job.Appliance,
            job.Machine with { Body = null },
            job.Hoses,
            RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(100), Mass.FromKilograms(12.5)) with { Content = Mass.FromKilograms(1) },
            new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(truth.Level), Composition = composition });
        Assert.Equal(StageEnd.TargetReached, stage.End);
        var log = new TruthLog { EndTime = stage.Duration.Seconds };
        double bias = 0.005 * 1.6e6 * random.Normal();
        int at = 0;
        for (int t = 0; t <= log.EndTime; t++)
        {
            while (at < stage.Trajectory.Count - 2 && stage.Trajectory[at + 1].Time.Seconds < t)
            {
                at++;
            }

            TrajectoryPoint a = stage.Trajectory[at];
            TrajectoryPoint b = stage.Trajectory[at + 1];
            double share = Math.Max(0, Math.Min(1, (t - a.Time.Seconds) / Math.Max(1e-9, b.Time.Seconds - a.Time.Seconds)));
            double Between(Func<TrajectoryPoint, double> of) => of(a) + (share * (of(b) - of(a)));
            double left = Between(p => p.ApplianceMass.Kilograms);
            double gauge = Between(p => p.SuctionPressure.Pascals) - truth.Atmosphere + bias + (1600 * random.Normal());
            double gross = 13.5 + charge - left + (0.004 * random.Normal());
            log.Samples.Add(new TruthSample(
                t, Math.Round(gauge / 1e3) * 1e3, Math.Round(gross / 0.01) * 0.01, air, true, true, left, Between(p => p.AppliancePressure.Pascals), Between(p => p.LiquidMass.Kilograms)));
        }

        Told told = truth with
        {
            Charge = charge * random.Off(0.25),
            Volume = truth.Volume * random.Off(0.25),
            Outer = truth.Outer * random.Off(0.4),
            Metal = truth.Metal * random.Off(0.5),
            Displacement = truth.Displacement * random.Off(0.1),
        };
        return new SimulatedJob("engine", seed, charge, truth.Volume, truth.Displacement, told, log);
    }
}
