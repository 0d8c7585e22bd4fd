using System;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using Xunit;
using Twin = Refrigerant.Recovery.CoolProp.Tests.StandIn.Twin;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>Every member of the port on a pure fluid, against the stand-in's closed form.</summary>
[Collection("native")]
public sealed class PureFluidTests
{
    private const double Tight = 1e-9;

    private static PropertyModel Model => CoolPropFluid.Load("R901", StandIn.Library).Model;

    [StandInFact]
    public void Identity_and_limits()
    {
        Fluid fluid = CoolPropFluid.Load("R901", StandIn.Library);
        Assert.Equal("R-901", fluid.Designation);
        Assert.Equal(0.1, fluid.Model.MolarMass, 12);
        Assert.Equal(400, fluid.CriticalTemperature.Kelvins, 12);
        Assert.Equal(Twin.R901.Pressure(400), fluid.CriticalPressure.Pascals, 1e-6);
        Assert.Equal(450, fluid.Model.CriticalDensity, 12);
        Assert.Equal(200, fluid.Model.Range.MinimumTemperature);
        Assert.Equal(600, fluid.Model.Range.MaximumTemperature);
        Assert.Equal(5e7, fluid.Model.Range.MaximumPressure);
        Assert.Equal(400, fluid.Model.Range.MaximumSaturationTemperature);
        Assert.Equal("CoolProp 0.0-standin, equation of state Nobody-2000", fluid.Model.Source);
        Assert.Equal("R-901", Assert.Single(fluid.Composition).Designation);
        Assert.False(fluid.IsBlend);
        Assert.Equal(ModelQuality.Published, fluid.Quality);
    }

    [StandInFact]
    public void Saturation_by_temperature_and_by_pressure()
    {
        foreach (double t in new[] { 200.0, 250, 273.15, 320, 399.9 })
        {
            SaturationPoint point = Model.SaturationAtTemperature(t);
            double p = Twin.R901.Pressure(t);
            Matches(point.Bubble, Phase.Liquid, t, p, Twin.R901.SaturatedLiquidDensity(t), Twin.R901.LiquidEnthalpy(t), Twin.R901.LiquidEntropy(t), 0);
            Matches(point.Dew, Phase.Vapor, t, p, Twin.R901.GasDensity(t, p), Twin.R901.GasEnthalpy(t), Twin.R901.GasEntropy(t, p), 1);
            Close(t, Model.SaturationAtPressure(p).Dew.Temperature);
        }
    }

    [StandInFact]
    public void The_reference_state_is_that_of_the_library()
    {
        StatePoint liquid = Model.SaturationAtTemperature(273.15).Bubble;
        Close(200e3, liquid.Enthalpy);
        Close(1e3, liquid.Entropy);
    }

    [StandInFact]
    public void A_curve_that_begins_at_0_C_but_for_rounding_has_its_reference_there()
    {
        PropertyModel model = CoolPropFluid.Load("R907", StandIn.Library).Model;
        Assert.True(model.Range.MinimumTemperature > 273.15);
        StatePoint liquid = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble;
        Close(200e3, liquid.Enthalpy);
        Close(1e3, liquid.Entropy);
    }

    [StandInFact]
    public void A_fluid_that_is_no_liquid_at_0_C_counts_from_its_normal_boiling_point()
    {
        StatePoint liquid = CoolPropFluid.Load("R903", StandIn.Library).Model.SaturationAtPressure(101325).Bubble;
        Assert.True(liquid.Temperature < 230);
        Assert.Equal(0, liquid.Enthalpy, 1e-5);
        Assert.Equal(0, liquid.Entropy, 1e-8);
    }

    [StandInFact]
    public void States_at_temperature_and_pressure()
    {
        Matches(Model.StateAt(300, 5e6), Phase.Liquid, 300, 5e6, Twin.R901.LiquidDensity(300, 5e6), Twin.R901.LiquidEnthalpy(300), Twin.R901.LiquidEntropy(300), 0);
        Matches(Model.StateAt(300, 1e4), Phase.Vapor, 300, 1e4, Twin.R901.GasDensity(300, 1e4), Twin.R901.GasEnthalpy(300), Twin.R901.GasEntropy(300, 1e4), 1);
        Assert.Equal(Phase.Supercritical, Model.StateAt(450, 1e7).Phase);
    }

    [StandInFact]
    public void On_the_saturation_curve_the_side_follows_the_pressure()
    {
        double p = Model.SaturationAtTemperature(300).Bubble.Pressure;
        Assert.Equal(Phase.Liquid, Model.StateAt(300, p).Phase);
        Assert.Equal(Phase.Liquid, Model.StateAt(300, p * (1 + 1e-8)).Phase);
        StatePoint vapor = Model.StateAt(300, p * (1 - 1e-8));
        Assert.Equal(Phase.Vapor, vapor.Phase);
        Close(Twin.R901.GasDensity(300, p * (1 - 1e-8)), vapor.Density);
    }

