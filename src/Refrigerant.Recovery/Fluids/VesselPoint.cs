namespace Refrigerant.Recovery.Fluids;

/// <summary>The content of a closed vessel at equilibrium: the bulk and the phases it consists of, in plain SI doubles.</summary>
/// <remarks>Where a phase is absent its point is the default one, with <see cref="Phase.Undefined"/>.</remarks>
public readonly record struct VesselPoint
{
    /// <summary>Creates the point.</summary>
    /// <param name="bulk">The whole content.</param>
    /// <param name="liquid">The liquid in it, or default where there is none.</param>
    /// <param name="vapor">The vapor in it, or default where there is none.</param>
    public VesselPoint(in StatePoint bulk, in StatePoint liquid, in StatePoint vapor)
    {
        Bulk = bulk;
        Liquid = liquid;
        Vapor = vapor;
    }

    /// <summary>The whole content: temperature, pressure, mean density, enthalpy, entropy and quality.</summary>
    public StatePoint Bulk { get; }

    /// <summary>The liquid, undefined where there is none.</summary>
    public StatePoint Liquid { get; }

    /// <summary>The vapor (or supercritical fluid), undefined where there is none.</summary>
    public StatePoint Vapor { get; }

    /// <summary>Share of the vessel's volume that liquid fills, 0 to 1.</summary>
    public double LiquidVolumeFraction =>
        Liquid.Phase == Phase.Undefined ? 0
        : Vapor.Phase == Phase.Undefined ? 1
        : (1 - Bulk.VaporFraction) * Bulk.Density / Liquid.Density;

    /// <summary>The bulk state.</summary>
    public override string ToString() => Bulk.ToString();
}
