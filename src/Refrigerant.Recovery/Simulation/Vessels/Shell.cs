namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>The walls of a vessel and what heats them: heat to the refrigerant inside; plain SI doubles.</summary>
internal abstract class Shell
{
    /// <summary>Heat to what touches the liquid's side of the wall, W.</summary>
    public double HeatToLiquid { get; protected set; }

    /// <summary>Heat to what touches the vapor's side of the wall, W.</summary>
    public double HeatToVapor { get; protected set; }

    /// <summary>Heat from outside into the shell, or through it, W.</summary>
    public double HeatFromOutside { get; protected set; }

    /// <summary>Temperature of the wall that liquid wets; of all of it where there is one, K.</summary>
    public double WetTemperature { get; protected set; }

    /// <summary>Temperature of the wall that vapor touches, K.</summary>
    public double DryTemperature { get; protected set; }

    /// <summary>Takes places for its states.</summary>
    public abstract void AddStates(SlotLayout layout, string vessel);

    /// <summary>Sizes below which the errors of its states do not matter.</summary>
    public abstract void SetScales(double[] scale);

    /// <summary>Evaluates the heat flows.</summary>
    /// <param name="state">All states.</param>
    /// <param name="liquid">Temperature of what touches the wetted wall, K.</param>
    /// <param name="vapor">Temperature of what touches the dry wall, K.</param>
    /// <param name="level">Share of the volume that liquid fills.</param>
    /// <param name="inputs">What people do.</param>
    public abstract bool Solve(double[] state, double liquid, double vapor, double level, in SimulationInputs inputs);

    /// <summary>Writes the derivatives of its states.</summary>
    public abstract void Derive(double[] derivatives);

    /// <summary>Takes heat out of its dry part; false where it stores none.</summary>
    public virtual bool TakeHeat(double[] derivatives, double heat) => false;

    /// <summary>Energy in it, J.</summary>
    public abstract double Stored(double[] state);
}
