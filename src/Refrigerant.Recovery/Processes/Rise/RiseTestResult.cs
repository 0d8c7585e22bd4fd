using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What two readings of a closed appliance say. Immutable.</summary>
public sealed record RiseTestResult
{
    private readonly double? _uncertainty;

    internal RiseTestResult(RiseTestVerdict verdict, double mass, double? uncertainty, double unexplained, IReadOnlyList<Finding> findings)
    {
        Verdict = verdict;
        VaporMass = new Mass(mass, MassUnit.Kilogram);
        _uncertainty = uncertainty;
        UnexplainedPressure = new Pressure(unexplained, PressureUnit.Pascal);
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>What they show.</summary>
    public RiseTestVerdict Verdict { get; }

    /// <summary>Refrigerant inside as vapor: all of it where there is no liquid, else the least there can be.</summary>
    public Mass VaporMass { get; }

    /// <summary>Standard uncertainty of the mass; null where liquid or another gas leaves it open.</summary>
    public Mass? Uncertainty => _uncertainty is double given ? new Mass(given, MassUnit.Kilogram) : null;

    /// <summary>Pressure that neither saturation nor warming of the gas explains.</summary>
    public Pressure UnexplainedPressure { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Verdict and mass, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Verdict}: {VaporMass.Kilograms:G4} kg, {UnexplainedPressure.Kilopascals:F2} kPa unexplained");
}
