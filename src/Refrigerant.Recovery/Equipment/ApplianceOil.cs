using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>The oil in an appliance: what it holds back of the refrigerant, as an estimate. Immutable.</summary>
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
    /// <param name="outgassingTime">See <see cref="OutgassingTime"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public ApplianceOil(
        Mass mass,
        OilKind kind,
        MolarMass? molarMass = null,
        Ratio? refrigerantFraction = null,
        Duration? outgassingTime = null)
    {
        Mass = mass;
        Kind = kind;
        MolarMass = molarMass ?? MolarMass;
        RefrigerantFraction = refrigerantFraction ?? RefrigerantFraction;
        OutgassingTime = outgassingTime ?? OutgassingTime;
    }

    /// <summary>Mass of the oil without refrigerant, greater than 0 up to 100 t.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Mass Mass
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 1e-6, 1e5, "kg", nameof(Mass));
            field = value;
        }
    }

    /// <summary>The oil's family, which gives its typical molar mass.</summary>
    public required OilKind Kind { get; init; }

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

            field = value;
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
            field = value;
        }
    }

    = new(0.2, RatioUnit.DecimalFraction);

    /// <summary>Time constant with which the dissolved refrigerant follows its equilibrium, 1 s to 1e6 s; 30 min by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration OutgassingTime
    {
        get;
        init
        {
            Require.InRange(value.Seconds, 1, 1e6, "s", nameof(OutgassingTime));
            field = value;
        }
    }

    = new(1800, DurationUnit.Second);

    /// <summary>Refrigerant dissolved at the start, kg.</summary>
    internal double DissolvedAtStart => Mass.Kilograms * RefrigerantFraction.DecimalFractions / (1 - RefrigerantFraction.DecimalFractions);

    /// <summary>Molar mass used, kg/mol.</summary>
    internal double EffectiveMolarMass =>
        MolarMass?.KilogramsPerMole ?? (Kind is OilKind.Mineral or OilKind.Alkylbenzene ? 0.32 : 0.6);

    /// <summary>Mass and family.</summary>
    public override string ToString() => $"{Require.Text(Mass.Kilograms)} kg of {Kind} oil";
}
