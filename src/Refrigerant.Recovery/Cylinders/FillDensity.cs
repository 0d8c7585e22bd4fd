using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Mean densities (mass over internal volume) at which a vessel reaches a state. Bubble side: a full vessel is full of liquid.</summary>
internal static class FillDensity
{
    /// <summary>Whether liquid exists at a temperature, as far as the saturation curves reach.</summary>
    public static bool HasLiquidAt(PropertyModel model, double temperature) => temperature <= model.Range.MaximumSaturationTemperature;

    /// <summary>
    /// The mean density at which the equilibrium pressure in the vessel is <paramref name="pressure"/> Pa absolute: that of liquid where it
    /// is above the bubble pressure, of vapor or supercritical fluid where it is below the dew pressure, of both in between.
    /// Pressures above the range of the equation are taken as its end, which lowers the density.
    /// </summary>
    public static double AtPressure(PropertyModel model, double temperature, double pressure) =>
        model.StateAt(temperature, Math.Min(pressure, model.Range.MaximumPressure)).Density;
}
