using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>The oil in an appliance or a machine: what it holds back of the refrigerant, and how it gives it off; estimates. Immutable.</summary>
public sealed record ApplianceOil
{
    /// <summary>For an initializer.</summary>
    public ApplianceOil()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="mass">See <see cref="Mass"/>.</param>
    /// <param name="kind">See <see cref="Kind"/>.</param>
    /// <param name="molarMass">See <see cref="MolarMass"/>.</param>
    /// <param name="refrigerantFraction">See <see cref="RefrigerantFraction"/>.</param>
    /// <param name="solubilityFactor">See <see cref="SolubilityFactor"/>.</param>
    /// <param name="foamingTime">See <see cref="FoamingTime"/>.</param>
    /// <param name="diffusionTime">See <see cref="DiffusionTime"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public ApplianceOil(
        Mass mass,
        OilKind kind,
        MolarMass? molarMass = null,
        Ratio? refrigerantFraction = null,
        double? solubilityFactor = null,
        Duration? foamingTime = null,
        Duration? diffusionTime = null)
    {
        Mass = mass;
        Kind = kind;
        MolarMass = molarMass ?? MolarMass;
        RefrigerantFraction = refrigerantFraction ?? RefrigerantFraction;
        SolubilityFactor = solubilityFactor;
        FoamingTime = foamingTime ?? FoamingTime;
        DiffusionTime = diffusionTime ?? DiffusionTime;
    }

    /// <summary>Mass of the oil without refrigerant, 0 to 1000 t.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Mass Mass
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 0, 1e6, "kg", nameof(Mass));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>The oil's family, which gives its typical molar mass and how much it dissolves.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public required OilKind Kind { get; init => field = Require.Defined(value, nameof(Kind)); }

    /// <summary>
    /// Molar mass of the oil, 0.05 to 5 kg/mol; where it is null a typical one of its family:
    /// mineral and alkylbenzene 320 g/mol, others 600 g/mol (from memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public MolarMass? MolarMass
    {
        get;
        init
        {
            if (value is MolarMass given)
            {
                Require.InRange(given.KilogramsPerMole, 0.05, 5, "kg/mol", nameof(MolarMass));
            }

            field = Held.GramsPerMole(value);
        }
    }

    /// <summary>
    /// Mass fraction of refrigerant in the liquid of oil and refrigerant at the start, 0 to 0.9; 0.2 by default (common practice, no source).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio RefrigerantFraction
    {
        get;
        init
        {
            Require.InRange(value.DecimalFractions, 0, 0.9, string.Empty, nameof(RefrigerantFraction));
            field = Held.Fractions(value);
        }
    }

    = new(0.2, RatioUnit.DecimalFraction);

    /// <summary>
    /// How many times Raoult's rule the oil dissolves, by moles, 0.01 to 10; where it is null a figure for the pair of refrigerant and oil: fitted to
    /// measurements where they were read, else by family (estimate).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double? SolubilityFactor
    {
        get;
        init
        {
            if (value is double given)
            {
                Require.InRange(given, 0.01, 10, string.Empty, nameof(SolubilityFactor));
            }

            field = value;
        }
    }

    /// <summary>
    /// Time constant with which it gives off refrigerant while it foams, which it does where its equilibrium pressure is 1.5 to 2 times that of the gas;
    /// 1 s to 1e6 s, 90 s by default (one to two minutes, from memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration FoamingTime
    {
        get;
        init
        {
            Require.Seconds(value, 1, 1e6, nameof(FoamingTime));
            field = Held.Minutes(value);
        }
    }

    = new(1.5, DurationUnit.Minute);

    /// <summary>
    /// Time constant with which it gives off refrigerant where it does not foam, by diffusion: 4·L²/(π²·D), L its depth (10 to 50 mm), D 1e-10 to
    /// 1e-9 m²/s (from memory); 1 s to 1e9 s, 3.2e5 s, 20 mm at 5e-10 m²/s, by default.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration DiffusionTime
    {
        get;
        init
        {
            Require.Seconds(value, 1, 1e9, nameof(DiffusionTime));
            field = Held.Minutes(value);
        }
    }

    = new(3.2e5 / 60, DurationUnit.Minute);

    /// <summary>Refrigerant dissolved at the start, kg.</summary>
    internal double DissolvedAtStart => Mass.Kilograms * RefrigerantFraction.DecimalFractions / (1 - RefrigerantFraction.DecimalFractions);

    /// <summary>Mass and family.</summary>
    public override string ToString() => $"{Require.Text(Mass.Kilograms)} kg of {Kind} oil";
}
