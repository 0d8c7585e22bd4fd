using System;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What mass and energy balances of a simulation leave unexplained, relative to the initial values, and the work it took.</summary>
public readonly record struct Closure
{
    internal Closure(double mass, double energy, int steps, int evaluations)
    {
        Mass = mass;
        Energy = energy;
        Steps = steps;
        Evaluations = evaluations;
    }

    /// <summary>
    /// |mass in − mass out − mass stored| over the initial mass, the larger of the appliance's and the receiving cylinder's. What the cylinder
    /// leaves unexplained is taken over its own initial mass where that is larger than the appliance's.
    /// </summary>
    public double Mass { get; }

    /// <summary>
    /// |energy in − energy out − energy stored| over the initial energy of the refrigerant, the larger of the appliance's (refrigerant, metal, water
    /// and oil) and the receiving side's (machine, condenser, cylinder and its wall).
    /// </summary>
    public double Energy { get; }

    /// <summary>Steps of the integration.</summary>
    public int Steps { get; }

    /// <summary>Evaluations of the balances.</summary>
    public int Evaluations { get; }

    /// <summary>The balances and the work, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"mass {Mass:G3}, energy {Energy:G3}, {Steps} steps, {Evaluations} evaluations");
}
