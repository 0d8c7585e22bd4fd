using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>What else is known about what stays in an appliance. Immutable.</summary>
public sealed record ResidualOptions
{
    internal static readonly ResidualOptions None = new();

    /// <summary>For an initializer.</summary>
    public ResidualOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="charge">See <see cref="Charge"/>.</param>
    /// <param name="liquid">See <see cref="Liquid"/>.</param>
    /// <param name="liquidUncertainty">See <see cref="LiquidUncertainty"/>.</param>
    /// <param name="riseTest">See <see cref="RiseTest"/>.</param>
    /// <param name="oil">See <see cref="Oil"/>.</param>
    /// <param name="spaces">See <see cref="Spaces"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public ResidualOptions(
        Mass? charge = null,
        Mass? liquid = null,
        Mass? liquidUncertainty = null,
        RiseReading? riseTest = null,
        ApplianceOil? oil = null,
        IReadOnlyList<ResidualSpace>? spaces = null)
    {
        Charge = charge ?? Charge;
        Liquid = liquid ?? Liquid;
        LiquidUncertainty = liquidUncertainty ?? LiquidUncertainty;
        RiseTest = riseTest ?? RiseTest;
        Oil = oil ?? Oil;
        Spaces = spaces ?? Spaces;
    }

    /// <summary>The full charge, to tell the residual as a share of it; null where unknown. Greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Mass? Charge
    {
        get;
        init
        {
            if (value is Mass charge)
            {
                Require.Positive(charge.Kilograms, "kg", nameof(Charge));
            }

            field = value;
        }
    }

    /// <summary>Liquid that the caller knows to be left; null where unknown. Zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Mass? Liquid
    {
        get;
        init
        {
            if (value is Mass liquid)
            {
                Require.NotNegative(liquid.Kilograms, "kg", nameof(Liquid));
            }

            field = value;
        }
    }

    /// <summary>Uncertainty of <see cref="Liquid"/>, plus or minus.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Mass LiquidUncertainty
    {
        get;
        init
        {
            Require.NotNegative(value.Kilograms, "kg", nameof(LiquidUncertainty));
            field = value;
        }
    }

    = new(0, MassUnit.Kilogram);

    /// <summary>A hold with closed valves after the pressure was reached; null where none was made. Not together with <see cref="Liquid"/>.</summary>
    public RiseReading? RiseTest { get; init; }

    /// <summary>Oil in the appliance; null where none is to be counted.</summary>
    public ApplianceOil? Oil { get; init; }

    /// <summary>Hoses, the machine and other spaces that hold refrigerant.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public IReadOnlyList<ResidualSpace> Spaces { get; init => field = Require.Copy(value, nameof(Spaces)); } = new ValueList<ResidualSpace>([]);

    /// <summary>What is known of the appliance.</summary>
    public override string ToString() => FormattableString.Invariant($"charge {(Charge is Mass charge ? charge.Kilograms.ToString("G7", System.Globalization.CultureInfo.InvariantCulture) + " kg" : "unknown")}, {Spaces.Count} spaces");
}
