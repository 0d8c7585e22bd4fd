using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>Readings in another unit, against another zero, by another clock, or of another cylinder: it is said, and the truth stays within the range as often as it would.</summary>
public class WrongReadingTests
{
    private const int Jobs = 12;

    private static readonly Dictionary<string, List<SimulatedJob>> Drawn = [];

    /// <summary>Of eighty other jobs of each kind it was said in 44, 62 and 89 %: where pressures are high to the end, an atmosphere is within what machine and temperature are known to.</summary>
    [Theory]
    [InlineData("first", 0.40)]
    [InlineData("second", 0.60)]
    [InlineData("third", 0.85)]
    public void Absolute_for_gauge_is_said_and_never_where_the_gauge_is_right(string kind, double atLeast)
    {
        int said = 0;
        int holds = 0;
        foreach (SimulatedJob job in Of(kind))
        {
            Outcome right = Watch(job, (reading, _) => reading);
            Outcome wrong = Watch(job, (reading, _) => With(reading, gauge: reading.SuctionGaugePressure + job.Told.Atmosphere));
            Assert.DoesNotContain(JobCondition.GaugeAbsolute, right.Conditions);
            if (wrong.Conditions.Contains(JobCondition.GaugeAbsolute))
            {
                said++;
                Assert.True((wrong.Unused & UnusedReadings.GaugeInconsistent) != 0);
                holds += wrong.Holds;
            }
        }

        Assert.True(said >= Bounds.Least(Jobs, atLeast), $"{kind}: said in {said} of {Jobs} jobs");
        int points = JobScore.Shares.Length * said;
        Assert.True(holds >= Bounds.Least(points, 0.85), $"{kind}: where it is said the range holds at {holds} of {points} points");
    }

    /// <summary>A machine that becomes weak moves flow against pressure as well: that is not what the gauge shows.</summary>
    [Theory]
    [InlineData("second")]
    [InlineData("third")]
    public void A_machine_that_becomes_weak_is_no_absolute_gauge(string kind)
    {
        foreach (SimulatedJob job in Of(kind))
        {
            SimulatedJob weak = SimulatedJob.Draw(kind, job.Seed, new Fault(FaultKind.Weak, 0.3 * job.Log.EndTime, 0.6));
            Assert.DoesNotContain(JobCondition.GaugeAbsolute, Watch(weak, (reading, _) => reading).Conditions);
        }
    }

    [Theory]
    [InlineData("one reading ten minutes ahead", 0)]
    [InlineData("three readings ten minutes ahead", 0)]
    [InlineData("ten minutes ahead from here on", 0)]
    [InlineData("ten minutes back from here on", 0)]
    [InlineData("thousandths of a second", 30)]
    [InlineData("thousands of seconds", 30)]
    public void Another_clock_is_said_and_leaves_the_estimate_as_it_was(string what, double startsLater)
    {
        UnusedReadings expected = what == "ten minutes back from here on" ? UnusedReadings.TimeNotLater : UnusedReadings.TimeJumped;
        int held = 0;
        int undisturbed = 0;
        foreach (string kind in new[] { "second", "third" })
        {
            foreach (SimulatedJob job in Of(kind))
            {
                int from = job.Log.Samples.Count / 3;
                Outcome outcome = Watch(job, (reading, i) => With(reading, time: Clock(reading.Time, i, from, what)));
                Assert.Equal(expected, expected & outcome.Unused);
                Assert.Equal(job.Log.EndTime, outcome.Last.Time, 15 + startsLater);
                held += outcome.Holds;
                undisturbed += Watch(job, (reading, _) => reading).Holds;
            }
        }

        Assert.True(held >= undisturbed - Bounds.Most(4), $"the range holds at {held} points, at {undisturbed} with a clock that is right");
    }

