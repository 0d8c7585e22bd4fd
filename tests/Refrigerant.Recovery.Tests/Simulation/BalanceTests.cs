using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Balances are worth something only if they would tell: whatever is missing, of mass or of energy, in any vessel or link, opens them by just that much.</summary>
public class BalanceTests
{
    private const double Missing = 1e-3;

    [Fact]
    public void What_is_missing_in_a_vessel_opens_the_balance()
    {
        (Network network, double[] before) = Between();
        double largest = network.Vessels.Max(vessel => vessel.TotalMass(before));
        Assert.Equal((0, 0), Open(network, before, _ => { }));
        foreach (Vessel vessel in network.Vessels)
        {
            Assert.Equal(Missing, Open(network, before, after => after[vessel.First] -= Missing * largest).Mass, 1e-9);
            Assert.Equal(0, Open(network, before, after => after[vessel.First] -= Missing * largest).Energy);
            double energy = Missing * ((largest * Network.EnergyScale) + Math.Abs(vessel.Stored(before)));
            Assert.Equal(Missing, Open(network, before, after => after[vessel.Energy] -= energy).Energy, 1e-9);
            Assert.Equal(Missing, Open(network, before, after => after[vessel.OutsideHeat] += energy).Energy, 1e-9);
            Assert.Equal(0, Open(network, before, after => (after[vessel.Energy], after[vessel.OutsideHeat]) = (after[vessel.Energy] + energy, after[vessel.OutsideHeat] + energy)).Energy, 1e-12);
        }
    }

    /// <summary>What passed and did not leave the one, or did not come to the other; what left the one and came to the other is no matter.</summary>
    [Fact]
    public void What_passed_a_link_is_missing_here_and_there()
    {
        (Network network, double[] before) = Between();
        Link link = network.Links.Single();
        Vessel from = link.From!, to = link.To!;
        double mass = Missing * network.Vessels.Max(vessel => vessel.TotalMass(before));
        int account = Enumerable.Range(0, network.Layout.Count).First(i => Passes(link, i));
        Assert.Equal(Missing, Open(network, before, after => after[account] += mass).Mass, 1e-9);
        Assert.Equal(Missing, Open(network, before, after => (after[account], after[from.First]) = (mass, after[from.First] - mass)).Mass, 1e-9);
        Assert.Equal(Missing, Open(network, before, after => (after[account], after[to.First]) = (mass, after[to.First] + mass)).Mass, 1e-9);
        Assert.Equal(0, Open(network, before, after => (after[account], after[from.First], after[to.First]) = (mass, after[from.First] - mass, after[to.First] + mass)).Mass, 1e-12);

        bool Passes(Link of, int place)
        {
            double[] state = new double[network.Dimension];
            state[place] = 1;
            return of.Passed(state) == 1;
        }
    }

    /// <summary>Liquid that boils off within the appliance stays in it: a pool and the vapor above it are one place.</summary>
    [Fact]
    public void What_passes_from_a_pool_to_the_vapor_above_it_stays_in_its_place()
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 30, 20, 50) with { LiquidReachable = true };
        var stage = new Stage(appliance, Setups.Cylinder(60, 2), new PushPullOptions());
        var pushed = new PushedAppliance(appliance, stage, 100, null);
        stage.Connect([pushed.Pool, pushed.Space, stage.Cylinder!.Vessel], [], pushed.Initialize);
        int pool = pushed.Pool.First, space = pushed.Space.First;
        Assert.Equal(0, Open(stage.Network, stage.State, after => (after[pool], after[space]) = (after[pool] - 0.01, after[space] + 0.01)).Mass, 1e-12);
        double all = pushed.Pool.TotalMass(stage.State) + pushed.Space.TotalMass(stage.State);
        Assert.Equal(10, all, 1e-9);
        Assert.InRange(Open(stage.Network, stage.State, after => after[pool] -= 0.01).Mass, 1e-3, 1.2e-3);
        Assert.InRange(Open(stage.Network, stage.State, after => after[space] += 0.01).Mass, 1e-3, 1.2e-3);
    }

    /// <summary>A machine's body holds heat: what work and friction bring and neither the gas nor the body nor the air has is missing.</summary>
    [Fact]
    public void What_the_body_of_a_machine_has_too_much_opens_the_balance()
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 30, 20, 50);
        var stage = new Stage(appliance, Setups.Cylinder(30, 2), new VaporRecoveryOptions());
        ApplianceModel model = stage.BuildAppliance();
        RecoveryMachine machine = Setups.Machine(0.5);
        var link = new MachineLink(model.Port, stage.Cylinder!.Vessel, SuctionLine.Of(Setups.Hoses(), machine), machine, stage.Gas, condensation: null, 1, stage.Surroundings);
        stage.Connect(stage.WithCylinder(model.Vessels), [link], state => model.Initialize(state, stage.Before.Appliance));
        double[] before = stage.State;
        int body = Enumerable.Range(0, stage.Network.Layout.States).First(i => Holds(i));
        double stored = link.Stored(before), heat = Missing * ((stage.Network.Vessels.Max(vessel => vessel.TotalMass(before)) * Network.EnergyScale) + stored);
        Assert.True(stored > 0);
        double perKelvin = machine.Body!.HeatCapacity.JoulesPerKelvin;
        Assert.Equal(Missing, Open(stage.Network, before, after => after[body] += heat / perKelvin).Energy, 1e-6);

        bool Holds(int place)
        {
            double[] state = new double[stage.Network.Dimension];
            state[place] = 1;
            return link.Stored(state) > 0;
        }
    }

    private static (double Mass, double Energy) Open(Network network, double[] before, Action<double[]> change)
    {
        double[] after = [.. before];
        change(after);
        Closure closure = network.Balance(before, after, default);
        return (closure.Mass, closure.Energy);
    }

    private static (Network Network, double[] State) Between()
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 30, 20, 50) with { MetalMass = Mass.FromKilograms(20) };
        var stage = new Stage(appliance, Setups.Cylinder(30, 2), new EqualizationOptions());
        ApplianceModel model = stage.BuildAppliance();
        var link = new VaporLink("hoses", model.Port, stage.Cylinder!.Vessel, new Line([Setups.Hose(3, 8)]), stage.Gas, oneWay: true);
        stage.Connect(stage.WithCylinder(model.Vessels), [link], state => model.Initialize(state, stage.Before.Appliance));
        return (stage.Network, stage.State);
    }
}
