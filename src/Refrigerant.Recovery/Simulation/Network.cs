using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation;

/// <summary>Vessels and links put together to one system of balances, which the integrator integrates. Plain SI doubles.</summary>
/// <remarks>
/// Each vessel: dm_i/dt = Σ flows·w_i, dU/dt = Σ flows·h + heat. Each link and each vessel books what passed in accounts that are integrated beside the
/// states, so that every balance can be drawn up from transfers, to rounding.
/// </remarks>
internal sealed class Network : OdeSystem
{
    /// <summary>Size of specific energies of refrigerants, J/kg.</summary>
    public const double EnergyScale = 2e5;

    private readonly Vessel[] _vessels;
    private readonly Link[] _links;
    private readonly double[] _scale;
    private readonly int[] _energyOf;
    private readonly double[] _evaluated;
    private readonly List<Watch> _watches = [];
    private SimulationInputs _inputs;
    private bool _hasEvaluated;
    private bool _isValid;

    public Network(Vessel[] vessels, Link[] links)
    {
        _vessels = vessels;
        _links = links;
        Layout = new SlotLayout();
        int components = 1;
        foreach (Vessel vessel in vessels)
        {
            vessel.AddStates(Layout);
            components = Math.Max(components, vessel.Components);
        }

        foreach (Link link in links)
        {
            link.AddStates(Layout);
        }

        foreach (Vessel vessel in vessels)
        {
            vessel.AddAccounts(Layout);
        }

        foreach (Link link in links)
        {
            link.AddAccounts(Layout, components);
        }

        Components = components;
        _scale = new double[Layout.States];
        _energyOf = new int[Layout.States];
        for (int i = 0; i < _energyOf.Length; i++)
        {
            _energyOf[i] = -1;
        }

        for (int v = 0; v < vessels.Length; v++)
        {
            vessels[v].SetScales(_scale);
            _energyOf[vessels[v].Energy] = v;
        }

        foreach (Link link in links)
        {
            link.SetScales(_scale);
        }

        _evaluated = new double[Layout.States];
    }

    public SlotLayout Layout { get; }

    /// <summary>Number of masses of a vessel: that of the components where the composition is followed, else one.</summary>
    public int Components { get; }

    public IReadOnlyList<Vessel> Vessels => _vessels;

    public IReadOnlyList<Link> Links => _links;

    public IReadOnlyList<Watch> Watches => _watches;

    /// <summary>What people do; a change counts from the next evaluation.</summary>
    public SimulationInputs Inputs
    {
        get => _inputs;
        set
        {
            _inputs = value;
            _hasEvaluated = false;
        }
    }

    /// <summary>The vessel whose state was last found outside the range of the equation of state; null where there was none.</summary>
    public Vessel? OutOfRange { get; private set; }

    /// <summary>Called after every accepted step with the time, when all vessels and links stand at it.</summary>
    public Action<double>? Stepped { get; set; }

    public override int Dimension => Layout.Count;

    public override int ControlledDimension => Layout.States;

    public override int EventCount => _watches.Count;

    /// <summary>Adds a watch; before the first integration.</summary>
    public void Watch(Watch watch) => _watches.Add(watch);

    public override double AbsoluteScale(int index) => index < _scale.Length ? _scale[index] : double.PositiveInfinity;

    /// <summary>An energy passes through zero, which is only a matter of its reference state: it counts as no smaller than its mass makes it.</summary>
    public override double Size(int index, double[] state)
    {
        double size = base.Size(index, state);
        if (index < _energyOf.Length && _energyOf[index] >= 0)
        {
            Vessel vessel = _vessels[_energyOf[index]];
            for (int i = 0; i < vessel.Components; i++)
            {
                size += EnergyScale * Math.Abs(state[vessel.First + i]);
            }
        }

        return size;
    }

    public override bool Derivatives(double[] state, double[] derivatives)
    {
        if (!Evaluate(state))
        {
            return false;
        }

        Array.Clear(derivatives, 0, derivatives.Length);
        foreach (Vessel vessel in _vessels)
        {
            vessel.Derive(derivatives);
        }

        foreach (Link link in _links)
        {
            link.Derive(derivatives);
        }

        foreach (Vessel vessel in _vessels)
        {
            vessel.Finish(derivatives);
        }

        return true;
    }

