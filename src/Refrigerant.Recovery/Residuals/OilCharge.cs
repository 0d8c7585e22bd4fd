using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>Oil that stays in the appliance and holds refrigerant. Immutable.</summary>
public sealed record OilCharge
{
    /// <summary>Mass of the oil without refrigerant, zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public required Mass Mass
    {
        get;
        init
        {
            Require.NotNegative(value.Kilograms, "kg", nameof(Mass));
            field = value;
        }
    }

    /// <summary>Mean molar mass of the oil, from 100 to 2000 g/mol: mineral oil and alkylbenzene 300 to 350, POE of ISO 32 to 68 500 to 750 (from memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range, or not finite.</exception>
    public required MolarMass MolarMass
    {
        get;
        init
        {
            Require.InRange(value.KilogramsPerMole * 1000, 100, 2000, "g/mol", nameof(MolarMass));
            field = value;
        }
    }

    /// <summary>
    /// How many times Raoult's rule the oil dissolves, by mass: 2 by default, between the 1.5 and 3 of real pairs at low content (from memory); from 0.1 to 10.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range, or not finite.</exception>
    public double SolubilityFactor { get; init => field = Require.InRange(value, 0.1, 10, "", nameof(SolubilityFactor)); } = OilSolubility.DefaultFactor;

    /// <summary>Mineral oil or alkylbenzene, 320 g/mol (from memory).</summary>
    /// <param name="mass">Mass of the oil, zero or more.</param>
    public static OilCharge Mineral(Mass mass) => new() { Mass = mass, MolarMass = new MolarMass(320, MolarMassUnit.GramPerMole) };

    /// <summary>Polyolester, 600 g/mol (from memory).</summary>
    /// <param name="mass">Mass of the oil, zero or more.</param>
    public static OilCharge PolyolEster(Mass mass) => new() { Mass = mass, MolarMass = new MolarMass(600, MolarMassUnit.GramPerMole) };

    /// <summary>Mass and molar mass.</summary>
    public override string ToString() => FormattableString.Invariant($"{Mass.Kilograms:G7} kg of oil of {MolarMass.KilogramsPerMole * 1e3:G7} g/mol");
}
