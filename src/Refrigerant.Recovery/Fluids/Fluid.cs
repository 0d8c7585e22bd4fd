using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Fluids;

/// <summary>A refrigerant: its identity and its thermodynamic properties, in UnitsNet quantities. Immutable and thread-safe.</summary>
/// <remarks>Two fluids are equal if the same kind of model computes them from the same sources for the same designation and composition.</remarks>
public sealed class Fluid : IEquatable<Fluid>
{
    private Fluid(PropertyModel model) => Model = model;

    /// <summary>Every fluid of the catalogue.</summary>
    public static IReadOnlyList<Fluid> All => FluidCatalogue.All;

    /// <summary>The property model in plain SI doubles, for hot code. That of another engine answers through a check: what is not finite is an <see cref="InvalidOperationException"/>.</summary>
    public PropertyModel Model { get; }

    /// <summary>The ASHRAE 34 designation, such as "R-134a".</summary>
    public string Designation => Model.Designation;

    /// <summary>Molar mass.</summary>
    public MolarMass MolarMass => new(Model.MolarMass, MolarMassUnit.KilogramPerMole);

    /// <summary>Critical temperature.</summary>
    public Temperature CriticalTemperature => new(Model.CriticalTemperature, TemperatureUnit.Kelvin);

    /// <summary>Critical pressure, absolute.</summary>
    public Pressure CriticalPressure => new(Model.CriticalPressure, PressureUnit.Pascal);

    /// <summary>Whether the fluid has more than one component.</summary>
    public bool IsBlend => Model.Composition.Count > 1;

    /// <summary>The components; one, with both fractions 1, for a pure fluid.</summary>
    public IReadOnlyList<FluidComponent> Composition => Model.Composition;

    /// <summary>Whether all parameters behind the properties are published.</summary>
    public ModelQuality Quality => Model.Quality;

    /// <summary>Finds a fluid by designation. Case, blanks, hyphens and a missing "R" do not matter: "R-134a", "R134a", "134a".</summary>
    /// <param name="designation">The designation.</param>
    /// <exception cref="ArgumentNullException"><paramref name="designation"/> is null.</exception>
    /// <exception cref="UnknownFluidException">No fluid has that designation; near ones are suggested.</exception>
    /// <example>
    /// <code>
    /// Fluid fluid = Fluid.Get("R-410A"); // "r410a" and "410A" do as well
    /// Console.WriteLine(fluid.Composition.Count); // 2
    /// </code>
    /// </example>
    public static Fluid Get(string designation) => FluidCatalogue.Get(designation);

    /// <summary>Finds a fluid by designation, as <see cref="Get"/> does.</summary>
    /// <param name="designation">The designation; null finds nothing.</param>
    /// <param name="fluid">The fluid, or null.</param>
    /// <returns>Whether it was found.</returns>
    public static bool TryGet(string? designation, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Fluid? fluid) =>
        FluidCatalogue.TryGet(designation, out fluid);

    /// <summary>Makes a fluid of any property engine; every other layer accepts it.</summary>
    /// <param name="model">The engine's model of the fluid.</param>
    /// <remarks>Whatever is then computed with it throws an <see cref="InvalidOperationException"/> that names engine and call where the engine answers with NaN or infinity.</remarks>
    /// <exception cref="ArgumentNullException"><paramref name="model"/> is null.</exception>
    public static Fluid FromModel(PropertyModel model) =>
        new(Require.NotNull(model, nameof(model)) is HelmholtzModel or MixtureModel or CheckedModel ? model : new CheckedModel(model));

    /// <summary>Makes a blend of a composition by mass, from components of the catalogue.</summary>
    /// <param name="massFractions">Designation and mass fraction (0 to 1) of each component; the fractions add up to 1 within 1e-6.</param>
    /// <param name="designation">What to call the blend; without it, the components and their shares.</param>
    /// <returns>The blend; where one component has the fraction 1, that pure fluid.</returns>
    /// <remarks>
    /// Multi-fluid model of Kunz and Wagner 2012 (doi:10.1021/je300655b). Where a pair of components has no published parameters,
    /// <see cref="Quality"/> is <see cref="ModelQuality.Estimated"/>.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="massFractions"/> is null.</exception>
    /// <exception cref="UnknownFluidException">A component is not in the catalogue.</exception>
    /// <exception cref="ArgumentException">
    /// A component is named twice or is itself a blend, a fraction is not from 0 to 1, or the fractions do not add up to 1.
    /// </exception>
    public static Fluid Blend(IEnumerable<KeyValuePair<string, double>> massFractions, string? designation = null) =>
        BlendFactory.FromCaller(designation, massFractions, byMass: true, nameof(massFractions));

