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
        StageResult result = Equalization.Simulate(appliance, Jobs.Hoses(), Jobs.Cylinder(123), new EqualizationOptions());
        ApplianceState start = result.Before.Appliance;
        CylinderState cylinder = result.Before.Cylinder!;

        Assert.Equal(result.Appliance.Pressure.Pascals, result.Cylinder!.Pressure.Pascals, 0.021 * result.Appliance.Pressure.Pascals);
        Assert.Equal(
            start.Mass.Kilograms + cylinder.Mass.Kilograms, result.Appliance.Mass.Kilograms + result.Cylinder.Mass.Kilograms, 1e-9 * start.Mass.Kilograms);
        Assert.InRange(result.Closure.Energy, 0, 1e-9);
        Assert.InRange(result.Duration.Seconds, 1, 300);
    }

    [Fact]
    public void Into_a_cylinder_of_higher_pressure_nothing_flows()
    {
        Appliance appliance = Jobs.Chiller().Appliance;
        CylinderState warm = CylinderState.Initial(Jobs.Cylinder(123) with { Content = Mass.FromKilograms(5) }, appliance.Fluid, Temperature.FromDegreesCelsius(30));
        StageResult result = Equalization.Simulate(
            appliance, Jobs.Hoses(), warm.Cylinder, new EqualizationOptions { Start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = warm } });
        Assert.Equal(0, result.RecoveredMass.Kilograms);
        Assert.Equal(0, result.Duration.Seconds);
    }
}
