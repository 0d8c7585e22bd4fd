using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>What is known of a fluid once it is loaded, in SI units.</summary>
internal sealed record FluidFacts
{
    public required string Designation { get; init; }

    public required string Source { get; init; }

    public required IReadOnlyList<FluidComponent> Composition { get; init; }

    public required double MolarMass { get; init; }

    public required double CriticalTemperature { get; init; }

    public required double CriticalPressure { get; init; }

    public required double CriticalDensity { get; init; }

    public required PropertyRange Range { get; init; }

    /// <summary>The lowest pressure at which both saturated states exist within the range, Pa.</summary>
    public required double MinimumSaturationPressure { get; init; }

    /// <summary>The highest pressure at which both saturated states exist within the range, Pa.</summary>
    public required double MaximumSaturationPressure { get; init; }

    /// <summary>For the bulk composition.</summary>
    public required ReferenceOffset Reference { get; init; }
}
