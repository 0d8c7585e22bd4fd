using System;
using Refrigerant.Recovery.Numerics;
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
}