    /// <summary>Makes a blend of a composition by mole fractions, as <see cref="Blend"/> does by mass.</summary>
    /// <param name="moleFractions">Designation and mole fraction (0 to 1) of each component; the fractions add up to 1 within 1e-6.</param>
    /// <param name="designation">What to call the blend; without it, the components and their shares.</param>
    /// <returns>The blend; where one component has the fraction 1, that pure fluid.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="moleFractions"/> is null.</exception>
    /// <exception cref="UnknownFluidException">A component is not in the catalogue.</exception>
    /// <exception cref="ArgumentException">
    /// A component is named twice or is itself a blend, a fraction is not from 0 to 1, or the fractions do not add up to 1.
    /// </exception>
    public static Fluid BlendByMole(IEnumerable<KeyValuePair<string, double>> moleFractions, string? designation = null) =>
        BlendFactory.FromCaller(designation, moleFractions, byMass: false, nameof(moleFractions));

    /// <summary>Saturated liquid and vapor at a temperature.</summary>
    /// <param name="temperature">Temperature, within the saturation curves.</param>
    /// <exception cref="PropertyRangeException">The temperature is outside the saturation curves.</exception>
    /// <example>
    /// <code>
    /// Fluid fluid = Fluid.Get("R-407C");
    /// SaturationState s = fluid.SaturationAt(Temperature.FromDegreesCelsius(25));
    /// Console.WriteLine($"{s.Bubble.Pressure.Kilopascals:F0} kPa"); // 1190 kPa
    /// Console.WriteLine($"{s.Dew.Pressure.Kilopascals:F0} kPa"); // 1020 kPa
    /// </code>
    /// </example>
    public SaturationState SaturationAt(Temperature temperature) =>
        new(Model, Model.SaturationAtTemperature(temperature.Kelvins));

    /// <summary>Saturated liquid and vapor at an absolute pressure.</summary>
    /// <param name="pressure">Absolute pressure, within the saturation curves.</param>
    /// <exception cref="PropertyRangeException">The pressure is outside the saturation curves.</exception>
    public SaturationState SaturationAt(Pressure pressure) =>
        new(Model, Model.SaturationAtPressure(pressure.Pascals));

    /// <summary>The stable state at a temperature and an absolute pressure.</summary>
    /// <param name="temperature">Temperature, within the equation's range.</param>
    /// <param name="pressure">Absolute pressure, greater than zero.</param>
    /// <exception cref="PropertyRangeException">The state is outside the equation's range.</exception>
    public FluidState StateAt(Temperature temperature, Pressure pressure) =>
        new(Model, Model.StateAt(temperature.Kelvins, pressure.Pascals));

    /// <summary>The equilibrium state at a temperature and a density: one phase, or two where the density lies between them.</summary>
    /// <param name="temperature">Temperature, within the equation's range.</param>
    /// <param name="density">Density, greater than zero.</param>
    /// <exception cref="PropertyRangeException">The state is outside the equation's range.</exception>
    public FluidState StateAt(Temperature temperature, Density density) =>
        new(Model, Model.VesselAtTemperature(temperature.Kelvins, density.KilogramsPerCubicMeter).Bulk);

    /// <summary>The content of a closed vessel at a temperature.</summary>
    /// <param name="temperature">Temperature, within the equation's range.</param>
    /// <param name="density">Mass over internal volume, greater than zero.</param>
    /// <exception cref="PropertyRangeException">The state is outside the equation's range.</exception>
    public ClosedVesselState ClosedVesselAt(Temperature temperature, Density density) =>
        new(Model, Model.VesselAtTemperature(temperature.Kelvins, density.KilogramsPerCubicMeter));

    /// <summary>The content of a closed vessel of known internal energy.</summary>
    /// <param name="density">Mass over internal volume, greater than zero.</param>
    /// <param name="internalEnergy">Specific internal energy.</param>
    /// <exception cref="PropertyRangeException">The state is outside the equation's range.</exception>
    public ClosedVesselState ClosedVesselAt(Density density, SpecificEnergy internalEnergy) =>
        new(Model, Model.VesselAtEnergy(density.KilogramsPerCubicMeter, internalEnergy.JoulesPerKilogram));

    /// <summary>Whether the same kind of model computes both from the same sources for the same designation and composition.</summary>
    /// <param name="other">The other fluid.</param>
    public bool Equals(Fluid? other) => other is not null && Same(Model, other.Model);

    /// <summary>Whether two fluids are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(Fluid? left, Fluid? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two fluids differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(Fluid? left, Fluid? right) => !(left == right);

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as Fluid);

    /// <inheritdoc />
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Designation);

    /// <summary>The designation.</summary>
    public override string ToString() => Designation;

    /// <summary>Whether two models are one engine's of one refrigerant.</summary>
    internal static bool Same(PropertyModel? model, PropertyModel? other)
    {
        if (ReferenceEquals(model, other))
        {
            return true;
        }

        if (model is null || other is null || other.Designation != model.Designation || CheckedModel.EngineOf(other).GetType() != CheckedModel.EngineOf(model).GetType() || other.Source != model.Source
            || other.Composition.Count != model.Composition.Count)
        {
            return false;
        }

        // A blend is the same in whatever order its components are named.
        return model.Composition.All(part => other.Composition.Any(same => same.Designation == part.Designation && same.MassFraction.Equals(part.MassFraction)));
    }
}
