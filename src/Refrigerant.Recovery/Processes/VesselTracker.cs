using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>The state of a closed vessel while it is simulated: density and internal energy in, what the balances need out.</summary>
internal sealed class VesselTracker
{
    private readonly PropertyModel _model;

    public VesselTracker(PropertyModel model) => _model = model;

    public double Temperature { get; private set; }

    public double Pressure { get; private set; }

    /// <summary>Vapor mass fraction, 1 where there is no liquid.</summary>
    public double VaporFraction { get; private set; }

    /// <summary>Density of what a vapor port draws, kg/m³.</summary>
    public double VaporDensity { get; private set; }

    /// <summary>Enthalpy of what a vapor port draws, J/kg.</summary>
    public double VaporEnthalpy { get; private set; }

    /// <summary>Share of the volume that liquid fills.</summary>
    public double LiquidVolumeFraction { get; private set; }

    /// <summary>Density of the liquid, zero where there is none.</summary>
    public double LiquidDensity { get; private set; }

    /// <summary>Enthalpy of the liquid, zero where there is none.</summary>
    public double LiquidEnthalpy { get; private set; }

    /// <summary>Above zero while there is liquid, below zero once the vapor is superheated: it falls through zero with the last drop.</summary>
    public double LiquidMargin { get; private set; }

    /// <summary>Solves the state; false where it is outside the range of the equation of state.</summary>
    public bool Solve(double density, double energy)
    {
        if (!(density > 0))
        {
            return false;
        }

        try
        {
            VesselPoint vessel = _model.VesselAtEnergy(density, energy);
            StatePoint bulk = vessel.Bulk;
            Temperature = bulk.Temperature;
            Pressure = bulk.Pressure;
            bool hasLiquid = vessel.Liquid.Phase != Phase.Undefined;
            StatePoint vapor = vessel.Vapor.Phase != Phase.Undefined ? vessel.Vapor : bulk;
            VaporDensity = vapor.Density;
            VaporEnthalpy = vapor.Enthalpy;
            VaporFraction = hasLiquid ? bulk.VaporFraction : 1;
            LiquidVolumeFraction = vessel.LiquidVolumeFraction;
            LiquidDensity = hasLiquid ? vessel.Liquid.Density : 0;
            LiquidEnthalpy = hasLiquid ? vessel.Liquid.Enthalpy : 0;
            LiquidMargin = hasLiquid ? 1 - bulk.VaporFraction : -Superheat(bulk);
            return true;
        }
        catch (PropertyRangeException)
        {
            return false;
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }

    /// <summary>How far the density is below that of saturated vapor at the same temperature, as a fraction.</summary>
    private double Superheat(in StatePoint bulk) => bulk.Temperature >= _model.Range.MaximumSaturationTemperature
        ? 1
        : 1 - (bulk.Density / Math.Max(bulk.Density, _model.SaturationAtTemperature(bulk.Temperature).Dew.Density));
}
