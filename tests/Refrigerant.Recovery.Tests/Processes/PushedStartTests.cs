using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Where a push-pull starts, liquid and vapor come apart at one pressure with the mass, the volume and the energy that there were; put together again they are what they were.</summary>
public class PushedStartTests
{
    [Theory]
    [InlineData("R-134a", 10, 20, 1)]
    [InlineData("R-22", 20, 35, 1)]
    [InlineData("R-744", 15, 10, 1)]
    [InlineData("R-407C", 15, 20, 1)]
    [InlineData("R-134a", 10, 20, 2)]
    public void Liquid_and_vapor_come_apart_and_together(string fluid, double kilograms, double celsius, int sections)
    {
        Appliance unit = Setups.Appliance(fluid, kilograms, 30, celsius, 50) with
        {
            LiquidReachable = true,
            MetalMass = Mass.FromKilograms(5),
            Water = TubeWater.Standing(Mass.FromKilograms(3), Temperature.FromDegreesCelsius(12), Setups.Conductance(100)),
            Oil = new ApplianceOil { Mass = Mass.FromKilograms(1), Kind = OilKind.PolyolEster, RefrigerantFraction = Ratio.FromPercent(10) },
            Sections = sections == 1 ? [] :
            [
                new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(0.7 * kilograms) },
                new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(0.3 * kilograms) },
            ],
            LiquidPort = sections == 1 ? null : "b",
        };
        var stage = new Stage(unit, Setups.Cylinder(60, 2), new PushPullOptions());
        var pushed = new PushedAppliance(unit, stage, 100, null);
        stage.Connect([pushed.Pool, pushed.Space, stage.Cylinder!.Vessel], [], pushed.Initialize);
        Assert.True(pushed.HasLiquid);
        Assert.True(stage.Network.Evaluate(stage.State));
        ApplianceState before = stage.Before.Appliance;
        SectionState part = before.Parts[sections - 1];
        Assert.Equal(part.Kilograms, pushed.Pool.Mass + pushed.Space.Mass, 1e-9);
        Assert.Equal(part.Volume, pushed.Pool.Volume + (pushed.Space.Mass / pushed.Space.VaporDensity), 1e-7 * part.Volume);
        Assert.Equal(part.Joules, stage.State[pushed.Pool.Energy] + stage.State[pushed.Space.Energy], 1e-6 * Math.Abs(part.Joules));
        PropertyModel model = unit.Fluid.Model;
        SaturationPoint at = model.SaturationAtTemperature(pushed.Pool.Temperature);
        Assert.Equal(at.Bubble.Pressure, pushed.Space.Pressure, 1e-5 * at.Bubble.Pressure);
        Assert.Equal(at.Bubble.Density, pushed.StartDensity, 1e-6 * at.Bubble.Density);
        Assert.Equal(model.SaturationAtPressure(at.Bubble.Pressure).Dew.Density, pushed.Space.VaporDensity, 1e-4 * pushed.Space.VaporDensity);
        Assert.Equal(1e-4 * kilograms, pushed.LeastLiquid, 1e-9);

        ApplianceState again = pushed.Read(stage.State);
        Assert.Equal(before.Mass.Kilograms, again.Mass.Kilograms, 1e-9);
        Assert.Equal(before.LiquidMass.Kilograms, again.LiquidMass.Kilograms, 1e-6 * kilograms);
        Assert.Equal(before.DissolvedMass.Kilograms, again.DissolvedMass.Kilograms, 1e-12);
        Assert.Equal(before.Temperature.Kelvins, again.Temperature.Kelvins, 1e-6);
        Assert.Equal(before.Pressure.Pascals, again.Pressure.Pascals, 1e-5 * before.Pressure.Pascals);
        Assert.Equal(before.MetalTemperature.Kelvins, again.MetalTemperature.Kelvins, 1e-6);
        Assert.Equal(before.DryMetalTemperature.Kelvins, again.DryMetalTemperature.Kelvins, 1e-6);
        Assert.Equal(285.15, again.WaterTemperature.Kelvins, 1e-6);
        Assert.Equal(before.OilTemperature.Kelvins, again.OilTemperature.Kelvins, 1e-6);
        Assert.Equal(sections, again.Sections.Count);
    }

    /// <summary>Less liquid than a ten-thousandth of the charge is none, and above the end of the saturation curve there is none either: nothing to do.</summary>
    [Theory]
    [InlineData(20, 0.5e-4, false)]
    [InlineData(20, 2e-4, true)]
    [InlineData(20, -0.1, false)]
    public void Where_there_is_no_liquid_there_is_nothing_to_do(double celsius, double share, bool pushes)
    {
        Fluid fluid = Fluid.Get("R-134a");
        SaturationPoint at = fluid.Model.SaturationAtTemperature(celsius + 273.15);
        double vapor = 0.03 * at.Dew.Density, charge = vapor / (1 - (share * (1 - (at.Dew.Density / at.Bubble.Density))));
        Appliance unit = Setups.Appliance("R-134a", charge, 30, celsius, 50) with { LiquidReachable = true };
        StageResult push = PushPull.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions { MaximumDuration = Duration.FromSeconds(1) });
        Assert.Equal(pushes, push.End != StageEnd.NothingToDo);
        Appliance dense = Setups.Appliance("R-744", 10, 30, 40, 50) with { LiquidReachable = true };
        Assert.Equal(StageEnd.NothingToDo, PushPull.Simulate(dense, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions { CylinderLimit = Mass.FromKilograms(20) }).End);
    }
}
