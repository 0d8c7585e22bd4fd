using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>A simulated hold: valves closed, heat flows in, the pressure comes back. Immutable.</summary>
/// <remarks>
/// Neither machine nor cylinder take part. In its trajectory the pressures at the machine's inlet and outlet are that of the appliance, the
/// temperature of the cylinder is that of the refrigerant in the appliance, and the mass in the cylinder and the flow are zero.
/// </remarks>
public sealed class HoldResult : StageResult
{
    internal HoldResult(
        StageEnd end, double seconds, ApplianceState start, ApplianceState appliance, Trajectory trajectory, IReadOnlyList<Finding> findings, Closure closure)
        : base(end, seconds, 0, appliance.Mass.Kilograms, trajectory, findings, closure)
    {
        Appliance = appliance;
        PressureRise = new Pressure(appliance.Pressure.Pascals - start.Pressure.Pascals, PressureUnit.Pascal);
    }

    /// <summary>The appliance at the end.</summary>
    public ApplianceState Appliance { get; }

    /// <summary>How far the pressure rose.</summary>
    public Pressure PressureRise { get; }
}
