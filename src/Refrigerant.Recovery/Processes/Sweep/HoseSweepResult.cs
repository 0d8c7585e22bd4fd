using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Air swept out of the hoses; no refrigerant moves. Immutable.</summary>
public sealed class HoseSweepResult
{
    internal HoseSweepResult(
        StageEnd end, double seconds, double pressure, double airMoles, double volume, Trajectory trajectory, IReadOnlyList<Finding> findings)
    {
        End = end;
        Duration = new Duration(seconds, DurationUnit.Second);
        Trajectory = trajectory;
        Findings = findings;
        Pressure = new Pressure(pressure, PressureUnit.Pascal);
        AirLeft = new AmountOfSubstance(airMoles, AmountOfSubstanceUnit.Mole);
        SweptVolume = new Volume(volume, VolumeUnit.CubicMeter);
    }

    /// <summary>Why it ended.</summary>
    public StageEnd End { get; }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Its course.</summary>
    public Trajectory Trajectory { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Absolute pressure reached.</summary>
    public Pressure Pressure { get; }

    /// <summary>Air left in hoses and machine; it ends up in the cylinder.</summary>
    public AmountOfSubstance AirLeft { get; }

    /// <summary>Volume that was swept: the hoses and the machine's inside.</summary>
    public Volume SweptVolume { get; }

    /// <summary>Why it ended, time, pressure and the air left, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{End} after {Duration.Seconds:G4} s at {Pressure.Kilopascals:G4} kPa absolute, {AirLeft.Moles:G4} mol of air left");
}
