using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Where every kilogram goes: what the scale shows, what fittings let out, what hoses and machine keep.</summary>
public class BookingTests
{
    private static readonly RecoveryJob Job = Jobs.Chiller(kilograms: 140, cylinders: 3) with { LossPerConnection = Volume.FromMilliliters(20) };

    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Job);

    private static readonly RecoveryPlan Uncleared = RecoveryPlanner.Plan(Job with { ClearMachine = false });

    private static Fluid Fluid => Job.Appliance.Fluid;

    /// <summary>A fitting that is opened lets out its volume of what stands in it: liquid where a liquid hose or a full cylinder comes off, two at a change of hoses and one at a change of cylinders, vapor at three in the end.</summary>
    [Fact]
    public void Fittings_let_out_what_stands_in_them()
    {
        double kilograms = 0;
        for (int i = 1; i < Plan.Stages.Count; i++)
        {
            SaturationState cylinder = Fluid.SaturationAt((Plan.Stages[i - 1].State.Cylinder ?? Plan.Stages[i].State.Cylinder)!.Temperature);
            kilograms += 20e-6 * Plan.Stages[i].Kind switch
            {
                StageKind.HoseChange => 2 * cylinder.Bubble.Density.KilogramsPerCubicMeter,
                StageKind.CylinderChange => cylinder.Bubble.Density.KilogramsPerCubicMeter,
                StageKind.Close => 3 * cylinder.Dew.Density.KilogramsPerCubicMeter,
                _ => 0,
            };
        }

        Assert.Equal(kilograms, Plan.Ledger.Released.Kilograms, 0.01 * kilograms);
    }

    /// <summary>What the machine keeps is what its clearing leaves, or, uncleared, what it held; the suction hose keeps vapor as the appliance ends.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Hoses_and_machine_keep_what_clearing_leaves(bool clears)
    {
        RecoveryPlan plan = clears ? Plan : Uncleared;
        Assert.Equal(clears, plan.Stages.Any(stage => stage.Kind == StageKind.MachineClearing));
        PlannedStage last = plan.Stages[^2];
        MachineClearing clearing = MachineClearing.Estimate(
            Fluid, Job.Machine, Job.Hoses, Job.Appliance.Temperature, plan.Stages.Last(stage => stage.Kind == StageKind.Hold).State.Cylinder!.Pressure, Job.SweepPressure);
        if (clears)
        {
            Assert.Equal(clearing.Duration.Seconds, last.Duration.Seconds, 1e-3 * clearing.Duration.Seconds);
        }

        double hose = Job.Hoses.VaporSide.Sum(each => each.Length.Meters * Math.PI / 4 * Math.Pow(each.InnerDiameter.Meters, 2));
        double vapor = plan.End.Mass.Kilograms / Job.Appliance.InternalVolume.CubicMeters;
        double expected = (clears ? clearing.Trapped : clearing.HeldBefore).Kilograms + (hose * vapor);
        Assert.Equal(expected, plan.Ledger.InHosesAndMachine.Kilograms, 0.005 * expected);
        Assert.True(Plan.Ledger.InHosesAndMachine < Uncleared.Ledger.InHosesAndMachine);
    }

    /// <summary>A cylinder is booked with what its scale gained while it stood there, less its part of what escaped and of what hoses and machine keep.</summary>
    [Fact]
    public void A_cylinder_received_what_its_scale_gained()
    {
        Dictionary<string, double> gained = Plan.Stages.Where(stage => stage.Cylinder is not null).GroupBy(stage => stage.Cylinder!)
            .ToDictionary(group => group.Key, group => (group.Last().State.Cylinder!.GrossWeight - group.First().State.Cylinder!.GrossWeight).Kilograms);
        Assert.Equal(3, gained.Count);
        double all = gained.Values.Sum();
        Assert.Equal(Plan.Stages.Sum(stage => stage.Moved.Kilograms), all, 1e-6 * all);
        double booked = all - (Plan.Ledger.InHosesAndMachine + Plan.Ledger.Released).Kilograms;
        Assert.Equal(booked, Plan.Ledger.InCylinders.Kilograms, 1e-6 * all);
        Assert.All(Plan.Cylinders, use => Assert.Equal(gained[use.Cylinder.Label] * booked / all, use.Received.Kilograms, 1e-6 * all));
        Assert.Equal(Plan.Ledger.InCylinders.Kilograms / 140, Plan.Ledger.RecoveredShare.DecimalFractions, 1e-12);
    }

    [Fact]
    public void A_cylinder_that_was_partly_full_is_told_with_its_content()
    {
        RecoveryCylinder half = Jobs.Cylinder(123, "half") with { Content = Mass.FromKilograms(15), Refrigerant = "R-134a" };
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with { Cylinders = [half, Jobs.Cylinder(60, "spare")] });
        CylinderUse use = plan.Cylinders[0];
        Assert.Equal("half", use.Cylinder.Label);
        Assert.Equal(15 + use.Received.Kilograms, use.Content.Kilograms, 1e-9);
        Assert.Equal((half.TareWeight + use.Content).Kilograms, use.GrossWeight.Kilograms, 1e-9);
        Assert.Equal(use.Content / use.Limit.MaximumFill, use.ShareOfLimit.DecimalFractions, 1e-12);
        Assert.Equal(plan.Stages[^1].State.Cylinder!.Pressure, use.PressureAtEnd);
        Assert.Equal(plan.Stages[^1].State.Cylinder!.Temperature, use.TemperatureAtEnd);
        CylinderUse spare = plan.Cylinders[1];
        Assert.Equal(0, spare.Received.Kilograms);
        Assert.Null(spare.PressureAtEnd);
        Assert.Null(spare.TemperatureAtEnd);
    }

    /// <summary>Used ones in the order of their use, then what may be filled, most room first, then what may not.</summary>
    [Fact]
    public void Cylinders_are_told_as_they_were_used_then_by_room()
    {
        RecoveryCylinder[] all =
        [
            Jobs.Cylinder(240, "unfit") with { Specification = CylinderSpecification.FromMark("DOT 39 400") },
            Jobs.Cylinder(20, "small"),
            Jobs.Cylinder(25, "middle"),
            Jobs.Cylinder(90, "first") with { Content = Mass.FromKilograms(1), Refrigerant = "R-134a" },
            Jobs.Cylinder(80, "second"),
        ];
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 50) with { Cylinders = all });
        Assert.Equal(["first", "second"], plan.Stages.Where(stage => stage.Cylinder is not null).Select(stage => stage.Cylinder!).Distinct());
        Assert.Equal(["first", "second", "middle", "small", "unfit"], plan.Cylinders.Select(use => use.Cylinder.Label));
    }

    /// <summary>The air that the sweep leaves goes into the first cylinder, as an ideal gas beside the refrigerant; the others stay free of it.</summary>
    [Fact]
    public void What_the_sweep_leaves_of_the_air_goes_into_the_first_cylinder()
    {
        HoseSweepResult sweep = HoseSweep.Simulate(
            Job.Hoses, Job.Machine, new HoseSweepOptions { StartPressure = Job.Barometer.Pressure, TargetPressure = Job.SweepPressure, Temperature = Job.Appliance.Temperature });
        PlannedStage stage = Plan.Stages.Single(each => each.Kind == StageKind.HoseSweep);
        Assert.Equal(sweep.Duration.Seconds, stage.Duration.Seconds, 1e-9);
        Assert.True(sweep.AirLeft.Moles > 0.01);
        Assert.All(Plan.Stages.Where(each => each.Cylinder == "C1" && each.Start >= stage.Start), each => Assert.Equal(sweep.AirLeft.Moles, each.State.Cylinder!.NonCondensables.Moles, 1e-12));
        Assert.All(Plan.Stages.Where(each => each.Cylinder is "C2" or "C3"), each => Assert.Equal(0, each.State.Cylinder!.NonCondensables.Moles));
        CylinderState swept = stage.State.Cylinder!;
        Assert.Equal(
            sweep.AirLeft.Moles * 8.314462618 * swept.Temperature.Kelvins / Job.Cylinders[0].InternalVolume.CubicMeters, swept.NonCondensablePressure.Pascals, 0.01 * swept.NonCondensablePressure.Pascals);
    }

    /// <summary>Hoses and fittings cannot keep or let out more than came through them, however large they are.</summary>
    [Fact]
    public void No_more_is_kept_or_lost_than_came_through()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 0.02, litersPerKilogram: 50) with
        {
            Hoses = Jobs.Hoses(100, 20),
            LossPerConnection = Volume.FromLiters(1),
            PushPull = PushPullUse.Never,
            ClearMachine = false,
        };
        job = job with { Appliance = job.Appliance with { LiquidReachable = false, LiquidHeel = Mass.Zero } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        double moved = plan.Stages.Sum(stage => stage.Moved.Kilograms);
        Assert.True(moved > 0);
        Assert.InRange(plan.Ledger.InHosesAndMachine.Kilograms, 0, (0.5 * moved) + 1e-12);
        Assert.InRange(plan.Ledger.Released.Kilograms, 0, (0.5 * moved) + 1e-12);
        Assert.True(plan.Ledger.InCylinders.Kilograms >= -1e-12);
    }

    /// <summary>The terms of the appliance are what it holds in the end: vapor, liquid, and what the oil holds.</summary>
    [Fact]
    public void What_stays_is_booked_by_where_it_is()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 60, cylinders: 1) with { Cylinders = [Jobs.Cylinder(50)] };
        job = job with { Appliance = job.Appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(5), Kind = OilKind.PolyolEster } } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        MassLedger ledger = plan.Ledger;
        Assert.Equal(plan.End.LiquidMass, ledger.LiquidInAppliance);
        Assert.Equal(plan.End.DissolvedMass, ledger.InOil);
        Assert.True(ledger.LiquidInAppliance.Kilograms > 10 && ledger.InOil.Kilograms > 0.1);
        double vapor = Fluid.SaturationAt(plan.End.Temperature).Dew.Density.KilogramsPerCubicMeter;
        double liquid = Fluid.SaturationAt(plan.End.Temperature).Bubble.Density.KilogramsPerCubicMeter;
        double room = job.Appliance.InternalVolume.CubicMeters - (ledger.LiquidInAppliance.Kilograms / liquid);
        Assert.Equal(vapor * room, ledger.VaporInAppliance.Kilograms, 1e-3 * vapor * room);
        Assert.Equal(plan.End.Mass.Kilograms, ledger.InAppliance.Kilograms, 1e-9);
        Assert.Equal(60, (ledger.InCylinders + ledger.InAppliance + ledger.InHosesAndMachine + ledger.Released).Kilograms, 1e-9);
        Assert.Equal(ledger.InCylinders.Kilograms / 60, plan.Verdict.Recovered.DecimalFractions, 1e-9);
    }

    /// <summary>What no account explains is told as such, with its sign, and not spread over the accounts.</summary>
    [Theory]
    [InlineData(10, 0)]
    [InlineData(10.5, 0.5)]
    [InlineData(9, -1)]
    public void What_no_account_explains_is_told(double charge, double unexplained)
    {
        var ledger = new MassLedger(charge, inCylinders: 8, vapor: 0.5, liquid: 0.25, inOil: 0.75, inHosesAndMachine: 0.3, released: 0.2);
        Assert.Equal(unexplained, ledger.Unexplained.Kilograms, 1e-12);
        Assert.Equal(1.5, ledger.InAppliance.Kilograms, 1e-12);
        Assert.Equal(8 / charge, ledger.RecoveredShare.DecimalFractions, 1e-12);
    }
}
