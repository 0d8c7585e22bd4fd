using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>A simulated vapor recovery. Immutable.</summary>
public sealed class VaporRecoveryResult : StageResult
{
    private readonly double _liquidGone;
    private readonly double _coldest;

    internal VaporRecoveryResult(
        StageEnd end,
        double seconds,
        double recovered,
        ApplianceState appliance,
        CylinderState? cylinder,
        double liquidGone,
        double coldest,
        double suctionLineShare,
        Temperature? hottestDischarge,
        Trajectory trajectory,
        FractionationResult? fractionation,
        IReadOnlyList<Finding> findings,
        Closure closure)
        : base(end, seconds, recovered, appliance.Mass.Kilograms, trajectory, findings, closure)
    {
        Appliance = appliance;
        Cylinder = cylinder;
        _liquidGone = liquidGone;
        _coldest = coldest;
        Fractionation = fractionation;
        SuctionLineShare = new Ratio(suctionLineShare, RatioUnit.DecimalFraction);
        HottestDischarge = hottestDischarge;
    }

    /// <summary>The appliance at the end.</summary>
    public ApplianceState Appliance { get; }

    /// <summary>How the composition drifts; null where it counts as fixed (<see cref="VaporRecoveryOptions.Composition"/>).</summary>
    public FractionationResult? Fractionation { get; }

    /// <summary>The cylinder at the end; null where a fixed discharge pressure stood in for it.</summary>
    public CylinderState? Cylinder { get; }

    /// <summary>When the last liquid was gone; null where liquid is left, or none was there.</summary>
    public Duration? LiquidGoneAfter => double.IsNaN(_liquidGone) ? null : new Duration(_liquidGone, DurationUnit.Second);

    /// <summary>Lowest temperature of the metal: of the surface that water touches.</summary>
    public Temperature ColdestSurface => new(_coldest, TemperatureUnit.Kelvin);

    /// <summary>Flow averaged over the stage as a share of what the machine would draw without its suction line.</summary>
    public Ratio SuctionLineShare { get; }

    /// <summary>Highest discharge temperature of the machine; null where it could not be evaluated, or nothing flowed.</summary>
    public Temperature? HottestDischarge { get; }
}
