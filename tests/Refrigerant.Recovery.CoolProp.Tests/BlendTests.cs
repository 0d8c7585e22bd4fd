using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Xunit;
using Twin = Refrigerant.Recovery.CoolProp.Tests.StandIn.Twin;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>Blends, whose flashes beyond those of CoolProp are solved in the package, against Raoult's law in closed form.</summary>
[Collection("native")]
public sealed class BlendTests
{
    private const double Tight = 1e-8;

    private static readonly double[] Moles = [0.3, 0.7];

    private static readonly Twin[] Parts = [Twin.R901, Twin.R902];

    private static readonly double[] Masses = Mass(Moles);

    private static Fluid Blend => CoolPropFluid.FromMoleFractions("blend", [new("R901", Moles[0]), new("R-902", Moles[1])], StandIn.Library);

    [StandInFact]
    public void Composition_and_limits()
    {
        Fluid blend = Blend;
        Assert.Equal("blend", blend.Designation);
        Assert.Equal(["R-901", "R-902"], blend.Composition.Select(component => component.Designation));
        Assert.Equal(Moles, blend.Composition.Select(component => component.MoleFraction));
        Assert.Equal(Masses[0], blend.Composition[0].MassFraction, 1e-12);
        Assert.Equal(0.3 * 0.1 + 0.7 * 0.05, blend.Model.MolarMass, 1e-12);
        Assert.Equal(200, blend.Model.Range.MinimumTemperature);

        // The stand-in finds no single critical point of a blend and no saturation above 0.975 of the reducing temperature.
        double reducing = (0.3 * 400) + (0.7 * 360);
        Assert.Equal(reducing, blend.CriticalTemperature.Kelvins, 1e-9);
        Assert.Equal(450, blend.Model.CriticalDensity, 1e-9);
        Assert.InRange(blend.Model.Range.MaximumSaturationTemperature, reducing * 0.96, reducing * 0.975);
    }

    [StandInFact]
    public void Mass_and_mole_fractions_make_the_same_blend()
    {
        Fluid byMass = CoolPropFluid.FromMassFractions("blend", [new("R901", Masses[0]), new("R902", Masses[1])], StandIn.Library);
        Assert.Equal(Moles[0], byMass.Composition[0].MoleFraction, 1e-12);
        Close(Blend.Model.SaturationAtTemperature(300).Dew.Pressure, byMass.Model.SaturationAtTemperature(300).Dew.Pressure);
        Fluid same = CoolPropFluid.LoadEquivalent(byMass, StandIn.Library);
        Close(byMass.Model.SaturationAtTemperature(300).Dew.Pressure, same.Model.SaturationAtTemperature(300).Dew.Pressure);
    }

    [StandInFact]
    public void A_designation_loads_the_mixture_and_coolprops_own_name_the_pseudo_pure_fluid()
    {
        Assert.Equal(2, CoolPropFluid.Load("R-499", StandIn.Library).Composition.Count);
        Assert.Equal(2, CoolPropFluid.Load("R499.mix", StandIn.Library).Composition.Count);
        Assert.Equal("R-499", CoolPropFluid.Load("R499.mix", StandIn.Library).Designation);
        Assert.False(CoolPropFluid.Load("R499", StandIn.Library).IsBlend);
    }

    [StandInFact]
    public void Bubble_and_dew()
    {
        SaturationPoint point = Blend.Model.SaturationAtTemperature(300);
        Close(BubblePressure(300), point.Bubble.Pressure);
        Close(DewPressure(300), point.Dew.Pressure);
        Close(LiquidDensity(Masses, 300), point.Bubble.Density);
        Close(LiquidEnthalpy(Masses, 300), point.Bubble.Enthalpy);
        Close(GasEnthalpy(Masses, 300), point.Dew.Enthalpy);
        Close(LiquidEntropy(Masses, 300), point.Bubble.Entropy);
        SaturationPoint under = Blend.Model.SaturationAtPressure(BubblePressure(300));
        Assert.Equal(300, under.Bubble.Temperature, 1e-6);
        Assert.True(under.Dew.Temperature > 300);
    }

