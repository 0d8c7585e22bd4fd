using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What passed from one place to another in a stage, added up as it flowed. Immutable.</summary>
public sealed record Transfer
{
    internal Transfer(string by, string from, string to, double kilograms, double energyOut, double energyIn, IReadOnlyList<(string Designation, double Kilograms)> components)
    {
        By = by;
        From = from;
        To = to;
        Mass = new Mass(kilograms, MassUnit.Kilogram);
        EnergyOut = new Energy(energyOut, EnergyUnit.Joule);
        EnergyIn = new Energy(energyIn, EnergyUnit.Joule);
        Components = new ValueList<(string Designation, double Kilograms)>([.. components]);
    }

    /// <summary>What it passed through, such as "machine" or "liquid hose".</summary>
    public string By { get; }

    /// <summary>Where it came from.</summary>
    public string From { get; }

    /// <summary>Where it went.</summary>
    public string To { get; }

    /// <summary>Mass; below zero where more flowed backwards.</summary>
    public Mass Mass { get; }

    /// <summary>Energy (enthalpy of what flowed, on the refrigerant's reference state) that left the one.</summary>
    public Energy EnergyOut { get; }

    /// <summary>Energy that entered the other: work and heat on the way are between the two.</summary>
    public Energy EnergyIn { get; }

    /// <summary>Mass of each component in kg; empty for a pure fluid and where the composition is not followed.</summary>
    public IReadOnlyList<(string Designation, double Kilograms)> Components { get; }

    /// <summary>From, to and mass, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{From} to {To} by {By}: {Mass.Kilograms:G4} kg");
}
