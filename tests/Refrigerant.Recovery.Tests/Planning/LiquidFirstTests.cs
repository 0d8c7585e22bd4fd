using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Liquid first, and how: push-pull, through the machine, or not at all.</summary>
public class LiquidFirstTests
{
    private static readonly RecoveryPlan Pushed = RecoveryPlanner.Plan(Jobs.Chiller()), Drawn = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never });

    /// <summary>Push-pull from 10 lb of liquid on (common practice, no source), of which the heel does not count.</summary>
    [Theory]
    [InlineData(4.9, 0, true)]
    [InlineData(4.5, 0, false)]
    [InlineData(5.5, 0.3, true)]
    [InlineData(5.5, 1, false)]
    public void Push_pull_needs_ten_pounds_of_liquid_that_can_be_reached(double kilograms, double heel, bool pushes)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: kilograms);
        job = job with { Machine = job.Machine with { TakesLiquid = false }, Appliance = job.Appliance with { LiquidHeel = Mass.FromKilograms(heel) } };
        double reach = ApplianceState.Initial(job.Appliance).LiquidMass.Pounds - Mass.FromKilograms(heel).Pounds;
        Assert.Equal(pushes, reach >= 10);
        Assert.Equal(pushes, Kinds(RecoveryPlanner.Plan(job)).Contains(StageKind.PushPull));
        Assert.DoesNotContain(StageKind.PushPull, Kinds(RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Never })));
        RecoveryPlan always = RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Always });
        Assert.Contains(StageKind.PushPull, Kinds(always));
        Assert.True(always.IsLevelReached, always.ToString());
    }

    /// <summary>What a port or a hose does not reach is not drawn as liquid, and the plan says what is missing.</summary>
    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    [InlineData(false, false)]
    public void Without_port_or_hose_there_is_no_push_pull(bool port, bool hose)
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 30);
        job = job with { Appliance = job.Appliance with { LiquidReachable = port }, Hoses = job.Hoses with { LiquidSide = hose ? job.Hoses.LiquidSide : [] } };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.DoesNotContain(StageKind.PushPull, Kinds(plan));
        Assert.Equal(port, Kinds(plan).Contains(StageKind.LiquidRecovery));
        Assert.Equal(port != hose, plan.RestsOn.Any(finding => finding.Code == "hose-leads-nowhere"));
        Assert.DoesNotContain(StageKind.HoseChange, Kinds(plan));
        Assert.Equal(!port && !hose, plan.RestsOn.Any(finding => finding.Code == "push-pull-not-used"));
        if (!port && !hose)
        {
            Assert.Contains("no port below the liquid", plan.RestsOn.Single(finding => finding.Code == "push-pull-not-used").Message, StringComparison.Ordinal);
        }
    }

    /// <summary>Where push-pull could be used and is not, the plan says why; where it is used or ruled out by the job there is nothing to say.</summary>
    [Fact]
    public void Why_there_is_no_push_pull_is_told()
    {
        RecoveryJob small = Jobs.Chiller(kilograms: 3);
        Assert.Contains("too little liquid", Why(small with { Machine = small.Machine with { TakesLiquid = false } }), StringComparison.Ordinal);
        Assert.Contains("ends sooner", Why(Jobs.Chiller(kilograms: 8)), StringComparison.Ordinal);
        Assert.DoesNotContain(Pushed.RestsOn.Concat(Drawn.RestsOn), finding => finding.Code == "push-pull-not-used");

        static string Why(RecoveryJob job) => RecoveryPlanner.Plan(job).RestsOn.Single(finding => finding.Code == "push-pull-not-used").Message;
    }

    /// <summary>A machine that may draw liquid does it where that is sooner over; one that may not does not.</summary>
    [Fact]
    public void The_way_that_ends_sooner_is_taken()
    {
        foreach (double kilograms in new[] { 8.0, 20, 60 })
        {
            RecoveryJob job = Jobs.Chiller(kilograms: kilograms);
            double chosen = RecoveryPlanner.Plan(job).TotalDuration.Seconds;
            double pushed = RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Always }).TotalDuration.Seconds, drawn = RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Never }).TotalDuration.Seconds;
            Assert.Equal(Math.Min(pushed, drawn), chosen, 1);
        }

        RecoveryJob without = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        Assert.DoesNotContain(StageKind.LiquidRecovery, Kinds(RecoveryPlanner.Plan(without with { Machine = without.Machine with { TakesLiquid = false } })));
    }

    /// <summary>A machine so large that it draws vapor as fast as a thin hose lets liquid through needs no liquid hose.</summary>
    [Fact]
    public void Where_vapor_is_as_fast_liquid_is_left_alone()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        job = job with
        {
            Hoses = job.Hoses with { LiquidSide = [Jobs.Hose(50, 1.2)] },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(8)) with { TakesLiquid = false },
            Appliance = job.Appliance with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.0001), MetalMass = Mass.FromKilograms(2000) },
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.DoesNotContain(plan.Stages, stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery);
        Assert.InRange(plan.TotalDuration.Seconds, 0, RecoveryPlanner.Plan(job with { PushPull = PushPullUse.Always }).TotalDuration.Seconds + 1);
    }

    /// <summary>Before push-pull vapor goes over by itself until the cylinder has nine tenths of the appliance's pressure: neither flashes into an empty cylinder nor waits for the last of it.</summary>
    [Fact]
    public void Vapor_goes_over_until_the_pressures_are_nearly_even()
    {
        PlannedStage even = Pushed.Stages.First(stage => stage.Kind == StageKind.Equalize);
        Assert.Equal(StepReason.Usual, even.Step.Reason);
        Assert.Equal(0.9 * even.Result!.Before.Appliance.Pressure.Pascals, even.State.Cylinder!.Pressure.Pascals, 0.01 * even.State.Cylinder.Pressure.Pascals);
        Assert.True(even.Moved.Kilograms > 0);

        // A cylinder that already holds vapor at that pressure needs none.
        RecoveryJob job = Jobs.Chiller();
        RecoveryPlan warm = RecoveryPlanner.Plan(job with { Cylinders = [.. job.Cylinders.Select(cylinder => cylinder with { Content = Mass.FromKilograms(5), Refrigerant = "R-134a" })] });
        Assert.DoesNotContain(StageKind.Equalize, Kinds(warm).TakeWhile(kind => kind != StageKind.VaporRecovery));
        Assert.Contains(StageKind.PushPull, Kinds(warm));
    }

    /// <summary>For liquid through the machine the cylinder needs no more than what keeps it from flashing colder than −20 °C.</summary>
    [Fact]
    public void Liquid_flashes_no_colder_than_minus_twenty()
    {
        PlannedStage vapor = Drawn.Stages.First(stage => stage.Kind == StageKind.Equalize);
        Assert.Equal(StepReason.VaporFirst, vapor.Step.Reason);
        double cold = Fluid.Get("R-134a").SaturationAt(Temperature.FromDegreesCelsius(-20)).Bubble.Pressure.Pascals;
        Assert.Equal(cold, vapor.State.Cylinder!.Pressure.Pascals, 0.01 * cold);
        Assert.Equal(StageKind.LiquidRecovery, Kinds(Drawn)[Array.IndexOf(Kinds(Drawn), StageKind.Equalize) + 1]);
        Assert.True(Drawn.Stages.Single(stage => stage.Kind == StageKind.LiquidRecovery).Step.IsThrottled);
    }

    /// <summary>Liquid goes down to the heel, then the hoses are changed over where push-pull had its own.</summary>
    [Fact]
    public void Liquid_is_taken_down_to_the_heel()
    {
        foreach (RecoveryPlan plan in new[] { Pushed, Drawn })
        {
            PlannedStage liquid = plan.Stages.Last(stage => stage.Kind is StageKind.PushPull or StageKind.LiquidRecovery);
            Assert.Equal(StageEnd.LiquidGone, liquid.Result!.End);
            Assert.Equal(plan.Job.Appliance.LiquidHeel.Kilograms, liquid.After.LiquidMass.Kilograms, 0.05 * plan.Job.Appliance.LiquidHeel.Kilograms);
            Assert.Equal(liquid.Kind == StageKind.PushPull, Kinds(plan)[plan.Stages.ToList().IndexOf(liquid) + 1] == StageKind.HoseChange);
        }
    }

    /// <summary>A full cylinder is changed and liquid goes on while more than 10 lb of it can be reached; less is left to the vapor pull, with the hoses changed over first.</summary>
    [Fact]
    public void Liquid_goes_on_into_the_next_cylinder_while_it_pays()
    {
        RecoveryPlan goesOn = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 80, cylinders: 2) with { PushPull = PushPullUse.Always });
        Assert.Equal(["C1", "C2"], goesOn.Stages.Where(stage => stage.Kind == StageKind.PushPull).Select(stage => stage.Cylinder));
        PlannedStage full = goesOn.Stages.First(stage => stage.Kind == StageKind.PushPull);
        Assert.Equal(StageEnd.CylinderFull, full.Result!.End);
        int at = goesOn.Stages.ToList().IndexOf(full);
        Assert.Equal([StageKind.CylinderChange, StageKind.Equalize, StageKind.PushPull], Kinds(goesOn).Skip(at + 1).Take(3));
        Assert.Single(goesOn.Stages, stage => stage.Kind == StageKind.HoseChange);

        // 60 kg against 54 in the first cylinder: what is left above the heel is less than 10 lb.
        RecoveryJob little = Jobs.Chiller(kilograms: 60.5, cylinders: 2) with { PushPull = PushPullUse.Always };
        RecoveryPlan ends = RecoveryPlanner.Plan(little);
        PlannedStage last = ends.Stages.Single(stage => stage.Kind == StageKind.PushPull);
        if (last.Result!.End == StageEnd.CylinderFull)
        {
            Assert.InRange((last.After.LiquidMass - little.Appliance.LiquidHeel).Pounds, 0, 10);
        }

        Assert.Equal(StageKind.HoseChange, Kinds(ends)[ends.Stages.ToList().IndexOf(last) + 1]);
    }

    private static StageKind[] Kinds(RecoveryPlan plan) => [.. plan.Stages.Select(stage => stage.Kind)];
}
