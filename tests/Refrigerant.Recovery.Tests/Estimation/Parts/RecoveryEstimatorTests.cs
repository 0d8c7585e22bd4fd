using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// One simulated job of the second kind, R-32, 9.4 kg told as 11.6 kg, the last liquid gone at 505 s, the level at 853 s; and others by their seeds. What holds of hundreds of them nine times out of ten holds of these: a quick look at
/// the whole, in both profiles.
/// </summary>
public class RecoveryEstimatorTests
{
    private static readonly Lazy<SimulatedJob> Job = new(() => SimulatedJob.Draw("second", 91_000));

    private static readonly JobCondition[] Faults =
        [JobCondition.ValveClosed, JobCondition.HoseBlocked, JobCondition.MachineUnderperforming, JobCondition.ScaleDisturbed, JobCondition.GaugeInconsistent, JobCondition.ForeignGas, JobCondition.GaugeAbsolute];

    [Theory]
    [InlineData("second", 91_000, EstimationProfile.Controller)]
    [InlineData("second", 91_003, EstimationProfile.Controller)]
    [InlineData("second", 91_012, EstimationProfile.Controller)]
    [InlineData("first", 91_004, EstimationProfile.Controller)]
    [InlineData("second", 91_012, EstimationProfile.Full)]
    public void The_whole_job(string kind, int seed, EstimationProfile profile)
    {
        SimulatedJob job = SimulatedJob.Draw(kind, seed);
        double dry = job.Log.Samples.First(s => s.Liquid <= 0 && s.Time > 5).Time;
        double end = job.Log.EndTime;
        TruthSample last = job.Log.Samples.Last(s => s.Time <= end);
        double finalGross = last.Gross;
        double outside = 0;
        double seconds = 0;
        RawEstimate estimate = default;
        Run(job, profile, (in TruthSample sample, in RawEstimate now) =>
        {
            Assert.Equal(UnusedReadings.None, now.NotUsed & ~(UnusedReadings.GaugeNotANumber | UnusedReadings.WeightNotANumber));
            RawEstimate seen = now;
            Assert.All(Faults, fault => Assert.False(seen.Has(fault), $"{fault} at {seen.Time} s"));
            seconds++;
            outside += now.Remaining.Contains(sample.Left) ? 0 : 1;
            Assert.Equal(sample.Time, now.Time, 1.01);
            Assert.Equal(now.HasTimeToLevel, now.LevelReachedProbability > 0.5);
            estimate = now;
            if (sample.Time > 10 && sample.Time < dry - 60)
            {
                Assert.True(now.VaporOnly < 0.6, $"{now.VaporOnly:P0} at {sample.Time} s, dry at {dry} s");
            }

            if (sample.Time > dry + 80)
            {
                Assert.True(now.VaporOnly > 0.7, $"{now.VaporOnly:P0} at {sample.Time} s, dry at {dry} s");
            }
        });
        Assert.InRange(outside / seconds, 0, 0.15);
        Assert.Equal(last.Left, estimate.Remaining.Best, 0.05 * job.Charge);
        Assert.Equal(job.Charge, estimate.TotalCharge.Best, 0.06 * job.Charge);
        Assert.True(kind == "first" || estimate.InternalVolume.Contains(job.Volume), $"{estimate.InternalVolume} {job.Volume}");
        Assert.Equal(finalGross, estimate.FinalGrossWeight.Best, 0.05 * job.Charge);
        Assert.InRange(estimate.TimeToLevel.Best, 0, 0.15 * end);
        Assert.True(estimate.LevelReachedProbability > 0.9);
        Assert.Equal(0, estimate.CylinderLimitFirst);
        Assert.InRange(estimate.HeatConductance.Best / job.Told.Outer, 0.3, 3);
        Assert.InRange(estimate.EffectiveDisplacement.Best / job.Told.Displacement, 0.75, 1.25);

    }

