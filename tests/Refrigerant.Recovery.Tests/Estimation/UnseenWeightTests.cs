using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>What comes into the cylinder while the scale tells nothing of it counts all the same, and a cylinder that was changed is not the one before.</summary>
public class UnseenWeightTests
{
    private const double Atmosphere = 101_325;
    private const double Tare = 12.5;
    private const double Water = 21.6;
    private const double Content = 13;

    /// <summary>The scale sticks, or shows nothing any more, three minutes into the job: the weight foreseen goes on with what flows, the cylinder that fills first stays foreseen to the moment at which it is full, and what the minute brought forth in which a scale that sticks was believed is taken back.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_scale_that_tells_nothing_does_not_hide_a_cylinder_that_fills(bool sticks)
    {
        RecoveryJob job = Job(Content);
        RecoverySimulation plant = Plant(job);
        double limit = CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).MaximumGrossWeight.Kilograms;
        var estimator = new RecoveryEstimator(job, options: new MonitorOptions { IsOilFree = true, Profile = EstimationProfile.Controller });
        double shown = 0, least = 1;
        while (Tare + plant.CylinderMass < limit)
        {
            shown = plant.Time <= 180 ? Tare + plant.CylinderMass : shown;
            double? weight = plant.Time <= 180 || sticks ? shown : null;
            estimator.Add(Reading(plant, weight));
            while (estimator.Work())
            {
            }

            estimator.Read(out RawEstimate estimate);
            if (plant.Time > 300)
            {
                least = Math.Min(least, estimate.CylinderLimitFirst);
                Assert.InRange(plant.ApplianceMass, estimate.Remaining.Low, estimate.Remaining.High);
                Assert.False(estimate.Has(JobCondition.MachineUnderperforming));
            }

            Assert.Equal(StepOutcome.Done, plant.Step(1, SimulationInputs.Running));
        }

        estimator.Read(out RawEstimate last);
        Assert.True(limit - shown > 0.5, "the scale hides something");
        Assert.True(least > 0.9, $"foreseen with {least:P0} at least");
        Assert.True(last.FinalGrossWeight.Best > limit);
        Assert.Equal(1, last.CylinderLimitFirst);
    }

    /// <summary>A machine that comes to stand while it is told to run leaves the scale where it is as well. It is the machine that is named, to the end, and what is left is what it was.</summary>
    [Fact]
    public void A_machine_that_stands_is_no_scale_that_sticks()
    {
        RecoveryJob job = Job(Content);
        RecoverySimulation plant = Plant(job);
        var estimator = new RecoveryEstimator(job, options: new MonitorOptions { IsOilFree = true, Profile = EstimationProfile.Controller });
        while (plant.Time < 420)
        {
            estimator.Add(Reading(plant, Tare + plant.CylinderMass));
            _ = estimator.Work();
            estimator.Read(out RawEstimate estimate);
            if (plant.Time > 210)
            {
                Assert.True(estimate.Has(JobCondition.MachineUnderperforming), $"after {plant.Time} s");
                Assert.InRange(plant.ApplianceMass, estimate.Remaining.Low, estimate.Remaining.High);
            }

            Assert.Equal(StepOutcome.Done, plant.Step(1, plant.Time < 180 ? SimulationInputs.Running : new SimulationInputs { MachineRunning = false }));
        }
    }

    /// <summary>The full cylinder is taken off, four minutes pass without a reading, an empty one stands on the scale, with its label or without: the clock is right, nothing was drawn meanwhile, and no one stops at a limit that is the other's.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_change_of_cylinders_takes_its_time(bool isLabelled)
    {
        RecoveryJob job = Job(Content) with { Cylinders = [Cylinder("C1", Content), Cylinder("C2", 0)] };
        RecoverySimulation plant = Plant(job);
        var estimator = new RecoveryEstimator(job, options: new MonitorOptions { IsOilFree = true, Profile = EstimationProfile.Controller });
        double limit = CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).MaximumGrossWeight.Kilograms;
        while (Tare + plant.CylinderMass < limit)
        {
            estimator.Add(Reading(plant, Tare + plant.CylinderMass, 0));
            _ = estimator.Work();
            Assert.Equal(StepOutcome.Done, plant.Step(1, SimulationInputs.Running));
        }

        double filled = plant.CylinderMass;
        for (int i = 0; i < 240; i++)
        {
            Assert.Equal(StepOutcome.Done, plant.Step(1, new SimulationInputs { MachineRunning = false }));
        }

        for (int i = 0; i < 10; i++)
        {
            estimator.Add(Reading(plant, Tare + plant.CylinderMass - filled, isLabelled ? 1 : -1, isAtRest: i == 0));
            _ = estimator.Work();
            estimator.Read(out RawEstimate after);
            Assert.Equal(UnusedReadings.None, after.NotUsed & UnusedReadings.TimeJumped);
            if (isLabelled || i > 5)
            {
                Assert.True(after.CylinderLimitFirst < 1, $"after {i} readings");
                Assert.InRange(plant.ApplianceMass, after.Remaining.Low, after.Remaining.High);
            }

            Assert.Equal(StepOutcome.Done, plant.Step(1, SimulationInputs.Running));
        }
    }

    private static RecoveryCylinder Cylinder(string label, double content) =>
        RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(Water), Mass.FromKilograms(Tare)) with { Label = label, Content = Mass.FromKilograms(content) };

    private static RecoveryJob Job(double content)
    {
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) };
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-134a"),
                Charge = Mass.FromKilograms(14),
                InternalVolume = Volume.FromLiters(40),
                Temperature = Temperature.FromDegreesCelsius(22),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.8)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders = [Cylinder("C1", content)],
        };
    }

    private static RecoverySimulation Plant(RecoveryJob job) =>
        RecoverySimulation.Start(new SimulationSetup { Appliance = job.Appliance, Machine = job.Machine, Hoses = job.Hoses, Cylinder = job.Cylinders[0] });

    private static RawReading Reading(RecoverySimulation plant, double? weight, int cylinder = -1, bool isAtRest = false)
    {
        var reading = new RawReading(plant.Time)
        {
            SuctionGaugePressure = (isAtRest ? plant.AppliancePressure : plant.SuctionPressure) - Atmosphere,
            AirTemperature = 295.15,
            IsMachineRunning = true,
            Cylinder = cylinder,
        };
        if (weight is double kilograms)
        {
            reading.GrossWeight = kilograms;
        }

        return reading;
    }
}
