using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Tests.Conformance;

/// <summary>A model whose densities are too low by a known part.</summary>
internal sealed class FaultyModel(PropertyModel model, double fault) : PropertyModel
{
    public override string Designation => model.Designation;

    public override double MolarMass => model.MolarMass;

    public override double CriticalTemperature => model.CriticalTemperature;

    public override double CriticalPressure => model.CriticalPressure;

    public override double CriticalDensity => model.CriticalDensity;

    public override PropertyRange Range => model.Range;

    public override IReadOnlyList<FluidComponent> Composition => model.Composition;

    public override ModelQuality Quality => model.Quality;

    public override string Source => model.Source;

    public override SaturationPoint SaturationAtTemperature(double temperature) => Spoil(model.SaturationAtTemperature(temperature));

    public override SaturationPoint SaturationAtPressure(double pressure) => Spoil(model.SaturationAtPressure(pressure));

    public override StatePoint StateAt(double temperature, double pressure) => Spoil(model.StateAt(temperature, pressure));

    public override VesselPoint VesselAtTemperature(double temperature, double density) => model.VesselAtTemperature(temperature, density);

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy) => model.VesselAtEnergy(density, internalEnergy);

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) => Spoil(model.StateAtEnthalpy(pressure, enthalpy));

    public override StatePoint StateAtEntropy(double pressure, double entropy) => Spoil(model.StateAtEntropy(pressure, entropy));

    public override StateDerivatives DerivativesAt(double temperature, double density) => model.DerivativesAt(temperature, density * (1 + fault));

    public override SaturationViscosity ViscosityAtSaturation(double temperature) => model.ViscosityAtSaturation(temperature);

    private SaturationPoint Spoil(in SaturationPoint point) => new(Spoil(point.Bubble), Spoil(point.Dew));

    private StatePoint Spoil(in StatePoint point) => new(
        point.Phase, point.Temperature, point.Pressure, point.Density / (1 + fault), point.Enthalpy, point.Entropy, point.VaporFraction);
}
