using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Doubles;

/// <summary>An engine that offers its port and nothing else: what it answers is another engine's.</summary>
internal sealed class PortOnly(PropertyModel engine) : PropertyModel
{
    /// <summary>How often a state was sought from scratch, and how often saturation was asked for.</summary>
    public int FromScratch { get; private set; }

    public int Saturations { get; private set; }

    public override string Designation => engine.Designation;

    public override double MolarMass => engine.MolarMass;

    public override double CriticalTemperature => engine.CriticalTemperature;

    public override double CriticalPressure => engine.CriticalPressure;

    public override double CriticalDensity => engine.CriticalDensity;

    public override PropertyRange Range => engine.Range;

    public override IReadOnlyList<FluidComponent> Composition => engine.Composition;

    public override ModelQuality Quality => engine.Quality;

    public override string Source => engine.Source;

    public override SaturationPoint SaturationAtTemperature(double temperature)
    {
        Saturations++;
        return engine.SaturationAtTemperature(temperature);
    }

    public override SaturationPoint SaturationAtPressure(double pressure) => engine.SaturationAtPressure(pressure);

    public override StatePoint StateAt(double temperature, double pressure) => engine.StateAt(temperature, pressure);

    public override VesselPoint VesselAtTemperature(double temperature, double density) => engine.VesselAtTemperature(temperature, density);

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy)
    {
        FromScratch++;
        return engine.VesselAtEnergy(density, internalEnergy);
    }

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) => engine.StateAtEnthalpy(pressure, enthalpy);

    public override StatePoint StateAtEntropy(double pressure, double entropy) => engine.StateAtEntropy(pressure, entropy);

    public override StateDerivatives DerivativesAt(double temperature, double density) => engine.DerivativesAt(temperature, density);

    public override SaturationViscosity ViscosityAtSaturation(double temperature) => engine.ViscosityAtSaturation(temperature);
}
