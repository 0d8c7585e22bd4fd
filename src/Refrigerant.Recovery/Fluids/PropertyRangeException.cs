using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>A property was asked outside the validity range of its equation of state.</summary>
public sealed class PropertyRangeException : ArgumentOutOfRangeException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="fluid">The fluid's designation.</param>
    /// <param name="parameter">The name of the argument.</param>
    /// <param name="value">The value asked, in <paramref name="unit"/>.</param>
    /// <param name="minimum">The lowest valid value.</param>
    /// <param name="maximum">The highest valid value.</param>
    /// <param name="unit">The unit of the three values.</param>
    /// <param name="source">The published source of the equation.</param>
    public PropertyRangeException(string fluid, string parameter, double value, double minimum, double maximum, string unit, string source)
        : base(
            parameter,
            $"{fluid}: {parameter} is {Require.Text(value)} {unit}; valid from {Require.Text(minimum)} to {Require.Text(maximum)} {unit} ({source}).")
    {
        Fluid = fluid;
        Value = value;
        Minimum = minimum;
        Maximum = maximum;
        Unit = unit;
        EquationSource = source;
    }

    /// <summary>The fluid's designation.</summary>
    public string Fluid { get; }

    /// <summary>The value asked, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>The lowest valid value, in <see cref="Unit"/>.</summary>
    public double Minimum { get; }

    /// <summary>The highest valid value, in <see cref="Unit"/>.</summary>
    public double Maximum { get; }

    /// <summary>The unit of the values.</summary>
    public string Unit { get; }

    /// <summary>The published source of the equation.</summary>
    public string EquationSource { get; }
}
