using System;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Processes;

/// <summary>Appliance and cylinder after their pressures have become equal. Immutable.</summary>
public sealed class EqualizationResult : StageResult
{
    internal EqualizationResult(double seconds, double moved, ApplianceState appliance, CylinderState cylinder)
        : base(StageEnd.TargetReached, seconds, moved, appliance.Mass.Kilograms, new Trajectory([]), Array.Empty<Finding>(), default)
    {
        Appliance = appliance;
        Cylinder = cylinder;
    }

    /// <summary>The appliance after it.</summary>
    public ApplianceState Appliance { get; }

    /// <summary>The cylinder after it.</summary>
    public CylinderState Cylinder { get; }
}
