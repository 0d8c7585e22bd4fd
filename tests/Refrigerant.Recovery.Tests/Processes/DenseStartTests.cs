using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Vapor recovery from densities at and above the critical one.</summary>
public class DenseStartTests
{
    // Dense carbon dioxide flashes into a large cylinder of little content: that comes to the triple point while the appliance is near 300 K.
    [Theory]
    [InlineData(304.5)]
    [InlineData(306)]
    [InlineData(312)]
    public void What_leaves_the_range_in_the_cylinder_is_said_of_the_cylinder(double kelvins)
    {
        StageResult result = Pull("R-744", 7.9, kelvins);
        Assert.Equal(StageEnd.PropertyRange, result.End);
        Assert.InRange(result.Cylinder!.Temperature.Kelvins, 216, 218);
        Assert.True(result.Appliance.Temperature.Kelvins > 295);
        Finding finding = Assert.Single(result.Findings, f => f.Code is "cylinder-out-of-range" or "dry-ice" or "stage-out-of-range");
        Assert.Equal("cylinder-out-of-range", finding.Code);
        Assert.Equal(result.Cylinder.Temperature.Kelvins, finding.Value("cylinder")!.InternationalValue!.Value, 1e-9);
    }

    [Theory]
    [InlineData("R-744")]
    [InlineData("R-32")]
    [InlineData("R-134a")]
    [InlineData("R-410A")]
    [InlineData("R-23")]
    public void The_critical_point_itself_is_a_start_like_others(string designation)
    {
        PropertyModel model = Fluid.Get(designation).Model;
        VesselPoint vessel = model.VesselAtTemperature(model.CriticalTemperature, model.CriticalDensity);
        Assert.Equal(model.CriticalPressure, vessel.Bulk.Pressure, 2e-3 * model.CriticalPressure);
        StageResult result = Pull(designation, 0.01 * model.CriticalDensity, model.CriticalTemperature);
        Assert.True(result.End is StageEnd.TargetReached or StageEnd.PropertyRange, result.ToString());
    }

    private static StageResult Pull(string designation, double kilograms, double kelvins)
    {
        Appliance appliance = Setups.Appliance(designation, kilograms, 10, kelvins - 273.15, null) with { Surroundings = Temperature.FromKelvins(295) };
        RecoveryCylinder cylinder = Setups.Cylinder(60, 0.5) with { ServicePressure = Pressure.FromPoundsForcePerSquareInch(3000) };
        RecoveryMachine machine = Setups.Machine(0.5) with { HighPressureCutout = Pressure.FromMegapascals(20) };
        return VaporRecovery.Simulate(
            appliance, machine, new HoseSet { VaporSide = [Setups.Hose(1.5, 8)] }, cylinder, new VaporRecoveryOptions { TargetPressure = Pressure.FromMegapascals(1), CylinderLimit = Mass.FromKilograms(1000) });
    }
}
