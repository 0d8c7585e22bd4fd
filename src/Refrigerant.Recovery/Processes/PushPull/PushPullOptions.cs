using System;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>Where a push-pull starts and what it rests on; one day at most by default. Immutable.</summary>
public sealed record PushPullOptions : StageOptions
{
    private const double Day = 86_400;

    /// <summary>A push-pull of appliance and cylinder as described.</summary>
    public PushPullOptions()
        : base(Day)
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="condensingConductance">See <see cref="CondensingConductance"/>.</param>
    /// <param name="liquidSurface">See <see cref="LiquidSurface"/>.</param>
    /// <param name="keepBelowDesignPressure">See <see cref="KeepBelowDesignPressure"/>.</param>
    /// <param name="start">See <see cref="StageOptions.Start"/>.</param>
    /// <param name="inputs">See <see cref="StageOptions.Inputs"/>.</param>
    /// <param name="cylinderLimit">See <see cref="StageOptions.CylinderLimit"/>.</param>
    /// <param name="maximumDuration">See <see cref="StageOptions.MaximumDuration"/>.</param>
    /// <param name="composition">See <see cref="StageOptions.Composition"/>.</param>
    /// <param name="barometer">See <see cref="StageOptions.Barometer"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public PushPullOptions(
        double? condensingConductance = null,
        Area? liquidSurface = null,
        bool? keepBelowDesignPressure = null,
        SimulationState? start = null,
        SimulationInputs? inputs = null,
        Mass? cylinderLimit = null,
        Duration? maximumDuration = null,
        CompositionMode? composition = null,
        Barometer? barometer = null)
        : base(Day, start, inputs, cylinderLimit, maximumDuration, composition, barometer)
    {
        CondensingConductance = condensingConductance ?? CondensingConductance;
        LiquidSurface = liquidSurface ?? LiquidSurface;
        KeepBelowDesignPressure = keepBelowDesignPressure ?? KeepBelowDesignPressure;
    }

    /// <summary>
    /// Conductance with which pushed vapor condenses on the appliance's dry metal, W/K, 0 to 1e7. Where it is null it is 300 W/K for each m² of the surface of a cube of the
    /// appliance's volume (common practice, no source: a film on metal that warms), or what a fit to a push-pull rating gave the machine.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double? CondensingConductance
    {
        get;
        init => field = value is double given ? Require.InRange(given, 0, 1e7, "W/K", nameof(CondensingConductance)) : null;
    }

    /// <summary>Free surface of the liquid in the appliance, 0 to 1e4 m²; one face of a cube of its volume where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Area? LiquidSurface
    {
        get;
        init
        {
            if (value is Area given)
            {
                Require.InRange(given.SquareMeters, 0, 1e4, "m²", nameof(LiquidSurface));
            }

            field = value;
        }
    }

    /// <summary>Whether to throttle so that the appliance stays at 90 % of its design pressure, gauge, or below (common practice, no source); true by default.</summary>
    public bool KeepBelowDesignPressure { get; init; } = true;

    private protected override string Own => "push-pull"
        + (CondensingConductance is double conductance ? $", {Require.Text(conductance)} W/K condensing" : string.Empty)
        + (LiquidSurface is Area surface ? $", {Require.Text(surface.SquareMeters)} m² of liquid" : string.Empty)
        + (KeepBelowDesignPressure ? string.Empty : ", above the design pressure too");
}
