using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Residuals;

/// <summary>A further space that holds refrigerant at the end: a hose, the recovery machine. Immutable.</summary>
public sealed record ResidualSpace
{
    /// <summary>For an initializer.</summary>
    public ResidualSpace()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="volume">See <see cref="Volume"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="pressure">See <see cref="Pressure"/>.</param>
    /// <param name="label">See <see cref="Label"/>.</param>
    /// <param name="isLiquidFilled">See <see cref="IsLiquidFilled"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public ResidualSpace(
        Volume volume,
        Temperature temperature,
        Pressure pressure,
        string? label = null,
        bool? isLiquidFilled = null)
    {
        Volume = volume;
        Temperature = temperature;
        Pressure = pressure;
        Label = label ?? Label;
        IsLiquidFilled = isLiquidFilled ?? IsLiquidFilled;
    }

    /// <summary>What it is, such as "hoses".</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    public string Label { get; init => field = Require.NotEmpty(value, nameof(Label)); } = "hoses";

    /// <summary>Its internal volume, zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public required Volume Volume
    {
        get;
        init
        {
            Require.NotNegative(value.CubicMeters, "m³", nameof(Volume));
            field = value;
        }
    }

    /// <summary>Temperature in it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above absolute zero, or not finite.</exception>
    public required Temperature Temperature
    {
        get;
        init
        {
            Require.Positive(value.Kelvins, "K", nameof(Temperature));
            field = value;
        }
    }

    /// <summary>Absolute pressure in it, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure Pressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa absolute", nameof(Pressure));
            field = value;
        }
    }

    /// <summary>Whether it is full of liquid, as a liquid hose before it is swept; false by default.</summary>
    public bool IsLiquidFilled { get; init; }

    /// <summary>Label, volume and state.</summary>
    public override string ToString() => FormattableString.Invariant($"{Label}: {Volume.CubicMeters * 1e3:G7} L at {Pressure.Kilopascals:G7} kPa absolute, {Temperature.Kelvins - 273.15:G7} °C");
}
