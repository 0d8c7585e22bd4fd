using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class EqualizationTests
{
    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-32")]
    [InlineData("R-407C")]
    public void Pressures_become_equal_and_mass_and_energy_are_kept(string fluid)
    {
        Appliance appliance = Jobs.Chiller(fluid).Appliance;
        ApplianceState start = ApplianceState.Initial(appliance);
        CylinderState cylinder = CylinderState.Initial(Jobs.Cylinder(123), appliance.Fluid, Temperature.FromDegreesCelsius(18));
        StageResult result = Equalization.Simulate(appliance, Jobs.Hoses(), start, cylinder);

        Assert.Equal(result.Appliance.Pressure.Pascals, result.Cylinder.Pressure.Pascals, 1e-5 * result.Appliance.Pressure.Pascals);
        Assert.Equal(start.Kilograms + cylinder.Kilograms, result.Appliance.Kilograms + result.Cylinder.Kilograms, 1e-9 * start.Kilograms);
        Assert.Equal(start.Joules + cylinder.Joules, result.Appliance.Joules + result.Cylinder.Joules, 1e-9 * start.Joules);
        Assert.InRange(result.Duration.Seconds, 1, 300);
    }

    [Fact]
    public void Into_a_cylinder_of_higher_pressure_nothing_flows()
    {
        Appliance appliance = Jobs.Chiller().Appliance;
        CylinderState warm = CylinderState.Initial(Jobs.Cylinder(123) with { Content = Mass.FromKilograms(5) }, appliance.Fluid, Temperature.FromDegreesCelsius(30));
        StageResult result = Equalization.Simulate(appliance, Jobs.Hoses(), ApplianceState.Initial(appliance), warm);
        Assert.Equal(0, result.RecoveredMass.Kilograms);
        Assert.Equal(0, result.Duration.Seconds);
    }
}
