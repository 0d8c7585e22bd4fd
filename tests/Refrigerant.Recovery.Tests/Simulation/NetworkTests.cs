using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>The network of balances itself, with made-up vessels and links: what it asks of them, when, and whom it names.</summary>
public class NetworkTests
{
    private readonly Tank _a = new("a"), _b = new("b");
    private readonly Pipe _pipe;
    private readonly Network _network;
    private readonly double[] _state;

    public NetworkTests()
    {
        _pipe = new Pipe(_a, _b);
        _network = new Network([_a, _b], [_pipe]);
        _state = new double[_network.Dimension];
        (_state[_a.First], _state[_b.First], _state[_a.Energy], _state[_b.Energy]) = (2, 3, 100, -50);
    }

    /// <summary>Vessels first, then what links hold, then the accounts of both; each slot by its owner.</summary>
    [Fact]
    public void Each_quantity_has_its_place()
    {
        string[] names = [.. new int[_network.Layout.Count].Select((_, i) => _network.Layout.Name(i))];
        Assert.Equal(["a: mass", "a: energy", "b: mass", "b: energy", "a: heat from outside", "b: heat from outside", "pipe: mass", "pipe: energy out", "pipe: energy in"], names);
        Assert.Equal((4, 9, 4, 9, 1), (_network.Layout.States, _network.Layout.Count, _network.ControlledDimension, _network.Dimension, _network.Components));
    }

    /// <summary>What leaves the one comes to the other and is booked, with the energy that it carries there.</summary>
    [Fact]
    public void Flows_are_given_taken_and_booked()
    {
        double[] slopes = [.. new double[_network.Dimension].Select(_ => 7.0)];
        Assert.True(_network.Derivatives(_state, slopes));
        Assert.Equal([-0.5, -0.5 * 10, 0.5, 0.5 * 12, 0, 0, 0.5, 0.5 * 10, 0.5 * 12], slopes);
        Assert.Equal((1, 1), (_a.Finished, _b.Finished));
    }

    /// <summary>A state is solved once, however often it is asked for; another state, or other inputs, anew. Accounts are no part of it.</summary>
    [Fact]
    public void A_state_is_solved_once()
    {
        Assert.True(_network.Evaluate(_state));
        Assert.True(_network.Evaluate(_state));
        _state[^1] += 1;
        Assert.True(_network.Derivatives(_state, new double[_network.Dimension]));
        Assert.Equal(1, _a.Solved);
        _state[_b.First] += 1;
        _network.Evaluate(_state);
        Assert.Equal(2, _a.Solved);
        _network.Inputs = new SimulationInputs(inletOpening: 0.5);
        _network.Evaluate(_state);
        Assert.Equal((3, 0.5), (_a.Solved, _pipe.Opening));
    }

    /// <summary>The vessel whose state is none is named, whether it says so or throws; a link that throws is no vessel.</summary>
    [Fact]
    public void The_vessel_that_is_out_of_range_is_named()
    {
        Func<bool>[] ways = [() => false, () => throw new PropertyRangeException("R-test", "temperature", 1, 2, 3, "K", "made up"), () => throw new ConvergenceException("made up", 1)];
        foreach (Func<bool> way in ways)
        {
            foreach (Tank tank in new[] { _a, _b })
            {
                tank.Way = way;
                Assert.False(Changed());
                Assert.Same(tank, _network.OutOfRange);
                tank.Way = () => true;
                Assert.True(Changed());
            }

            var fresh = new Network([new Tank("a"), new Tank("b")], [new Pipe(_a, _b) { Way = way }]);
            Assert.False(fresh.Evaluate(new double[fresh.Dimension]));
            Assert.Null(fresh.OutOfRange);
            Assert.False(fresh.Derivatives(new double[fresh.Dimension], new double[fresh.Dimension]));
            Assert.False(fresh.Events(new double[fresh.Dimension], []));
        }

        bool Changed()
        {
            _state[_a.First] += 0.1;
            return _network.Evaluate(_state);
        }
    }

