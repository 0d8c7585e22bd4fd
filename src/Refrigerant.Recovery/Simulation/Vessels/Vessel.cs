using System;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>A place that holds refrigerant: amounts and internal energy as states, pressure and what its ports give as results. Plain SI doubles.</summary>
internal abstract class Vessel
{
    protected Vessel(string name, int components)
    {
        Name = name;
        Place = name;
        Components = components;
    }

    /// <summary>Its name in the layout and in transfers, such as "appliance".</summary>
    public string Name { get; }

    /// <summary>The vessel that its balance is counted with: itself, unless it is a part of one.</summary>
    public string Place { get; init; }

    /// <summary>Number of its masses.</summary>
    public int Components { get; }

    /// <summary>Place of its first mass; the others follow.</summary>
    public int First { get; private set; }

    /// <summary>Place of its internal energy.</summary>
    public int Energy { get; private set; }

    /// <summary>Mass whose error does not matter, kg, in units of the tolerance.</summary>
    public double MassScale { get; set; } = 1;

    /// <summary>Pressure that flows and gauges see, foreign gas included, Pa.</summary>
    public abstract double Pressure { get; }

    public abstract double Temperature { get; }

    public abstract double VaporDensity { get; }

    public abstract double VaporEnthalpy { get; }

    public abstract double LiquidEnthalpy { get; }

    public abstract ReadOnlySpan<double> VaporComposition { get; }

    public abstract ReadOnlySpan<double> LiquidComposition { get; }

    /// <summary>Refrigerant at the last solution without what oil holds, kg.</summary>
    public abstract double Mass { get; }

    /// <summary>Liquid at the last solution, kg.</summary>
    public abstract double LiquidMass { get; }

    /// <summary>Account of the heat that came from outside, J.</summary>
    public int OutsideHeat { get; private set; }

    public virtual void AddStates(SlotLayout layout)
    {
        First = layout.State(Name, "mass");
        for (int i = 1; i < Components; i++)
        {
            layout.State(Name, FormattableString.Invariant($"mass of component {i + 1}"));
        }

        Energy = layout.State(Name, "energy");
    }

    public virtual void AddAccounts(SlotLayout layout) => OutsideHeat = layout.Account(Name, "heat from outside");

    public virtual void SetScales(double[] scale)
    {
        for (int i = 0; i < Components; i++)
        {
            scale[First + i] = MassScale;
        }

        scale[Energy] = MassScale * Network.EnergyScale;
    }

    /// <summary>Evaluates a state; false where it is none.</summary>
    public abstract bool Solve(double[] state, in SimulationInputs inputs);

    /// <summary>Adds what changes it by itself.</summary>
    public abstract void Derive(double[] derivatives);

    /// <summary>Adds what follows from the flows, once all are known.</summary>
    public virtual void Finish(double[] derivatives)
    {
    }

    /// <summary>All refrigerant in it, what its oil holds included, kg.</summary>
    public virtual double TotalMass(double[] state) => SumOfMasses(state);

    /// <summary>Mass of one component, what oil holds included, kg.</summary>
    public virtual double ComponentMass(double[] state, int component) => state[First + component];

    /// <summary>All energy in it and its shell, J.</summary>
    public virtual double Stored(double[] state) => state[Energy];

    /// <summary>Adds a flow into it (or, below zero, out of it).</summary>
    public void Give(double[] derivatives, double flow, double enthalpy, ReadOnlySpan<double> composition)
    {
        if (Components == 1)
        {
            derivatives[First] += flow;
        }
        else
        {
            for (int i = 0; i < Components; i++)
            {
                derivatives[First + i] += flow * composition[i];
            }
        }

        derivatives[Energy] += flow * enthalpy;
    }

    protected double SumOfMasses(double[] state)
    {
        double sum = 0;
        for (int i = 0; i < Components; i++)
        {
            sum += state[First + i];
        }

        return sum;
    }
}
