using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>A simulated push-pull. Immutable.</summary>
public sealed class PushPullResult : StageResult
{
    internal PushPullResult(
        StageEnd end,
        double seconds,
        double recovered,
        ApplianceState appliance,
        CylinderState cylinder,
        double liquidMoved,
        PushPullLimit limit,
        double machineShare,
        double drivingPressure,
        Trajectory trajectory,
        IReadOnlyList<Finding> findings,
        Closure closure)
        : base(end, seconds, recovered, appliance.Mass.Kilograms, trajectory, findings, closure)
    {
        Appliance = appliance;
        Cylinder = cylinder;
        LiquidMoved = new Mass(liquidMoved, MassUnit.Kilogram);
        Limit = limit;
        MachineShare = new Ratio(machineShare, RatioUnit.DecimalFraction);
        DrivingPressure = new Pressure(drivingPressure, PressureUnit.Pascal);
        AverageRate = new MassFlow(seconds > 0 ? recovered / seconds : 0, MassFlowUnit.KilogramPerSecond);
    }

    /// <summary>The appliance at the end, its content at equilibrium.</summary>
    public ApplianceState Appliance { get; }

    /// <summary>The cylinder at the end.</summary>
    public CylinderState Cylinder { get; }

    /// <summary>Liquid that went through the liquid hose; the vapor pushed back is not taken off.</summary>
    public Mass LiquidMoved { get; }

    /// <summary>What sets the pace, halfway through.</summary>
    public PushPullLimit Limit { get; }

    /// <summary>Liquid flow over what the machine would move against no resistance, averaged.</summary>
    public Ratio MachineShare { get; }

    /// <summary>Largest pressure difference between appliance and cylinder.</summary>
    public Pressure DrivingPressure { get; }

    /// <summary>Net rate: mass out of the appliance over time, as the rating standard measures it.</summary>
    public MassFlow AverageRate { get; }
}
