using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a plan does before it gives up, and what it says where a rule is met in another way than by its level.</summary>
public class LastResortTests
{
    /// <summary>A machine that crawls against a warm cylinder goes on into an empty one while there is one.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    public void A_pull_that_crawls_against_the_cylinder_tries_an_empty_one(double bore)
    {
        Hose hose = new() { Length = Length.FromMeters(3), InnerDiameter = Length.FromMillimeters(bore) };
        var job = new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-123"),
                Charge = Mass.FromKilograms(80),
                InternalVolume = Volume.FromLiters(240),
                Temperature = Temperature.FromDegreesCelsius(32),
                Surroundings = Temperature.FromDegreesCelsius(44),
                MetalMass = Mass.FromKilograms(757),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(1.9)),
            Hoses = new HoseSet { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] },
            Cylinders = [Jobs.Cylinder(82, "C0"), Jobs.Cylinder(216, "C1")],
            FollowComposition = true,
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.Contains(plan.Stages, stage => stage.Kind == StageKind.CylinderChange && stage.Step.Reason == StepReason.CoolerCylinder);
        RecoveryPlan alone = RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[1]] });
        Assert.Equal(LevelObstacle.DeepestVacuum, alone.Verdict.Obstacle);
    }

    /// <summary>Gas that rushes through the machine into an evacuated cylinder is no low pressure: the switch acts at what the machine draws down.</summary>
    [Theory]
    [InlineData("R-12", 30, 40)]
    [InlineData("R-12", 30, 85)]
    [InlineData("R-410A", 10, 35)]
    public void A_low_pressure_switch_does_not_act_on_an_evacuated_cylinder(string fluid, double kilograms, double kilopascals)
    {
        RecoveryJob job = Jobs.Chiller(fluid, kilograms);
        job = job with
        {
            PushPull = PushPullUse.Never,
            Machine = job.Machine with { LowPressureSwitch = Pressure.FromKilopascals(kilopascals) },
            Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(110) },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.True(plan.IsLevelReached, plan.ToString());

        StageResult pull = VaporRecovery.Simulate(job.Appliance, job.Machine, job.Hoses, job.Cylinders[0], new VaporRecoveryOptions());
        Assert.True(pull.Duration.Minutes > 5);
        Assert.Equal(fluid == "R-12" ? StageEnd.LowPressureSwitch : StageEnd.Stalled, pull.End);
        Assert.InRange(pull.Trajectory[^1].SuctionPressure.Kilopascals, 0.99 * kilopascals, fluid == "R-12" ? 1.01 * kilopascals : 110);
    }

    /// <summary>A switch above what the hose leaves the machine stops it though the appliance is far above: that is so, and not gas rushing through.</summary>
    [Fact]
    public void A_low_pressure_switch_still_acts_behind_a_thin_hose()
    {
        RecoveryJob job = Jobs.Chiller("R-134a", 30);
        StageResult pull = VaporRecovery.Simulate(
            job.Appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(5)) with { LowPressureSwitch = Pressure.FromKilopascals(300) },
            Jobs.Hoses(20, 3),
            job.Cylinders[0],
            new VaporRecoveryOptions());
        Assert.Equal(StageEnd.LowPressureSwitch, pull.End);
        Assert.True(pull.Appliance.Pressure.Kilopascals > 400);
    }

    /// <summary>90 % of the charge or 4 inHg of vacuum (40 CFR 82.156(b)): what is met is said, not the other.</summary>
    [Fact]
    public void A_share_is_not_called_the_level()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-134a"),
                Charge = Mass.FromKilograms(0.15),
                InternalVolume = Volume.FromLiters(1),
                Temperature = Temperature.FromDegreesCelsius(22),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.3)),
            Hoses = Jobs.Hoses(5, 4.7),
            Cylinders = [Jobs.Cylinder(30, "C1")],
            Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
        });
        Assert.Equal(LevelOutcome.ShareRecovered, plan.Verdict.Outcome);
        Assert.InRange(plan.End.Pressure.Pascals, plan.Requirement.RequiredPressure.Pascals + 1000, 101_325);
        Assert.DoesNotContain(plan.Findings, finding => finding.Code == "still-above-air");
        Finding said = Assert.Single(plan.Findings, finding => finding.Code == "share-recovered");
        Assert.Contains("is not reached and need not be", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Findings, finding => finding.Code == "level-reached" || finding.Message.Contains("is reached with", StringComparison.Ordinal));
        Assert.Contains("share reached, not the level", plan.ToString(), StringComparison.Ordinal);
    }
}
