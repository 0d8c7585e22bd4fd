using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Soak;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>
/// Whatever the appliance (sections, check valves, oil, water, heaters, blends followed or not, R-744) and the order of stages: each ends and says why, balances close to 1e-9 of what vessels hold,
/// and no cylinder goes over its limit or what it is built for.
/// </summary>
public class StagePropertyTests
{
    [Property(MaxTest = 40)]
    public Property Three_stages_after_each_other() => Prop.ForAll(Gen.Choose(0, 999).ArrayOf(40).ToArbitrary(), numbers =>
    {
        var story = new StageStory(new RandomSetup(numbers));
        Assert.True(story.WhatIsBroken.Count == 0, $"{story.Told} {string.Join("; ", story.WhatIsBroken)}");
    });

    /// <summary>The engine taken in steps of a second or less comes to what the stage comes to.</summary>
    [Property(MaxTest = 15)]
    public Property Small_steps_agree_with_the_stage() => Prop.ForAll(Gen.Choose(0, 999).ArrayOf(30).ToArbitrary(), numbers =>
    {
        var dice = new RandomSetup(numbers);
        Appliance appliance = dice.Appliance();
        RecoveryCylinder cylinder = dice.Cylinder(appliance.Fluid);
        RecoveryMachine machine = dice.Machine();
        HoseSet hoses = dice.Hoses();
        CompositionMode composition = dice.Of(CompositionMode.Fixed, CompositionMode.Tracked);
        bool pulls = dice.Of(true, false);
        var inputs = new SimulationInputs { HeaterPower = dice.Of(0, 300), CrankcaseHeaterPower = dice.Of(0, 80), FanFactor = dice.Of(1, 4) };
        var start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromKelvins(293.15)) };
        StageResult stage = pulls
            ? VaporRecovery.Simulate(appliance, machine, hoses, cylinder, new VaporRecoveryOptions { Start = start, Inputs = inputs, Composition = composition, MaximumDuration = Duration.FromSeconds(60) })
            : Hold.Simulate(appliance, new HoldOptions { Start = start, Inputs = inputs, Composition = composition, Duration = Duration.FromSeconds(60) });
        RecoverySimulation simulation = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = appliance,
            Machine = machine,
            Hoses = hoses,
            Cylinder = cylinder,
            Composition = composition,
            Start = start,
            Hookup = pulls ? SimulationHookup.VaporRecovery : SimulationHookup.Isolated,
        });
        double length = stage.Duration.Seconds / Math.Max(1, Math.Ceiling(stage.Duration.Seconds));
        for (int i = 0; i < Math.Ceiling(stage.Duration.Seconds) && stage.Duration.Seconds > 0; i++)
        {
            StepOutcome outcome = simulation.Step(length, inputs);
            if (outcome == StepOutcome.OutOfRange && stage.End == StageEnd.PropertyRange)
            {
                return;
            }

            Assert.True(outcome == StepOutcome.Done, $"{outcome} {i} {appliance} {composition} {stage} {simulation}");
        }

        string text = $"{appliance} {composition} {stage} {simulation}";
        double scale = appliance.Charge.Kilograms;
        Assert.True(Math.Abs(simulation.ApplianceMass - stage.RemainingMass.Kilograms) <= 1e-3 * scale, text);
        Assert.True(Math.Abs(simulation.AppliancePressure - stage.Appliance.Pressure.Pascals) <= 3e-3 * stage.Before.Appliance.Pressure.Pascals, text);
        Assert.True(Math.Abs(simulation.CylinderPressure - stage.Cylinder!.Pressure.Pascals) <= 3e-3 * stage.Cylinder.Pressure.Pascals, text);
    });
}
