using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Doubles;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>What an engine answers with NaN or infinity gets no further: the exception names engine, call and answer.</summary>
public class CheckedModelTests
{
    public static TheoryData<string> Calls => [.. Asked.Keys];

    private static Dictionary<string, Action<PropertyModel>> Asked { get; } = new()
    {
        ["MolarMass"] = model => _ = model.MolarMass,
        ["CriticalTemperature"] = model => _ = model.CriticalTemperature,
        ["CriticalPressure"] = model => _ = model.CriticalPressure,
        ["CriticalDensity"] = model => _ = model.CriticalDensity,
        ["SaturationAtTemperature(300)"] = model => model.SaturationAtTemperature(300),
        ["SaturationAtPressure(500000)"] = model => model.SaturationAtPressure(500_000),
        ["StateAt(300, 100000)"] = model => model.StateAt(300, 100_000),
        ["VesselAtTemperature(300, 200)"] = model => model.VesselAtTemperature(300, 200),
        ["VesselAtEnergy(200, 250000)"] = model => model.VesselAtEnergy(200, 250_000),
        ["StateAtEnthalpy(500000, 300000)"] = model => model.StateAtEnthalpy(500_000, 300_000),
        ["StateAtEntropy(500000, 1300)"] = model => model.StateAtEntropy(500_000, 1300),
        ["DerivativesAt(300, 5)"] = model => model.DerivativesAt(300, 5),
        ["ViscosityAtSaturation(300)"] = model => model.ViscosityAtSaturation(300),
        ["TrySaturationAtTemperature(300)"] = model => model.TrySaturationAtTemperature(300, out _),
        ["TrySaturationAtPressure(500000)"] = model => model.TrySaturationAtPressure(500_000, out _),
        ["TryStateAt(300, 100000)"] = model => model.TryStateAt(300, 100_000, out _),
        ["TryVesselAtTemperature(300, 200)"] = model => model.TryVesselAtTemperature(300, 200, out _),
        ["TryVesselAtEnergy(200, 250000)"] = model => model.TryVesselAtEnergy(200, 250_000, out _),
    };

    [Theory]
    [MemberData(nameof(Calls))]
    public void Engine_and_call_are_named(string call)
    {
        foreach (double wrong in new[] { double.NaN, double.PositiveInfinity })
        {
            PropertyModel model = Fluid.FromModel(new Broken(Fluid.Get("R-134a").Model, wrong)).Model;
            string message = Assert.Throws<InvalidOperationException>(() => Asked[call](model)).Message;
            Assert.Contains($"Broken of R-134a answered {call} with what is not finite", message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_plan_throws_the_same()
    {
        RecoveryJob job = Jobs.Chiller();
        job = job with { Appliance = job.Appliance with { Fluid = Fluid.FromModel(new Broken(Fluid.Get("R-134a").Model, double.NaN)) } };
        Assert.Contains("Broken of R-134a", Assert.Throws<InvalidOperationException>(() => RecoveryPlanner.Plan(job)).Message, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => job.Appliance.Fluid.SaturationAt(Temperature.FromDegreesCelsius(20)));
    }

    /// <summary>One whose answers are finite answers the same, and what is out of range is what the engine says of it.</summary>
    [Fact]
    public void A_sound_engine_is_as_it_is()
    {
        PropertyModel engine = Fluid.Get("R-407C").Model;
        Fluid fluid = Fluid.FromModel(new PortOnly(engine));
        Assert.Equal(engine.VesselAtTemperature(300, 100), fluid.Model.VesselAtTemperature(300, 100));
        Assert.Equal(engine.SaturationAtTemperature(300), fluid.Model.SaturationAtTemperature(300));
        Assert.Throws<PropertyRangeException>(() => fluid.Model.SaturationAtTemperature(1000));
        Assert.False(fluid.Model.TrySaturationAtTemperature(1000, out _));
        Assert.Equal(fluid, Fluid.FromModel(new PortOnly(engine)));
        Assert.NotEqual(fluid, Fluid.Get("R-407C"));
        Assert.Same(fluid.Model, Fluid.FromModel(fluid.Model).Model);
        Assert.Same(engine, Fluid.FromModel(engine).Model);
    }

    /// <summary>An engine with one wrong number in every answer.</summary>
    private sealed class Broken(PropertyModel engine, double wrong) : PropertyModel
    {
        public override string Designation => engine.Designation;

        public override double MolarMass => wrong;

        public override double CriticalTemperature => wrong;

        public override double CriticalPressure => wrong;

        public override double CriticalDensity => wrong;

        public override PropertyRange Range => engine.Range;

        public override IReadOnlyList<FluidComponent> Composition => engine.Composition;

        public override ModelQuality Quality => engine.Quality;

        public override string Source => engine.Source;

        public override SaturationPoint SaturationAtTemperature(double temperature) => new(engine.SaturationAtTemperature(temperature).Bubble, Wrong(engine.SaturationAtTemperature(temperature).Dew));

        public override SaturationPoint SaturationAtPressure(double pressure) => new(Wrong(engine.SaturationAtPressure(pressure).Bubble), engine.SaturationAtPressure(pressure).Dew);

        public override StatePoint StateAt(double temperature, double pressure) => Wrong(engine.StateAt(temperature, pressure));

        public override VesselPoint VesselAtTemperature(double temperature, double density)
        {
            VesselPoint vessel = engine.VesselAtTemperature(temperature, density);
            return new(vessel.Bulk, vessel.Liquid, Wrong(vessel.Vapor));
        }

        public override VesselPoint VesselAtEnergy(double density, double internalEnergy)
        {
            VesselPoint vessel = engine.VesselAtEnergy(density, internalEnergy);
            return new(Wrong(vessel.Bulk), vessel.Liquid, vessel.Vapor);
        }

        public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) => Wrong(engine.StateAtEnthalpy(pressure, enthalpy));

        public override StatePoint StateAtEntropy(double pressure, double entropy) => Wrong(engine.StateAtEntropy(pressure, entropy));

        public override StateDerivatives DerivativesAt(double temperature, double density) => new(1000, 1100, wrong, 1e5, 1e3);

        public override SaturationViscosity ViscosityAtSaturation(double temperature) => new(2e-4, wrong, false);

        private StatePoint Wrong(StatePoint state) => new(state.Phase, state.Temperature, state.Pressure, state.Density, state.Enthalpy, wrong, state.VaporFraction);
    }
}