    [StandInFact]
    public void States_at_temperature_and_pressure_on_both_sides_and_between()
    {
        PropertyModel model = Blend.Model;
        StatePoint liquid = model.StateAt(300, 4e6);
        Assert.Equal(Phase.Liquid, liquid.Phase);
        Close(LiquidDensity(Masses, 300) + (StandIn.LiquidCompression * (4e6 - BubblePressure(300))), liquid.Density);
        StatePoint vapor = model.StateAt(300, 1e5);
        Assert.Equal(Phase.Vapor, vapor.Phase);
        Close(1e5 * 0.065 / (StandIn.R * 300), vapor.Density);

        Split split = SplitAt(300, 0.4);
        StatePoint wet = model.StateAt(300, split.Pressure);
        Assert.Equal(Phase.TwoPhase, wet.Phase);
        Close(split.Quality, wet.VaporFraction);
        Close(split.Density, wet.Density);
        Close(split.Enthalpy, wet.Enthalpy);
        Assert.Equal(Phase.Supercritical, model.StateAt(420, 1e6).Phase);
    }

    [StandInFact]
    public void A_closed_vessel_by_temperature_has_phases_of_their_own_composition()
    {
        Split split = SplitAt(300, 0.4);
        VesselPoint vessel = Blend.Model.VesselAtTemperature(300, split.Density);
        Close(split.Pressure, vessel.Bulk.Pressure);
        Close(split.Quality, vessel.Bulk.VaporFraction);
        Close(split.Enthalpy, vessel.Bulk.Enthalpy);
        Close(LiquidDensity(split.LiquidMasses, 300), vessel.Liquid.Density);
        Close(LiquidEnthalpy(split.LiquidMasses, 300), vessel.Liquid.Enthalpy);
        Close(GasEnthalpy(split.VaporMasses, 300), vessel.Vapor.Enthalpy);
        Close(LiquidEntropy(split.LiquidMasses, 300), vessel.Liquid.Entropy);
        Assert.Equal(Phase.Vapor, Blend.Model.VesselAtTemperature(300, 1).Bulk.Phase);
        Assert.Equal(1, Blend.Model.VesselAtTemperature(300, LiquidDensity(Masses, 300) + 3).LiquidVolumeFraction);
    }

    [StandInFact]
    public void Energy_enthalpy_and_entropy_return_the_temperature_they_were_made_at()
    {
        PropertyModel model = Blend.Model;
        foreach ((double t, double density) in new[] { (300.0, 400.0), (250, 870), (320, 2), (410, 20) })
        {
            VesselPoint made = model.VesselAtTemperature(t, density);
            Assert.Equal(t, model.VesselAtEnergy(density, made.Bulk.InternalEnergy).Bulk.Temperature, 1e-6);
        }

        foreach ((double t, double p) in new[] { (300.0, 4e6), (300, 1e5), (420, 1e6), (300, SplitAt(300, 0.4).Pressure), (220, 500) })
        {
            StatePoint made = model.StateAt(t, p);
            Assert.Equal(t, model.StateAtEnthalpy(p, made.Enthalpy).Temperature, 1e-6);
            Assert.Equal(t, model.StateAtEntropy(p, made.Entropy).Temperature, 1e-6);
        }
    }

    [StandInFact]
    public void Viscosity_of_a_blend_is_an_estimate() => Assert.True(Blend.Model.ViscosityAtSaturation(300).IsEstimate);

