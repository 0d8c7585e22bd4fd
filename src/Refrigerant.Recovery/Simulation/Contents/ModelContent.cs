using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation.Contents;

/// <summary>A blend of an engine that has no more to offer than its port: solved from scratch each time.</summary>
internal sealed class ModelContent(PropertyModel model) : Content(model, 1)
{
    private VesselPoint _vessel;

    public override VesselPoint ToVesselPoint() => _vessel;

    protected override bool Find(ReadOnlySpan<double> masses, double mass, double volume, double energy)
    {
        _vessel = Model.VesselAtEnergy(mass / volume, energy / mass);
        StatePoint bulk = _vessel.Bulk;
        bool hasLiquid = _vessel.Liquid.Phase != Phase.Undefined;
        bool hasVapor = _vessel.Vapor.Phase != Phase.Undefined;
        StatePoint vapor = hasVapor ? _vessel.Vapor : bulk;
        StatePoint liquid = hasLiquid ? _vessel.Liquid : bulk;
        Temperature = bulk.Temperature;
        Pressure = bulk.Pressure;
        VaporFraction = !hasLiquid ? 1 : !hasVapor ? 0 : bulk.VaporFraction;
        VaporDensity = vapor.Density;
        VaporEnthalpy = vapor.Enthalpy;
        LiquidEnthalpy = liquid.Enthalpy;
        LiquidVolumeFraction = _vessel.LiquidVolumeFraction;
        LiquidMargin = hasLiquid ? 1 - VaporFraction : Dryness(bulk);
        return true;
    }

    /// <summary>Below zero by how much the vapor is thinner than at its dew point.</summary>
    private double Dryness(in StatePoint bulk) => bulk.Temperature >= Model.Range.MaximumSaturationTemperature
        ? -1
        : Math.Min(0, (bulk.Density / Model.SaturationAtTemperature(bulk.Temperature).Dew.Density) - 1);
}
