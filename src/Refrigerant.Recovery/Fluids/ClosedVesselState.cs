using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Fluids;

/// <summary>The content of a closed vessel at equilibrium: the bulk, and the liquid and vapor it consists of.</summary>
public readonly record struct ClosedVesselState
{
    private readonly PropertyModel _model;
    private readonly VesselPoint _point;

    internal ClosedVesselState(PropertyModel model, in VesselPoint point)
    {
        _model = model;
        _point = point;
    }

    /// <summary>The whole content: temperature, pressure, mean density, energy and quality.</summary>
    public FluidState Bulk => new(_model, _point.Bulk);

    /// <summary>The liquid, or null where there is none.</summary>
    public FluidState? Liquid => _point.Liquid.Phase == Phase.Undefined ? null : new FluidState(_model, _point.Liquid);

    /// <summary>The vapor or supercritical fluid, or null where there is none.</summary>
    public FluidState? Vapor => _point.Vapor.Phase == Phase.Undefined ? null : new FluidState(_model, _point.Vapor);

    /// <summary>Share of the vessel's volume that liquid fills.</summary>
    public Ratio LiquidVolumeFraction => new(_point.LiquidVolumeFraction, RatioUnit.DecimalFraction);

    /// <summary>Whether two states are the same of the same fluid.</summary>
    /// <param name="other">The other.</param>
    public bool Equals(ClosedVesselState other) => Fluid.Same(_model, other._model) && _point.Equals(other._point);

    /// <inheritdoc/>
    public override int GetHashCode() => _point.GetHashCode();

    /// <summary>The bulk state with units, culture-invariant.</summary>
    public override string ToString() => Bulk.ToString();
}