    [StandInFact]
    public void A_density_between_the_phases_is_not_believed()
    {
        // The stand-in's R906 gives 500 kg/m³ for every state at temperature and pressure, as a solver does that stops at the wrong root.
        PropertyModel model = CoolPropFluid.Load("R906", StandIn.Library).Model;
        Close(Twin.R901.LiquidDensity(300, 5e6), model.StateAt(300, 5e6).Density);
        Close(Twin.R901.GasDensity(300, 1e4), model.StateAt(300, 1e4).Density);
    }

    [StandInFact]
    public void A_closed_vessel_by_temperature()
    {
        double p = Twin.R901.Pressure(300);
        double vapor = Twin.R901.GasDensity(300, p);
        double liquid = Twin.R901.SaturatedLiquidDensity(300);
        VesselPoint two = Model.VesselAtTemperature(300, 400);
        double quality = ((1 / 400.0) - (1 / liquid)) / ((1 / vapor) - (1 / liquid));
        double enthalpy = Twin.R901.LiquidEnthalpy(300) + (quality * (Twin.R901.GasEnthalpy(300) - Twin.R901.LiquidEnthalpy(300)));
        double entropy = Twin.R901.LiquidEntropy(300) + (quality * (Twin.R901.GasEntropy(300, p) - Twin.R901.LiquidEntropy(300)));
        Matches(two.Bulk, Phase.TwoPhase, 300, p, 400, enthalpy, entropy, quality);
        Close(liquid, two.Liquid.Density);
        Close(vapor, two.Vapor.Density);
        Close((400 - vapor) / (liquid - vapor), two.LiquidVolumeFraction);

        VesselPoint gas = Model.VesselAtTemperature(300, 1);
        Assert.Equal(Phase.Undefined, gas.Liquid.Phase);
        Close(StandIn.R * 300 / 0.1, gas.Vapor.Pressure);

        VesselPoint full = Model.VesselAtTemperature(300, liquid + 5);
        Assert.Equal(1, full.LiquidVolumeFraction);
        Assert.Equal(p + (5 / StandIn.LiquidCompression), full.Bulk.Pressure, p * 1e-6);
    }

    [StandInFact]
    public void A_closed_vessel_by_energy_returns_the_temperature_it_was_made_at()
    {
        foreach ((double t, double density) in new[] { (300.0, 400.0), (250, 900), (320, 2), (450, 50), (300, 948) })
        {
            VesselPoint made = Model.VesselAtTemperature(t, density);
            VesselPoint found = Model.VesselAtEnergy(density, made.Bulk.InternalEnergy);
            Assert.Equal(t, found.Bulk.Temperature, 1e-6);
            Assert.Equal(made.Bulk.Phase, found.Bulk.Phase);
        }
    }

    [StandInFact]
    public void States_of_an_enthalpy_or_entropy_return_the_temperature_they_were_made_at()
    {
        foreach ((double t, double p) in new[] { (300.0, 5e6), (300, 1e4), (420, 2e6) })
        {
            StatePoint made = Model.StateAt(t, p);
            Assert.Equal(t, Model.StateAtEnthalpy(p, made.Enthalpy).Temperature, 1e-6);
            Assert.Equal(t, Model.StateAtEntropy(p, made.Entropy).Temperature, 1e-6);
        }

        double pressure = Twin.R901.Pressure(300);
        StatePoint wet = Model.StateAtEnthalpy(pressure, (Twin.R901.LiquidEnthalpy(300) + Twin.R901.GasEnthalpy(300)) / 2);
        Assert.Equal(Phase.TwoPhase, wet.Phase);
        Assert.Equal(0.5, wet.VaporFraction, 1e-9);
    }

    [StandInFact]
    public void What_the_engine_refuses_below_its_saturation_curve_is_solved_over_temperature()
    {
        double p = Twin.R901.Pressure(200) / 10;
        StatePoint made = Model.StateAt(290, p);
        Assert.Equal(290, Model.StateAtEnthalpy(p, made.Enthalpy).Temperature, 1e-6);
        Assert.Equal(290, Model.StateAtEntropy(p, made.Entropy).Temperature, 1e-6);
    }