    /// <summary>Half-way, with a charge told well, the time to the level is known to a quarter, and what the scale will read to its range.</summary>
    [Fact]
    public void Time_and_weight_at_the_level_are_foretold()
    {
        SimulatedJob job = SimulatedJob.Draw("second", 91_012);
        double end = job.Log.EndTime;
        double final = job.Log.Samples.Last(s => s.Time <= end).Gross;
        bool isDone = false;
        Run(job, EstimationProfile.Controller, (in TruthSample sample, in RawEstimate now) =>
        {
            if (!isDone && sample.Time >= 0.7 * end)
            {
                isDone = true;
                Assert.True(now.HasTimeToLevel);
                Assert.True(now.TimeToLevel.Contains(end - sample.Time), $"{now.TimeToLevel} {end - sample.Time}");
                Assert.Equal(end - sample.Time, now.TimeToLevel.Best, 0.35 * (end - sample.Time));
                Assert.True(now.FinalGrossWeight.Contains(final), $"{now.FinalGrossWeight} {final}");
            }
        });
        Assert.True(isDone);
    }

    [Theory]
    [InlineData(FaultKind.Valve, 0, JobCondition.ValveClosed, 20)]
    [InlineData(FaultKind.Pull, 0.15, JobCondition.ScaleDisturbed, 30)]
    [InlineData(FaultKind.Hose, 30, JobCondition.HoseBlocked, 60)]
    [InlineData(FaultKind.Weak, 0.55, JobCondition.MachineUnderperforming, 120)]
    public void A_fault_is_named_and_no_other(FaultKind kind, double size, JobCondition expected, double within)
    {
        double at = 0.4 * Job.Value.Log.EndTime;
        SimulatedJob job = SimulatedJob.Draw("second", 91_000, new Fault(kind, at, size));
        double named = double.NaN;
        Run(job, EstimationProfile.Controller, (in TruthSample sample, in RawEstimate now) =>
        {
            if (sample.Time <= at + within)
            {
                RawEstimate seen = now;
                Assert.All(Faults.Where(fault => fault != expected), fault => Assert.False(seen.Has(fault), $"{fault} at {seen.Time} s"));
                named = double.IsNaN(named) && now.Has(expected) ? sample.Time : named;
            }
        });
        Assert.InRange(named, at, at + within);
    }

    /// <summary>A charge told as a third and as the triple of what it is.</summary>
    [Theory]
    [InlineData(0.4)]
    [InlineData(2.2)]
    public void A_charge_told_wrongly_is_said_and_found(double factor)
    {
        SimulatedJob job = SimulatedJob.Draw("second", 91_012);
        job = job with { Told = job.Told with { Charge = factor * job.Charge } };
        bool isSaid = false;
        RawEstimate last = default;
        Run(job, EstimationProfile.Controller, (in TruthSample _, in RawEstimate now) =>
        {
            isSaid |= now.Has(JobCondition.ChargeInconsistent);
            last = now;
        });
        Assert.True(isSaid);
        Assert.Equal(job.Charge, last.TotalCharge.Best, 0.1 * job.Charge);
    }

    /// <summary>What is left in the cylinder is too small for what comes: said before it fills, and when it is full.</summary>
    [Fact]
    public void A_cylinder_that_fills_first_is_foretold()
    {
        SimulatedJob job = SimulatedJob.Draw("second", 91_012);
        RecoveryJob told = job.Told.Job();
        double room = CylinderFill.Limit(told.Cylinders[0], told.Appliance.Fluid).MaximumGrossWeight.Kilograms - told.Cylinders[0].GrossWeight.Kilograms;
        double more = room - (0.6 * job.Charge);
        job = job with { Told = job.Told with { CylinderContent = job.Told.CylinderContent + more } };
        bool isForetold = false;
        bool isFull = false;
        Run(job, EstimationProfile.Controller, (in TruthSample sample, in RawEstimate now) =>
        {
            double delivered = job.Charge - sample.Left;
            isForetold |= sample.Time > 30 && delivered < 0.4 * job.Charge && now.CylinderLimitFirst > 0.8;
            if (delivered > 0.63 * job.Charge)
            {
                isFull = true;
                Assert.Equal(1, now.CylinderLimitFirst);
            }
        }, more);
        Assert.True(isForetold && isFull);
    }