    /// <summary>Watches show their values; one that stops ends the run, another is only noted with its time.</summary>
    [Fact]
    public void Watches_are_read_and_noted()
    {
        var stops = new Watch(StageEnd.TargetReached, () => _a.Mass - 1);
        var notes = new Watch(StageEnd.LiquidGone, () => _b.Mass, stops: false);
        _network.Watch(stops);
        _network.Watch(notes);
        double[] values = new double[_network.EventCount];
        Assert.True(_network.Events(_state, values));
        Assert.Equal([1, 3], values);
        Assert.True(double.IsNaN(notes.FiredAt));
        Assert.Equal(EventAction.Resume, _network.OnEvent(1, 5, _state));
        Assert.Equal(EventAction.Stop, _network.OnEvent(0, 6, _state));
        Assert.Equal((6, 5), (stops.FiredAt, notes.FiredAt));
    }

    /// <summary>After a step whoever listens sees vessels that stand at it; where they do not stand he hears nothing.</summary>
    [Fact]
    public void Steps_are_told_where_vessels_stand()
    {
        var heard = new List<(double Time, double Mass)>();
        _network.OnStep(1, _state);
        _network.Stepped = time => heard.Add((time, _a.Mass));
        _network.OnStep(2, _state);
        _state[_a.First] = 5;
        _network.OnStep(3, _state);
        _a.Way = () => false;
        _state[_a.First] = 6;
        _network.OnStep(4, _state);
        Assert.Equal([(2, 2), (3, 5)], heard);
    }

    /// <summary>An energy near zero counts as that of its mass, 2e5 J/kg; accounts have no part in the control of errors.</summary>
    [Fact]
    public void Errors_are_judged_by_the_size_of_what_there_is()
    {
        Assert.Equal(1 + 2, _network.Size(_a.First, _state), 1e-12);
        Assert.Equal(2e5 + 100 + (2 * 2e5), _network.Size(_a.Energy, _state), 1e-6);
        Assert.Equal(2e5 + 50 + (3 * 2e5), _network.Size(_b.Energy, _state), 1e-6);
        Assert.Equal(double.PositiveInfinity, _network.Size(4, _state));
        Assert.Equal((1, 2e5, double.PositiveInfinity), (_network.AbsoluteScale(_a.First), _network.AbsoluteScale(_a.Energy), _network.AbsoluteScale(4)));
    }

    private sealed class Tank(string name) : Vessel(name, 1)
    {
        private double _mass;

        public Func<bool> Way { get; set; } = () => true;

        public int Solved { get; private set; }

        public int Finished { get; private set; }

        public override double Pressure => 1e5;

        public override double Temperature => 300;

        public override double VaporDensity => 4;

        public override double VaporEnthalpy => 10;

        public override double LiquidEnthalpy => 5;

        public override ReadOnlySpan<double> VaporComposition => default;

        public override ReadOnlySpan<double> LiquidComposition => default;

        public override double Mass => _mass;

        public override double LiquidMass => 0;

        public override bool Solve(double[] state, in SimulationInputs inputs)
        {
            Solved++;
            _mass = SumOfMasses(state);
            return Way();
        }

        public override void Derive(double[] derivatives)
        {
        }

        public override void Finish(double[] derivatives) => Finished++;
    }

    private sealed class Pipe(Vessel from, Vessel to) : Link("pipe", from, to)
    {
        public Func<bool> Way { get; set; } = () => true;

        public double Opening { get; private set; }

        protected override ReadOnlySpan<double> Composition => default;

        public override bool Solve(double[] state, in SimulationInputs inputs)
        {
            (Flow, EnthalpyOut, EnthalpyIn, Opening) = (0.5, 10, 12, inputs.InletOpening);
            return Way();
        }
    }
}
