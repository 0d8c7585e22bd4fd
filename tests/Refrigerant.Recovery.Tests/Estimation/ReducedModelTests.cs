using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Parts;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>The reduced model against the engine, closed forms and the property model.</summary>
public class ReducedModelTests
{
    private const double Level = 67_700;

    [Theory]
    [InlineData("R-134a", 6, 0.020, 293, 5e-4, 40, 400, 8e3, 8, 0.01)]
    [InlineData("R-22", 3, 0.012, 303, 3e-4, 20, 150, 5e3, 6, 0.01)]
    [InlineData("R-32", 2, 0.008, 288, 4e-4, 30, 300, 6e3, 8, 0.01)]

    [InlineData("R-410A", 12, 0.045, 283, 8e-4, 100, 900, 20e3, 8, 0.01)]
    [InlineData("R-404A", 8, 0.030, 298, 6e-4, 60, 600, 10e3, 10, 0.01)]
    [InlineData("R-407C", 6, 0.022, 295, 5e-4, 50, 500, 10e3, 8, 0.01)]
    [InlineData("R-448A", 6, 0.022, 295, 5e-4, 50, 500, 10e3, 8, 0.01)]
    [InlineData("R-454B", 4, 0.014, 295, 4.5e-4, 40, 500, 8e3, 8, 0.015)]
    public void Duration_and_rest_are_those_of_the_engine(
        string fluid, double charge, double volume, double kelvins, double displacement, double outer, double inner, double metal, double bore, double share) =>
        Compare(CompositionMode.Fixed, fluid, charge, volume, kelvins, displacement, outer, inner, metal, bore, share, 0.002);

    /// <summary>Vapor takes the light components along: what is left gets heavier, and the pressure falls by up to a third on that account alone.</summary>
    [Theory]
    [InlineData("R-410A", 12, 0.045, 283, 8e-4, 100, 900, 20e3, 8, 0.01)]
    [InlineData("R-404A", 8, 0.030, 298, 6e-4, 60, 600, 10e3, 10, 0.01)]
    [InlineData("R-407C", 6, 0.022, 295, 5e-4, 50, 500, 10e3, 8, 0.02)]
    [InlineData("R-407A", 6, 0.022, 295, 5e-4, 50, 500, 10e3, 8, 0.02)]
    [InlineData("R-448A", 6, 0.022, 295, 5e-4, 50, 500, 10e3, 8, 0.02)]
    [InlineData("R-454B", 4, 0.014, 295, 4.5e-4, 40, 500, 8e3, 8, 0.02)]
    [InlineData("R-455A", 4, 0.014, 295, 4.5e-4, 40, 500, 8e3, 8, 0.03)]
    public void A_blend_gets_heavier_as_in_the_engine(
        string fluid, double charge, double volume, double kelvins, double displacement, double outer, double inner, double metal, double bore, double share) =>
        Compare(CompositionMode.Tracked, fluid, charge, volume, kelvins, displacement, outer, inner, metal, bore, share, 0.01);

