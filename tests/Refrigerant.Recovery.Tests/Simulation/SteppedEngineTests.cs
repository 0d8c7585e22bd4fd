using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>The engine step by step: what it shows of a setup, what stays the same, and how it ends. Setups invented.</summary>
public class SteppedEngineTests
{
    private static readonly SimulationInputs Off = new(machineRunning: false);

    private static readonly Appliance Unit = Setups.Appliance("R-134a", 5, 20, 22, 20) with { MetalMass = Mass.FromKilograms(8), Surroundings = Temperature.FromDegreesCelsius(30) };

    /// <summary>As many short steps come to the same as one stage over the same time.</summary>
    [Fact]
    public void Steps_add_up_to_the_stage()
    {
        RecoverySimulation simulation = RecoverySimulation.Start(Setup(Unit));
        double all = simulation.ApplianceMass + simulation.CylinderMass;
        for (int i = 0; i < 60; i++)
        {
            Assert.Equal(StepOutcome.Done, simulation.Step(2, SimulationInputs.Running));
            Assert.Equal(all, simulation.ApplianceMass + simulation.CylinderMass, 1e-9);
        }

        StageResult stage = VaporRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(content: 1), new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(120), RelativeTolerance = 1e-8 });
        TrajectoryPoint last = stage.Trajectory[^1];
        Assert.Equal(120, simulation.Time, 1e-9);
        Assert.Equal(stage.Appliance.Mass.Kilograms, simulation.ApplianceMass, 1e-3);
        Assert.Equal(stage.Appliance.LiquidMass.Kilograms, simulation.LiquidMass, 1e-3);
        Assert.Equal(last.AppliancePressure.Pascals, simulation.AppliancePressure, 1e-3 * simulation.AppliancePressure);
        Assert.Equal(last.ApplianceTemperature.Kelvins, simulation.ApplianceTemperature, 0.02);
        Assert.Equal(last.SuctionPressure.Pascals, simulation.SuctionPressure, 1e-3 * simulation.SuctionPressure);
        Assert.Equal(last.DischargePressure.Pascals, simulation.CylinderPressure, 1e-3 * simulation.CylinderPressure);
        Assert.Equal(last.CylinderTemperature.Kelvins, simulation.CylinderTemperature, 0.02);
        Assert.Equal(last.DischargeTemperature.Kelvins, simulation.DischargeTemperature, 0.1);
        Assert.Equal(last.Flow.KilogramsPerSecond, simulation.Flow, 1e-3 * simulation.Flow);
        Assert.Equal(last.MetalTemperature.Kelvins, simulation.ColdestSurface, 0.02);
        Assert.Equal(stage.After.MachineTemperature!.Value.Kelvins, simulation.Snapshot().MachineTemperature!.Value.Kelvins, 0.02);
        Assert.True(simulation.SuctionPressure < simulation.AppliancePressure);
    }

    /// <summary>A machine that stands lets nothing pass: its inlet sees the appliance.</summary>
    [Fact]
    public void A_machine_that_stands_draws_nothing()
    {
        RecoverySimulation simulation = RecoverySimulation.Start(Setup(Unit));
        double before = simulation.ApplianceMass;
        Assert.Equal(StepOutcome.Done, simulation.Step(60, Off));
        Assert.Equal(0, simulation.Flow);
        Assert.Equal(before, simulation.ApplianceMass, 1e-12);
        Assert.Equal(simulation.AppliancePressure, simulation.SuctionPressure);
        simulation.Step(1, SimulationInputs.Running);
        Assert.True(simulation.Flow > 0);
    }

    /// <summary>An inlet that is half open lets half of the flow through, and half of the pressure.</summary>
    [Fact]
    public void A_throttled_inlet_halves_what_is_drawn()
    {
        RecoverySimulation open = RecoverySimulation.Start(Setup(Unit)), half = RecoverySimulation.Start(Setup(Unit));
        open.Step(1e-6, SimulationInputs.Running);
        half.Step(1e-6, new SimulationInputs(inletOpening: 0.5));
        Assert.Equal(0.5 * open.Flow, half.Flow, 1e-6 * open.Flow);
        Assert.Equal(0.5 * open.SuctionPressure, half.SuctionPressure, 1e-6 * open.SuctionPressure);
    }

    [Fact]
    public void Nothing_flows_where_nothing_is_connected()
    {
        RecoverySimulation simulation = RecoverySimulation.Start(Setup(Unit) with { Hookup = SimulationHookup.Isolated });
        simulation.Step(600, SimulationInputs.Running);
        Assert.Equal(0, simulation.Flow);
        Assert.Equal((5, 1), (Math.Round(simulation.ApplianceMass, 9), Math.Round(simulation.CylinderMass, 9)));
        Assert.Equal(simulation.AppliancePressure, simulation.SuctionPressure);
        Assert.Equal(simulation.CylinderTemperature, simulation.DischargeTemperature);
        Assert.True(simulation.ApplianceTemperature > Unit.Temperature.Kelvins + 0.5);
        Assert.Null(simulation.Snapshot().MachineTemperature);
    }

    /// <summary>Appliance and cylinder joined by their hoses come to one pressure, from whichever side it flows.</summary>
    [Theory]
    [InlineData(5, 22, 0.01)]
    [InlineData(0.05, 22, 2)]
    public void Joined_they_come_to_one_pressure(double charge, double celsius, double content)
    {
        Appliance unit = Setups.Appliance("R-134a", charge, 20, celsius, 20);
        RecoverySimulation simulation = RecoverySimulation.Start(Setup(unit, content) with { Hookup = SimulationHookup.Equalization });
        double all = simulation.ApplianceMass + simulation.CylinderMass;
        bool isOut = simulation.AppliancePressure > simulation.CylinderPressure;
        simulation.Step(1, Off);
        Assert.Equal(isOut, simulation.Flow > 0);
        Assert.Equal(isOut, simulation.ApplianceMass < charge);
        for (int i = 0; i < 20; i++)
        {
            simulation.Step(60, Off);
        }

        Assert.Equal(all, simulation.ApplianceMass + simulation.CylinderMass, 1e-9);
        Assert.Equal(simulation.AppliancePressure, simulation.CylinderPressure, 1e-3 * simulation.AppliancePressure);
    }

    /// <summary>Where it was broken off it goes on from a snapshot, the warm machine included, to within 1e-4 of the charge: other steps, each good to 1e-5.</summary>
    [Fact]
    public void A_snapshot_goes_on_as_the_simulation_does()
    {
        RecoverySimulation one = RecoverySimulation.Start(Setup(Unit));
        one.Step(90, SimulationInputs.Running);
        SimulationState there = one.Snapshot();
        RecoverySimulation other = RecoverySimulation.Start(Setup(Unit, content: 9) with { Start = there });
        Assert.Equal(0, other.Time);
        Assert.Equal(one.CylinderMass, other.CylinderMass, 1e-12);
        one.Step(60, SimulationInputs.Running);
        other.Step(60, SimulationInputs.Running);
        Assert.Equal(one.ApplianceMass, other.ApplianceMass, 5e-4);
        Assert.Equal(one.DischargeTemperature, other.DischargeTemperature, 0.05);
        Assert.Equal(one.CylinderTemperature, other.CylinderTemperature, 0.01);
        Assert.Equal(one.ColdestSurface, other.ColdestSurface, 0.02);
    }

    /// <summary>At the edge of the equation it stands where that happened, and goes no further: liquid carbon dioxide at its triple point, 517.95 kPa (Span and Wagner 1996, from memory).</summary>
    [Fact]
    public void At_the_edge_of_the_equation_it_stands()
    {
        Appliance unit = Setups.Appliance("R-744", 5, 40, 5, 10);
        RecoverySimulation simulation = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = unit,
            Machine = Setups.Machine(2),
            Hoses = Setups.Hoses(),
            Cylinder = Setups.Cylinder(300, 3) with { ServicePressure = Pressure.FromPoundsForcePerSquareInch(4000) },
        });
        double all = simulation.ApplianceMass + simulation.CylinderMass;
        StepOutcome outcome = StepOutcome.Done;
        for (int i = 0; i < 60 && outcome == StepOutcome.Done; i++)
        {
            outcome = simulation.Step(60, SimulationInputs.Running);
        }

        Assert.Equal(StepOutcome.OutOfRange, outcome);
        Assert.InRange(simulation.AppliancePressure, 517.9e3, 560e3);
        Assert.Equal(all, simulation.ApplianceMass + simulation.CylinderMass, 1e-9);
        double time = simulation.Time, mass = simulation.ApplianceMass;
        Assert.Equal(StepOutcome.OutOfRange, simulation.Step(3600, SimulationInputs.Running));
        Assert.InRange(simulation.Time - time, 0, 30);
        Assert.InRange(mass - simulation.ApplianceMass, 0, 0.2);
        Assert.Equal(StepOutcome.Done, simulation.Step(60, Off));
    }

    /// <summary>A blend that is followed keeps account of each component, and its vapor leaves richer in the volatile one.</summary>
    [Fact]
    public void A_followed_blend_drifts()
    {
        Appliance unit = Setups.Appliance("R-407C", 5, 20, 22, 200);
        RecoverySimulation followed = RecoverySimulation.Start(Setup(unit) with { Composition = CompositionMode.Tracked });
        RecoverySimulation fixedOne = RecoverySimulation.Start(Setup(unit));
        followed.Step(120, SimulationInputs.Running);
        fixedOne.Step(120, SimulationInputs.Running);
        double charged = unit.Fluid.Composition[0].MassFraction;
        Assert.Equal("R-32", unit.Fluid.Composition[0].Designation);
        Assert.True(followed.Snapshot().Appliance.Composition[0].MassFraction < charged - 0.01);
        Assert.Equal(charged, fixedOne.Snapshot().Appliance.Composition[0].MassFraction, 1e-12);
        RecoverySimulation onward = RecoverySimulation.Start(Setup(unit) with { Start = followed.Snapshot() });
        onward.Step(60, SimulationInputs.Running);
        Assert.True(onward.Snapshot().Appliance.Composition[0].MassFraction < followed.Snapshot().Appliance.Composition[0].MassFraction);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(86_401)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_step_is_no_longer_than_a_day(double seconds)
    {
        RecoverySimulation simulation = RecoverySimulation.Start(Setup(Unit));
        Assert.Throws<ArgumentOutOfRangeException>(() => simulation.Step(seconds, Off));
        Assert.Equal(0, simulation.Time);
        Assert.Equal(StepOutcome.Done, simulation.Step(86_400, Off));
    }

    private static SimulationSetup Setup(Appliance unit, double content = 1) => new()
    {
        Appliance = unit,
        Machine = Setups.Machine(0.5),
        Hoses = Setups.Hoses(),
        Cylinder = Setups.Cylinder(content: content),
    };
}
