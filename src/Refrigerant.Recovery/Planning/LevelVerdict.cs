using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a plan comes to against the level: reached and held for how long, or not, and why. Immutable.</summary>
public sealed record LevelVerdict
{
    internal LevelVerdict(LevelOutcome outcome, LevelObstacle obstacle, Duration heldFor, Pressure pressure, Mass liquid, Ratio recovered, bool isAtLevel)
    {
        IsAtLevel = isAtLevel;
        Outcome = outcome;
        Obstacle = obstacle;
        HeldFor = heldFor;
        Pressure = pressure;
        Liquid = liquid;
        Recovered = recovered;
    }

    /// <summary>What it comes to.</summary>
    public LevelOutcome Outcome { get; }

    /// <summary>What stands in the way; <see cref="LevelObstacle.None"/> where it is reached.</summary>
    public LevelObstacle Obstacle { get; }

    /// <summary>How long the appliance stood shut at the level or below; zero where it did not.</summary>
    public Duration HeldFor { get; }

    /// <summary>Absolute pressure in the appliance at the end.</summary>
    public Pressure Pressure { get; }

    /// <summary>Liquid in the appliance at the end.</summary>
    public Mass Liquid { get; }

    /// <summary>Share of the charge that came into cylinders.</summary>
    public Ratio Recovered { get; }

    /// <summary>Whether the appliance stands at the level at the end, held or not.</summary>
    internal bool IsAtLevel { get; }

    /// <summary>Reached, held where a hold was asked for, and no liquid left; or nothing to recover before an oil change.</summary>
    public bool IsReached => Outcome is LevelOutcome.ReachedAndHeld or LevelOutcome.Reached or LevelOutcome.NothingToRecover || (Outcome == LevelOutcome.ShareRecovered && Liquid.Kilograms <= 0);

    /// <summary>In a few words, culture-invariant.</summary>
    public override string ToString() => Outcome switch
    {
        LevelOutcome.ReachedAndHeld => "level reached and held for " + Findings.QuantityText.Duration(HeldFor),
        LevelOutcome.Reached => "level reached, no hold asked for",
        LevelOutcome.ReachedNotHeld => "level reached, not held: " + Why(Obstacle),
        LevelOutcome.ReachedOverLiquid => "level reached over liquid: " + Why(Obstacle),
        LevelOutcome.ShareRecovered => FormattableString.Invariant($"share reached, {(IsAtLevel ? "at the level without a hold" : "not the level")}: {Require.Text(Math.Round(Recovered.Percent, 1))} % recovered"),
        LevelOutcome.NothingToRecover => "at the level before anything is done, nothing to recover",
        _ => "level not reached: " + Why(Obstacle),
    };

    /// <summary>What stands in the way, in words.</summary>
    internal static string Why(LevelObstacle obstacle) => obstacle switch
    {
        LevelObstacle.NoCylinder => "no cylinder is on hand",
        LevelObstacle.NoFitCylinder => "no cylinder on hand may be filled",
        LevelObstacle.CylindersFull => "the cylinders on hand are full",
        LevelObstacle.HighPressureCutout => "the cylinder is too hot and the high-pressure cut-out stops the machine",
        LevelObstacle.CylinderPressure => "the cylinder is too hot for what it is built for",
        LevelObstacle.ThermalCutout => "the machine is too hot and its thermal cut-out stops it",
        LevelObstacle.DeepestVacuum => "the machine gets no deeper against the cylinder's pressure",
        LevelObstacle.LowPressureSwitch => "the machine's low-pressure switch stops it",
        LevelObstacle.Heat => "liquid boils only as fast as heat comes in",
        LevelObstacle.Freezing => "no faster pull keeps the tubes from freezing",
        LevelObstacle.Oil => "the oil gives off what it holds too slowly",
        LevelObstacle.TooManyPulls => "it takes more pulls or steps than are allowed",
        LevelObstacle.PropertyRange => "the refrigerant leaves the range of its equation of state",
        LevelObstacle.NotComputed => "the integration came to its bound on steps",
        LevelObstacle.ApplianceAboveCutout => "the appliance stands above the machine's high-pressure cut-out",
        LevelObstacle.CylinderPropertyRange => "the content of the cylinder leaves the range of the equation of state",
        LevelObstacle.HiddenSection => "a part of the appliance that the gauge does not see stands above it",
        LevelObstacle.StoppedByStrategy => "the strategy asked for no further step",
        _ => "it was stopped before",
    };
}
