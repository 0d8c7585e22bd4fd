using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>What is told with the readings, what is not, and what a few readings a minute apart show.</summary>
public class ToldAndSeenTests
{
    private const double Atmosphere = 101_325;

    /// <summary>Ten readings a second and one: those of a second are averaged, but not over two cylinders.</summary>
    [Theory]
    [InlineData(0.1, 1)]
    [InlineData(0.1, 16)]
    [InlineData(0.2, 1)]
    [InlineData(1, 16)]
    public void A_cylinder_change_that_is_told_raises_no_alarm(double step, double content)
    {
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) };
        var hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] };
        Appliance appliance = Appliance("R-134a", 6);
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));
        RecoveryCylinder[] cylinders = [Cylinder(3) with { Label = "A" }, Cylinder(content) with { Label = "B" }];
        var job = new RecoveryJob { Appliance = appliance, Machine = machine, Hoses = hoses, Cylinders = cylinders };
        var estimator = new RecoveryEstimator(job, options: new MonitorOptions { IsOilFree = true, Profile = EstimationProfile.Controller });
        RecoverySimulation plant = RecoverySimulation.Start(new SimulationSetup { Appliance = appliance, Machine = machine, Hoses = hoses, Cylinder = cylinders[0] });
        var said = new HashSet<JobCondition>();
        int cylinder = 0;
        for (int tick = 0; tick * step < 300; tick++)
        {
            if (cylinder == 0 && tick * step >= 200.3)
            {
                cylinder = 1;
                SimulationState then = plant.Snapshot();
                plant = RecoverySimulation.Start(new SimulationSetup
                {
                    Appliance = appliance,
                    Machine = machine,
                    Hoses = hoses,
                    Cylinder = cylinders[1],
                    Start = new SimulationState(then.Appliance, CylinderState.Initial(cylinders[1], appliance.Fluid, Temperature.FromDegreesCelsius(22)), then.MachineTemperature),
                });
            }

            estimator.Add(new RawReading(tick * step)
            {
                SuctionGaugePressure = plant.SuctionPressure - Atmosphere,
                GrossWeight = 12.5 + plant.CylinderMass,
                AirTemperature = 295.15,
                Cylinder = cylinder,
            });
            estimator.Read(out RawEstimate estimate);
            foreach (JobCondition condition in Enum.GetValues<JobCondition>())
            {
                if (estimate.Has(condition))
                {
                    said.Add(condition);
                }
            }

            Assert.Equal(StepOutcome.Done, plant.Step(step, SimulationInputs.Running));
        }

        Assert.Contains(JobCondition.CylinderChanged, said);
        JobCondition[] alarms = [JobCondition.CylinderInconsistent, JobCondition.CylinderUnknown, JobCondition.ScaleDisturbed, JobCondition.MachineUnderperforming];
        Assert.All(alarms, alarm => Assert.DoesNotContain(alarm, said));
    }

    [Fact]
    public void What_is_not_fitted_is_not_called_broken()
    {
        RecoveryJob job = Job();
        RecoveryMonitor monitor = RecoveryMonitor.Start(job);
        Assert.Equal(UnusedReadings.None, monitor.Update(new JobReading { Time = Duration.Zero, SuctionGaugePressure = Pressure.FromKilopascals(800) }).NotUsed);
        Assert.Equal(UnusedReadings.None, monitor.Update(new JobReading { Time = Duration.FromSeconds(1), GrossWeight = Mass.FromKilograms(22.5) }).NotUsed);

        var estimator = new RecoveryEstimator(job);
        estimator.Add(new RawReading(0) { SuctionGaugePressure = 800e3 });
        estimator.Read(out RawEstimate without);
        Assert.Equal(UnusedReadings.None, without.NotUsed);
        estimator.Add(new RawReading(1) { SuctionGaugePressure = 800e3, GrossWeight = double.NaN });
        estimator.Read(out RawEstimate with);
        Assert.Equal(UnusedReadings.WeightNotANumber, with.NotUsed);
    }

    [Fact]
    public void A_good_reading_after_one_left_out_has_nothing_said_of_it()
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(Job());
        Assert.Equal(UnusedReadings.None, At(monitor, 0, 800, 22.5).NotUsed);
        Assert.Equal(UnusedReadings.None, At(monitor, 60, 700, 23.2).NotUsed);
        Assert.Equal(UnusedReadings.TimeNotLater, At(monitor, 30, 650, 23.4).NotUsed);
        Assert.Equal(UnusedReadings.None, At(monitor, 120, 600, 23.9).NotUsed);
    }

    [Fact]
    public void A_machine_that_does_nothing_is_named_and_not_the_clock()
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(Job());
        At(monitor, 0, 800, 22.5);
        int blamed = 0;
        for (int minute = 1; minute <= 20; minute++)
        {
            JobEstimate estimate = At(monitor, 60 * minute, 600, 22.5);
            blamed += (estimate.NotUsed & UnusedReadings.TimeJumped) != 0 ? 1 : 0;
            if (minute >= 8)
            {
                Assert.Contains(JobCondition.MachineUnderperforming, estimate.Conditions);
            }
        }

        Assert.InRange(blamed, 0, 2);
    }

    /// <summary>The same minutes with a machine that draws.</summary>
    [Fact]
    public void One_that_draws_is_not_named_from_readings_a_minute_apart()
    {
        RecoveryJob job = Job();
        RecoveryMonitor monitor = RecoveryMonitor.Start(job);
        RecoverySimulation plant = RecoverySimulation.Start(new SimulationSetup { Appliance = job.Appliance, Machine = job.Machine, Hoses = job.Hoses, Cylinder = job.Cylinders[0] });
        double empty = 22.5 - plant.CylinderMass;
        for (int minute = 0; minute <= 12; minute++)
        {
            JobEstimate estimate = At(monitor, 60 * minute, (plant.SuctionPressure - Atmosphere) / 1000, empty + plant.CylinderMass);
            Assert.DoesNotContain(JobCondition.MachineUnderperforming, estimate.Conditions);
            Assert.DoesNotContain(JobCondition.CylinderLosesWeight, estimate.Conditions);
            Assert.Equal(UnusedReadings.None, estimate.NotUsed);
            Assert.Equal(StepOutcome.Done, plant.Step(60, SimulationInputs.Running));
        }
    }

    [Fact]
    public void A_cylinder_that_loses_weight_is_no_other_cylinder()
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(Job());
        At(monitor, 0, 800, 22.5);
        double left = At(monitor, 60, 700, 24.0).Remaining.Best.Kilograms;
        JobEstimate estimate = null!;
        foreach ((int time, double gauge, double weight) in new[] { (120, 720, 23.5), (180, 740, 22.8), (240, 760, 21.9), (300, 770.0, 21.0) })
        {
            estimate = At(monitor, time, gauge, weight, false);
            Assert.DoesNotContain(JobCondition.CylinderUnknown, estimate.Conditions);
            Assert.DoesNotContain(JobCondition.CylinderChanged, estimate.Conditions);
            Assert.Equal(UnusedReadings.None, estimate.NotUsed & UnusedReadings.WeightJumped);
            Assert.Equal(time >= 180, estimate.Conditions.Contains(JobCondition.CylinderLosesWeight));
        }

        Assert.Contains(estimate.Findings, f => f.Code == "job-cylinder-loses-weight");
        Assert.Equal(left + 3, estimate.Remaining.Best.Kilograms, 0.5);

        // The valve is shut.
        for (int time = 360; time <= 480; time += 60)
        {
            estimate = At(monitor, time, 770, 21.0, false);
        }

        Assert.DoesNotContain(JobCondition.CylinderLosesWeight, estimate.Conditions);
    }

    /// <summary>A cylinder that is taken away, and a hose that is taken off it, move the scale at once.</summary>
    [Theory]
    [InlineData(8.5)]
    [InlineData(0.4)]
    public void Weight_that_goes_at_once_is_not_lost(double off)
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(Job());
        for (int second = 0; second < 400; second++)
        {
            double weight = 22.5 + (second < 200 ? 0.008 * second : 1.6 - off);
            JobEstimate estimate = At(monitor, second, 700, weight, second < 200);
            Assert.DoesNotContain(JobCondition.CylinderLosesWeight, estimate.Conditions);
        }
    }

    private static JobEstimate At(RecoveryMonitor monitor, double seconds, double kilopascals, double kilograms, bool runs = true) => monitor.Update(new JobReading
    {
        Time = Duration.FromSeconds(seconds),
        SuctionGaugePressure = Pressure.FromKilopascals(kilopascals),
        GrossWeight = Mass.FromKilograms(kilograms),
        MachineRunning = runs,
    });

    private static Appliance Appliance(string fluid, double charge) => new()
    {
        Fluid = Fluid.Get(fluid),
        Charge = Mass.FromKilograms(charge),
        InternalVolume = Volume.FromLiters(18),
        Temperature = Temperature.FromDegreesCelsius(22),
        HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.025),
    };

    private static RecoveryCylinder Cylinder(double content) =>
        RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5)) with { Content = Mass.FromKilograms(content) };

    private static RecoveryJob Job()
    {
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(6) };
        return new RecoveryJob
        {
            Appliance = Appliance("R-22", 8),
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.35)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders = [Cylinder(10)],
        };
    }
}
