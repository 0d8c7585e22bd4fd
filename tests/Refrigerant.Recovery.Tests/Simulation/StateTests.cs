using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>What a snapshot of an appliance or a cylinder shows: sums over its parts, the part at the gauge, and gas beside the refrigerant.</summary>
public class StateTests
{
    private static readonly Appliance Oily = Setups.Appliance("R-134a", 6, 20, 20, 50) with
    {
        MetalMass = Mass.FromKilograms(10),
        Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster, RefrigerantFraction = Ratio.FromPercent(20) },
    };

    private static readonly Appliance Parts = Setups.Appliance("R-134a", 6, 30, 20, 50) with
    {
        Sections =
        [
            new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(0.1) },
            new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(5.9) },
        ],
        VaporPort = "b",
    };

    [Fact]
    public void Masses_are_sums_and_gauges_are_at_the_port()
    {
        ApplianceState state = ApplianceState.Initial(Parts);
        StatePoint dew = Parts.Fluid.Model.SaturationAtTemperature(293.15).Dew, bubble = Parts.Fluid.Model.SaturationAtTemperature(293.15).Bubble;
        double liquid = (5.9 - (0.02 * dew.Density)) / (1 - (dew.Density / bubble.Density));
        Assert.Equal(6, state.Mass.Kilograms, 1e-9);
        Assert.Equal(liquid, state.LiquidMass.Kilograms, 1e-6);
        Assert.Equal(6 - liquid, state.VaporMass.Kilograms, 1e-6);
        Assert.Equal(0, state.DissolvedMass.Kilograms);
        Assert.Equal(dew.Pressure, state.Pressure.Pascals, 1);
        Assert.Equal(dew.Pressure, state.HighestPressure.Pascals, 1);
        Assert.True(state.HasLiquid);
        Assert.Equal(["a", "b"], state.Sections.Select(section => section.Name));
        Assert.Equal(0.1, state.Sections[0].Mass.Kilograms, 1e-12);
        Assert.Equal(0, state.Sections[0].LiquidMass.Kilograms, 1e-12);
        Assert.Equal(liquid, state.Sections[1].LiquidMass.Kilograms, 1e-6);
        Assert.True(state.Sections[0].Pressure.Pascals < 0.6 * dew.Pressure);
        ApplianceState other = ApplianceState.Initial(Parts with { VaporPort = "a" });
        Assert.Equal(state.Sections[0].Pressure.Pascals, other.Pressure.Pascals, 1e-6);
        Assert.Equal(dew.Pressure, other.HighestPressure.Pascals, 1);
        Assert.True(other.HasLiquid);
    }

    /// <summary>2 kg of oil with a fifth of refrigerant hold half a kilogram; it is in the charge, and neither liquid nor vapor.</summary>
    [Fact]
    public void What_oil_holds_is_in_the_mass_and_in_no_phase()
    {
        ApplianceState state = ApplianceState.Initial(Oily);
        Assert.Equal(0.5, state.DissolvedMass.Kilograms, 1e-12);
        Assert.Equal(6, state.Mass.Kilograms, 1e-12);
        Assert.Equal(5.5, state.LiquidMass.Kilograms + state.VaporMass.Kilograms, 1e-12);
        Assert.Equal(6, state.Sections.Single().Mass.Kilograms, 1e-12);
        Assert.Equal(20, state.OilTemperature.DegreesCelsius, 1e-9);
    }

    /// <summary>As measured: metal and oil at their temperature; in the oil what was told, or what it held at the start, but no more than half of all there is.</summary>
    [Fact]
    public void A_measured_state_is_what_was_measured()
    {
        ApplianceState told = ApplianceState.FromMeasured(Oily, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10), Temperature.FromDegreesCelsius(15), Mass.FromKilograms(0.3));
        Assert.Equal((3, 0.3), (Math.Round(told.Mass.Kilograms, 9), Math.Round(told.DissolvedMass.Kilograms, 9)));
        Assert.Equal(10, told.Temperature.DegreesCelsius, 1e-9);
        Assert.Equal(15, told.MetalTemperature.DegreesCelsius, 1e-9);
        Assert.Equal(15, told.DryMetalTemperature.DegreesCelsius, 1e-9);
        Assert.Equal(15, told.OilTemperature.DegreesCelsius, 1e-9);
        Assert.Equal(15, told.WaterTemperature.DegreesCelsius, 1e-9);
        Assert.Equal(Oily.Fluid.Model.SaturationAtTemperature(283.15).Dew.Pressure, told.Pressure.Pascals, 1);
        Assert.Equal(10, ApplianceState.FromMeasured(Oily, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10)).MetalTemperature.DegreesCelsius, 1e-9);
        Assert.Equal(0.5, ApplianceState.FromMeasured(Oily, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10)).DissolvedMass.Kilograms, 1e-12);
        Assert.Equal(0.1, ApplianceState.FromMeasured(Oily, Mass.FromKilograms(0.2), Temperature.FromDegreesCelsius(10)).DissolvedMass.Kilograms, 1e-12);
        Assert.Equal(0, ApplianceState.FromMeasured(Oily with { Oil = null }, Mass.FromKilograms(0.2), Temperature.FromDegreesCelsius(10)).DissolvedMass.Kilograms);
        Assert.Throws<ArgumentException>(() => ApplianceState.FromMeasured(Oily, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10), null, Mass.FromKilograms(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ApplianceState.FromMeasured(Oily, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10), null, Mass.FromKilograms(3.1)));
        ApplianceState parts = ApplianceState.FromMeasured(Parts, Mass.FromKilograms(3), Temperature.FromDegreesCelsius(10));
        Assert.Equal((0.05, 2.95), (Math.Round(parts.Sections[0].Mass.Kilograms, 9), Math.Round(parts.Sections[1].Mass.Kilograms, 9)));
    }

    /// <summary>Metal that liquid wets is as cold as it; once all is dry it is the dry metal that counts, and so it is for water where there is none.</summary>
    [Fact]
    public void Metal_is_that_which_liquid_wets_and_else_the_dry_one()
    {
        Appliance unit = Setups.Appliance("R-134a", 4, 20, 20, 20) with { MetalMass = Mass.FromKilograms(10) };
        var pull = new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(3) };
        ApplianceState wet = VaporRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), pull).Appliance;
        Assert.True(wet.HasLiquid);
        Assert.True(wet.MetalTemperature < wet.DryMetalTemperature);
        ApplianceState dry = VaporRecovery.Simulate(unit with { Charge = Mass.FromKilograms(0.4) }, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), pull).Appliance;
        Assert.False(dry.HasLiquid);
        Assert.Equal(dry.DryMetalTemperature, dry.MetalTemperature);
    }

    /// <summary>An empty cylinder holds vapor of 1 kPa, or of half of saturation where that is less; p·V = m·R·T/M is off by less than a hundredth there.</summary>
    [Theory]
    [InlineData("R-134a", 20, 1000)]
    [InlineData("R-123", -60, 348)]
    public void An_empty_cylinder_holds_next_to_nothing(string fluid, double celsius, double pascals)
    {
        Fluid refrigerant = Fluid.Get(fluid);
        double saturation = refrigerant.Model.SaturationAtTemperature(celsius + 273.15).Dew.Pressure;
        double expected = Math.Min(1000, 0.5 * saturation);
        Assert.InRange(expected, 0.5 * pascals, 1.5 * pascals);
        RecoveryCylinder cylinder = Setups.Cylinder(20);
        CylinderState state = CylinderState.Initial(cylinder, refrigerant, Temperature.FromDegreesCelsius(celsius));
        Assert.Equal(expected, state.Pressure.Pascals, 1e-6 * expected);
        double mass = expected * cylinder.InternalVolume.CubicMeters * refrigerant.MolarMass.KilogramsPerMole / (8.314462618 * (celsius + 273.15));
        Assert.Equal(mass, state.Mass.Kilograms, 0.01 * mass);
        Assert.Equal(cylinder.TareWeight.Kilograms + state.Mass.Kilograms, state.GrossWeight.Kilograms, 1e-12);
    }

    /// <summary>p = n·R·T/(V − V_liquid), beside the refrigerant's own (Dalton's law).</summary>
    [Fact]
    public void Air_fills_what_liquid_leaves()
    {
        RecoveryCylinder cylinder = Setups.Cylinder(20, 8);
        Fluid fluid = Fluid.Get("R-134a");
        CylinderState state = CylinderState.Initial(cylinder, fluid, Temperature.FromDegreesCelsius(20), AmountOfSubstance.FromMoles(0.2));
        SaturationPoint at = fluid.Model.SaturationAtTemperature(293.15);
        double volume = cylinder.InternalVolume.CubicMeters;
        double liquid = (8 - (volume * at.Dew.Density)) / (at.Bubble.Density - at.Dew.Density);
        double air = 0.2 * 8.314462618 * 293.15 / (volume - liquid);
        Assert.Equal(liquid / volume, state.LiquidVolumeFraction.DecimalFractions, 1e-9);
        Assert.Equal(air, state.NonCondensablePressure.Pascals, 1e-3);
        Assert.Equal(at.Dew.Pressure + air, state.Pressure.Pascals, 1);
        Assert.Equal(0.2, state.NonCondensables.Moles, 1e-12);
        Assert.Equal(0, CylinderState.Initial(cylinder, fluid, Temperature.FromDegreesCelsius(20)).NonCondensablePressure.Pascals);
    }

    /// <summary>What does not fit as liquid, and what the equation does not reach, is refused by name.</summary>
    [Fact]
    public void A_cylinder_is_no_fuller_than_full()
    {
        Fluid fluid = Fluid.Get("R-134a");
        double most = fluid.Model.SaturationAtTemperature(293.15).Bubble.Density * Setups.Cylinder(10).InternalVolume.CubicMeters;
        Temperature at = Temperature.FromDegreesCelsius(20);
        Assert.InRange(CylinderState.Initial(Setups.Cylinder(10, 0.9999 * most), fluid, at).LiquidVolumeFraction.DecimalFractions, 0.999, 1);
        Assert.Contains("liquid-full", Assert.Throws<ArgumentException>(() => CylinderState.Initial(Setups.Cylinder(10, 1.0001 * most), fluid, at)).Message, StringComparison.Ordinal);
        Assert.Throws<PropertyRangeException>(() => CylinderState.Initial(Setups.Cylinder(10), fluid, Temperature.FromKelvins(fluid.Model.Range.MinimumTemperature - 1)));
        Assert.Throws<PropertyRangeException>(() => CylinderState.Initial(Setups.Cylinder(10), fluid, Temperature.FromKelvins(fluid.Model.Range.MaximumTemperature + 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CylinderState.Initial(Setups.Cylinder(10), fluid, at, AmountOfSubstance.FromMoles(-1)));
    }

    /// <summary>A heel is no more than the charge; one that is all of it is.</summary>
    [Fact]
    public void A_heel_is_part_of_the_charge()
    {
        Appliance unit = Setups.Appliance("R-134a", 4, 20, 20, 20);
        Assert.Equal(4, ApplianceState.Initial(unit with { LiquidHeel = Mass.FromKilograms(4) }).Mass.Kilograms, 1e-12);
        Assert.Contains("LiquidHeel", Assert.Throws<ArgumentException>(() => ApplianceState.Initial(unit with { LiquidHeel = Mass.FromKilograms(4.01) })).Message, StringComparison.Ordinal);
    }

    /// <summary>Warm water in the tubes, metal and refrigerant shut in without heat from outside come to one temperature and keep their energy: 4190 J/(kg·K) of water, from memory, 480 of steel.</summary>
    [Fact]
    public void Shut_in_with_warm_water_energy_is_kept()
    {
        Appliance unit = Setups.Appliance("R-134a", 3, 20, 10, null) with
        {
            HeatResistance = Appliance.PerfectInsulation,
            MetalMass = Mass.FromKilograms(10),
            MetalHeatCapacity = SpecificEntropy.FromJoulesPerKilogramKelvin(480),
            Water = TubeWater.Standing(Mass.FromKilograms(5), Temperature.FromDegreesCelsius(30), Setups.Conductance(200)),
        };
        StageResult hold = Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromHours(20) });
        double end = hold.Appliance.Temperature.Kelvins;
        PropertyModel model = unit.Fluid.Model;
        double gained = 3 * (model.VesselAtTemperature(end, 3 / 0.02).Bulk.InternalEnergy - model.VesselAtTemperature(hold.Before.Appliance.Temperature.Kelvins, 3 / 0.02).Bulk.InternalEnergy);
        double metal = 10 * 480 * (end - hold.Before.Appliance.MetalTemperature.Kelvins);
        Assert.Equal(303.15, hold.Before.Appliance.WaterTemperature.Kelvins, 1e-9);
        Assert.Equal(end, hold.Appliance.WaterTemperature.Kelvins, 0.01);
        Assert.Equal(end, hold.Appliance.MetalTemperature.Kelvins, 0.01);
        Assert.Equal(5 * 4190 * (303.15 - end), gained + metal, 50.0);
        Assert.InRange(hold.Closure.Energy, 0, 1e-9);
    }

    /// <summary>A charge that does not fit is told with the section that it does not fit into, where there are several.</summary>
    [Fact]
    public void A_charge_that_does_not_fit_is_told_with_its_section()
    {
        Appliance whole = Setups.Appliance("R-134a", 20, 10, 20, 50);
        Assert.StartsWith("Charge is 20 kg", Assert.Throws<ArgumentException>(() => ApplianceState.Initial(whole)).Message, StringComparison.Ordinal);
        Appliance split = whole with
        {
            Sections =
            [
                new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(9), Charge = Mass.FromKilograms(1) },
                new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(1), Charge = Mass.FromKilograms(19) },
            ],
        };
        Assert.StartsWith("Charge of b is 19 kg", Assert.Throws<ArgumentException>(() => ApplianceState.Initial(split)).Message, StringComparison.Ordinal);
    }
}
