using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Each column against the property model, heat capacities and what vapor takes as derivatives of the energy of a closed vessel.</summary>
public class SaturationTableTests
{
    [Theory]
    [InlineData("R-134a", 265.3, 150)]
    [InlineData("R-134a", 301, 700)]
    [InlineData("R-32", 280, 300)]
    [InlineData("R-717", 275.9, 200)]
    public void A_vessel_warms_and_cools_by_the_table(string fluid, double kelvins, double density)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        new SaturationTable(model).At(kelvins, out SaturationValues at);
        VesselPoint vessel = model.VesselAtTemperature(kelvins, density);
        double vapor = vessel.Bulk.VaporFraction;

        // u of the vessel: du/dT at constant mass and volume.
        double capacity = (Energy(kelvins + 0.1, density) - Energy(kelvins - 0.1, density)) / 0.2 / density;
        Assert.Equal(capacity, ((1 - vapor) * at.LiquidHeatCapacity) + (vapor * at.VaporHeatCapacity), 5e-3 * capacity);

        // C·dT = −(h″ − ∂U/∂m)·dm: what a kilogram of vapor takes beyond what the mass takes with it.
        double takes = vessel.Vapor.Enthalpy - ((Energy(kelvins, 1.001 * density) - Energy(kelvins, 0.999 * density)) / (0.002 * density));
        Assert.Equal(takes, at.VaporTakes, 2e-3 * takes);
        Assert.Equal(1 / vessel.Liquid.Density, at.LiquidVolume, 1e-3 / vessel.Liquid.Density);
        double slope = Math.Log(model.SaturationAtTemperature(kelvins + 0.5).Dew.Pressure / model.SaturationAtTemperature(kelvins - 0.5).Dew.Pressure);
        Assert.Equal(slope, at.PressureSlope, 0.015 * slope);

        // Internal energy a unit of volume.
        double Energy(double t, double rho) => rho * model.VesselAtTemperature(t, rho).Bulk.InternalEnergy;
    }

    [Theory]
    [InlineData("R-134a", 102.03e-3)]
    [InlineData("R-717", 17.0305e-3)]
    [InlineData("R-744", 44.0095e-3)]
    public void Vapor_is_that_of_the_property_model(string fluid, double molarMass)
    {
        const double Kelvins = 281;
        PropertyModel model = Fluid.Get(fluid).Model;
        var table = new SaturationTable(model);
        table.At(Kelvins, out SaturationValues at);

        // R of CODATA 2018 over the molar mass.
        Assert.Equal(8.314462618 / molarMass, table.GasConstant, 1e-3 * table.GasConstant);
        SaturationPoint both = model.SaturationAtTemperature(Kelvins);
        double z = both.Dew.Pressure / (both.Dew.Density * table.GasConstant * Kelvins);
        Assert.Equal(z, at.Compressibility, 1e-3);
        Assert.Equal(1, at.ThinCompressibility);
        double density = 0.5 * both.Dew.Density;
        double capacity = (model.VesselAtTemperature(Kelvins + 0.5, density).Bulk.InternalEnergy - model.VesselAtTemperature(Kelvins - 0.5, density).Bulk.InternalEnergy);
        Assert.Equal(capacity, at.GasHeatCapacity, 5e-3 * capacity);
        Assert.Equal(model.ViscosityAtSaturation(290).Vapor, table.VaporViscosity);
        Assert.True(table.IsPure);
        Assert.Null(table.Glide);
    }

    /// <summary>From 1 K above the equation's lowest temperature, 180 K at least, to 3 K below the end of the curves, 345 K at most, in steps of 2 K; beyond its ends it is that of the end.</summary>
    [Theory]
    [InlineData("R-134a", 180, 344)]
    [InlineData("R-744", 217.592, 299.592)]
    public void Its_ends_hold_beyond_them(string fluid, double lowest, double highest)
    {
        var table = new SaturationTable(Fluid.Get(fluid).Model);
        Assert.Equal(lowest, table.Lowest, 0.01);
        Assert.Equal(highest, table.Highest, 0.01);
        table.At(table.Lowest, out SaturationValues low);
        table.At(table.Lowest - 50, out SaturationValues below);
        table.At(table.Highest, out SaturationValues high);
        table.At(table.Highest + 50, out SaturationValues above);
        Assert.Equal(low, below);
        Assert.Equal(high.Pressure, above.Pressure, 1e-9 * high.Pressure);
        Assert.Equal(high.VaporDensity, above.VaporDensity, 1e-9 * high.VaporDensity);
        Assert.Equal(high.GasHeatCapacity, above.GasHeatCapacity, 1e-9 * high.GasHeatCapacity);
        Assert.Equal(low.Pressure, table.DewPressure(0));
        Assert.Equal(high.Pressure, table.BubblePressure(1000), 1e-9 * high.Pressure);
        Assert.Equal(table.Lowest, table.DewTemperature(0));
        Assert.Equal(table.Lowest, table.DewTemperature(-1e5));
        Assert.Equal(table.Highest, table.BubbleTemperature(1e9));
        Assert.Equal(table.Highest, table.DewTemperature(high.Pressure), 1e-6);
        Assert.Equal(table.Lowest + 1, table.DewTemperature(table.DewPressure(table.Lowest + 1)), 1e-6);
        Assert.Equal(table.Highest - 1, table.DewTemperature(table.DewPressure(table.Highest - 1)), 1e-6);
    }

    /// <summary>R-407C: bubble above dew, temperatures the other way round, and its liquid as charged is in the table of what is left of it.</summary>
    [Fact]
    public void A_blend_has_both_curves()
    {
        PropertyModel model = Fluid.Get("R-407C").Model;
        var table = new SaturationTable(model);
        SaturationPoint both = model.SaturationAtTemperature(283);
        Assert.False(table.IsPure);
        Assert.NotNull(table.Glide);
        Assert.Equal(both.Dew.Pressure, table.DewPressure(283), 1e-3 * both.Dew.Pressure);
        Assert.Equal(both.Bubble.Pressure, table.BubblePressure(283), 1e-3 * both.Bubble.Pressure);
        Assert.Equal(model.SaturationAtPressure(6e5).Dew.Temperature, table.DewTemperature(6e5), 0.02);
        Assert.Equal(model.SaturationAtPressure(6e5).Bubble.Temperature, table.BubbleTemperature(6e5), 0.02);

        // All of the charge left, q = 1: the vapor in equilibrium with the liquid as charged is at the bubble pressure.
        table.At(283, 1, out SaturationValues fresh);
        Assert.Equal(both.Bubble.Pressure, fresh.Pressure, 5e-3 * both.Bubble.Pressure);
        Assert.Equal(1 / both.Bubble.Density, fresh.LiquidVolume, 5e-3 / both.Bubble.Density);
        table.At(283, out SaturationValues fixedly);
        Assert.Equal(fixedly.GasHeatCapacity, fresh.GasHeatCapacity);
    }
}