    public override bool Events(double[] state, double[] values)
    {
        if (!Evaluate(state))
        {
            return false;
        }

        for (int i = 0; i < values.Length; i++)
        {
            values[i] = _watches[i].Value();
        }

        return true;
    }

    public override EventAction OnEvent(int index, double time, double[] state)
    {
        Watch watch = _watches[index];
        watch.FiredAt = time;
        return watch.Stops ? EventAction.Stop : EventAction.Resume;
    }

    public override void OnStep(double time, double[] state)
    {
        if (Stepped is not null && Evaluate(state))
        {
            Stepped(time);
        }
    }

    /// <summary>Brings vessels and links to a state, unless they stand at it; false where it is none.</summary>
    public bool Evaluate(double[] state)
    {
        if (_hasEvaluated && state.AsSpan(0, _evaluated.Length).SequenceEqual(_evaluated))
        {
            return _isValid;
        }

        Array.Copy(state, _evaluated, _evaluated.Length);
        _hasEvaluated = true;
        _isValid = TrySolve(state);
        return _isValid;
    }

    /// <summary>What the balances of a run leave unexplained.</summary>
    public Closure Balance(double[] before, double[] after, in OdeOutcome outcome)
    {
        double mass = 0;
        double energy = 0;
        double largest = 0;
        foreach (Vessel vessel in _vessels)
        {
            largest = Math.Max(largest, Math.Max(vessel.TotalMass(before), vessel.TotalMass(after)));
        }

        foreach (Vessel first in _vessels)
        {
            if (first.Place != first.Name)
            {
                continue;
            }

            double energyMissing = 0;
            double energySize = largest * EnergyScale;
            for (int i = 0; i < Components; i++)
            {
                double missing = 0;
                foreach (Vessel vessel in _vessels)
                {
                    if (vessel.Place == first.Place)
                    {
                        missing += vessel.ComponentMass(after, i) - vessel.ComponentMass(before, i);
                    }
                }

                foreach (Link link in _links)
                {
                    missing += (link.From?.Place == first.Place ? link.Passed(after, i) - link.Passed(before, i) : 0)
                        - (link.To?.Place == first.Place ? link.Passed(after, i) - link.Passed(before, i) : 0);
                }

                mass = Math.Max(mass, Math.Abs(missing) / largest);
            }

            foreach (Vessel vessel in _vessels)
            {
                if (vessel.Place == first.Place)
                {
                    energyMissing += vessel.Stored(after) - vessel.Stored(before) - (after[vessel.OutsideHeat] - before[vessel.OutsideHeat]);
                    energySize += Math.Abs(vessel.Stored(before));
                }
            }

            foreach (Link link in _links)
            {
                energyMissing += (link.From?.Place == first.Place ? link.PassedOut(after) - link.PassedOut(before) : 0)
                    - (link.To?.Place == first.Place ? link.PassedIn(after) - link.PassedIn(before) : 0);
            }

            energy = Math.Max(energy, Math.Abs(energyMissing) / energySize);
        }

        foreach (Link link in _links)
        {
            double missing = link.Stored(after) - link.Stored(before) - (link.FromOutside(after) - link.FromOutside(before))
                + (link.PassedIn(after) - link.PassedIn(before)) - (link.PassedOut(after) - link.PassedOut(before));
            energy = Math.Max(energy, Math.Abs(missing) / ((largest * EnergyScale) + Math.Abs(link.Stored(before))));
        }

        return new Closure(mass, energy, outcome.Steps, outcome.Evaluations);
    }

    /// <summary>A trial step may reach beyond the equation of state; that only means a shorter one.</summary>
    private bool TrySolve(double[] state)
    {
        Vessel? solving = null;
        try
        {
            foreach (Vessel vessel in _vessels)
            {
                solving = vessel;
                if (!vessel.Solve(state, _inputs))
                {
                    OutOfRange = vessel;
                    return false;
                }
            }

            solving = null;
            foreach (Link link in _links)
            {
                if (!link.Solve(state, _inputs))
                {
                    return false;
                }
            }

            return true;
        }
        catch (PropertyRangeException)
        {
            OutOfRange = solving ?? OutOfRange;
            return false;
        }
        catch (ConvergenceException)
        {
            OutOfRange = solving ?? OutOfRange;
            return false;
        }
    }
}