    /// <summary>Room for twice of what was told: not foretold.</summary>
    [Fact]
    public void A_cylinder_with_room_does_not_fill()
    {
        SimulatedJob job = SimulatedJob.Draw("second", 91_012);
        RecoveryJob told = job.Told.Job();
        double room = CylinderFill.Limit(told.Cylinders[0], told.Appliance.Fluid).MaximumGrossWeight.Kilograms - told.Cylinders[0].GrossWeight.Kilograms;
        double more = room - (2 * job.Told.Charge);
        job = job with { Told = job.Told with { CylinderContent = job.Told.CylinderContent + more } };
        Run(job, EstimationProfile.Controller, (in TruthSample sample, in RawEstimate now) => Assert.InRange(now.CylinderLimitFirst, 0, sample.Time > 30 ? 0.15 : 0.3), more);
    }

    /// <summary>A level that a machine cannot pull to: not reached within four hours, and no time is given.</summary>
    [Fact]
    public void A_level_out_of_reach_is_said()
    {
        SimulatedJob job = SimulatedJob.Draw("second", 91_012);
        job = job with { Told = job.Told with { Level = 120 } };
        RawEstimate last = default;
        Run(job, EstimationProfile.Controller, (in TruthSample _, in RawEstimate now) => last = now);
        Assert.True(last.Has(JobCondition.LevelOutOfReach) || last.LevelReachedProbability < 0.5, $"{last.LevelReachedProbability}");
        Assert.True(last.HasTimeToLevel == last.LevelReachedProbability > 0.5);
    }

    /// <summary>Before the first reading: what was told, and no time.</summary>
    [Fact]
    public void Before_anything_is_read_there_is_what_was_told()
    {
        var bench = new Workbench();
        var estimator = new RecoveryEstimator(bench.Job, bench.Told.Instruments(), bench.Told.Options());
        estimator.Read(out RawEstimate estimate);
        Assert.Equal(7e4, estimator.Level);
        Assert.Equal(0, estimate.Time);
        Assert.Equal(6, estimate.Remaining.Best, 0.2);
        Assert.Equal(6, estimate.TotalCharge.Best, 0.2);
        Assert.False(estimate.HasTimeToLevel);
        Assert.Equal(13.5 + estimate.Remaining.Best, estimate.FinalGrossWeight.Best, 1e-9);
        Assert.Equal(0, estimate.VaporOnly);
        Assert.Equal(0.018, estimate.InternalVolume.Best, 0.002);
        Assert.Equal(40, estimate.HeatConductance.Best, 4.0);
        Assert.All(Enum.GetValues<JobCondition>(), condition => Assert.False(estimate.Has(condition)));
        Assert.False(estimator.HasWork);

        // Without a level told it is that of the rules.
        MonitorOptions options = bench.Told.Options() with { Level = null };
        double required = Refrigerant.Recovery.Rules.EvacuationRequirement.For(bench.Job.Appliance.Fluid, bench.Job.Appliance.Charge, bench.Job.EffectiveEvacuation).RequiredPressure.Pascals;
        Assert.Equal(required, new RecoveryEstimator(bench.Job, null, options).Level);
    }