    [StandInFact]
    public void Derivatives_of_a_saturated_vapor_and_of_a_liquid()
    {
        double p = Twin.R901.Pressure(300);
        StateDerivatives vapor = Model.DerivativesAt(300, Twin.R901.GasDensity(300, p));
        Close(900 - (StandIn.R / 0.1), vapor.IsochoricHeatCapacity);
        Close(900, vapor.IsobaricHeatCapacity);
        Close(150, vapor.SpeedOfSound);
        Close(StandIn.R * 300 / 0.1, vapor.PressureByDensity);
        Close(p / 300, vapor.PressureByTemperature);
        StateDerivatives liquid = Model.DerivativesAt(300, 950);
        Close(1 / StandIn.LiquidCompression, liquid.PressureByDensity);
        Close((p * 2500 / 9e4) + (StandIn.LiquidDensitySlope / StandIn.LiquidCompression), liquid.PressureByTemperature);
    }

    [StandInFact]
    public void Between_the_phases_derivatives_are_refused() =>
        Assert.Throws<PropertyRangeException>(() => Model.DerivativesAt(300, 300));

    [StandInFact]
    public void Viscosity_where_the_engine_has_it_and_its_text_where_not()
    {
        SaturationViscosity viscosity = Model.ViscosityAtSaturation(300);
        Close(2e-4, viscosity.Liquid);
        Close(1.2e-5, viscosity.Vapor);
        Assert.False(viscosity.IsEstimate);
        CoolPropException error = Assert.Throws<CoolPropException>(
            () => CoolPropFluid.Load("R904", StandIn.Library).Model.ViscosityAtSaturation(300));
        Assert.Contains("Viscosity model is not available", error.NativeMessage, StringComparison.Ordinal);
    }

    [StandInFact]
    public void A_huge_number_never_gets_out()
    {
        CoolPropException error = Assert.Throws<CoolPropException>(() => CoolPropFluid.Load("R905", StandIn.Library));
        Assert.Contains("Hmass", error.Operation, StringComparison.Ordinal);
    }

    [StandInFact]
    public void Input_outside_the_range_is_refused_before_the_engine_sees_it()
    {
        PropertyModel model = Model;
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1, 1e9 })
        {
            Assert.Throws<PropertyRangeException>(() => model.SaturationAtTemperature(bad));
            Assert.Throws<PropertyRangeException>(() => model.SaturationAtPressure(bad));
            Assert.Throws<PropertyRangeException>(() => model.StateAt(bad, 1e5));
            Assert.Throws<PropertyRangeException>(() => model.StateAt(300, bad));
            Assert.Throws<PropertyRangeException>(() => model.VesselAtTemperature(bad, 100));
            Assert.Throws<PropertyRangeException>(() => model.VesselAtTemperature(300, bad));
            Assert.Throws<PropertyRangeException>(() => model.VesselAtEnergy(bad, 3e5));
            Assert.Throws<PropertyRangeException>(() => model.StateAtEnthalpy(bad, 3e5));
            Assert.Throws<PropertyRangeException>(() => model.StateAtEntropy(bad, 1e3));
            Assert.Throws<PropertyRangeException>(() => model.DerivativesAt(300, bad));
            Assert.Throws<PropertyRangeException>(() => model.ViscosityAtSaturation(bad));
        }

        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, 1e12, -1e12 })
        {
            Assert.Throws<PropertyRangeException>(() => model.VesselAtEnergy(100, bad));
            Assert.Throws<PropertyRangeException>(() => model.StateAtEnthalpy(1e5, bad));
            Assert.Throws<PropertyRangeException>(() => model.StateAtEntropy(1e5, bad));
        }

        Assert.Throws<PropertyRangeException>(() => model.VesselAtTemperature(300, 2000));
    }

    [StandInFact]
    public void It_is_a_fluid_like_any_other()
    {
        Fluid fluid = CoolPropFluid.Load("R-901", StandIn.Library);
        Assert.Equal("R-901", fluid.Designation);
        SaturationState state = fluid.SaturationAt(Temperature.FromDegreesCelsius(0));
        Assert.Equal(300, state.Bubble.Pressure.Kilopascals, 1e-6);
        Assert.Equal(200, state.LatentHeat.KilojoulesPerKilogram, 1e-6);
        Assert.Equal(900, fluid.StateAt(Temperature.FromKelvins(300), Pressure.FromKilopascals(10)).IsobaricHeatCapacity.JoulesPerKilogramKelvin, 1e-6);
    }

    private static void Matches(in StatePoint point, Phase phase, double t, double p, double density, double h, double s, double quality)
    {
        Assert.Equal(phase, point.Phase);
        Close(t, point.Temperature);
        Close(p, point.Pressure);
        Close(density, point.Density);
        Close(h, point.Enthalpy);
        Close(s, point.Entropy);
        Assert.Equal(quality, point.VaporFraction, Tight);
    }

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, Math.Abs(expected) * Tight);
}