    /// <summary>Readings that drop out for five minutes while the machine runs: the scale shows that time has passed.</summary>
    [Fact]
    public void Readings_that_drop_out_are_not_taken_for_a_clock_that_jumps()
    {
        foreach (SimulatedJob job in Of("third"))
        {
            Outcome outcome = Watch(job, (reading, i) => i is > 150 and < 450 ? With(reading, time: double.NaN) : reading);
            Assert.Equal(job.Log.EndTime, outcome.Last.Time, 15.0);
            Assert.DoesNotContain(JobCondition.ScaleDisturbed, outcome.Conditions);
        }
    }

    [Fact]
    public void Net_for_gross_is_said_and_the_limit_goes_with_it()
    {
        SimulatedJob job = Of("second")[0];
        Outcome gross = Watch(job, (reading, _) => reading);
        Outcome net = Watch(job, (reading, _) => With(reading, weight: reading.GrossWeight - job.Told.CylinderTare));
        Assert.DoesNotContain(JobCondition.WeightNet, gross.Conditions);
        Assert.Contains(JobCondition.WeightNet, net.Conditions);
        Assert.Equal(gross.Last.Remaining.Best, net.Last.Remaining.Best, 1e-9);
        Assert.Equal(gross.Last.CylinderLimitFirst, net.Last.CylinderLimitFirst, 1e-9);
        Assert.Equal(gross.Last.FinalGrossWeight.Best - job.Told.CylinderTare, net.Last.FinalGrossWeight.Best, 1e-6);
    }

    [Theory]
    [InlineData(-6, true)]
    [InlineData(+6, true)]
    [InlineData(0, false)]
    public void A_cylinder_that_weighs_otherwise_than_told_is_said(double by, bool isSaid)
    {
        SimulatedJob job = Of("second")[0];
        Outcome outcome = Watch(job, (reading, _) => With(reading, weight: reading.GrossWeight + by));
        Assert.Equal(isSaid, outcome.Conditions.Contains(JobCondition.CylinderInconsistent));
    }

    [Fact]
    public void What_is_missing_of_an_empty_cylinder_is_taken_off_its_limit()
    {
        RecoveryJob job = Of("second")[0].Told.Job();
        double limit = Refrigerant.Recovery.Cylinders.CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).MaximumGrossWeight.Kilograms;
        double told = job.Cylinders[0].GrossWeight.Kilograms;
        var estimator = new RecoveryEstimator(job);
        for (int i = 0; i < 4000; i++)
        {
            // Liquid, until what the cylinder may hold has come, and a kilogram: the scale still shows five less than its limit by the weight told.
            double content = Math.Min(0.02 * i, limit - told + 1);
            estimator.Add(new RawReading(i) { GrossWeight = told - 6 + content });
        }

