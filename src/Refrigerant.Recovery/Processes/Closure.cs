namespace Refrigerant.Recovery.Processes;

/// <summary>What mass and energy balances of a simulation leave unexplained, relative to the initial values, and the work it took.</summary>
public readonly struct Closure
{
    internal Closure(double mass, double energy, int steps, int evaluations)
    {
        Mass = mass;
        Energy = energy;
        Steps = steps;
        Evaluations = evaluations;
    }

    /// <summary>|mass in − mass out − mass stored| over the initial mass.</summary>
    public double Mass { get; }

    /// <summary>|energy in − energy out − energy stored| over the initial energy of refrigerant, metal and water.</summary>
    public double Energy { get; }

    /// <summary>Steps of the integration.</summary>
    public int Steps { get; }

    /// <summary>Evaluations of the balances.</summary>
    public int Evaluations { get; }
}
