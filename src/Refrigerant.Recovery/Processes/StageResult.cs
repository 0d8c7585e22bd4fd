using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a simulated stage came to, whichever it is. Immutable. Planning figures: local codes and licensed practice govern.</summary>
public class StageResult
{
    /// <summary>A difference of this share of the mass is rounding.</summary>
    private const double Rounding = 1e-13;

    private readonly double _liquidGone;
    private readonly double _coldest;

    internal StageResult(
        StageEnd end, double seconds, SimulationState before, SimulationState after, IReadOnlyList<Transfer> transfers, Trajectory trajectory, StageFigures figures, IReadOnlyList<Finding> findings, Closure closure)
    {
        End = end;
        Duration = new Duration(seconds, DurationUnit.Second);
        Before = before;
        After = after;
        Transfers = transfers;
        Trajectory = trajectory;
        Findings = findings;
        Closure = closure;
        _liquidGone = figures.LiquidGoneAt;
        _coldest = double.IsPositiveInfinity(figures.Coldest) ? before.Appliance.MetalTemperature.Kelvins : figures.Coldest;
        MachinePassed = figures.Passed;
        FreeFlow = figures.FreeFlow;
        SuctionLineShare = new Ratio(figures.SuctionLineShare, RatioUnit.DecimalFraction);
        HottestDischarge = double.IsNaN(figures.HottestDischarge) ? null : new Temperature(figures.HottestDischarge, TemperatureUnit.Kelvin);
        LargestDrive = new Pressure(figures.LargestDrive, PressureUnit.Pascal);
        LiquidMoved = new Mass(figures.LiquidMoved, MassUnit.Kilogram);
        Fractionation = figures.Fractionation;
        CylinderOutOfRange = figures.CylinderOutOfRange;
    }

    /// <summary>Why it ended.</summary>
    public StageEnd End { get; }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Appliance, cylinder and machine at the start.</summary>
    public SimulationState Before { get; }

    /// <summary>Appliance, cylinder and machine at the end.</summary>
    public SimulationState After { get; }

    /// <summary>The appliance at the end.</summary>
    public ApplianceState Appliance => After.Appliance;

    /// <summary>The cylinder at the end; null where none takes part.</summary>
    public CylinderState? Cylinder => After.Cylinder;

    /// <summary>What passed from where to where, booked as it flowed.</summary>
    public IReadOnlyList<Transfer> Transfers { get; }

    /// <summary>Refrigerant taken out of the appliance in this stage.</summary>
    public Mass RecoveredMass
    {
        get
        {
            double before = Before.Appliance.Mass.Kilograms;
            double recovered = before - After.Appliance.Mass.Kilograms;
            return new(Math.Abs(recovered) > Rounding * before ? recovered : 0, MassUnit.Kilogram);
        }
    }

    /// <summary>Refrigerant left in the appliance, what its oil holds included.</summary>
    public Mass RemainingMass => After.Appliance.Mass;

    /// <summary>Net rate: mass out of the appliance over time, as a rating standard measures it; zero for a stage without duration.</summary>
    public MassFlow AverageRate => new(Duration.Seconds > 0 ? RecoveredMass.Kilograms / Duration.Seconds : 0, MassFlowUnit.KilogramPerSecond);

    /// <summary>Its course.</summary>
    public Trajectory Trajectory { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How well mass, components and energy balance.</summary>
    public Closure Closure { get; }

    /// <summary>When the last liquid was gone; null where liquid is left, or none was there.</summary>
    public Duration? LiquidGoneAfter => double.IsNaN(_liquidGone) ? null : new Duration(_liquidGone, DurationUnit.Second);

    /// <summary>Lowest temperature of the metal: of the surface that water touches.</summary>
    public Temperature ColdestSurface => new(_coldest, TemperatureUnit.Kelvin);

    /// <summary>What passed the machine, kg.</summary>
    internal double MachinePassed { get; }

    /// <summary>What would have passed it without hoses, kg.</summary>
    internal double FreeFlow { get; }

    /// <summary>Flow averaged over the stage as a share of what the machine would draw without its suction line; 1 where no machine takes part.</summary>
    public Ratio SuctionLineShare { get; }

    /// <summary>Highest temperature of the gas that leaves the compressor; null where nothing was compressed.</summary>
    public Temperature? HottestDischarge { get; }

    /// <summary>Liquid that went through the liquid hose or the machine; vapor pushed back is not taken off.</summary>
    public Mass LiquidMoved { get; }

    /// <summary>Largest pressure difference between appliance and cylinder that drove liquid.</summary>
    public Pressure LargestDrive { get; }

    /// <summary>Whether what left the range of the equation of state was the content of the cylinder.</summary>
    internal bool CylinderOutOfRange { get; }

    /// <summary>How the composition drifts; null where it counts as fixed (<see cref="StageOptions.Composition"/>).</summary>
    public FractionationResult? Fractionation { get; }

    /// <summary>End, duration and mass moved, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{End} after {Duration.Minutes:F1} min, {RecoveredMass.Kilograms:G4} kg out, {RemainingMass.Kilograms:G4} kg left");
}