        estimator.Read(out RawEstimate estimate);
        Assert.Equal(1, estimate.CylinderLimitFirst);
    }

    [Fact]
    public void An_unknown_label_is_said_and_a_known_one_takes_it_back()
    {
        RecoveryJob told = Of("second")[0].Told.Job();
        RecoveryJob job = told with { Cylinders = [told.Cylinders[0] with { Label = "A" }, told.Cylinders[0] with { Label = "B" }] };
        RecoveryMonitor monitor = RecoveryMonitor.Start(job);
        JobEstimate At(int second, string? label) => monitor.Update(new JobReading
        {
            Time = Duration.FromSeconds(second),
            SuctionGaugePressure = Pressure.FromKilopascals(500),
            GrossWeight = Mass.FromKilograms(13.5 + (0.005 * second)),
            Cylinder = label,
        });
        Assert.DoesNotContain(JobCondition.CylinderUnknown, At(0, "A").Conditions);
        JobEstimate unknown = At(1, "a");
        Assert.Contains(JobCondition.CylinderUnknown, unknown.Conditions);
        Assert.Contains(unknown.Findings, f => f.Code == "job-cylinder-unknown");
        Assert.Contains(JobCondition.CylinderUnknown, At(2, null).Conditions);
        Assert.Contains(JobCondition.CylinderUnknown, At(3, "a").Conditions);
        Assert.DoesNotContain(JobCondition.CylinderUnknown, At(4, "B").Conditions);
    }

    /// <summary>62.5 thousandths of a second lie between readings: nearly a minute, were they seconds, but not again and again.</summary>
    [Fact]
    public void Sixteen_readings_a_second_by_a_clock_of_thousandths_are_no_minutes()
    {
        const double Flow = 0.01;
        var clock = new ReadingClock();
        double time = 0;
        double jumps = 0;
        int last = 0;
        for (int i = 0; i < 960; i++)
        {
            double second = i / 16.0;
            if (clock.Take(1000 * second, 15 + (Flow * second), 5e5 - (200 * second), Flow, 10, out double found))
            {
                time = found;
                last = i;
            }

            jumps += clock.Unused == UnusedReadings.TimeJumped ? 1 : 0;
        }

        Assert.Equal(959, last);
        Assert.Equal(959 / 16.0, time, 0.5);
        Assert.InRange(jumps, 1, 300);
    }

    private static double Clock(double time, int i, int from, string what) => what switch
    {
        "one reading ten minutes ahead" => i == from ? time + 600 : time,
        "three readings ten minutes ahead" => i >= from && i < from + 3 ? time + 600 : time,
        "ten minutes ahead from here on" => i >= from ? time + 600 : time,
        "ten minutes back from here on" => i >= from ? time - 600 : time,
        "thousandths of a second" => 1000 * time,
        "thousands of seconds" => time / 1000,
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "a clock of this test"),
    };

    private static RawReading With(RawReading reading, double? time = null, double? gauge = null, double? weight = null)
    {
        reading.Time = time ?? reading.Time;
        reading.SuctionGaugePressure = gauge ?? reading.SuctionGaugePressure;
        reading.GrossWeight = weight ?? reading.GrossWeight;
        return reading;
    }

    /// <summary>The jobs of a kind, drawn once.</summary>
    private static List<SimulatedJob> Of(string kind)
    {
        lock (Drawn)
        {
            if (!Drawn.TryGetValue(kind, out List<SimulatedJob>? jobs))
            {
                jobs = [];
                for (int seed = 44_000; jobs.Count < Jobs; seed++)
                {
                    SimulatedJob job = SimulatedJob.Draw(kind, seed);
                    if (job.IsScored)
                    {
                        jobs.Add(job);
                    }
                }

                Drawn[kind] = jobs;
            }

            return jobs;
        }
    }

    private static Outcome Watch(SimulatedJob job, Func<RawReading, int, RawReading> change)
    {
        MonitorOptions options = job.Told.Options() with { Profile = EstimationProfile.Controller };
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), options);
        var outcome = new Outcome();
        int next = 0;
        for (int i = 0; i < job.Log.Samples.Count; i++)
        {
            TruthSample sample = job.Log.Samples[i];
            estimator.Add(change(JobScore.Reading(in sample), i));
            estimator.Work();
            estimator.Read(out outcome.Last);
            outcome.Unused |= outcome.Last.NotUsed;
            for (JobCondition condition = JobCondition.ColdPool; condition <= JobCondition.StandingPressureInconsistent; condition++)
            {
                if (outcome.Last.Has(condition))
                {
                    outcome.Conditions.Add(condition);
                }
            }

            if (next < JobScore.Shares.Length && sample.Time >= JobScore.Shares[next] * job.Log.EndTime)
            {
                outcome.Holds += outcome.Last.Remaining.Contains(sample.Left) ? 1 : 0;
                next++;
            }
        }

        return outcome;
    }

    private sealed class Outcome
    {
        public RawEstimate Last;

        public UnusedReadings Unused { get; set; }

        public HashSet<JobCondition> Conditions { get; } = [];

        public int Holds { get; set; }
    }
}