    [StandInFact]
    public void What_cannot_be_a_mixture_is_an_argument_error()
    {
        CoolPropLibrary library = StandIn.Library;
        Assert.Throws<ArgumentException>(() => CoolPropFluid.FromMoleFractions("b", [new("R901", 1)], library));
        Assert.Throws<ArgumentException>(() => CoolPropFluid.FromMoleFractions("b", [new("R901", 0.5), new("R902", 0.4)], library));
        Assert.Throws<ArgumentException>(() => CoolPropFluid.FromMoleFractions("b", [new("R901", 0.5), new("R-901", 0.5)], library));
        Assert.Throws<ArgumentException>(() => CoolPropFluid.FromMoleFractions(" ", [new("R901", 0.5), new("R902", 0.5)], library));
        Assert.Throws<ArgumentException>(() => CoolPropFluid.Load("R901&R902", library));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => CoolPropFluid.FromMassFractions("b", [new("R901", double.NaN), new("R902", 0.5)], library));
        Assert.Throws<ArgumentNullException>(() => CoolPropFluid.FromMassFractions("b", (IReadOnlyList<KeyValuePair<string, double>>)null!, library));
        Assert.Throws<ArgumentNullException>(() => CoolPropFluid.LoadEquivalent(null!, library));
    }

    private static double[] Mass(double[] moles)
    {
        double sum = moles.Zip(Parts, (x, part) => x * part.M).Sum();
        return [.. moles.Zip(Parts, (x, part) => x * part.M / sum)];
    }

    private static double Weigh(double[] masses, Func<Twin, double> property) => masses.Zip(Parts, (w, part) => w * property(part)).Sum();

    private static double BubblePressure(double t) => Moles.Zip(Parts, (x, part) => x * part.Pressure(t)).Sum();

    private static double DewPressure(double t) => 1 / Moles.Zip(Parts, (y, part) => y / part.Pressure(t)).Sum();

    private static double LiquidDensity(double[] masses, double t) => 1 / Weigh(masses, part => 1 / part.SaturatedLiquidDensity(t));

    private static double LiquidEnthalpy(double[] masses, double t) => Weigh(masses, part => part.LiquidEnthalpy(t));

    private static double GasEnthalpy(double[] masses, double t) => Weigh(masses, part => part.GasEnthalpy(t));

    private static double LiquidEntropy(double[] masses, double t) => Weigh(masses, part => part.LiquidEntropy(t));

    /// <summary>Equilibrium of the blend at a molar vapor fraction: for two components Rachford and Rice's equation is linear in the liquid's composition.</summary>
    private static Split SplitAt(double t, double fraction)
    {
        double p1 = Parts[0].Pressure(t);
        double p2 = Parts[1].Pressure(t);

        // z = (1 − f)·x + f·x·p1/p with p = x·p1 + (1 − x)·p2 is a quadratic in x.
        double a = (1 - fraction) * (p1 - p2);
        double b = ((1 - fraction) * p2) + (fraction * p1) - (Moles[0] * (p1 - p2));
        double c = -Moles[0] * p2;
        double root = Math.Sqrt((b * b) - (4 * a * c));
        double x = new[] { (-b + root) / (2 * a), (-b - root) / (2 * a) }.Single(value => value is > 0 and < 1);
        double p = (x * p1) + ((1 - x) * p2);
        double y = x * p1 / p;
        double[] liquid = Mass([x, 1 - x]);
        double[] vapor = Mass([y, 1 - y]);
        double liquidMass = (1 - fraction) * ((x * Parts[0].M) + ((1 - x) * Parts[1].M));
        double vaporMolarMass = (y * Parts[0].M) + ((1 - y) * Parts[1].M);
        double quality = fraction * vaporMolarMass / (liquidMass + (fraction * vaporMolarMass));
        double volume = ((1 - quality) / LiquidDensity(liquid, t)) + (quality * StandIn.R * t / (p * vaporMolarMass));
        double enthalpy = ((1 - quality) * LiquidEnthalpy(liquid, t)) + (quality * GasEnthalpy(vapor, t));
        return new Split(p, quality, 1 / volume, enthalpy, liquid, vapor);
    }

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, Math.Abs(expected) * Tight);

    private sealed record Split(double Pressure, double Quality, double Density, double Enthalpy, double[] LiquidMasses, double[] VaporMasses);
}
