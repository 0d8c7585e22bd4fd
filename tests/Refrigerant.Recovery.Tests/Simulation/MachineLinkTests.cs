using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What a machine takes and gives by itself: gas that hose and body warm, work, friction, and what is left where it stands.</summary>
public class MachineLinkTests
{
    private const double Air = 310;

    /// <summary>Gas on its way through a hose of so many W/K in air of 310 K and past a body at another temperature comes to where T = around + (T0 − around)·exp(−UA/(m·c)), around the mean of both by their W/K; what the machine adds is work.</summary>
    [Theory]
    [InlineData(2, 0)]
    [InlineData(0, 3)]
    [InlineData(2, 3)]
    [InlineData(0, 0)]
    public void Hose_and_body_warm_the_gas_before_the_machine(double hose, double body)
    {
        RecoveryMachine machine = Setups.Machine(0.5);
        machine = machine with { Body = machine.Body! with { GasConductance = body, FrictionPower = Power.FromWatts(40), AirConductance = 5 } };
        (MachineLink link, GasFacts gas, double[] state) = Link(machine, hose, bodyKelvins: 330);
        double heatCapacity = gas.HeatCapacity(link.From!.Pressure), start = link.From.Temperature;
        double around = hose + body > 0 ? ((hose * Air) + (body * 330)) / (hose + body) : start;
        double warmed = around + ((start - around) * Math.Exp(-(hose + body) / (link.Flow * heatCapacity)));
        Assert.True(link.Flow > 0);
        Assert.Equal(link.From.VaporEnthalpy, link.EnthalpyOut);

        // The work on gas of that temperature, by a compressor alone.
        var alone = new Compressor(machine with { Body = null }, gas);
        double density = link.From.VaporDensity * (link.SuctionPressure / link.From.Pressure) * (start / warmed);
        double enthalpy = link.From.VaporEnthalpy + (heatCapacity * (warmed - start));
        alone.Solve(link.SuctionPressure, density, warmed, enthalpy, link.Flow, link.DischargePressure, 0, Air, true);
        Assert.Equal(alone.Work, link.Compressor.Work, 1e-9 * alone.Work);

        // What the gas gains is what it got from hose and body before, from work, less what it gives the body behind.
        double toBody = link.Flow * (alone.HotEnthalpy - link.EnthalpyIn);
        Assert.Equal(body > 0, Math.Abs(toBody) > 1e-9);
        double[] derivatives = new double[state.Length];
        link.Derive(derivatives);
        double capacity = machine.Body!.HeatCapacity.JoulesPerKelvin;
        double gained = link.Flow * heatCapacity * (warmed - start), units = (hose + body) / (link.Flow * heatCapacity);
        double fromBody = body > 0 ? body * (330 - start) * (1 - Math.Exp(-units)) / units : 0;
        double bodyGain = toBody - fromBody + 40 - (5 * (330 - Air));
        Assert.Contains(derivatives, value => Math.Abs(value - (bodyGain / capacity)) < 1e-9 * Math.Abs(bodyGain / capacity));
        double outside = (link.Flow * link.Compressor.Work) + 40 - (5 * (330 - Air)) + gained - fromBody;
        Assert.Contains(derivatives, value => Math.Abs(value - outside) < 1e-9 * Math.Abs(outside));
    }

    /// <summary>Without a body neither hose nor friction counts: from outside comes the work alone.</summary>
    [Fact]
    public void Without_a_body_the_work_alone_comes_from_outside()
    {
        (MachineLink link, _, double[] state) = Link(Setups.Machine(0.5) with { Body = null }, 2, bodyKelvins: 0);
        double[] derivatives = new double[state.Length];
        link.Derive(derivatives);
        Assert.Equal(link.From!.VaporEnthalpy + link.Compressor.Work, link.EnthalpyIn, 1e-6);
        Assert.Contains(derivatives, value => Math.Abs(value - (link.Flow * link.Compressor.Work)) < 1e-9 * value);
        Assert.Equal(0, link.Stored(state));
        Assert.True(double.IsNaN(link.Compressor.BodyTemperature));
    }

    /// <summary>A machine that stands draws nothing; its body cools, and no friction warms it; its discharge is as warm as the body.</summary>
    [Fact]
    public void A_machine_that_stands_cools()
    {
        RecoveryMachine machine = Setups.Machine(0.5);
        machine = machine with { Body = machine.Body! with { GasConductance = 3, FrictionPower = Power.FromWatts(40), AirConductance = 5 } };
        (MachineLink link, _, double[] state) = Link(machine, 2, bodyKelvins: 330, new SimulationInputs { MachineRunning = false });
        Assert.Equal((0.0, 0.0, 330.0), (link.Flow, link.Opening, link.Compressor.DischargeTemperature));
        double[] derivatives = new double[state.Length];
        link.Derive(derivatives);
        Assert.Contains(derivatives, value => Math.Abs(value + (5 * (330 - Air) / machine.Body.HeatCapacity.JoulesPerKelvin)) < 1e-12);
        Assert.Equal(machine.Body.HeatCapacity.JoulesPerKelvin * 330, link.Stored(state), 1e-6);
    }

    /// <summary>A throttled inlet lets through its share, and the pressure before the machine falls as much.</summary>
    [Fact]
    public void A_throttled_inlet_lets_through_its_share()
    {
        RecoveryMachine machine = Setups.Machine(0.5) with { Body = null };
        (MachineLink open, _, _) = Link(machine, 0, 0);
        (MachineLink half, _, _) = Link(machine, 0, 0, new SimulationInputs { InletOpening = 0.5 });
        Assert.Equal(0.5 * open.Flow, half.Flow, 1e-12);
        Assert.Equal(0.5 * open.SuctionPressure, half.SuctionPressure, 1e-6);
        Assert.Equal(open.FreeFlow, half.FreeFlow, 1e-12);
        Assert.Equal(0.5, half.Opening);
    }

    private static (MachineLink Link, GasFacts Gas, double[] State) Link(RecoveryMachine machine, double hose, double bodyKelvins, SimulationInputs inputs = default)
    {
        Appliance appliance = Setups.Appliance("R-134a", 4, 20, 20, 50);
        var stage = new Stage(appliance, Setups.Cylinder(20, 4), new VaporRecoveryOptions());
        ApplianceModel model = stage.BuildAppliance();
        var link = new MachineLink(model.Port, stage.Cylinder!.Vessel, SuctionLine.Of(Setups.Hoses(3, 8), machine), machine, stage.Gas, condensation: null, hose, Air);
        stage.Connect(stage.WithCylinder(model.Vessels), [link], state => model.Initialize(state, stage.Before.Appliance));
        double[] state = stage.State;
        if (bodyKelvins > 0)
        {
            link.Compressor.Initialize(state, bodyKelvins);
        }

        stage.Network.Inputs = inputs;
        Assert.True(stage.Network.Evaluate(state));
        return (link, stage.Gas, state);
    }
}
