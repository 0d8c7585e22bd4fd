using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>States are the same only where all that they hold is: content, metal, water and oil of each section, the port, the gas.</summary>
public class SectionEqualityTests
{
    private static readonly VesselPoint Vessel = Fluid.Get("R-134a").Model.VesselAtTemperature(290, 200);

    [Fact]
    public void Sections_that_differ_in_one_thing_are_not_the_same()
    {
        SectionState[] each =
        [
            Section(), Section(name: "b"), Section(volume: 2), Section(mass: 2), Section(energy: 2), Section(wet: 2), Section(dry: 2), Section(share: 2), Section(water: 2), Section(dissolved: 2), Section(oil: 2),
        ];
        for (int i = 0; i < each.Length; i++)
        {
            for (int j = 0; j < each.Length; j++)
            {
                Assert.Equal(i == j, each[i].Equals(each[j]));
                Assert.Equal(i == j, each[i].Equals((object)each[j]));
            }
        }

        Assert.True(Section().Equals(Section()));
        Assert.False(Section().Equals(null));
        Assert.False(Section().Equals((object)"a"));
    }

    [Fact]
    public void States_that_differ_in_one_thing_are_not_the_same()
    {
        Appliance unit = Setups.Appliance("R-134a", 4, 20, 20, 20), warmer = unit with { Temperature = Temperature.FromDegreesCelsius(21) }, other = unit with { LiquidReachable = true };
        ApplianceState[] states = [ApplianceState.Initial(unit), ApplianceState.Initial(warmer), ApplianceState.Initial(other), new(unit, [Section(), Section()], 0), new(unit, [Section(), Section()], 1)];
        RecoveryCylinder cylinder = Setups.Cylinder(20, 2);
        Temperature at = unit.Temperature;
        CylinderState[] cylinders =
        [
            CylinderState.Initial(cylinder, unit.Fluid, at), CylinderState.Initial(cylinder, unit.Fluid, warmer.Temperature), CylinderState.Initial(cylinder with { TareWeight = Mass.FromKilograms(5) }, unit.Fluid, at),
            CylinderState.Initial(cylinder, unit.Fluid, at, AmountOfSubstance.FromMoles(1)),
        ];
        for (int i = 0; i < states.Length; i++)
        {
            for (int j = 0; j < states.Length; j++)
            {
                Assert.Equal(i == j, states[i] == states[j]);
                Assert.Equal(i != j, states[i] != states[j]);
            }
        }

        for (int i = 0; i < cylinders.Length; i++)
        {
            for (int j = 0; j < cylinders.Length; j++)
            {
                Assert.Equal(i == j, cylinders[i] == cylinders[j]);
                Assert.Equal(i != j, cylinders[i] != cylinders[j]);
            }
        }

        Assert.False(states[0] == null);
        Assert.True((ApplianceState?)null == null);
        Assert.False(null == cylinders[0]);
        Assert.True((CylinderState?)null == null);
        Assert.Equal(states[0], ApplianceState.Initial(unit));
        Assert.Equal(cylinders[0], CylinderState.Initial(cylinder, unit.Fluid, at));
    }

    private static SectionState Section(
        string name = "a", double volume = 1, double mass = 1, double energy = 1, double wet = 1, double dry = 1, double share = 1, double water = 1, double dissolved = 1, double oil = 1) =>
        new(name, volume, [mass], energy, Vessel)
        {
            WetKelvins = wet,
            DryKelvins = dry,
            WettedShare = share,
            WaterKelvins = water,
            DissolvedKilograms = dissolved,
            OilKelvins = oil,
        };
}
