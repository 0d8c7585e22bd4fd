using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>Air swept out of the hoses. No refrigerant moves; the masses of the base class are zero. Immutable.</summary>
public sealed class HoseSweepResult : StageResult
{
    internal HoseSweepResult(
        StageEnd end, double seconds, double pressure, double airMoles, double volume, Trajectory trajectory, IReadOnlyList<Finding> findings)
        : base(end, seconds, 0, 0, trajectory, findings, default)
    {
        Pressure = new Pressure(pressure, PressureUnit.Pascal);
        AirLeft = new AmountOfSubstance(airMoles, AmountOfSubstanceUnit.Mole);
        SweptVolume = new Volume(volume, VolumeUnit.CubicMeter);
    }

    /// <summary>Absolute pressure reached.</summary>
    public Pressure Pressure { get; }

    /// <summary>Air left in hoses and machine; it ends up in the cylinder.</summary>
    public AmountOfSubstance AirLeft { get; }

    /// <summary>Volume that was swept: the hoses and the machine's inside.</summary>
    public Volume SweptVolume { get; }
}
