using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>Liquid through the machine, then vapor, then a hold, as the planner has them: its stages' trajectories, read with noise at several rates.</summary>
public class LiquidStageTests
{
    private const double Atmosphere = 101_325;
    private const double Tare = 30;

    /// <summary>s of the hold that are read.</summary>
    private const double Hold = 300;

    /// <summary>s in which liquid must be named, besides two readings.</summary>
    private const double Named = 15;

    private static readonly JobCondition[] NothingWrong =
    [
        JobCondition.ScaleDisturbed, JobCondition.MachineUnderperforming, JobCondition.HoseBlocked, JobCondition.ValveClosed, JobCondition.GaugeInconsistent, JobCondition.ChargeInconsistent,
    ];

    public static TheoryData<string, double, EstimationProfile, double> Readings
    {
        get
        {
            var data = new TheoryData<string, double, EstimationProfile, double>();
            foreach ((string fluid, double charge) in new[] { ("R-134a", 70.0), ("R-22", 6.0) })
            {
                foreach (double step in new[] { 0.1, 1, 2, 5 })
                {
                    data.Add(fluid, charge, EstimationProfile.Controller, step);
                    data.Add(fluid, charge, EstimationProfile.Full, step);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Readings))]
    public void Liquid_is_named_at_any_rate_and_the_range_holds_to_the_end(string fluid, double charge, EstimationProfile profile, double step)
    {
        RecoveryJob job = Job(fluid, charge, 0);
        double end = RecoveryPlanner.Plan(job).Stages.First(s => s.Kind == StageKind.LiquidRecovery).Duration.Seconds;
        int all = 0;
        int holds = 0;
        double late = double.NaN;
        RawEstimate last = default;
        double left = 0;
        foreach ((double time, double truth, StageKind kind, RawEstimate estimate) in Watch(job, profile, step))
        {
            all++;
            holds += estimate.Remaining.Low <= truth + 0.02 && estimate.Remaining.High >= truth - 0.02 ? 1 : 0;
            bool isNamed = estimate.Has(JobCondition.LiquidTransfer);
            late = isNamed && double.IsNaN(late) ? time : late;
            Assert.False(kind == StageKind.LiquidRecovery && time > Named + (2 * step) && time < 0.95 * end && !isNamed, $"{time} s: liquid is not named");
            Assert.False(kind == StageKind.Hold && isNamed, $"{time} s: liquid is named during the hold");
            Assert.True(estimate.TotalCharge.Best < 1.35 * charge, $"{time} s: {estimate.TotalCharge.Best} kg of {charge} kg told");
            foreach (JobCondition wrong in NothingWrong)
            {
                Assert.False(estimate.Has(wrong), $"{time} s: {wrong}");
            }

            last = estimate;
            left = truth;
        }

        Assert.True(late <= Named + (2 * step), $"named after {late} s");
        Assert.True(holds >= 0.9 * all, $"the range holds in {holds} of {all} readings");
        Assert.InRange(last.Remaining.Best, left - (0.01 * charge), left + (0.01 * charge));
        Assert.True(last.VaporOnly > 0.9, $"vapor only {last.VaporOnly}");
    }

    /// <summary>What the oil gives off and what warms raises the pressure of a hold: it is no liquid, and mass balance leaves no room for any.</summary>
    [Theory]
    [InlineData("R-134a", 70, 6, 1)]
    [InlineData("R-134a", 70, 6, 5)]
    [InlineData("R-22", 70, 3, 1)]
    [InlineData("R-404A", 6, 0.5, 1)]
    public void A_hold_that_rises_from_oil_is_not_taken_for_liquid(string fluid, double charge, double oil, double step)
    {
        double first = double.NaN;
        double since = double.NaN;
        foreach ((double time, double truth, StageKind kind, RawEstimate estimate) in Watch(Job(fluid, charge, oil), EstimationProfile.Controller, step))
        {
            if (kind != StageKind.Hold)
            {
                continue;
            }

            since = double.IsNaN(since) ? time : since;
            first = double.IsNaN(first) ? estimate.Remaining.Best : first;
            Assert.True(estimate.Remaining.Best <= first + (0.02 * charge), $"{time} s: {estimate.Remaining.Best} kg, at the start of the hold {first} kg");
            if (time > since + 60)
            {
                Assert.True(estimate.VaporOnly > 0.9, $"{time} s: vapor only {estimate.VaporOnly}");
                Assert.True(estimate.Remaining.High - truth < 0.1 * charge, $"{time} s: up to {estimate.Remaining.High} kg");
            }
        }

        Assert.False(double.IsNaN(since));
    }

    /// <summary>Told wrongly, within its error: what the scale has received decides.</summary>
    [Theory]
    [InlineData("R-134a", 70, 0.8)]
    [InlineData("R-134a", 70, 1.2)]
    [InlineData("R-22", 6, 0.8)]
    [InlineData("R-22", 6, 1.2)]
    public void A_charge_told_wrongly_is_found_where_the_liquid_ends(string fluid, double charge, double told)
    {
        RecoveryJob job = Job(fluid, charge, 0);
        RecoveryJob asTold = Job(fluid, told * charge, 0) with { Appliance = job.Appliance with { Charge = job.Appliance.Charge * told } };
        (double _, double truth, StageKind _, RawEstimate last) = Watch(job, EstimationProfile.Controller, 1, asTold).Last();
        Assert.InRange(last.Remaining.Best, truth - (0.01 * charge), truth + (0.01 * charge));
        Assert.InRange(last.TotalCharge.Best, 0.98 * charge, 1.02 * charge);
    }

    [Theory]
    [InlineData("first", 96_000)]
    [InlineData("second", 96_100)]
    [InlineData("third", 96_200)]
    public void Vapor_alone_is_never_taken_for_liquid(string kind, int seed)
    {
        int tried = 0;
        for (int i = 0; tried < 10; i++)
        {
            SimulatedJob job = SimulatedJob.Draw(kind, seed + i);
            if (!job.IsScored)
            {
                continue;
            }

            tried++;
            var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = EstimationProfile.Controller });
            foreach (TruthSample sample in job.Log.Samples)
            {
                estimator.Add(JobScore.Reading(in sample));
                estimator.Read(out RawEstimate estimate);
                Assert.False(estimate.Has(JobCondition.LiquidTransfer), $"{kind} {seed + i} at {sample.Time} s");
            }
        }
    }

    /// <summary>A pressure that does not fall speaks for more charge the longer it stands: not beyond what was told and its error, before the scale has received that.</summary>
    [Fact]
    public void Mass_balance_bounds_what_the_gauge_alone_would_make_of_it()
    {
        const double Charge = 6;
        RecoveryJob job = Job("R-22", Charge, 0) with { Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.2)) };
        var estimator = new RecoveryEstimator(job, null, new MonitorOptions { IsOilFree = true, Profile = EstimationProfile.Controller });
        var random = new Draws(5);
        for (int t = 0; t < 500; t++)
        {
            estimator.Add(new RawReading(t)
            {
                SuctionGaugePressure = 750e3 + (400 * random.Normal()),
                GrossWeight = Tare + 4 + (0.006 * t) + (0.003 * random.Normal()),
                AirTemperature = 293.15,
                IsMachineRunning = true,
                IsValveOpen = true,
            });
            estimator.Read(out RawEstimate estimate);
            Assert.False(estimate.Has(JobCondition.LiquidTransfer), $"{t} s");
            Assert.True(estimate.TotalCharge.Best < 1.6 * Charge, $"{t} s: {estimate.TotalCharge.Best} kg of {Charge} kg told");
        }
    }

    private static RecoveryJob Job(string designation, double charge, double oil)
    {
        Fluid fluid = Fluid.Get(designation);
        var hose = new Hose(Length.FromMeters(2), Length.FromMillimeters(9));
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(120), Mass.FromKilograms(Tare), label: "A", content: Mass.FromKilograms(4), refrigerant: designation);
        return new RecoveryJob(
            new Appliance(
                fluid,
                Mass.FromKilograms(charge),
                Volume.FromLiters(1.6 * charge),
                Temperature.FromDegreesCelsius(20),
                heatResistance: ThermalResistance.FromSquareMeterKelvinsPerWatt(0.5 / charge),
                liquidReachable: true,
                oil: oil > 0 ? new ApplianceOil(Mass.FromKilograms(oil), OilKind.PolyolEster) : null),
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(charge > 20 ? 1.2 : 0.4)),
            new HoseSet([hose], [hose], [hose]),
            [cylinder],
            pushPull: PushPullUse.Never);
    }

    /// <summary>The estimate after each reading of a job as planned, with what is true, until some minutes of the hold have passed.</summary>
    private static IEnumerable<(double Time, double Left, StageKind Kind, RawEstimate Estimate)> Watch(RecoveryJob job, EstimationProfile profile, double step, RecoveryJob? told = null)
    {
        var options = new MonitorOptions { IsOilFree = job.Appliance.Oil is null, Profile = profile };
        var estimator = new RecoveryEstimator(told ?? job, null, options);
        var random = new Draws(8);
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        PlannedStage[] stages = [.. plan.Stages.Where(s => s.Kind is StageKind.LiquidRecovery or StageKind.VaporRecovery or StageKind.Hold)];
        Assert.Equal([StageKind.LiquidRecovery, StageKind.VaporRecovery, StageKind.Hold], stages.Select(s => s.Kind));
        double start = stages[0].Start.Seconds;
        double content = 4;
        foreach (PlannedStage stage in stages)
        {
            bool isHold = stage.Kind == StageKind.Hold;
            IReadOnlyList<TrajectoryPoint> points = stage.Result!.Trajectory;
            int at = 0;
            double seconds = isHold ? Math.Min(Hold, stage.Duration.Seconds) : stage.Duration.Seconds;
            for (double t = 0; t < seconds; t += step)
            {
                while (at < points.Count - 2 && points[at + 1].Time.Seconds < t)
                {
                    at++;
                }

                TrajectoryPoint a = points[at];
                TrajectoryPoint b = points[Math.Min(at + 1, points.Count - 1)];
                double share = Math.Max(0, Math.Min(1, (t - a.Time.Seconds) / Math.Max(1e-9, b.Time.Seconds - a.Time.Seconds)));
                double Between(Func<TrajectoryPoint, double> of) => of(a) + (share * (of(b) - of(a)));
                double pressure = isHold ? Between(p => p.AppliancePressure.Pascals) : Between(p => p.SuctionPressure.Pascals);
                content = isHold ? content : Between(p => p.CylinderMass.Kilograms);
                double time = stage.Start.Seconds - start + t;
                estimator.Add(new RawReading(time)
                {
                    SuctionGaugePressure = pressure - Atmosphere + random.Uniform(-400, 400),
                    GrossWeight = Math.Round((Tare + content + random.Uniform(-0.002, 0.002)) / 0.01) * 0.01,
                    AirTemperature = 293.15,
                    IsMachineRunning = !isHold,
                    IsValveOpen = true,
                });
                for (int i = 0; i < 8 && estimator.Work(); i++)
                {
                    // As a monitor does.
                }

                estimator.Read(out RawEstimate estimate);
                yield return (time, Between(p => p.ApplianceMass.Kilograms), stage.Kind, estimate);
            }
        }
    }
}
