using System;

namespace Refrigerant.Recovery.Docs.Accuracy;

/// <summary>How far one property of one reference state is off.</summary>
/// <param name="Fluid">The fluid's designation.</param>
/// <param name="ReducedTemperature">Temperature over critical temperature.</param>
/// <param name="Property">Which property.</param>
/// <param name="Value">Size of the deviation, relative to the reference.</param>
internal readonly record struct Deviation(string Fluid, double ReducedTemperature, string Property, double Value)
{
    /// <summary>The size of a deviation relative to a reference value.</summary>
    public static double Relative(double value, double reference) => Math.Abs((value / reference) - 1);
}