    /// <summary>An unknown label has no limit, another unknown one is another cylinder, and the one told comes back with its own.</summary>
    [Fact]
    public void RecoveryMonitor_knows_cylinders_by_their_labels()
    {
        var bench = new Workbench();
        RecoveryJob job = bench.Job with { Cylinders = [bench.Job.Cylinders[0] with { Label = "A" }, bench.Job.Cylinders[0] with { Label = "B" }] };
        RecoveryMonitor monitor = RecoveryMonitor.Start(job, bench.Told.Instruments(), bench.Told.Options() with { Profile = EstimationProfile.Controller });
        var seen = new List<(bool Unknown, bool Changed)>();
        string?[] labels = [null, "A", "A", "B", "B", "X", "X", "Y", "A"];
        for (int i = 0; i < labels.Length; i++)
        {
            JobEstimate estimate = monitor.Update(new JobReading
            {
                Time = Duration.FromSeconds(2 * i),
                SuctionGaugePressure = Pressure.FromPascals(9e5),
                GrossWeight = Mass.FromKilograms(13.5 + (0.01 * i)),
                Cylinder = labels[i],
            });
            seen.Add((estimate.Conditions.Contains(JobCondition.CylinderUnknown), estimate.Conditions.Contains(JobCondition.CylinderChanged)));
        }

        Assert.Equal([false, false, false, false, false, true, true, true, false], seen.Select(s => s.Unknown));
        Assert.Equal([false, false, false, true, true, true, true, true, true], seen.Select(s => s.Changed));
        Assert.Equal(7e4, monitor.Level.Pascals, 1e-6);
    }

    /// <summary>A label that is not on the list is another cylinder once, not with each reading that has it.</summary>
    [Fact]
    public void RecoveryMonitor_takes_an_unknown_label_for_one_cylinder()
    {
        var bench = new Workbench();
        RecoveryMonitor monitor = RecoveryMonitor.Start(bench.Job, bench.Told.Instruments(), bench.Told.Options() with { Profile = EstimationProfile.Controller });
        for (int t = 0; t <= 160; t += 2)
        {
            JobEstimate estimate = monitor.Update(new JobReading { Time = Duration.FromSeconds(t), SuctionGaugePressure = Pressure.FromPascals(4e5), GrossWeight = Mass.FromKilograms(13.5 + (0.001 * t)), Cylinder = t < 10 ? null : "X" });
            Assert.Equal(t is >= 10 and <= 130, estimate.Conditions.Contains(JobCondition.CylinderChanged));
        }
    }

    /// <summary>With each reading it works four slices, and four more for each second since the one before.</summary>
    [Fact]
    public void RecoveryMonitor_works_four_slices_a_second()
    {
        var bench = new Workbench();
        var monitor = RecoveryMonitor.Start(bench.Job, bench.Told.Instruments(), bench.Told.Options());
        var estimator = new RecoveryEstimator(bench.Job, bench.Told.Instruments(), bench.Told.Options());
        var truth = new OwnTruth(bench);
        for (int t = 0; t <= 150; t += 10)
        {
            EstimatorBlock block = truth.Next(t == 0 ? 1e-6 : 10);
            var reading = new JobReading { Time = Duration.FromSeconds(t), SuctionGaugePressure = Pressure.FromPascals(block.Gauge), GrossWeight = Mass.FromKilograms(13.5 + block.Delivered) };
            JobEstimate estimate = monitor.Update(reading);
            var raw = RawReading.From(reading);
            estimator.Add(in raw);
            for (int i = 0; i < (t == 0 ? 4 : 44) && estimator.Work(); i++)
            {
            }

            estimator.Read(out RawEstimate same);
            Assert.Equal(same.Remaining.Best, estimate.Remaining.Best.Kilograms, 1e-9);
            Assert.Equal(same.FinalGrossWeight.High, estimate.FinalGrossWeight.High.Kilograms, 1e-9);
        }
    }

    private delegate void See(in TruthSample sample, in RawEstimate estimate);

    private static void Run(SimulatedJob job, EstimationProfile profile, See see, double heavier = 0)
    {
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = profile });
        foreach (TruthSample sample in job.Log.Samples)
        {
            RawReading reading = JobScore.Reading(in sample);
            reading.GrossWeight += heavier;
            estimator.Add(in reading);
            for (int i = 0; i < 10 && estimator.Work(); i++)
            {
            }

            estimator.Read(out RawEstimate estimate);
            see(in sample, in estimate);
            if (sample.Time >= job.Log.EndTime)
            {
                return;
            }
        }
    }
}
