using System;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>What passes between two vessels: mass, energy and components from the states at its ends and the inputs; what passed is booked. Plain SI doubles.</summary>
internal abstract class Link
{
    private int _masses;
    private int _energyOut;
    private int _energyIn;
    private int _components;

    protected Link(string name, Vessel? from, Vessel? to)
    {
        Name = name;
        From = from;
        To = to;
    }

    public string Name { get; }

    /// <summary>Where it comes from; null for outside.</summary>
    public Vessel? From { get; }

    /// <summary>Where it goes; null for outside.</summary>
    public Vessel? To { get; }

    /// <summary>kg/s; below zero where it flows backwards.</summary>
    public double Flow { get; protected set; }

    /// <summary>Enthalpy that leaves the first vessel, J/kg.</summary>
    public double EnthalpyOut { get; protected set; }

    /// <summary>Enthalpy that enters the second, J/kg.</summary>
    public double EnthalpyIn { get; protected set; }

    /// <summary>Mass fractions of what flows; empty where the composition is not followed.</summary>
    protected abstract ReadOnlySpan<double> Composition { get; }

    public virtual void AddStates(SlotLayout layout)
    {
    }

    public virtual void AddAccounts(SlotLayout layout, int components)
    {
        _components = components;
        _masses = layout.Account(Name, "mass");
        for (int i = 1; i < components; i++)
        {
            layout.Account(Name, FormattableString.Invariant($"mass of component {i + 1}"));
        }

        _energyOut = layout.Account(Name, "energy out");
        _energyIn = layout.Account(Name, "energy in");
    }

    public virtual void SetScales(double[] scale)
    {
    }

    /// <summary>Evaluates the flow; false where there is no state for it.</summary>
    public abstract bool Solve(double[] state, in SimulationInputs inputs);

    /// <summary>Adds the flow to the vessels and books it.</summary>
    public virtual void Derive(double[] derivatives)
    {
        ReadOnlySpan<double> composition = Composition;
        From?.Give(derivatives, -Flow, EnthalpyOut, composition);
        To?.Give(derivatives, Flow, EnthalpyIn, composition);
        if (_components == 1)
        {
            derivatives[_masses] += Flow;
        }
        else
        {
            for (int i = 0; i < _components; i++)
            {
                derivatives[_masses + i] += Flow * composition[i];
            }
        }

        derivatives[_energyOut] += Flow * EnthalpyOut;
        derivatives[_energyIn] += Flow * EnthalpyIn;
    }

    /// <summary>Mass of a component that has passed, kg.</summary>
    public double Passed(double[] state, int component) => state[_masses + component];

    /// <summary>Mass that has passed, kg.</summary>
    public double Passed(double[] state)
    {
        double sum = 0;
        for (int i = 0; i < _components; i++)
        {
            sum += state[_masses + i];
        }

        return sum;
    }

    /// <summary>Energy that has left the first vessel, J.</summary>
    public double PassedOut(double[] state) => state[_energyOut];

    /// <summary>Energy that has entered the second vessel, J.</summary>
    public double PassedIn(double[] state) => state[_energyIn];

    /// <summary>Energy in the link itself, J.</summary>
    public virtual double Stored(double[] state) => 0;

    /// <summary>Energy that came to it from outside: work and heat, J.</summary>
    public virtual double FromOutside(double[] state) => 0;
}
