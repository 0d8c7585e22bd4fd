using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The oil in an appliance.</summary>
internal sealed record OilDocument
{
    /// <summary>Mass of the oil without refrigerant, 0 to 1000 t.</summary>
    public required double MassKilograms { get; init; }

    /// <summary>The oil's family, which gives its typical molar mass and how much it dissolves.</summary>
    public required OilKind Kind { get; init; }

    /// <summary>Molar mass of the oil, 0.05 to 5 kg/mol; where it is left out a typical one of its family: mineral and alkylbenzene 320 g/mol, others 600 g/mol (from memory).</summary>
    public double? MolarMassGramsPerMole { get; init; }

    /// <summary>Mass fraction of refrigerant in the liquid of oil and refrigerant at the start, 0 to 0.9; 0.2 by default (common practice, no source).</summary>
    public double? RefrigerantFraction { get; init; }

    /// <summary>How many times Raoult's rule the oil dissolves, by moles, 0.01 to 10; where it is left out a figure for the pair of refrigerant and oil.</summary>
    public double? SolubilityFactor { get; init; }

    /// <summary>Time constant with which it gives off refrigerant while it foams, 1 s to 1e6 s; 1.5 min by default (from memory).</summary>
    public double? FoamingTimeMinutes { get; init; }

    /// <summary>Time constant with which it gives off refrigerant by diffusion where it does not foam, 1 s to 1e9 s; 3.2e5 s by default (from memory).</summary>
    public double? DiffusionTimeMinutes { get; init; }

    public static OilDocument From(ApplianceOil oil) => new()
    {
        MassKilograms = Exact.Kilograms(oil.Mass),
        Kind = oil.Kind,
        MolarMassGramsPerMole = oil.MolarMass is MolarMass molar ? Exact.Number(molar.GramsPerMole) : null,
        RefrigerantFraction = Exact.Number(oil.RefrigerantFraction.DecimalFractions),
        SolubilityFactor = oil.SolubilityFactor is double factor ? Exact.Number(factor) : null,
        FoamingTimeMinutes = Exact.Minutes(oil.FoamingTime),
        DiffusionTimeMinutes = Exact.Minutes(oil.DiffusionTime),
    };

    public ApplianceOil ToOil(DocumentNode node) => node.Build(() =>
    {
        ApplianceOil oil = new() { Mass = Exact.MassOf(MassKilograms), Kind = Kind };
        return oil with
        {
            MolarMass = MolarMassGramsPerMole is double molar ? new MolarMass(molar, MolarMassUnit.GramPerMole) : null,
            RefrigerantFraction = RefrigerantFraction is double fraction ? new Ratio(fraction, RatioUnit.DecimalFraction) : oil.RefrigerantFraction,
            SolubilityFactor = SolubilityFactor,
            FoamingTime = FoamingTimeMinutes is double foaming ? Exact.MinutesOf(foaming) : oil.FoamingTime,
            DiffusionTime = DiffusionTimeMinutes is double diffusion ? Exact.MinutesOf(diffusion) : oil.DiffusionTime,
        };
    });
}