    private static void Compare(
        CompositionMode composition, string fluid, double charge, double volume, double kelvins, double displacement, double outer, double inner, double metal, double bore, double share, double rest)
    {
        RecoveryJob job = Job(fluid, charge, volume, kelvins, displacement, outer, inner, metal, bore);
        var table = new SaturationTable(job.Appliance.Fluid.Model);
        ReducedParameters parameters = ReducedParameters.FromJob(job, table);
        parameters.Drift = composition == CompositionMode.Tracked ? 1 : 0;
        StageResult engine = VaporRecovery.Simulate(
            job.Appliance,
            job.Machine with { Body = null },
            job.Hoses,
            RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(100), Mass.FromKilograms(40)),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(Level), ReceiverPressure = Pressure.FromPascals(parameters.DischargePressure), Composition = composition });
        var state = new ReducedState { Temperature = kelvins, MetalTemperature = kelvins, WetTemperature = kelvins };
        double seconds = Forecast.TimeTo(new ReducedModel(table), ref state, in parameters, kelvins, Level, 36_000, out bool reached);
        Assert.True(reached);

        Assert.Equal(engine.Duration.Seconds, seconds, share * engine.Duration.Seconds);
        Assert.Equal(engine.RemainingMass.Kilograms, charge - state.Delivered, rest * charge);
    }

    /// <summary>Without hose, clearance, warming and heat capacity of the gas that counts: t = (V/S)·ln(p1/p2) of vapor at constant temperature.</summary>
    [Fact]
    public void Vapor_alone_falls_exponentially()
    {
        var table = new SaturationTable(Fluid.Get("R-134a").Model);
        ReducedParameters parameters = ReducedParts.Vapor(0.02, 0.02, 1e-4);
        ReducedState state = ReducedParts.At(295);
        var model = new ReducedModel(table);
        model.Evaluate(in state, in parameters, new ReducedInputs(295, true), out ReducedOutput first);
        double seconds = Forecast.TimeTo(model, ref state, in parameters, 295, 0.2 * first.Pressure, 1e5, out _);

        // The gas is not ideal: its compressibility, within 1 % of one here, moves the pressure by its change.
        Assert.Equal(200 * Math.Log(5), seconds, 0.01 * 200 * Math.Log(5));
    }

    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-407C")]
    [InlineData("R-744")]
    [InlineData("R-717")]
    [InlineData("R-123")]
    public void Table_agrees_with_the_property_model(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        var table = new SaturationTable(model);
        for (double kelvins = table.Lowest + 0.5; kelvins < table.Highest; kelvins += 7.3)
        {
            SaturationPoint both = model.SaturationAtTemperature(kelvins);
            table.At(kelvins, out SaturationValues at);

            // Linear in the logarithm over 2 K: h²/8·(ln p)″, some 1e-4 at room temperature and 8e-4 at the cold end.
            Assert.Equal(both.Dew.Pressure, at.Pressure, 1e-3 * both.Dew.Pressure);
            Assert.Equal(both.Bubble.Pressure, table.BubblePressure(kelvins), 1e-3 * both.Bubble.Pressure);
            Assert.Equal(both.Dew.Density, at.VaporDensity, 2e-3 * both.Dew.Density);
            Assert.Equal(kelvins, table.DewTemperature(at.Pressure), 1e-3);
            Assert.Equal(kelvins, table.BubbleTemperature(table.BubblePressure(kelvins)), 1e-3);
        }
    }

    [Fact]
    public void Nothing_flows_while_the_machine_rests_and_metal_and_refrigerant_come_together()
    {
        RecoveryJob job = Job("R-22", 5, 0.02, 295, 4e-4, 30, 300, 15e3, 8);
        var table = new SaturationTable(job.Appliance.Fluid.Model);
        ReducedParameters parameters = ReducedParameters.FromJob(job, table);
        var state = new ReducedState { Temperature = 260, MetalTemperature = 280, WetTemperature = 270 };
        new ReducedModel(table).Advance(ref state, in parameters, new ReducedInputs(295, false), 4 * 3600, 5);
        Assert.Equal(0, state.Delivered);
        Assert.Equal(295, state.Temperature, 0.1);
        Assert.Equal(295, state.MetalTemperature, 0.1);
    }

    private static RecoveryJob Job(
        string fluid, double charge, double volume, double kelvins, double displacement, double outer, double inner, double metal, double bore) => new()
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(fluid),
                Charge = Mass.FromKilograms(charge),
                InternalVolume = Volume.FromCubicMeters(volume),
                Temperature = Temperature.FromKelvins(kelvins),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / outer),
                MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / inner),
                MetalMass = Mass.FromKilograms(metal / 480),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(displacement)),
            Hoses = new HoseSet { VaporSide = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(bore) }] },
            Cylinders = [],
        };
}
