using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>What was wrong and is so no more, what looks wrong and is not, and gauges that cannot show what there is.</summary>
public class FaultEndTests
{
    private const int Jobs = 12;

    /// <summary>s after the end of a fault until it must be gone.</summary>
    private const double Gone = 20;

    private static readonly double[] HoldsAtLeast = [0.88, 0.82, 0.82, 0.82, 0.78];

    /// <summary>From three to four and a half tenths of the time; the range holds while it lasts and after it, nearly as often as where nothing was wrong.</summary>
    [Theory]
    [InlineData("first", FaultKind.Hose, 30, JobCondition.HoseBlocked, 0.60)]
    [InlineData("second", FaultKind.Hose, 30, JobCondition.HoseBlocked, 0.60)]
    [InlineData("third", FaultKind.Hose, 30, JobCondition.HoseBlocked, 0.60)]
    [InlineData("first", FaultKind.Valve, 0, JobCondition.ValveClosed, 0.85)]
    [InlineData("second", FaultKind.Valve, 0, JobCondition.ValveClosed, 0.85)]
    [InlineData("third", FaultKind.Valve, 0, JobCondition.ValveClosed, 0.85)]
    public void A_fault_that_ends_is_said_no_more_and_the_ranges_hold(string truth, FaultKind kind, double size, JobCondition condition, double atLeast)
    {
        int named = 0;
        int gone = 0;
        int[] holds = new int[JobScore.Shares.Length];
        foreach (SimulatedJob clean in Scored(truth, 7300))
        {
            double until = 0.45 * clean.Log.EndTime;
            SimulatedJob job = SimulatedJob.Draw(truth, clean.Seed, new Fault(kind, 0.3 * clean.Log.EndTime, size, until));
            bool wasNamed = false;
            bool stands = false;
            Watch(job, EstimationProfile.Controller, (in TruthSample sample, in RawEstimate estimate) =>
            {
                wasNamed |= sample.Time < until && estimate.Has(condition);
                stands = sample.Time < until + Gone ? estimate.Has(condition) : stands;
            });
            named += wasNamed ? 1 : 0;
            gone += wasNamed && !stands ? 1 : 0;
            ScorePoint?[] points = JobScore.Run(job, job.Told.Options() with { Profile = EstimationProfile.Controller });
            for (int k = 0; k < points.Length; k++)
            {
                holds[k] += points[k] is { Holds: true } ? 1 : 0;
            }
        }

        Assert.True(named >= Bounds.Least(Jobs, atLeast), $"named in {named} of {Jobs} jobs");
        Assert.True(gone >= Bounds.Least(named, 0.95), $"gone in {gone} of {named}");
        for (int k = 0; k < holds.Length; k++)
        {
            Assert.True(holds[k] >= Bounds.Least(Jobs, HoldsAtLeast[k]), $"at {JobScore.Shares[k]:P0} the range holds in {holds[k]} of {Jobs}");
        }
    }

    /// <summary>A heater or the sun on the appliance lifts the pressure as a weak machine does, but not the flow at that pressure.</summary>
    [Theory]
    [InlineData("first")]
    [InlineData("second")]
    [InlineData("third")]
    public void Warmth_is_no_weak_machine(string truth)
    {
        int said = 0;
        foreach (SimulatedJob clean in Scored(truth, 7400))
        {
            SimulatedJob job = SimulatedJob.Draw(truth, clean.Seed, new Fault(FaultKind.Heat, 0.4 * clean.Log.EndTime, 15));
            bool isSaid = false;
            Watch(job, EstimationProfile.Controller, (in TruthSample _, in RawEstimate estimate) => isSaid |= estimate.Has(JobCondition.MachineUnderperforming));
            said += isSaid ? 1 : 0;
        }

        Assert.True(said <= Bounds.Most(0.05 * Jobs), $"said in {said} of {Jobs}");
    }

    /// <summary>Liquid under high pressure into an empty cylinder: vapor flows through the machine by itself, and a gauge to 1.6 MPa cannot show it. Typical gauges of the job can.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_gauge_that_cannot_show_the_pressure_leaves_the_range_true(bool isTold)
    {
        var appliance = new Appliance
        {
            Fluid = Fluid.Get("R-32"),
            Charge = Mass.FromKilograms(6),
            InternalVolume = Volume.FromLiters(16),
            Temperature = Temperature.FromDegreesCelsius(52),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02),
            MetalMass = Mass.FromKilograms(18),
        };
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) };
        var job = new RecoveryJob
        {
            Appliance = appliance,
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(21.6), Mass.FromKilograms(12.5)) with { Content = Mass.FromKilograms(1) }],
        };
        RecoverySimulation plant = RecoverySimulation.Start(new SimulationSetup { Appliance = appliance, Machine = job.Machine, Hoses = job.Hoses, Cylinder = job.Cylinders[0] });
        var estimator = new RecoveryEstimator(job, isTold ? new Instruments() : null, new MonitorOptions { Profile = EstimationProfile.Controller });
        double atmosphere = job.Barometer.Pressure.Pascals;
        for (int tick = 0; tick < 220; tick++)
        {
            Assert.Equal(StepOutcome.Done, plant.Step(0.1, SimulationInputs.Running));
            estimator.Add(new RawReading(plant.Time)
            {
                SuctionGaugePressure = plant.SuctionPressure - atmosphere,
                DischargeGaugePressure = plant.CylinderPressure - atmosphere,
                GrossWeight = 12.5 + plant.CylinderMass,
                IsMachineRunning = true,
            });
            _ = estimator.Work();
            estimator.Read(out RawEstimate estimate);
            Assert.True(estimate.Remaining.Contains(plant.ApplianceMass), $"at {plant.Time:F1} s {estimate.Remaining} without {plant.ApplianceMass:F2} kg");
            if (!isTold || plant.Time > 5)
            {
                Assert.Equal(isTold, estimate.Has(JobCondition.GaugeInconsistent));
            }
        }
    }

    private delegate void Look(in TruthSample sample, in RawEstimate estimate);

    private static void Watch(SimulatedJob job, EstimationProfile profile, Look look)
    {
        var estimator = new RecoveryEstimator(job.Told.Job(), job.Told.Instruments(), job.Told.Options() with { Profile = profile });
        foreach (TruthSample sample in job.Log.Samples)
        {
            estimator.Add(JobScore.Reading(in sample));
            estimator.Read(out RawEstimate estimate);
            look(in sample, in estimate);
        }
    }

    private static IEnumerable<SimulatedJob> Scored(string kind, int seed)
    {
        for (int count = 0; count < Jobs; seed++)
        {
            SimulatedJob job = SimulatedJob.Draw(kind, seed);
            if (job.IsScored && job.Log.EndTime >= 400)
            {
                count++;
                yield return job;
            }
        }
    }
}
